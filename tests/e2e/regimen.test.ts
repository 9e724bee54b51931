import { beforeEach, describe, expect, it } from "vitest";
import { createClockwork } from "../../src/reminders/clockwork.ts";
import { type Club, memberId, openClub, textOf } from "../support/club.ts";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

let club: Club;
beforeEach(async () => {
  club = openClub();
  await club.ask("/settings zone:Europe/Lisbon");
  await club.ask("/tank add name:Lagoon kind:marine containers:display 1000 L measured");
});

async function pass(ms: number): Promise<void> {
  club.now += ms;
  await createClockwork({
    records: club.store.records,
    reminders: club.store.reminders,
    clock: () => club.now,
    newKey: () => "unused",
    log: (line, error) => {
      throw new Error(line, { cause: error });
    },
  }).tick();
}

async function said(line: string): Promise<string> {
  return textOf(await club.ask(line));
}

const dueTitles = (): readonly string[] =>
  club.store.records.plans.open(memberId("ines")).map(({ words }) => words.title);

describe("/regimen list and /regimen start", () => {
  it("show what there is with its standing, and what runs", async () => {
    expect(await said("/regimen list")).toContain("common practice, no source");
    expect(await said("/regimen start pattern:water changes days:7 days share:15 %")).toContain(
      "Water changes runs",
    );
    expect(await said("/regimen list")).toContain("Runs.");
  });

  it("refuse ammonia where animals live, a second of the same, and figures without sense", async () => {
    await club.ask("/tank note livestock:1 brown-marbled grouper 55 cm");
    expect((await club.ask("/regimen start pattern:cycling")).ok).toBe(false);
    expect((await club.ask("/regimen start pattern:water changes share:0 %")).ok).toBe(false);
    await club.ask("/regimen start pattern:quarantine days:30 days");
    expect((await club.ask("/regimen start pattern:quarantine days:30 days")).ok).toBe(false);
    expect(textOf(await club.say("/regimen start pattern:miracle"))).toContain("not one of the choices");
  });

  it("ask what has to run before any alcohol goes in, and refuse when it does not", async () => {
    expect(textOf(await club.say("/regimen start pattern:ethanol ramp"))).toContain("do the fish eat");
    expect((await club.ask("/regimen start pattern:ethanol ramp today:skimmer off")).ok).toBe(false);
    expect(await said("/regimen start pattern:ethanol ramp today:all runs, fish eat")).toContain(
      "Ethanol ramp runs",
    );
  });
});

describe("the ethanol ramp", () => {
  beforeEach(async () => {
    await club.ask("/log no3 40");
    await club.ask(
      "/regimen start pattern:ethanol ramp strength:10 % today:all runs, fish eat first:today 19:00",
    );
  });

  it("gives today's step from the doses logged", async () => {
    await pass(8 * HOUR);
    // 0.1 mL of 40 % per 100 L (common practice) is 0.4 mL of 10 % per 100 L: 4 mL for 1000 L, in 8 doses.
    expect(await said("/plan due")).toContain("4 mL of the 10 % mix today, in 8 doses of 0.5 mL");
    const dose = club.store.records.plans
      .open(memberId("ines"))
      .find(({ words }) => words.title.includes("alcohol"));
    await club.ask(`/plan done task:${dose?.id}`);
    expect(await said("/readings")).toContain("alcohol 10 %");
  });

  it("holds itself while the skimmer is off, says why, and goes on", async () => {
    await club.ask("/plan off device:skimmer for:48 h because:bacteria added");
    await pass(8 * HOUR);
    expect(dueTitles()).not.toContain("alcohol, today's step of the ramp");
    expect(await said("/regimen show")).toContain("Holds: the skimmer is off");
    await pass(DAY + 20 * HOUR);
    const back = club.store.records.plans.open(memberId("ines")).find(({ half }) => half === "back");
    await club.ask(`/plan done task:${back?.id}`);
    await pass(8 * HOUR);
    expect(dueTitles()).toContain("alcohol, today's step of the ramp");
    expect(await said("/regimen show")).toContain("Runs.");
  });

  it("stops itself after a death, and says why", async () => {
    await club.ask("/log 1 damsel died");
    await pass(1);
    expect(await said("/regimen list")).toContain("Over: a death is in the log");
    await pass(2 * DAY);
    expect(dueTitles()).toEqual([]);
  });

  it("ends at the nitrate wanted, read twice", async () => {
    await pass(DAY);
    await club.ask("/log no3 9");
    await pass(DAY);
    await club.ask("/log no3 8");
    await pass(1);
    expect(await said("/regimen list")).toContain("Over: nitrate was at or under 10 mg/L twice");
  });
});

describe("cycling", () => {
  it("feeds only when the last dose is eaten", async () => {
    await club.ask("/regimen start pattern:cycling first:today 18:00");
    await pass(8 * HOUR);
    // 2 mg/L as N in 1000 L is 2 g of N; × 53.4915 ÷ 14.007 (standard atomic weights) = 7.64 g of salt.
    expect(await said("/plan due")).toMatch(/7\.6\d? g/);
    const dose = () =>
      club.store.records.plans.open(memberId("ines")).find(({ words }) => words.title.includes("ammonium"));
    await club.ask(`/plan done task:${dose()?.id}`);
    await pass(DAY);
    expect(dose()).toBeUndefined();
    await pass(HOUR);
    await club.say("/log nh3-n 0.05");
    await pass(DAY);
    expect(dose()?.words.title).toContain("ammonium");
  });
});

describe("quarantine", () => {
  it("starts its count again on a new arrival, and ends", async () => {
    await club.ask("/regimen start pattern:quarantine days:10 days first:today 19:00");
    await pass(5 * DAY);
    expect(await said("/regimen show")).toContain("counted from the start");
    await club.ask("/log added 2 damsels");
    expect(await said("/regimen show")).toContain("10 days to go, counted from the last new arrival");
    await pass(9 * DAY);
    expect(await said("/regimen show")).toContain("1 day to go");
    await pass(2 * DAY);
    expect(await said("/regimen list")).toContain("Over: 10 days have passed");
  });
});

describe("/regimen show, /regimen pause, /regimen resume, /regimen shift and /regimen stop", () => {
  it("give a calendar page, rest, go on, move and end", async () => {
    await club.ask("/regimen start pattern:water changes days:7 days share:15 % first:today 19:00");
    const days = async () => ((await club.ask("/regimen show")).table?.rows ?? []).map((row) => row[0]);
    expect(await days()).toEqual(["Wed 4 Mar, today", "Wed 11 Mar"]);
    await pass(8 * HOUR);
    expect((await said("/regimen show")).match(/water change 15 % \(due\)/g)).toHaveLength(1);
    await club.ask("/plan skip");
    expect(await said("/regimen show")).toContain("(skipped)");
    await club.ask("/regimen shift by:2 days");
    expect(await days()).toContain("Fri 13 Mar");
    await club.ask("/regimen pause");
    await pass(20 * DAY);
    expect(dueTitles()).toEqual([]);
    expect(await said("/regimen show")).toContain("Paused");
    await club.ask("/regimen resume");
    expect(await days()).toContain("Fri 27 Mar");
    expect(await said("/regimen stop")).toContain("is over");
    expect((await club.ask("/regimen stop regimen:1")).ok).toBe(false);
    expect((await club.ask("/regimen pause")).ok).toBe(false);
  });

  it("are one's own alone", async () => {
    await club.ask("/regimen start pattern:salinity watch");
    for (const line of [
      "/regimen show regimen:1",
      "/regimen stop regimen:1",
      "/regimen shift by:2 days regimen:1",
    ])
      expect((await club.ask(line, "mallory")).ok).toBe(false);
  });
});
