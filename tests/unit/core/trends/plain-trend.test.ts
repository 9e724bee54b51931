import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { plainTrend } from "../../../../src/core/trends/plain-trend.ts";
import type { Instrument, TrendReading } from "../../../../src/core/trends/readings.ts";
import { stepChange } from "../../../../src/core/trends/step-change.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const meter: Instrument = { id: "meter", kind: "meter", fixedSd: 0.1, levelSd: 0 };
const on = (at: number, value: number, instrument: Instrument = meter): TrendReading => ({
  at,
  value,
  instrument,
});

describe("a plain drift", () => {
  it("has the slope and interval of the published sulfate example (EPA 530/R-09-007, 17-6)", () => {
    const table = readFileSync(
      new URL("../../../../data/reference/trends-data/epa-sulfate-17-6.csv", import.meta.url),
      "utf8",
    );
    const readings = table
      .trim()
      .split("\n")
      .slice(1)
      .map((line) => line.split(",").map(Number))
      .map(([t = 0, y = 0]) => on(t, y));
    const { value } = answered(plainTrend({ readings, events: [], now: 96.8 }));
    expect(value.slopePerDay.best).toBeCloseTo(26.6667, 3);
    expect(value.slopePerDay.low95).toBeCloseTo(20, 3);
    expect(value.slopePerDay.high95).toBeCloseTo(35.712, 3);
    expect(value.direction).toMatchObject({ way: "rising", firmness: "is" });
  });

  it("is not pulled by one bad reading (slope 1 through 1 2 3 4 5 16 7; Helsel & Hirsch, from memory)", () => {
    const readings = [1, 2, 3, 4, 5, 16, 7].map((y, i) => on(i, y));
    expect(answered(plainTrend({ readings, events: [], now: 6 })).value.slopePerDay.best).toBe(1);
  });

  it("draws the ordinary line too beside it, pulled by the bad reading", () => {
    // By hand: Σ(t − 3)·y ÷ Σ(t − 3)², days 0 to 6.
    const y = [1, 2, 3, 4, 5, 16, 7];
    const byHand = y.reduce((sum, v, i) => sum + (i - 3) * v, 0) / 28;
    const { value } = answered(plainTrend({ readings: y.map((v, i) => on(i, v)), events: [], now: 6 }));
    expect(value.line?.slope).toBeCloseTo(byHand, 12);
    expect(value.line?.low95).toBeLessThan(byHand);
  });

  it("fits colour steps as intervals: slope 0.9189 a day where R's survreg finds it", () => {
    const chart: Instrument = { id: "chart", kind: "chart", steps: [0, 5, 10, 20, 40, 80, 160] };
    const table: readonly (readonly [number, number])[] = [
      [0, 5],
      [3, 10],
      [7, 10],
      [10, 10],
      [14, 20],
      [17, 20],
      [21, 20],
      [24, 40],
      [28, 20],
      [31, 40],
    ];
    const readings = table.map(([t, v]) => on(t, v, chart));
    const { value } = answered(plainTrend({ readings, events: [], now: 31 }));
    // Reference library: R 4.2.2 survival 3.5-3 survreg on the same ten readings, free scale.
    expect(value.slopePerDay.best).toBeCloseTo(0.918850633683, 6);
    expect(value.slopePerDay.low80).toBeGreaterThan(0.5);
    expect(value.line).toBeUndefined();
  });

  it("does not claim more than the reader can see when one line fits every colour", () => {
    const chart: Instrument = { id: "chart", kind: "chart", steps: [0, 5, 10, 20, 40, 80, 160] };
    const readings = [5, 10, 20, 40].map((v, i) => on(i * 7, v, chart));
    const { slopePerDay } = answered(plainTrend({ readings, events: [], now: 21 })).value;
    expect(slopePerDay.best).toBeGreaterThan(0.5);
    expect(slopePerDay.best).toBeLessThan(3);
    expect(slopePerDay.high95 - slopePerDay.low95).toBeGreaterThan(0.3);
  });

  it("cannot be called from four readings, however straight (smallest two-sided chance is 1 in 12)", () => {
    const readings = [1, 2, 3, 4].map((y, i) => on(i, y));
    const { direction } = answered(plainTrend({ readings, events: [], now: 3 })).value;
    expect(direction).toMatchObject({ way: "rising", firmness: "probably" });
    expect(direction.chanceRising).toBeCloseTo(1 - 1 / 24, 9);
  });

  it("says when it leaves the target: 8 falling 0.1 a day reaches 7 in ten days", () => {
    const readings = Array.from({ length: 21 }, (_, i) => on(i, 10 - 0.1 * i));
    const { value } = answered(plainTrend({ readings, events: [], now: 20, target: { low: 7, high: 11 } }));
    expect(value.levelNow).toBeCloseTo(8, 9);
    expect(value.target).toMatchObject({ place: "inside" });
    expect(value.target?.leavesInDays).toBeCloseTo(10, 6);
    const outside = answered(plainTrend({ readings, events: [], now: 20, target: { low: 9, high: 11 } }));
    expect(outside.value.target).toMatchObject({ place: "below", leavesInDays: 0 });
  });

  it("tells a jump from a drift, dates it and names what happened there", () => {
    const readings = Array.from({ length: 24 }, (_, i) => on(i * 2, (i < 12 ? 7 : 9) + (i % 3) * 0.1));
    const events = [{ kind: "other", at: 23, what: "new salt mix" }] as const;
    const { value } = answered(plainTrend({ readings, events, now: 46 }));
    expect(value.step).toMatchObject({ daysAgo: 22, what: ["new salt mix"] });
    expect(value.step?.before).toBeCloseTo(7.1, 9);
    expect(value.step?.after).toBeCloseTo(9.1, 9);
  });

  it("finds no jump where there is none", () => {
    const level = [8.1, 7.9, 8, 8.2, 7.8, 8, 8.1, 7.9, 8.05, 7.95, 8.1, 7.9];
    expect(
      answered(plainTrend({ readings: level.map((y, i) => on(i, y)), events: [], now: 12 })).value.step,
    ).toBeUndefined();
    expect(stepChange([1, 2, 3])).toBeUndefined();
    expect(stepChange([5, 5, 5, 5, 5])).toBeUndefined();
  });

  it("sets a second instrument beside the first instead of joining them", () => {
    const other: Instrument = { ...meter, id: "strips" };
    const own = Array.from({ length: 10 }, (_, i) => on(i * 4, 8));
    const strips = [2, 10, 18].map((at) => on(at, 9.5, other));
    const { value } = answered(plainTrend({ readings: [...own, ...strips], events: [], now: 40 }));
    expect(value.slopePerDay.best).toBe(0);
    expect(value.instrument).toBe("meter");
    expect(value.offsets).toEqual([{ instrument: "strips", difference: 1.5, pairs: 3 }]);
  });

  it("warns that water changes hide production from it", () => {
    const readings = [1, 2, 3, 4].map((y, i) => on(i, y));
    const events = [{ kind: "water change", at: 1.5, fraction: 0.3, newWater: 0 }] as const;
    expect(raised(plainTrend({ readings, events, now: 3 }))).toContain("trend-sawtooth");
  });

  it.each([
    { what: "nothing", readings: [], code: "trend-no-readings" },
    { what: "one moment", readings: [on(1, 8), on(1, 9)], code: "trend-one-time" },
    { what: "two days", readings: [on(1, 8), on(2, 9)], code: "trend-too-few" },
  ])("is refused from $what", ({ readings, code }) => {
    expect(refused(plainTrend({ readings, events: [], now: 3 }))).toBe(code);
  });
});
