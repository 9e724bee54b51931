import { describe, expect, it } from "vitest";
import { parameter } from "../../../../src/core/log/parameters.ts";
import { chartFactors, stepsAsKept } from "../../../../src/core/trends/chart-unit.ts";
import { driftLine } from "../../../../src/core/trends/drift-line.ts";
import { meterFor } from "../../../../src/core/trends/meter-error.ts";
import { plainTrend } from "../../../../src/core/trends/plain-trend.ts";
import { answered } from "../../../support/answers.ts";

describe("a chart's steps as readings are kept", () => {
  it("stay as printed when the readings fall on them, or half-way between", () => {
    const steps = [0, 5, 10, 20, 40];
    expect(stepsAsKept(steps, [5, 10, 15], chartFactors("nitrate"))).toEqual(steps);
    expect(stepsAsKept(steps, [], chartFactors("nitrate"))).toEqual(steps);
  });

  it("are turned when the readings are kept in another unit", () => {
    // 4.4268 mg of NO₃ hold 1 mg of N (62.0049 / 14.0067, standard atomic weights).
    const asIon = stepsAsKept([0, 1, 2, 5, 10], [4.4268, 8.8536, 22.134], chartFactors("nitrate"));
    expect(asIon[2]).toBeCloseTo(8.8536, 2);
    // 1 dKH is 0.35663 meq/L (10 mg CaO in a litre, 28.0397 g per equivalent).
    expect(stepsAsKept([6, 7, 8], [7 * 0.35663, 8 * 0.35663], chartFactors("alkalinity"))[0]).toBeCloseTo(
      2.1398,
      3,
    );
    // 1 mg of NH₄ holds 0.7765 mg of N (14.0067 / 18.0385).
    expect(stepsAsKept([0, 0.5, 1, 3], [0.38824, 0.7765], chartFactors("ammonia"))[2]).toBeCloseTo(0.7765, 3);
  });
});

describe("a meter", () => {
  it("is believed by its maker's error, and loosely without one", () => {
    const known = meterFor("photometer", parameter("nitrate"), 1);
    const unknown = meterFor("tests", parameter("nitrate"), undefined);
    expect(known).toMatchObject({ kind: "meter", fixedSd: 0.5 });
    expect("lowest" in known).toBe(false);
    expect(unknown).toMatchObject({ kind: "meter", lowest: 2.5 });
    if (known.kind === "meter" && unknown.kind === "meter")
      expect(unknown.levelSd).toBeGreaterThan(known.levelSd);
  });
});

describe("a drift drawn as a line", () => {
  it("passes through now, turns about the middle, and goes on", () => {
    const meter = meterFor("probe", parameter("temperature"), 0.2);
    const readings = [0, 3, 6, 9, 12, 15].map((at, i) => ({
      at,
      value: 25 + at / 10 + (i % 2 === 0 ? 0.05 : -0.05),
      instrument: meter,
    }));
    const trend = answered(plainTrend({ readings, events: [], now: 15 })).value;
    const [first, middle, now, ahead] = driftLine(trend, 10);
    expect(first?.inDays).toBe(-15);
    expect(now?.middle).toBeCloseTo(trend.levelNow, 9);
    expect(middle?.low).toBe(middle?.high);
    expect(ahead?.middle).toBeCloseTo(trend.levelNow + 10 * trend.slopePerDay.best, 9);
    expect((ahead?.high ?? 0) - (ahead?.low ?? 0)).toBeGreaterThan((now?.high ?? 0) - (now?.low ?? 0));
    expect(driftLine(trend, 0)).toHaveLength(3);
  });
});
