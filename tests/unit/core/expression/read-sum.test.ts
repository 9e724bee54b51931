import { describe, expect, it } from "vitest";
import { readSum } from "../../../../src/core/expression/read-sum.ts";
import type { Habits } from "../../../../src/core/quantity/read.ts";

const formulaOf = (text: string, habits: Habits = { decimal: "point" }) => {
  const read = readSum(text, habits);
  return read.kind === "read" ? read.value.formula : `${read.kind}`;
};
const bestOf = (text: string, habits: Habits = {}) => {
  const read = readSum(text, habits);
  return read.kind === "read" ? read.value.operands.map(({ estimate }) => estimate.best) : [];
};

describe("reading a sum", () => {
  it.each([
    ["1+2", "q0 + q1"],
    ["-2^2", "- q0 ^ q1"],
    ["2**3", "q0 ^ q1"],
    ["30 % of 200 L", "q0 * q1"],
    ["46 kg per 2 L", "q0 / q1"],
    ["2 x 20 US gal", "q0 * q1"],
    ["50cmx40cmx30cm", "q0 * q1 * q2"],
    ["(20 + 30) L", "( ( q0 + q1 ) * q2 )"],
    ["max(1, 2) L", "( max ( q0 , q1 ) * q2 )"],
    ["sqrt(pi)", "sqrt ( q0 )"],
    ["2 h 30 min", "q0"],
    ["4 ft 6 in", "q0"],
    ["1 1/2 L", "q0"],
    ["1/2 L", "q0"],
    ["1/2", "q0 / q1"],
    ["100/2/5", "q0 / q1 / q2"],
    ["5 L / 1/2 h", "q0 / q1 / q2"],
    ["--2", "q0"],
    ["(2)-(3)", "( q0 ) - ( q1 )"],
  ])("%s has the shape %s", (text, formula) => expect(formulaOf(text)).toBe(formula));

  it("holds nothing of what was typed but figures, signs and our own names", () => {
    for (const text of ["30 % of 200 US gal", "about 3 kg × 4", "min(2 dKH; 3 dKH)"]) {
      expect(formulaOf(text)).toMatch(/^(?:(?:q\d+|min|[-+*/^(),]) ?)+$/);
    }
  });

  /** In dm, kg, h, K. Factors as in NIST SP 811, B.8. */
  it.each([
    ["1 US gal", 3.785411784],
    ["1 ft", 3.048],
    ["1 ft²", 9.290304],
    ["1 lb", 0.45359237],
    ["90 min", 1.5],
    ["20 mg/L", 2e-5],
    ["77 °F", 25],
    ["-40 °F", -40],
    ["2 h 30 min", 2.5],
    ["9 °F apart", 5],
    ["1 kWh", 1000],
    ["50 %", 0.5],
  ])("%s is %d in the measures of a sum", (text, value) => expect(bestOf(text)[0]).toBeCloseTo(value, 9));

  it("takes a comma as the member does", () => {
    expect(bestOf("1,5 * 2", { decimal: "comma" })).toEqual([1.5, 2]);
    expect(bestOf("max(1,5; 2)", { decimal: "comma" })).toEqual([1.5, 2]);
    expect(bestOf("max(1, 2)", { decimal: "comma" })).toEqual([1, 2]);
    expect(bestOf("max(1,2)")).toEqual([1, 2]);
    expect(bestOf("1.200 * 2")).toEqual([1.2, 2]);
    expect(formulaOf("1.200 * 2", { decimal: "comma" })).toBe("ask");
    expect(formulaOf("1,200 * 2", {})).toBe("ask");
  });

  it("asks each question with choices that read without asking again", () => {
    for (const text of ["3 gal + 20 gal", "1,200 L * 2", "log(100)", "500 gph * 2 h"]) {
      const read = readSum(text, {});
      expect(read.kind).toBe("ask");
      const choices = read.kind === "ask" ? read.choices : [];
      expect(choices).toHaveLength(2);
      for (const choice of choices) expect(readSum(choice.text, {}).kind).toBe("read");
    }
  });

  it("reads a range with its figure", () => {
    const range = (text: string) => {
      const read = readSum(text, {});
      const estimate = read.kind === "read" ? read.value.operands[0]?.estimate : undefined;
      return [estimate?.low, estimate?.high].map((end) => Number(end?.toPrecision(6)));
    };
    expect(range("200 L ± 10 L")).toEqual([190, 210]);
    expect(range("200 ± 10 L")).toEqual([190, 210]);
    expect(range("200 L ± 5 %")).toEqual([190, 210]);
    expect(range("about 200 L")).toEqual([180, 220]);
    expect(range("25 °C ± 1.8 °F")).toEqual([24, 26]);
  });
});
