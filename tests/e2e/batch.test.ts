import { describe, expect, it } from "vitest";
import { DAY, HOUR, openBreedingClub } from "../support/breeding-club.ts";
import { type Club, textOf } from "../support/club.ts";

async function withYoung(count = "131"): Promise<Club> {
  const club = await openBreedingClub();
  await club.ask("/spawn eggs tank:tank 3");
  club.now += 8 * DAY;
  await club.ask(`/spawn hatched batch:B1 count:${count}`);
  return club;
}

describe("/batch", () => {
  it("/batch count reckons scoops up with their exact range, and says when they are clumped", async () => {
    const club = await withYoung();
    const even = textOf(await club.ask("/batch count batch:B1 count:4 7 5 in 10 mL"));
    // Three scoops of 10 mL from 40 L: 21,333 (12,194–34,644), R 4.2.2 poisson.test.
    expect(even).toContain("About 21,333 (12,194–34,644)");
    // D = 33.02 on 4 degrees of freedom, p = 1.2e-6, R 4.2.2 pchisq.
    expect(textOf(await club.ask("/batch count batch:B1 count:2 15 4 19 1 in 10 mL"))).toContain(
      "stand clumped",
    );
  });

  it("/batch deaths weighs the day against the batch's own mean, freezes the water and suggests a vet", async () => {
    const club = await withYoung();
    club.now += DAY;
    await club.ask("/batch deaths number:1 batch:B1");
    club.now += 3 * DAY;
    const told = textOf(await club.ask("/batch deaths number:6 batch:tank 3", "bruno"));
    // One death over the four days since the count: 0.25 a day; 6 is 24 times that.
    expect(told).toContain("Today 6, against a mean of 0.25 a day over the 4 days before");
    expect(told).toContain("Ask a vet");
    expect(textOf(await club.ask("/batch move batch:B1 to:grow-out"))).toContain("under an alert");
    expect(textOf(await club.ask("/juveniles give batch:B1 number:4 to:Bruno"))).toContain("under an alert");
    expect(told).not.toMatch(/dose|copper|formalin|antibiotic/i);
  });

  it("asks whether two members mean the same deaths, and counts them once or twice as they say", async () => {
    const club = await withYoung();
    await club.ask("/batch deaths number:2 batch:B1");
    club.now += 5 * 60_000;
    const asked = await club.say("/batch deaths number:2 batch:B1", "bruno");
    expect(textOf(asked)).toContain("the same event?");
    expect(textOf(await club.pick("The same event", "bruno"))).toContain("stand in the ledger once");
    expect(textOf(await club.ask("/batch list"))).toContain("129, counted");
    await club.say("/batch deaths number:1 batch:B1", "thalia");
    await club.pick("1 more", "thalia");
    expect(textOf(await club.ask("/batch list"))).toContain("128, counted");
    club.now += HOUR;
    expect(textOf(await club.ask("/batch deaths number:1 batch:B1", "bruno"))).toContain("127, counted");
  });

  it("/batch split and /batch merge balance; /batch move warns of going up the order of work", async () => {
    const club = await withYoung();
    expect(textOf(await club.ask("/batch split number:40 batch:B1 to:grow-out"))).toContain(
      "B2 in grow-out: 40, counted. B1 in tank 3: 91, counted",
    );
    expect(textOf(await club.ask("/batch split number:92 batch:B1 to:grow-out"))).toContain(
      "more than the 91",
    );
    const up = textOf(await club.ask("/batch move batch:B2 to:tank 3"));
    expect(up).toContain("grow-out towards hatchery");
    expect(textOf(await club.ask("/batch merge batch:B2 into:B1"))).toContain("B1: 131, counted");
    expect(textOf(await club.say("/batch deaths number:1 batch:B2"))).toContain("no batch");
  });

  it("/batch loss keeps what is culled apart and gives no method", async () => {
    const club = await withYoung();
    const culled = textOf(await club.ask("/batch loss number:3 batch:B1 what:culled"));
    expect(culled).toContain("a vet's to say");
    await club.ask("/batch loss number:2 batch:B1 what:missing");
    expect(textOf(await club.ask("/batch list"))).toContain("126, counted");
  });

  it("/batch stage takes any word, in any order: not every animal is a larva first", async () => {
    const club = await openBreedingClub();
    await club.ask("/spawn eggs tank:tank 1 species:dwarf shrimp");
    expect(
      textOf(await club.ask("/batch stage batch:B1 stage:juveniles sign:hatched as small adults")),
    ).toContain("B1: juveniles");
    await club.ask("/batch count batch:B1 count:25");
    expect(textOf(await club.ask("/batch show batch:B1"))).toContain("25 at the start");
  });

  it("/batch weigh gives growth and feed conversion", async () => {
    const club = await withYoung("100");
    await club.ask("/batch weigh batch:B1 mean:20.5 mg");
    club.now += 14 * DAY;
    const told = textOf(await club.ask("/batch weigh batch:B1 mean:76.4 mg feed:8.05 g"));
    // 20.5 to 76.4 mg in 14 days: 9.40 % a day (Delomas & Dabrowski 2018); 8.05 g on 5.59 g of gain: 1.44.
    expect(told).toContain("Growth 9.4 % a day");
    expect(told).toContain("Feed conversion 1.44");
  });

  it("/batch show draws survival with its band; given away is not dead", async () => {
    const club = await withYoung("40");
    // A ledger of day, deaths, transfers: 68.7 % (53.3–88.5), R 4.2.2 survival 3.5-3.
    const ledger = [
      [3, 4, 0],
      [7, 2, 0],
      [14, 0, 10],
      [20, 3, 0],
      [30, 0, 8],
      [41, 1, 0],
      [60, 0, 0],
    ] as const;
    const start = club.now;
    for (const [day, deaths, given] of ledger) {
      club.now = start + day * DAY;
      if (deaths > 0) {
        await club.ask(`/batch deaths number:${deaths} batch:B1`);
        await club.say("/group clear water:tank 3");
      }
      if (given > 0) await club.ask(`/batch split number:${given} batch:B1 to:grow-out`);
    }
    const told = await club.ask("/batch show batch:B1");
    expect(told.headline).toBe("69 % alive (53 %–88 %) after 60 days");
    expect(textOf(told)).toContain("12 alive + 10 dead + 18 left alive + 0 missing");
    const levels = told.chart?.panels[0]?.fitted?.levels ?? [];
    expect(levels.at(-1)?.middle).toBeCloseTo(68.6538, 3);
    expect(levels.at(-1)?.low).toBeCloseTo(53.2624, 3);
  });

  it("refuses what cannot be", async () => {
    const club = await withYoung();
    expect(textOf(await club.ask("/batch deaths number:200 batch:B1"))).toContain("more than the 131");
    expect(textOf(await club.say("/batch count batch:B1 count:many"))).toContain("not a count I can read");
    expect(textOf(await club.say("/batch show batch:B9"))).toContain("no batch");
  });
});
