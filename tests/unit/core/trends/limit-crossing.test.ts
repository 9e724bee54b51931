import { describe, expect, it } from "vitest";
import { datedChanges, planNeeded, presentPlan } from "../../../../src/core/trends/change-plan.ts";
import type { Draw } from "../../../../src/core/trends/draws.ts";
import { levelsAt } from "../../../../src/core/trends/future.ts";
import { crossingOnPlan, crossingWithoutChanges } from "../../../../src/core/trends/limit-crossing.ts";
import { nextReading } from "../../../../src/core/trends/next-reading.ts";

/** A tank of which everything is known: feeding even, no drift. */
function known(level: number, production: number, uptakePerDay = 0): Draw[] {
  return Array.from({ length: 90 }, (_, point) => ({
    level,
    production,
    comparison: 0,
    uptakePerDay,
    feedingSpread: 0,
    changeSpread: 0,
    drift: 0,
    point,
  }));
}

describe("when a limit is crossed", () => {
  it.each([
    { level: 25, production: 1.5, uptake: 0, days: 10 },
    { level: 25, production: 1.5, uptake: 0.02, days: 17.83374719693662 },
    { level: 45, production: 1.5, uptake: 0, days: 0 },
  ])("is day $days from $level at $production a day and uptake $uptake (closed form)", (tank) => {
    const crossing = crossingWithoutChanges(known(tank.level, tank.production, tank.uptake), 40, 365);
    expect(crossing.middleDays).toBeCloseTo(tank.days, 9);
    expect(crossing.earlyDays).toBeCloseTo(tank.days, 9);
    expect(crossing.chanceWithin).toBe(1);
    expect(crossing.chanceNow).toBe(tank.days === 0 ? 1 : 0);
  });

  it("is never when uptake holds the level below (plateau 0.7 ÷ 0.02 = 35)", () => {
    const crossing = crossingWithoutChanges(known(25, 0.7, 0.02), 40, 365);
    expect(crossing.chanceWithin).toBe(0);
    expect(crossing.middleDays).toBe(Number.POSITIVE_INFINITY);
  });

  it("counts a crossing past the horizon as not within it", () => {
    const crossing = crossingWithoutChanges(known(0, 0.1), 40, 365);
    expect(crossing.chanceWithin).toBe(0);
  });

  it("is put off by a plan that holds the level, and not by one too weak", () => {
    // 1.5 a day for 7 days is 10.5; 40 % of (limit 40 − new water 5) is 14: held. 20 % is 7: not held.
    const plan = (fraction: number) => ({ everyDays: 7, fraction, newWater: 5, nextAt: 7 });
    const on = (fraction: number) =>
      crossingOnPlan(known(20, 1.5), 40, 365, 0, datedChanges(plan(fraction), 0, 365));
    expect(on(0.5).chanceWithin).toBe(0);
    expect(on(0.2).chanceWithin).toBe(1);
    expect(on(0.2).middleDays).toBeGreaterThan(20 / 1.5);
  });
});

describe("the plan that keeps it under the limit", () => {
  const plan = { everyDays: 7, fraction: 0.25, newWater: 5, nextAt: 3 };

  it("asks for 30 % every 7 days, or 25 % every 5.8, at 1.5 a day under 40 from water of 5 (closed form)", () => {
    const needed = planNeeded(known(25, 1.5), plan, 40);
    expect(needed.settledPeak.best).toBeCloseTo(47, 9);
    expect(needed.chancePeakAbove).toBe(1);
    expect(needed.fraction).toBeCloseTo(0.3, 9);
    expect(needed.everyDays).toBeCloseTo(5.833333333333333, 9);
    expect(needed.changesFirst).toBe(0);
  });

  it("asks for two halves to bring 80 down to 20 with clean water, not three", () => {
    const needed = planNeeded(known(80, 0.1), { ...plan, fraction: 0.5, newWater: 0 }, 20);
    expect(needed.changesFirst).toBe(2);
  });

  it("finds none when the new water is at the limit itself", () => {
    const needed = planNeeded(known(25, 1.5), { ...plan, newWater: 40 }, 40);
    expect(needed.fraction).toBeUndefined();
    expect(needed.everyDays).toBeUndefined();
  });
});

describe("the habit a log shows", () => {
  const change = (at: number, fraction = 0.3) =>
    ({ kind: "water change", at, fraction, newWater: 2 }) as const;

  it("is the middle gap and share, the next change due a gap after the last", () => {
    const found = presentPlan([change(0), change(7), change(15, 0.5), change(21), change(28)], 30);
    expect(found).toEqual({ everyDays: 7, fraction: 0.3, newWater: 2, nextAt: 35 });
  });

  it.each([
    { what: "two changes", events: [change(0), change(7)], now: 10 },
    { what: "changes now and then", events: [change(0), change(3), change(40), change(45)], now: 50 },
    { what: "a habit given up", events: [change(0), change(7), change(14)], now: 60 },
  ])("is none after $what", ({ events, now }) => {
    expect(presentPlan(events, now)).toBeUndefined();
  });
});

describe("the level ahead", () => {
  it("is now + days × production without changes, and follows each planned one", () => {
    expect(levelsAt(known(20, 2), 0, 14, [])[0]).toBeCloseTo(48, 9);
    const changes = [{ at: 7, fraction: 0.5, newWater: 0 }];
    const levels = levelsAt(known(20, 2), 0, 14, changes);
    // (20 + 14) halved, then 14 more; the change's share is inexact, so only the middle is exact.
    expect(levels.reduce((sum, level) => sum + level, 0) / levels.length).toBeCloseTo(31, 0);
  });

  it("is told in the chart's own steps", () => {
    const chart = { id: "chart", kind: "chart", steps: [0, 5, 10, 20, 40] } as const;
    const chances = nextReading(Float64Array.from([19, 20, 21]), chart);
    expect(chances[0]?.value).toBe(20);
    expect(chances[0]?.chance).toBeGreaterThan(0.9);
    const onEdge = nextReading(Float64Array.from([30]), chart);
    expect(onEdge.map((step) => step.value).sort()).toEqual([20, 40]);
    expect(onEdge[0]?.chance).toBeCloseTo(0.5, 2);
  });
});
