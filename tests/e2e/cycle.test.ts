import { describe, expect, it } from "vitest";
import { memberId, openClub, textOf } from "../support/club.ts";

const INES = memberId("ines");
const WATER = "volume:2700 L salinity:34 ppt temperature:25-27 °C";

describe("/cycle dose", () => {
  it("weighs out the salt by what the kit counts", async () => {
    const club = openClub();
    // Standard atomic weights: 2 mg/L N × 2700 L × 53.4915 / 14.0067 = 20.623 g of ammonium chloride.
    const nitrogen = await club.ask("/cycle dose target:2 mg/L as TAN animals:none volume:2700 L");
    expect(nitrogen.headline).toBe("20.6 g of ammonium chloride");
    // The same as the whole ion: 2 × 2700 × 53.4915 / 18.0385 = 16.013 g.
    const ion = await club.ask("/cycle dose target:2 mg/L as NH4 animals:none volume:2700 L");
    expect(ion.headline).toBe("16 g of ammonium chloride");
  });

  it("asks whether any animal is in the water, and refuses when one is", async () => {
    const club = openClub();
    expect(textOf(await club.say("/cycle dose target:2 mg/L as TAN volume:2700 L"))).toContain(
      "Is any animal in the water?",
    );
    const reply = await club.pick("Yes, some");
    expect(reply.kind === "reply" && reply.ok).toBe(false);
    expect(textOf(reply)).toContain("it poisons them");
  });

  it("takes no sum of nonsense", async () => {
    const club = openClub();
    for (const target of ["-2 mg/L as TAN", "0 mg/L as TAN", "1e99 kg", "2 mg/L as gold"]) {
      const odd = await club.say(`/cycle dose target:${target} animals:none volume:2700 L`);
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

/** "Ready around day 52 (day 30 to 86)" → the three days. */
function readyDays(headline: string | undefined): readonly number[] {
  return [...(headline ?? "").matchAll(/\d+/g)].map(([day]) => Number(day));
}

describe("/cycle curve", () => {
  it("draws the course it expects, from the first dose on, with the readings in it", async () => {
    const reply = await openClub().ask(
      "/cycle curve dose:2 mg/L as TAN seed:nothing readings:day 3 ammonia 1 mg/L as TAN volume:2700 L salinity:34 ppt temperature:26 °C",
    );
    const panels = reply.chart?.panels ?? [];
    expect(panels.map(({ axisTitle }) => axisTitle)).toEqual([
      "ammonia, mg/L as nitrogen",
      "nitrite, mg/L as nitrogen",
      "nitrate, mg/L as nitrogen",
    ]);
    const [ammonia] = panels;
    // Day 0 is the dose itself: 2 mg/L as nitrogen.
    expect(ammonia?.forecasts[0]?.levels[0]).toMatchObject({ middle: 2 });
    expect(ammonia?.series[0]?.marks).toHaveLength(1);
    expect(reply.chart?.altText.length).toBeGreaterThan(10);
  });

  it("gives a bare sea-water filter five to ten weeks, with its doubt, the same each time", async () => {
    const club = openClub();
    const line = `/cycle curve dose:2 mg/L as TAN seed:nothing ${WATER}`;
    const reply = await club.ask(line);
    const [best = 0, low = 0, high = 0] = readyDays(reply.headline);
    // From memory: operators of sea-water filters started bare report five to ten weeks.
    expect(best).toBeGreaterThan(35);
    expect(best).toBeLessThan(70);
    expect(low).toBeLessThan(best);
    expect(high).toBeGreaterThan(best);
    expect(reply.table?.rows[0]?.slice(0, 2)).toEqual(["0", "2"]);
    expect((await club.ask(line)).headline).toBe(reply.headline);
  });

  it("asks where moved media grew, and comes sooner with sea-water media", async () => {
    const club = openClub();
    const asked = await club.say(`/cycle curve dose:2 mg/L as TAN seed:30 L moving bed ${WATER}`);
    expect(textOf(asked)).toContain("sea water or in fresh water");
    const reply = await club.pick("from sea water");
    const [best = 99] = readyDays(reply.kind === "reply" ? reply.headline : "");
    expect(best).toBeLessThan(35);
    const fresh = await club.ask(
      `/cycle curve dose:2 mg/L as TAN seed:30 L moving bed from fresh water ${WATER}`,
    );
    expect(readyDays(fresh.headline)[0]).toBeGreaterThan(35);
  });

  it("lets readings narrow it, typed or logged", async () => {
    const club = openClub();
    await club.ask("/tank add name:Lagoon kind:marine containers:display 300x150x70 cm inside, level 60 cm");
    await club.ask("/tank note salinity:34 ppt temperature:25-27 °C");
    const [tank] = club.store.records.tanks.own(INES);
    const at = (day: number) => new Date(Date.UTC(2026, 1, day, 12)).toISOString();
    const reading = (day: number, parameter: string, low: number, high: number) => ({
      parameter,
      best: (low + high) / 2,
      low,
      high,
      typed: `${low}-${high}`,
      readAs: `${low}–${high}`,
      at: at(day),
    });
    // Quick: ammonia all but gone twelve days after the first dose on 1 February.
    club.store.records.log.add({
      owner: INES,
      tankId: tank?.id ?? 0,
      line: "ammonia, nitrite",
      readings: [
        reading(7, "ammonia", 1.5, 2.5),
        reading(11, "ammonia", 0.25, 1),
        reading(13, "ammonia", 0, 0.25),
        reading(13, "nitrite", 3, 10),
      ],
      events: [],
      now: at(14),
    });
    const bare = readyDays((await club.ask("/cycle curve dose:2 mg/L as TAN seed:nothing")).headline);
    const fitted = await club.ask("/cycle curve dose:2 mg/L as TAN seed:nothing started:2026-02-01 12:00");
    expect(textOf(fitted)).toContain("4 readings weighed in");
    expect(readyDays(fitted.headline)[0]).toBeLessThan(bare[0] ?? 0);
    const typed = await club.ask(
      "/cycle curve dose:2 mg/L as TAN seed:nothing readings:day 6 ammonia 1.5-2.5 mg/L as TAN; day 10 ammonia 0.25-1 mg/L as TAN; day 12 ammonia 0-0.25 mg/L as TAN, nitrite 3-10 mg/L",
    );
    expect(typed.headline).toBe(fitted.headline);
  });

  it("asks what a reading without a day belongs to, and takes no monsters", async () => {
    const club = openClub();
    const noDay = await club.say(
      `/cycle curve dose:2 mg/L as TAN seed:nothing readings:ammonia 2 mg/L as TAN ${WATER}`,
    );
    expect(textOf(noDay)).toContain("needs a day");
    const kit = await club.say(
      `/cycle curve dose:2 mg/L as TAN seed:nothing readings:day 3 ammonia 2 mg/L ${WATER}`,
    );
    expect(textOf(kit)).toContain("as nitrogen, as NH3 or as NH4");
    for (const readings of [
      "day 999 ammonia 2 mg/L as TAN",
      "day 5 nitrite 1e9 mg/L",
      "x".repeat(1900),
      "day 5 nitrite $(reboot)",
    ]) {
      const odd = await club.say(
        `/cycle curve dose:2 mg/L as TAN seed:nothing readings:${readings} ${WATER}`,
      );
      expect(odd.kind === "question" || !odd.ok).toBe(true);
    }
  });
});

describe("/cycle ready", () => {
  // Common practice, no source: under 0.1 mg/L of both, as nitrogen, within a day, twice running.
  it("is ready after two passed trials, and nearly after one", async () => {
    const club = openClub();
    const once = await club.ask(
      "/cycle ready dose:2 mg/L as TAN ammonia:0.05 mg/L as TAN nitrite:0.1 mg/L after:24 h",
    );
    expect(once.headline).toBe("Nearly: once more tomorrow, with the same dose");
    expect(once.cautions[0]).toMatchObject({ level: "danger" });
    expect(once.cautions[0]?.text).toContain("no animals in it");
    const twice = await club.ask(
      "/cycle ready dose:2 mg/L as TAN ammonia:0.05 mg/L as TAN nitrite:0.1 mg/L after:24 h ammonia-before:0.05 mg/L as TAN nitrite-before:0.2 mg/L",
    );
    expect(twice.headline).toBe("Ready: it has proven itself twice");
  });

  it("counts nitrite by its nitrogen: 0.4 mg/L of the ion is 0.122, too much", async () => {
    // × 14.0067 / 46.0055 (standard atomic weights).
    const reply = await openClub().ask(
      "/cycle ready dose:2 mg/L as TAN ammonia:0 mg/L as TAN nitrite:0.4 mg/L after:24 h",
    );
    expect(reply.headline).toBe("Not yet");
  });

  it("asks for the other half of a trial, and refuses a trial without a dose", async () => {
    const club = openClub();
    const half = await club.say(
      "/cycle ready dose:2 mg/L as TAN ammonia:0 mg/L as TAN nitrite:0 mg/L after:24 h ammonia-before:0 mg/L as TAN",
    );
    expect(textOf(half)).toContain("how much nitrite was left");
    const none = await club.ask(
      "/cycle ready dose:0 mg/L as TAN ammonia:0 mg/L as TAN nitrite:0 mg/L after:24 h",
    );
    expect(none.ok).toBe(false);
    const never = await club.say(
      "/cycle ready dose:2 mg/L as TAN ammonia:0 mg/L as TAN nitrite:0 mg/L after:-24 h",
    );
    expect(never.kind).toBe("question");
  });
});
