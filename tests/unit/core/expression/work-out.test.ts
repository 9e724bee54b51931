import { describe, expect, it } from "vitest";
import { readSum } from "../../../../src/core/expression/read-sum.ts";
import { type WorkedOut, workOut } from "../../../../src/core/expression/work-out.ts";
import type { Answer, NoAnswer } from "../../../../src/core/result.ts";
import { parseFormula } from "../../../../src/expression/parse-formula.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

async function out(text: string): Promise<Answer<WorkedOut> | NoAnswer> {
  const read = readSum(text, { decimal: "point", gallon: "US" });
  if (read.kind !== "read") throw new Error(`${text} was not read`);
  const parsed = await parseFormula(read.value.formula);
  if (parsed === undefined) throw new Error(`${text} was not taken apart`);
  return workOut(read.value, parsed);
}

describe("working out", () => {
  /** Worked by hand, with the factors of NIST SP 811, B.8. */
  it.each([
    ["2 + 3 * 4", 14, ""],
    ["(2 + 3) * 4", 20, ""],
    ["2 ^ 3 ^ 2", 512, ""],
    ["-2 ^ 2", -4, ""],
    ["7 - 3 - 2", 2, ""],
    ["100 / 5 / 2", 10, ""],
    ["2 ^ -1", 0.5, ""],
    ["round(2.5) + floor(2.9) + ceil(2.1)", 8, ""],
    ["ln(exp(2))", 2, ""],
    ["log10(1000)", 3, ""],
    ["sin(pi / 6)", 0.5, ""],
    ["30 % of 2300 L", 690, "L"],
    ["20 mg/L * 2300 L", 46, "g"],
    ["46 g / 2300 L", 20, "mg/L"],
    ["120 cm * 50 cm * 55 cm", 330, "L"],
    ["200 W * 24 h", 4.8, "kWh"],
    ["300 kg / 2 m²", 150, "kg/m²"],
    ["20 mg/L / 5 d", 4, "mg/L per day"],
    ["8000 L/h / 2000 L", 4, "per hour"],
    ["12 / 200 L", 6, "per 100 L"],
    ["26 °C - 24 °C", 2, "°C"],
    ["(26 °C + 24 °C) / 2", 25, "°C"],
    ["26 °C + 2 K", 28, "°C"],
    ["-5 °C + 2 K", -3, "°C"],
    ["50 °F + 9 °F apart", 59, "°F"],
    ["sqrt(4 m²)", 200, "cm"],
    ["min(2 L, 300 mL)", 0.3, "L"],
    ["ceil(2300 L / 200 L)", 12, ""],
    ["8 dKH / 4", 2, "dKH"],
    ["2 h 30 min / 2", 1.25, "h"],
    ["0.5 ppt / 1 d * 6 d", 3, "ppt"],
    ["600 L/h / 100 cm²", 5 / 3, "cm/s"],
  ])("%s is %d %s", async (text, value, unit) => {
    const { result } = answered(await out(text)).value;
    expect(result.unit).toBe(unit);
    expect(result.estimate.best).toBeCloseTo(value, 9);
  });

  it.each([
    ["2 L + 3 kg", "sum-mixes-kinds"],
    ["2 L - 3", "sum-mixes-kinds"],
    ["max(2 L, 3 kg)", "sum-mixes-kinds"],
    ["20 mg/L + 2 dKH", "sum-mixes-kinds"],
    ["2 ^ 3 L", "sum-needs-plain-number"],
    ["round(2.4 L)", "sum-needs-plain-number"],
    ["1 / (3 - 3)", "sum-divides-by-nothing"],
    ["2 / 0 L", "sum-divides-by-nothing"],
    ["10 ^ 101", "sum-too-large"],
    ["ln(0)", "sum-outside-function"],
    ["sqrt(-4)", "sum-has-no-root"],
    ["sqrt(4 kg)", "sum-has-no-root"],
    ["26 °C + 2 °C", "sum-of-temperatures"],
    ["26 °C * 2", "sum-of-temperatures"],
    ["26 °C * 2 L", "sum-of-temperatures"],
    ["3 kg * 2 h", "sum-makes-no-quantity"],
    ["(2 m)^13", "sum-too-large"],
  ] as const)("%s is refused: %s", async (text, code) => expect(refused(await out(text))).toBe(code));

  it("refuses a range that reaches over a division by zero", async () => {
    // The figure alone would be fine; one end of its range is not.
    expect(refused(await out("1 / (2 ± 2)"))).toBe("sum-divides-by-nothing");
  });

  it("adds independent ranges as squares", async () => {
    // sqrt(3² + 4²) = 5. Source: JCGM 100:2008, 5.1.2.
    const { estimate } = answered(await out("(100 ± 3) L + 200 L ± 4 L")).value.result;
    expect([estimate.low, estimate.best, estimate.high]).toEqual([295, 300, 305]);
  });

  it("says what it made of ppm", async () =>
    expect(raised(await out("20 ppm * 100 L"))).toContain("ppm-taken-as-mg-per-litre"));
});
