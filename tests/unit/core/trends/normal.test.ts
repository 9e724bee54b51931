import { describe, expect, it } from "vitest";
import {
  logNormalBetween,
  normalBetween,
  normalCdf,
  normalQuantile,
} from "../../../../src/core/trends/normal.ts";
import { studentQuantile } from "../../../../src/core/trends/student.ts";

describe("the normal curve", () => {
  it("keeps its digits in the far upper tail, where a plain difference has none", () => {
    expect(normalCdf(10) - normalCdf(9)).toBe(0);
    // Chances above 9 and 10 from Abramowitz & Stegun (1964), table 26.2: 10^-18.94746 and 10^-23.11805.
    expect(Math.log10(normalBetween(9, Number.POSITIVE_INFINITY))).toBeCloseTo(-18.94746, 5);
    expect(Math.log10(normalBetween(10, Number.POSITIVE_INFINITY))).toBeCloseTo(-23.11805, 5);
  });

  it("gives a finite logarithm where the chance itself vanishes", () => {
    expect(normalBetween(45, 46)).toBe(0);
    const log = logNormalBetween(45, 46);
    expect(log).toBeLessThan(-1000);
    expect(log).toBeGreaterThan(-1100);
    expect(logNormalBetween(-46, -45)).toBe(log);
    expect(logNormalBetween(2, 2)).toBe(Number.NEGATIVE_INFINITY);
  });

  it.each([
    [0.9, 1.2815515655446004],
    [0.975, 1.959963984540054],
    [0.1, -1.2815515655446004],
    [0.5, 0],
  ])("has its quantile of %s at %s (scipy 1.10.1 norm.ppf)", (q, z) => {
    expect(normalQuantile(q)).toBeCloseTo(z, 12);
  });

  it("has no quantile for a chance that is none", () => {
    expect(() => normalQuantile(0)).toThrow(RangeError);
    expect(() => normalQuantile(1)).toThrow(RangeError);
  });

  it("has Student's quantile for one and two degrees of freedom in closed form", () => {
    // One degree: tan(π(q − ½)); two: (2q − 1)·√(2/(1 − (2q − 1)²)). Definition of the distribution.
    expect(studentQuantile(0.9, 1)).toBeCloseTo(Math.tan(Math.PI * 0.4), 10);
    expect(studentQuantile(0.9, 2)).toBeCloseTo(0.8 * Math.sqrt(2 / (1 - 0.64)), 10);
    expect(studentQuantile(0.1, 2)).toBeCloseTo(-0.8 * Math.sqrt(2 / (1 - 0.64)), 10);
    expect(() => studentQuantile(0.9, 2.5)).toThrow(RangeError);
  });
});
