import { describe, expect, it } from "vitest";
import type { ClubId } from "../../src/records/ids.ts";
import { type Club, memberId, openClub, textOf } from "../support/club.ts";

const LAGOON =
  "/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 60 cm; settling 150 L measured; 2 x drum 110 L label";

async function withLagoon(): Promise<Club> {
  const club = openClub();
  await club.ask(LAGOON);
  return club;
}

describe("/tank add", () => {
  it("adds up all containers, and says what each rests on", async () => {
    const reply = await openClub().ask(LAGOON);
    const row = (name: string) => reply.table?.rows.find(([each]) => each === name) ?? [];
    // 200 × 100 × 60 cm³ = 1200 L; the measured fill is itself; a label is a brimful figure, never the water.
    expect(row("display")[2]).toMatch(/^1200\b/);
    expect(row("display")[4]).toBe("dimensions");
    expect(row("settling")[2]).toMatch(/^150/);
    expect(row("drum 1")[4]).toBe("label, not measured");
    expect(Number.parseFloat(row("drum 2")[2] ?? "")).toBeLessThan(110);
    expect(textOf(reply)).toContain("drum 1 and drum 2 is a label or brimful figure, not water measured");
    expect(reply.body.join(" ")).toContain("It is your default tank");
  });

  it("says back what it understood, and asks what is missing", async () => {
    const club = openClub();
    const asked = await club.say("/tank add name:Lagoon containers:box 100 L measured");
    expect(asked.kind === "question" && asked.choices.map(({ label }) => label)).toEqual([
      "marine",
      "brackish",
      "fresh",
    ]);
    expect(textOf(await club.pick("fresh"))).toContain("Understood: ");
  });

  it("asks what a gallon is inside the description", async () => {
    const club = openClub();
    const asked = await club.say("/tank add name:Pool kind:fresh containers:drum 55 gal measured");
    expect(textOf(asked)).toContain("US gal or imp gal");
    // 55 × 3.785411784 L = 208.2 L (NIST SP 811).
    const reply = await club.pick("US gal");
    expect(reply.kind === "reply" && reply.headline).toContain("208");
  });

  it("refuses a second tank of the same name, however it is written", async () => {
    const club = await withLagoon();
    for (const name of ["Lagoon", "LAGOON", "  lagoon "]) {
      const reply = await club.ask(`/tank add name:${name} kind:marine containers:box 100 L measured`);
      expect(reply.ok).toBe(false);
      expect(textOf(reply)).toContain("Choose another word");
    }
    expect((await club.ask("/tank list")).title).toBe("1 tank");
  });

  it("refuses a name without a letter and a tank that holds nothing", async () => {
    const club = openClub();
    for (const line of [
      "/tank add name:… kind:marine containers:box 100 L measured",
      "/tank add name:Lagoon kind:marine containers:display 200x100x70 cm inside, level 90 cm",
      "/tank add name:Lagoon kind:marine containers:glass thing",
      "/tank add name:Lagoon kind:lava containers:box 100 L measured",
    ]) {
      const outcome = await club.say(line);
      expect(outcome.kind === "question" || !outcome.ok, line).toBe(true);
    }
    expect((await club.ask("/tank list")).title).toBe("No tanks yet");
  });
});

describe("/tank show", () => {
  it("tells the water, the readings it goes by, and the notes", async () => {
    const club = await withLagoon();
    await club.ask("/tank note livestock:1 brown-marbled grouper 55 cm salinity:34 ppt temperature:26 °C");
    const before = await club.ask("/tank show");
    expect(textOf(before)).toContain("salinity 34 ppt (Lagoon, as usually kept)");
    expect(textOf(before)).toContain("Animals: 1 brown-marbled grouper 55 cm.");
    await club.ask("/log salinity 33 ppt");
    expect(textOf(await club.ask("/tank show tank:lag"))).toMatch(/salinity 33 ppt \(Lagoon, logged/);
  });

  it("asks again for a tank that is not there, and names one that is near", async () => {
    const club = await withLagoon();
    const outcome = await club.say("/tank show tank:Lagon");
    expect(textOf(outcome)).toContain("Did you mean “Lagoon”?");
    const empty = await openClub().ask("/tank show");
    expect(empty.ok).toBe(false);
    expect(textOf(empty)).toContain("/tank add");
  });

  it("asks which of two tanks a beginning means", async () => {
    const club = await withLagoon();
    await club.ask("/tank add name:Lab kind:fresh containers:box 100 L measured");
    const asked = await club.say("/tank show tank:La");
    expect(textOf(asked)).toContain("fits 2 tanks");
    expect((await club.pick("Lab")).title).toBe("Lab");
  });
});

describe("/tank list", () => {
  it("lists them with their other names, the default one first", async () => {
    const club = await withLagoon();
    await club.ask("/tank add name:Lab kind:fresh containers:box 100 L measured");
    await club.ask("/tank name alias:DT tank:Lagoon");
    const reply = await club.ask("/tank list");
    expect(reply.table?.rows.map((row) => [row[0], row[3], row[4]])).toEqual([
      ["Lagoon", "DT", "default"],
      ["Lab", "", ""],
    ]);
  });

  it("takes nothing beside its name", async () => {
    const reply = await (await withLagoon()).app.answer({
      member: memberId("ines"),
      isSteward: false,
      path: "tank list",
      options: { all: "yes" },
      answers: {},
    });
    expect(reply.outcome.kind === "reply" && reply.outcome.ok).toBe(false);
  });
});

describe("/tank describe", () => {
  it("replaces the containers, and says what was there before", async () => {
    const club = await withLagoon();
    const reply = await club.ask("/tank describe containers:display 400 L measured; sump 100 L measured");
    expect(reply.headline).toMatch(/^500 L/);
    expect(textOf(reply)).toContain("Before it was: display 200x100x70 cm inside");
    expect((await club.ask("/tank show")).headline).toMatch(/^500 L/);
  });

  it("changes nothing when the description cannot be read", async () => {
    const club = await withLagoon();
    const outcome = await club.say("/tank describe containers:display very large");
    expect(outcome.kind).toBe("question");
    expect((await club.ask("/tank show")).table?.rows).toHaveLength(4);
  });
});

describe("/tank note", () => {
  it("keeps what it could read, and clears it again", async () => {
    const club = await withLagoon();
    const noted = await club.ask("/tank note salinity:34 ppt food:280 g prawn 3 times a week");
    expect(noted.body).toContain("usual salinity: 34 ppt");
    const cleared = await club.ask("/tank note food:none");
    expect(cleared.body).toEqual(["food: cleared"]);
    expect(textOf(await club.ask("/tank show"))).not.toContain("prawn");
    expect(textOf(await club.ask("/tank show"))).toContain("34 ppt");
  });

  it("keeps nothing it could not read, and says when there is nothing to note", async () => {
    const club = await withLagoon();
    expect((await club.say("/tank note temperature:lukewarm")).kind).toBe("question");
    expect((await club.ask("/tank note")).ok).toBe(false);
  });
});

describe("/tank name", () => {
  it("gives one more word, renames, and drops a word", async () => {
    const club = await withLagoon();
    await club.ask("/tank name alias:DT");
    expect((await club.ask("/tank name to:Reef flat tank:dt")).title).toBe("Reef flat");
    expect((await club.ask("/tank show tank:Reef flat")).title).toBe("Reef flat");
    await club.ask("/tank name drop-alias:DT");
    expect((await club.say("/tank show tank:DT")).kind).toBe("question");
  });

  it("refuses a word that another tank has, a word that is not there, and nothing at all", async () => {
    const club = await withLagoon();
    await club.ask("/tank add name:Lab kind:fresh containers:box 100 L measured");
    expect((await club.ask("/tank name alias:lagoon tank:Lab")).ok).toBe(false);
    expect((await club.ask("/tank name to:LAGOON tank:Lab")).ok).toBe(false);
    expect((await club.ask("/tank show tank:Lab")).title).toBe("Lab");
    expect((await club.ask("/tank name drop-alias:nope")).ok).toBe(false);
    expect((await club.ask("/tank name")).ok).toBe(false);
  });

  it("may change only how its own name is written", async () => {
    const club = await withLagoon();
    expect((await club.ask("/tank name to:LAGOON")).title).toBe("LAGOON");
  });
});

describe("/tank default", () => {
  it("chooses the tank that sums use", async () => {
    const club = await withLagoon();
    await club.ask("/tank add name:Lab kind:fresh containers:box 100 L measured");
    await club.ask("/tank default tank:Lab");
    expect((await club.ask("/change effect now:80 mg/L size:30 %")).title).toBe("Lab: a change of 30 %");
  });

  it("asks again for one that is not there", async () => {
    expect((await (await withLagoon()).say("/tank default tank:Nowhere")).kind).toBe("question");
  });
});

describe("/tank share", () => {
  it("lets the club read a tank, and nobody change it", async () => {
    const club = await withLagoon();
    expect((await club.ask("/tank share tank:Lagoon")).title).toBe("Lagoon is now open to this club");
    expect(textOf(await club.ask("/tank show tank:Lagoon", "bruno"))).toContain("shared by another member");
    expect((await club.ask("/tank list", "bruno")).table?.rows[0]?.[4]).toBe(
      "another member’s, shared with you",
    );
    expect((await club.ask("/change effect now:80 mg/L size:30 % tank:Lagoon", "bruno")).ok).toBe(true);
    for (const line of [
      "/log no3 20 tank:Lagoon",
      "/undo tank:Lagoon",
      "/tank describe containers:box 1 L measured tank:Lagoon",
      "/tank note food:none tank:Lagoon",
      "/tank name to:Mine tank:Lagoon",
      "/tank default tank:Lagoon",
      "/tank share tank:Lagoon to:only me",
      "/tank remove tank:Lagoon",
    ]) {
      const outcome = await club.ask(line, "bruno");
      expect(outcome.ok, line).toBe(false);
      expect(textOf(outcome)).toContain("belongs to another member");
    }
  });

  it("is revoked at a word, and a private tank reads like none", async () => {
    const club = await withLagoon();
    await club.ask("/tank share tank:Lagoon");
    await club.ask("/tank share tank:Lagoon to:only me");
    const hidden = await club.say("/tank show tank:Lagoon", "bruno");
    const unknown = await club.say("/tank show tank:Nowhere", "bruno");
    expect(textOf(hidden).replace("Lagoon", "Nowhere")).toBe(textOf(unknown));
    expect((await club.ask("/tank list", "bruno")).title).toBe("No tanks yet");
  });

  it("lets one helper read it until a day, and says whose it is in every answer", async () => {
    const club = await withLagoon();
    await club.ask("/tank share tank:Lagoon helper:@bruno for:2 weeks");
    const sum = await club.ask("/change effect now:80 mg/L size:30 % tank:Lagoon", "bruno");
    // Two weeks from the test's 4 March 2026.
    expect(textOf(sum)).toContain("Lagoon is another member’s tank, shared until 2026-03-18");
    expect((await club.say("/tank show tank:Lagoon", "carla")).kind).toBe("question");
    club.now += 15 * 86_400_000;
    expect((await club.say("/tank show tank:Lagoon", "bruno")).kind).toBe("question");
  });

  it("reaches no other club and no direct message", async () => {
    const club = await withLagoon();
    await club.ask("/tank share tank:Lagoon");
    const show = { member: memberId("bruno"), isSteward: false, path: "tank show", answers: {} };
    const elsewhere = await club.app.answer({
      ...show,
      club: "test:other" as ClubId,
      options: { tank: "Lagoon" },
    });
    const direct = await club.app.answer({ ...show, options: { tank: "Lagoon" } });
    expect([elsewhere.outcome.kind, direct.outcome.kind]).toEqual(["question", "question"]);
    const shareInPrivate = await club.app.answer({
      ...show,
      member: memberId("ines"),
      path: "tank share",
      options: { tank: "Lagoon" },
    });
    expect(textOf(shareInPrivate.outcome)).toContain("This is a private talk");
  });

  it("prefers one's own tank to a shared one of the same name", async () => {
    const club = await withLagoon();
    await club.ask("/tank share tank:Lagoon");
    await club.ask("/tank add name:Lagoon kind:fresh containers:box 50 L measured", "bruno");
    expect((await club.ask("/tank show tank:Lagoon", "bruno")).headline).toContain("50");
  });
});

describe("two shared tanks of one name", () => {
  it("are told apart by a choice that is not asked about again", async () => {
    const club = await withLagoon();
    await club.ask("/tank share tank:Lagoon");
    await club.ask("/tank add name:Lagoon kind:fresh containers:box 50 L measured", "bruno");
    await club.ask("/tank share tank:Lagoon", "bruno");
    const asked = await club.say("/tank show tank:Lagoon", "carla");
    expect(textOf(asked)).toContain("fits 2 tanks");
    const shown = await club.pick(2, "carla");
    expect(shown.kind === "reply" && shown.headline).toContain("50");
  });
});

describe("/tank remove", () => {
  it("asks first, then removes the tank with its record", async () => {
    const club = await withLagoon();
    await club.ask("/log no3 20");
    const asked = await club.say("/tank remove tank:Lagoon");
    expect(textOf(asked)).toContain("gone for good");
    expect((await club.pick("Keep it")).title).toBe("Lagoon stays");
    await club.say("/tank remove tank:Lagoon");
    expect((await club.pick("Remove Lagoon")).title).toBe("Lagoon is gone");
    expect((await club.ask("/tank list")).title).toBe("No tanks yet");
    expect((await club.ask("/readings")).ok).toBe(false);
  });

  it("does not take an old yes for another tank, and asks again for one that is not there", async () => {
    const club = await withLagoon();
    await club.say("/tank remove tank:Lagoon");
    const yes = club.last?.id ?? "";
    await club.pick("Remove Lagoon");
    await club.ask(LAGOON);
    const again = await club.app.choose(yes, memberId("ines"), 0);
    expect(again.outcome.title).toBe("Lagoon stays");
    expect((await club.say("/tank remove tank:Nowhere")).kind).toBe("question");
  });

  it("passes the default on", async () => {
    const club = await withLagoon();
    await club.ask("/tank add name:Lab kind:fresh containers:box 100 L measured");
    await club.say("/tank remove tank:Lagoon");
    await club.pick("Remove Lagoon");
    expect((await club.ask("/tank list")).table?.rows[0]?.[4]).toBe("default");
  });
});
