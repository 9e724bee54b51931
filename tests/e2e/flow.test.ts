import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

const SIPHON = "siphon: 2 in, drop 75 cm, 2 m, 3 elbows, entry";
const PUMP = "0 L/h at 5.2 m; 4000 L/h at 4.8 m; 8000 L/h at 3.9 m; 12000 L/h at 2.4 m; 15000 L/h at 0 m";

/** The first figure of a text. */
function figure(text: string | undefined): number {
  return Number(/-?\d+(?:\.\d+)?/.exec(text ?? "")?.[0]);
}

/** Every reply to a hostile text is a question or a refusal, never a figure. */
async function refusesAll(command: string, option: string, rest = "") {
  const club = openClub();
  for (const odd of ["'; DROP TABLE tank", "1e999 L/h", "NaN", "-3 m", "🦑", "0", ";;;", "[object Object]"]) {
    const outcome = await club.say(`/flow ${command} ${option}:${odd} ${rest}`);
    expect(outcome.kind === "question" || !outcome.ok).toBe(true);
  }
}

describe("/flow overflow", () => {
  it("gives Francis' head for a plain crest and the narrow-notch head for teeth", async () => {
    const club = openClub();
    // Francis: 0.6 m, two end contractions, 11 000 L/h: 19.8 mm.
    const plain = await club.ask("/flow overflow crest:60 cm flow:11000 L/h");
    expect(figure(plain.headline)).toBeCloseTo(19.8, 0);
    // Kindsvater & Carter narrow notches: 60 slots of 6 mm, 8000 L/h: 23.3 mm.
    const teeth = await club.ask("/flow overflow crest:60 slots of 6 mm, teeth 40 mm flow:8000 L/h");
    expect(Math.abs(figure(teeth.headline) - 23.3)).toBeLessThan(1.2);
    expect(textOf(teeth)).toContain("half closed");
  });

  it("asks for the crest, then for the flow", async () => {
    const club = openClub();
    expect(textOf(await club.say("/flow overflow"))).toContain("How long is the overflow's crest");
    expect(textOf(await club.fill("60 cm"))).toContain("What really flows");
    const reply = await club.fill("11000 L/h");
    expect(reply.kind).toBe("reply");
    await refusesAll("overflow", "crest", "flow:8000 L/h");
  });
});

describe("/flow drain", () => {
  it("names the narrowest piece", async () => {
    const club = openClub();
    // Energy equation with Swamee–Jain friction: 0.75 m, 2 m of 52.5 mm, total K 4.2: 13 515 L/h.
    const siphon = await club.ask(`/flow drain drain:${SIPHON} flow:8000 L/h`);
    expect(Math.abs(figure(siphon.headline) - 13_515)).toBeLessThan(410);
    // Riser practice: 52.5 mm rim with 12 mm over it, 1436 L/h; Wyly & Eaton film 4342; Manning half full at 2 % 3066.
    const open = await club.ask(
      "/flow drain drain:standpipe: 2 in, water 12 mm; fall: 2 in; slope: 2 in, 2 % flow:1200 L/h",
    );
    expect(textOf(open)).toContain("The narrowest piece is standpipe");
    const carries = (name: string) => figure(open.table?.rows.find(([piece]) => piece === name)?.[1]);
    expect(Math.abs(carries("standpipe") - 1436)).toBeLessThan(72);
    expect(Math.abs(carries("fall") - 4342)).toBeLessThan(130);
    expect(Math.abs(carries("slope") - 3066)).toBeLessThan(92);
  });

  it("warns of a drain that is too small, and asks what a piece is", async () => {
    const club = openClub();
    const small = await club.ask("/flow drain drain:standpipe: 1 in, water 10 mm flow:8000 L/h");
    expect(textOf(small)).toContain("Not surely enough");
    expect(small.cautions.some(({ text }) => text.includes("narrowest place"))).toBe(true);
    expect(textOf(await club.say("/flow drain drain:2 in, 3 m flow:8000 L/h"))).toContain(
      "siphon, a standpipe, a fall or a slope",
    );
    await refusesAll("drain", "drain", "flow:8000 L/h");
  });
});

describe("/flow siphon", () => {
  it("tells what is left when air gets in, and judges the standby", async () => {
    const club = openClub();
    const reply = await club.ask(
      `/flow siphon drain:${SIPHON} standby:2 in, water 30 mm flow:8000 L/h surface:260 x 100 cm`,
    );
    // As above: 13 515 full; Wyly & Eaton quarter full 4342 L/h.
    expect(Math.abs(figure(reply.headline) - 13_515)).toBeLessThan(410);
    expect(Math.abs(figure(/full, (.*)/.exec(reply.headline ?? "")?.[1]) - 4342)).toBeLessThan(130);
    expect(textOf(reply)).toContain("not surely enough");
    expect(textOf(reply)).toContain("Put no valve on the standby");
  });

  it("asks for a siphon where none is named", async () => {
    const club = openClub();
    expect(textOf(await club.say("/flow siphon drain:fall: 2 in flow:8000 L/h"))).toContain(
      "None of these pieces is a siphon",
    );
    await refusesAll("siphon", "drain", "flow:8000 L/h");
  });
});

describe("/flow pipe", () => {
  it("gives the loss of Darcy–Weisbach", async () => {
    const club = openClub();
    // Darcy–Weisbach with Swamee–Jain: 12 m of 52.5 mm, 9000 L/h, sum of K 4.2 (3 × 0.9 + 0.5 + 1.0): 0.592 m.
    const reply = await club.ask("/flow pipe pipe:riser: 2 in, 12 m, 3 elbows, entry, exit flow:9000 L/h");
    expect(figure(reply.headline)).toBeCloseTo(0.592, 1);
    // Mean velocity in 40.9 mm at 9000 L/h: 1.903 m/s, above the usual 1.5 m/s.
    const fast = await club.ask("/flow pipe pipe:1 1/2 in, 3 m flow:9000 L/h");
    expect(fast.table?.rows[0]?.[1]).toBe("1.9 m/s");
    expect(textOf(fast)).toContain("above 1.5 m/s");
  });

  it("says which part of a pipe is missing", async () => {
    const club = openClub();
    expect(textOf(await club.say("/flow pipe pipe:12 m, 3 elbows flow:9000 L/h"))).toContain(
      "how wide is the pipe",
    );
    expect(textOf(await club.say("/flow pipe pipe:5 in, 2 m flow:9000 L/h"))).toContain(
      "I know schedule 40 pipe",
    );
    expect(textOf(await club.say("/flow pipe pipe:2 in, 2 m, 3 wobbles flow:9000 L/h"))).toContain("wobbles");
    await refusesAll("pipe", "pipe", "flow:8000 L/h");
  });
});

describe("/flow pump", () => {
  it("finds where pump and pipes meet", async () => {
    const club = openClub();
    // Curve and static head as in the worked example of 10 318 L/h, whose loss of 0.8 m at 8000 L/h is put in as a device.
    const reply = await club.ask(
      `/flow pump pump:${PUMP} lift:1.7 m pipe:4 in, 0 m, chiller 0.8 m at 8000 L/h`,
    );
    expect(Math.abs(figure(reply.headline) - 10_318)).toBeLessThan(310);
    // Greatest head 5 m and flow 14 000 L/h, 1.6 m static, 1.2 m lost at 10 000 L/h: 9521 L/h.
    const ends = await club.ask(
      "/flow pump pump:most 5 m, most 14000 L/h lift:1.6 m pipe:4 in, 0 m, manifold 1.2 m at 10000 L/h",
    );
    expect(Math.abs(figure(ends.headline) - 9521)).toBeLessThan(190);
    expect(textOf(ends)).toContain("Three points from its printed curve");
  });

  it("refuses a pump that cannot lift, and asks for what is missing", async () => {
    const club = openClub();
    const weak = await club.ask(`/flow pump pump:${PUMP} lift:6 m pipe:2 in, 6 m`);
    expect(weak.ok).toBe(false);
    expect(weak.body[0]).toContain("No flow");
    expect(textOf(await club.say(`/flow pump pump:${PUMP}`))).toContain(
      "How high is the display's water surface",
    );
    await refusesAll("pump", "pump", "lift:1.7 m pipe:2 in, 6 m");
  });

  it("takes pump, height and pipe from the tank's notes, and says so", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 260x100x78 cm inside, level 70 cm");
    await club.ask(`/plant water pump:${PUMP} lift:1.7 m pipe:4 in, 0 m, chiller 0.8 m at 8000 L/h`);
    const reply = await club.ask("/flow pump");
    expect(reply.title).toBe("Lagoon: what the pump delivers");
    expect(Math.abs(figure(reply.headline) - 10_318)).toBeLessThan(310);
    expect(textOf(reply)).toContain("height lifted 1.7 m");
    expect(textOf(reply)).toContain("(Lagoon, as noted)");
  });
});

describe("/flow branches", () => {
  it("gives two equal branches equal flows", async () => {
    const club = openClub();
    const reply = await club.ask(
      `/flow branches branches:left: height 1 m, 1 in, 4 m, 2 elbows; right: height 1 m, 1 in, 4 m, 2 elbows pump:${PUMP}`,
    );
    // First principles: the same pipe at the same node carries the same.
    expect(reply.table?.rows[0]?.[1]).toBe(reply.table?.rows[1]?.[1]);
  });

  it("gives more to the branch that ends lower, the name running up to its height", async () => {
    const club = openClub();
    const reply = await club.ask(
      `/flow branches branches:display height 1.7 m, 1 in, 4 m; algae tank height 0.4 m, 1 in, 4 m pump:${PUMP}`,
    );
    const [display = [], algae = []] = reply.table?.rows ?? [];
    expect(algae[0]).toBe("algae tank");
    // First principles: the same pipe with more head left over carries more.
    expect(figure(algae[1])).toBeGreaterThan(figure(display[1]));
  });

  it("asks how high a branch ends", async () => {
    const club = openClub();
    expect(textOf(await club.say(`/flow branches branches:left: 1 in, 4 m pump:${PUMP}`))).toContain(
      "how high does it end",
    );
    await refusesAll("branches", "branches", `pump:${PUMP}`);
  });
});

describe("/flow residence", () => {
  it("shares the hour out over the containers", async () => {
    const club = openClub();
    await club.ask(
      "/tank add name:Lagoon kind:marine containers:display 1820 L (1820 to 1820) measured; settling box 250 L measured",
    );
    // Ideal reactors: 250 L at 1600 L/h stay 9.375 min.
    const reply = await club.ask("/flow residence flow:1600 L/h");
    expect(Math.abs(figure(reply.table?.rows[1]?.[1]) - 9.375)).toBeLessThan(0.1);
  });

  it("needs a tank", async () => {
    const club = openClub();
    const reply = await club.ask("/flow residence flow:1600 L/h");
    expect(reply.ok).toBe(false);
    expect((await club.say("/flow residence flow:1e999 L/h")).kind).toBe("question");
  });
});

describe("/flow mixing", () => {
  it("uses the closed loop, with the washout as the bound", async () => {
    const club = openClub();
    const reply = await club.ask("/flow mixing display:1700 L rest:600 L flow:6000 L/h");
    // Two mixed volumes in a loop: ln 20 ÷ (6000/1700 + 6000/600) = 0.221 h = 13.2 min; bound 3.0 × 2300 ÷ 6000 = 1.148 h = 69 min.
    expect(reply.headline).toContain("13 minutes");
    expect(textOf(reply)).toContain("69 minutes to be safe");
  });

  it("asks for the rest of the loop", async () => {
    const club = openClub();
    expect(textOf(await club.say("/flow mixing display:1700 L"))).toContain("rest of the loop");
    await refusesAll("mixing", "display", "rest:600 L flow:6000 L/h");
  });
});
