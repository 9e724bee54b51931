import { readStrength } from "../../src/core/dosing/read-strength.ts";
import type { Strength } from "../../src/core/dosing/strength.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showIn } from "../../src/core/quantity/show.ts";
import type { Grams, Litres } from "../../src/core/quantity/units.ts";
import { type Option, reading } from "../../src/kit/index.ts";

export function strength(description: string, example: string): Option<Strength, true> {
  return reading(description, example, (text, { habits }) => readStrength(text, habits));
}

/** Millilitres below a litre: nobody measures 0.0027 L. */
export function showPour(litres: Estimate<Litres>): string {
  return litres.high < 1
    ? showIn(litres, "volume", "mL", { significant: 3 })
    : showEstimate(litres, "L", { significant: 3 });
}

/** Milligrams, grams or kilograms, whichever a scale would show. */
export function showGrams(grams: Estimate<Grams>): string {
  const by = grams.high >= 1000 ? 1000 : grams.high < 0.5 ? 0.001 : 1;
  const unit = by === 1000 ? "kg" : by === 1 ? "g" : "mg";
  return showEstimate({ best: grams.best / by, low: grams.low / by, high: grams.high / by }, unit, {
    significant: 3,
  });
}
