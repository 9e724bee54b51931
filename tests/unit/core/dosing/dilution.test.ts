import { describe, expect, it } from "vitest";
import { dilute, diluteByRatio, stockForDilution } from "../../../../src/core/dosing/dilution.ts";
import type { Strength, StrengthKind } from "../../../../src/core/dosing/strength.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type KgPerM3, type Litres } from "../../../../src/core/quantity/units.ts";
import type { Answer, NoAnswer } from "../../../../src/core/result.ts";

const litres = (value: number) => exactly(as<Litres>(value));
const strength = (value: number, kind: StrengthKind): Strength => ({ value: exactly(value), kind });

function answered<T>(result: Answer<T> | NoAnswer): Answer<T> {
  if (result.kind === "no-answer") throw new Error(`refused: ${result.reason.code}`);
  return result;
}
const refusal = (result: Answer<unknown> | NoAnswer) =>
  result.kind === "no-answer" ? result.reason.code : "answered";

describe("dilute", () => {
  // Worked by hand from C₁V₁ = C₂V₂: one litre of 10 % w/v holds 100 g.
  it.each([
    { stock: strength(40, "% v/v"), target: strength(10, "% v/v"), mL: 250 },
    { stock: strength(50, "% w/v"), target: strength(100, "g/L"), mL: 200 },
    { stock: strength(50, "mg/mL"), target: strength(5, "mg/L"), mL: 0.1 },
    { stock: strength(20, "% w/v"), target: strength(20, "% w/v"), mL: 1000 },
  ])("pours $mL mL of $stock.value.best $stock.kind into a litre", ({ stock, target, mL }) => {
    const { value } = answered(dilute({ stock, target, finalVolume: litres(1) }));
    expect(value.stockVolume.best * 1000).toBeCloseTo(mL, 9);
    expect(value.topUpVolume.best * 1000).toBeCloseTo(1000 - mL, 9);
  });

  it("turns per cent by weight into grams per litre when the density is known", () => {
    // 36 % by weight at 1.18 kg/L is 424.8 g/L, by hand; 42.48 g/L needs a tenth of the final volume.
    const stock: Strength = { ...strength(36, "% w/w"), density: exactly(as<KgPerM3>(1180)) };
    const { value } = answered(dilute({ stock, target: strength(42.48, "g/L"), finalVolume: litres(2) }));
    expect(value.stockVolume.best).toBeCloseTo(0.2, 12);
  });

  it("says to fill to the mark", () => {
    const { cautions } = answered(
      dilute({ stock: strength(40, "% v/v"), target: strength(10, "% v/v"), finalVolume: litres(1) }),
    );
    expect(cautions.map(({ code }) => code)).toEqual(["make-up-to-volume", "stock-not-named"]);
  });

  // Concentrated acid and lye heat up and spit when water is poured on them: general chemistry, from memory.
  it.each([
    ["hydrochloric acid", ["water-first-then-stock", "acid-into-water"]],
    ["sodium hydroxide", ["water-first-then-stock", "caustic-burns"]],
    ["calcium chloride", ["make-up-to-volume"]],
    ["blue powder", ["make-up-to-volume", "substance-not-known"]],
  ])("says what goes in first with %s", (substance, codes) => {
    const { cautions } = answered(
      dilute({
        stock: strength(30, "% w/v"),
        target: strength(3, "% w/v"),
        finalVolume: litres(1),
        substance,
      }),
    );
    expect(cautions.map(({ code }) => code)).toEqual(codes);
  });

  it("names the input that widens the answer", () => {
    const answer = answered(
      dilute({
        stock: { value: between(8, 12), kind: "% w/v" },
        target: strength(2, "% w/v"),
        finalVolume: litres(1),
      }),
    );
    expect(answer.value.stockVolume.low).toBeCloseTo(2 / 12, 12);
    expect(answer.value.stockVolume.high).toBeCloseTo(2 / 8, 12);
    expect(answer.driver).toEqual({ input: "stock strength", share: 1 });
  });

  it.each([
    ["a stock weaker than the target", strength(5, "% w/v"), strength(60, "g/L"), "stock-weaker-than-target"],
    ["weight against volume", strength(40, "% v/v"), strength(10, "% w/v"), "strengths-do-not-compare"],
    ["per cent by weight alone", strength(36, "% w/w"), strength(10, "g/L"), "weight-percent-needs-density"],
    ["more than all of it", strength(140, "% v/v"), strength(10, "% v/v"), "dose-figure-too-large"],
    ["nothing at all", strength(0, "% w/v"), strength(0, "% w/v"), "dose-figure-not-positive"],
    ["no number", strength(Number.NaN, "g/L"), strength(1, "g/L"), "dose-figure-not-positive"],
  ])("refuses %s", (_what, stock, target, code) => {
    expect(refusal(dilute({ stock, target, finalVolume: litres(1) }))).toBe(code);
  });

  it("refuses a stock that may be too weak at the low end of its range", () => {
    const stock: Strength = { value: between(9, 12), kind: "% w/v" };
    expect(refusal(dilute({ stock, target: strength(10, "% w/v"), finalVolume: litres(1) }))).toBe(
      "stock-weaker-than-target",
    );
  });

  it("refuses medicine, and lets acid through with its caution", () => {
    const ask = (substance: string) =>
      dilute({
        stock: strength(30, "% w/v"),
        target: strength(5, "% w/v"),
        finalVolume: litres(1),
        substance,
      });
    expect(refusal(ask("Formalin 37 %"))).toBe("medicine-not-dosed");
    expect(answered(ask("muriatic acid")).cautions.map(({ code }) => code)).toContain("acid-into-water");
  });
});

describe("diluteByRatio", () => {
  it.each([
    ["one in five", 200, 800],
    ["one to five", 1000 / 6, 5000 / 6],
  ] as const)("reads 1:5 as %s", (meaning, stockMl, waterMl) => {
    const { value } = answered(diluteByRatio({ parts: 1, others: 5, meaning, finalVolume: litres(1) }));
    expect(value.stockVolume.best * 1000).toBeCloseTo(stockMl, 9);
    expect(value.topUpVolume.best * 1000).toBeCloseTo(waterMl, 9);
  });

  it("refuses five in one", () => {
    expect(
      refusal(diluteByRatio({ parts: 5, others: 1, meaning: "one in five", finalVolume: litres(1) })),
    ).toBe("stock-weaker-than-target");
  });
});

it("the equation throws when the stock is the weaker one", () => {
  expect(() => stockForDilution(5, 10, as<Litres>(1))).toThrow(RangeError);
});
