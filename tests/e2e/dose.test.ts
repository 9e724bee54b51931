import { describe, expect, it } from "vitest";
import { openClub, textOf } from "../support/club.ts";

describe("/dose dilute", () => {
  it("lets a stock down to a volume", async () => {
    // C1 V1 = C2 V2: 10 / 40 × 1000 mL = 250 mL.
    const reply = await openClub().ask("/dose dilute stock:40 % v/v target:10 % v/v volume:1 L");
    expect(reply.headline).toBe("250 mL of stock, made up to 1 L");
    expect(textOf(reply)).toContain("fill up to the 1 L mark");
  });

  it("asks what 1:5 means, and both answers differ", async () => {
    const club = openClub();
    const asked = await club.say("/dose dilute target:1:5 volume:500 mL");
    // One part in five is 20 % and 100 mL; one part to five is 1/6 and 83.3 mL.
    expect(asked.kind === "question" && asked.choices.map(({ label }) => label)).toEqual([
      "1 in 5 (20 % of the whole)",
      "1 to 5 (16.7 % of the whole)",
    ]);
    const told = await club.pick("1 to 5");
    expect(told.kind === "reply" && told.headline).toBe("83.3 mL of stock, made up to 500 mL");
    await club.say("/dose dilute target:1:5 volume:500 mL");
    const other = await club.pick("1 in 5");
    expect(other.kind === "reply" && other.headline).toBe("100 mL of stock, made up to 500 mL");
  });

  it("asks of what a per cent is", async () => {
    const club = openClub();
    const asked = await club.say("/dose dilute stock:40 % target:10 % v/v volume:1 L");
    expect(textOf(asked)).toContain("40 % of what?");
    const told = await club.pick("by volume");
    expect(told.kind === "reply" && told.headline).toBe("250 mL of stock, made up to 1 L");
  });

  it("refuses to make a stock stronger by watering it, or to mix two kinds of strength", async () => {
    const club = openClub();
    expect((await club.ask("/dose dilute stock:10 % v/v target:40 % v/v volume:1 L")).ok).toBe(false);
    expect((await club.ask("/dose dilute stock:40 % v/v target:5 mg/mL volume:1 L")).ok).toBe(false);
  });

  it("reckons by weight once it knows what a litre weighs", async () => {
    const club = openClub();
    const blind = await club.ask("/dose dilute stock:30 % w/w target:30 g/L volume:1 L");
    expect(blind.ok).toBe(false);
    expect(textOf(blind)).toContain("30 % w/w 1.15 kg/L");
    // 0.30 × 1.15 kg/L = 345 g/L; 30 g/L × 1 L / 345 g/L = 87.0 mL.
    const reply = await club.ask("/dose dilute stock:30 % w/w 1.15 kg/L target:30 g/L volume:1 L");
    expect(reply.headline).toMatch(/^87(\.0)? mL of stock/);
  });

  it("raises the hazard of what is named", async () => {
    const reply = await openClub().ask(
      "/dose dilute stock:30 % w/v target:3 % w/v volume:1 L substance:hydrochloric acid",
    );
    expect(textOf(reply)).toContain("Acid goes into water");
  });
});

describe("/dose raise", () => {
  it("doses a whole system from a stock", async () => {
    // 50 g in 1000 mL is 50 mg/mL; 0.05 mg/L in 2700 L is 135 mg: 2.7 mL.
    const reply = await openClub().ask(
      "/dose raise by:0.05 mg/L stock:50 g in 1 L volume:2700 L substance:potassium iodide",
    );
    expect(reply.headline).toBe("2.7 mL of stock");
  });

  it("splits a large dose over days", async () => {
    // 60 mg/L × 200 L = 12 g; at 20 mg/L a day that is three days of 4 g.
    const reply = await openClub().ask("/dose raise by:60 mg/L per-day:20 mg/L volume:200 L");
    expect(reply.headline).toBe("12 g");
    expect(reply.body.slice(0, 2)).toEqual(["Over 3 days, 20 mg/L each.", "Each day 4 g."]);
    expect(textOf(reply)).toContain("never double the next one");
  });

  it("warns when nobody said what it is, and asks for the volume when no tank is kept", async () => {
    const club = openClub();
    const asked = await club.say("/dose raise by:20 mg/L");
    expect(textOf(asked)).toContain("How much water is in the system?");
    expect(textOf(await club.fill("200 L"))).toContain("If it treats a disease it is a medicine: ask a vet");
  });

  it("doses no medicine", async () => {
    const reply = await openClub().ask("/dose raise by:0.5 mg/L volume:200 L substance:copper sulphate");
    expect(reply.ok).toBe(false);
    expect(textOf(reply)).toContain("vet");
    expect(reply.headline).toBeUndefined();
  });
});

describe("/dose pump", () => {
  it("turns a day's volume into seconds", async () => {
    // 48 mL / 24 = 2 mL; over 1.5 mL/min: 80 s.
    const reply = await openClub().ask("/dose pump daily:48 mL doses:24 flow:1.5 mL/min");
    expect(reply.headline).toBe("80 s per dose");
    expect(reply.body[0]).toContain("Each dose is 2 mL");
  });

  it("refuses no doses at all", async () => {
    expect((await openClub().ask("/dose pump daily:48 mL doses:0 flow:1.5 mL/min")).ok).toBe(false);
  });
});

describe("/dose alcohol", () => {
  it("lets alcohol down and says that it burns", async () => {
    const reply = await openClub().ask("/dose alcohol stock:40 % target:10 % volume:1 L");
    expect(reply.headline).toBe("250 mL of the 40 % bottle, made up to 1 L");
    // 100 mL of ethanol at 0.789 g/mL (CRC Handbook, 20 °C) is 78.9 g.
    expect(textOf(reply)).toContain("78.9 g of ethanol");
    expect(reply.cautions.some(({ level, text }) => level === "danger" && text.includes("catch fire"))).toBe(
      true,
    );
  });

  it("refuses denatured alcohol and strengths that cannot be", async () => {
    const club = openClub();
    expect((await club.ask("/dose alcohol stock:40 % target:10 % volume:1 L denatured:yes")).ok).toBe(false);
    expect((await club.ask("/dose alcohol stock:40 % target:50 % volume:1 L")).ok).toBe(false);
    const odd = await club.say("/dose alcohol stock:140 % target:10 % volume:1 L");
    expect(odd.kind === "question" && odd.isMistake).toBe(true);
  });
});

describe("/dose together", () => {
  // Bleach with acid frees chlorine, with ammonia chloramines (general chemistry).
  it.each([
    ["bleach", "vinegar", "chlorine"],
    ["bleach", "hydrochloric acid", "chlorine"],
    ["ammonia", "bleach", "chloramine"],
  ])("refuses %s and %s", async (first, second, gas) => {
    const reply = await openClub().ask(`/dose together first:${first} second:${second}`);
    expect(reply.ok).toBe(false);
    expect(reply.body[0]).toMatch(/^Never let/);
    expect(textOf(reply).toLowerCase()).toContain(gas);
    expect(reply.cautions.some(({ level, text }) => level === "danger" && text.includes("fresh air"))).toBe(
      true,
    );
  });

  it("doses nothing unknown without a word of doubt, and no medicine by a wrong letter", async () => {
    const club = openClub();
    const unknown = await club.ask("/dose raise by:2 mg/L volume:200 L substance:blue powder");
    expect(unknown.cautions[0]?.text).toContain("Nothing is known here of blue powder");
    const known = await club.ask("/dose raise by:2 mg/L volume:200 L substance:calcium chloride");
    expect(known.cautions.some(({ text }) => text.includes("Nothing is known"))).toBe(false);
    for (const substance of ["formaline", "coppersulphate", "Cu", "praziquantal", "ich cure"]) {
      const refused = await club.ask(`/dose raise by:2 mg/L volume:200 L substance:${substance}`);
      expect(refused.ok).toBe(false);
      expect(refused.cautions[0]).toMatchObject({ level: "danger" });
    }
  });

  it("calls nothing safe that it does not know", async () => {
    const reply = await openClub().ask("/dose together first:blue powder second:water");
    expect(reply.headline).toBe("No verdict: I do not know blue powder");
    expect(textOf(reply)).toContain("not on my list. That does not make it safe");
  });
});

describe("/dose vet", () => {
  const LINE = "/dose vet medicine:as on the note dose:0.5 mg/L strength:10 mg/mL volume:200 L";

  it("works nothing out before a vet's word and a second reading of every figure", async () => {
    const club = openClub();
    const first = await club.say(LINE);
    expect(textOf(first)).toContain("Did a vet write this dose, for these animals?");
    expect(textOf(first)).not.toMatch(/\bmL\b/);
    const second = await club.pick("Yes, I have it in writing");
    expect(textOf(second)).toContain("Read each figure against the vet's note and the label");
    expect(textOf(second)).toContain("dose: 0.5 mg/L");
    const reply = await club.pick("Yes, every figure");
    // 0.5 mg/L × 200 L = 100 mg; over 10 mg/mL: 10 mL.
    expect(reply.kind === "reply" && reply.headline).toBe("10 mL of as on the note");
    expect(textOf(reply)).toContain("100 mg of the active substance");
  });

  it("stops at either no", async () => {
    const club = openClub();
    await club.say(LINE);
    const no = await club.pick("No");
    expect(no.kind === "reply" && !no.ok && no.headline === undefined).toBe(true);
    expect(textOf(no)).toContain("needs a vet");
    await club.say(LINE);
    await club.pick("Yes");
    const stop = await club.pick("No, stop");
    expect(stop.kind === "reply" && !stop.ok).toBe(true);
    expect(textOf(stop)).toContain("nothing was worked out");
  });

  it("asks again when a figure has changed since it was confirmed", async () => {
    const club = openClub();
    await club.ask("/tank add name:Hospital kind:marine containers:box 200 L measured");
    await club.say("/dose vet medicine:as on the note dose:0.5 mg/L strength:10 mg/mL");
    const read = await club.pick("Yes, I have it in writing");
    expect(textOf(read)).toContain("200 L");
    const asked = club.last;
    await club.ask("/tank describe containers:box 400 L measured");
    const told = await club.app.choose(asked?.id ?? "", "test:ines" as never, 0);
    expect(told.outcome.kind).toBe("question");
    expect(textOf(told.outcome)).toContain("400 L");
  });

  it("does not take one confirmation for another question's", async () => {
    const club = openClub();
    await club.say(LINE);
    await club.pick("Yes, I have it in writing");
    await club.pick("Yes, every figure");
    expect((await club.say(LINE.replace("0.5", "5"))).kind).toBe("question");
  });
});
