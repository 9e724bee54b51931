import type { EventAmount } from "../log/entry.ts";
import type { Food } from "../nitrogen/stocking-input.ts";
import { type Estimate, exactly, mapEstimate } from "../quantity/estimate.ts";
import { as, type Grams, type Litres } from "../quantity/units.ts";

/** Litres of new water that a change of a share, or of so many litres, takes. Source: definition. */
export function changeVolume(
  amount: { readonly best: number; readonly unit: EventAmount["unit"] },
  net: Estimate<Litres>,
): Estimate<Litres> {
  return amount.unit === "fraction"
    ? mapEstimate(net, (litres) => as<Litres>(amount.best * litres))
    : exactly(as<Litres>(amount.best));
}

/** Grams of one meal of a noted ration. */
export function mealOf({ ration }: Food): Estimate<Grams> {
  return ration.kind === "meals"
    ? ration.gramsPerMeal
    : mapEstimate(ration.gramsPerDay, (grams) => as<Grams>(grams / ration.mealsPerDay));
}
