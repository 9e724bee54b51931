import type { Fraction, Grams, Hours, Litres } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";

/** The standard hatching test: subsamples of 250 µL from 800 mL with 1.6 g of cysts.
 *  Source: lavens-sorgeloos-1996 (worksheet, from memory). */
const SUBSAMPLES_PER_ML = 4;

/** Nauplii per gram of product, from the mean count of the 250 µL subsamples of a hatching test. */
export function hatchingEfficiency(meanPerSubsample: number, flaskML: number, cystsG: Grams): number {
  if (!(cystsG > 0 && flaskML > 0)) throw new RangeError("a hatching test needs cysts in water");
  return (meanPerSubsample * SUBSAMPLES_PER_ML * flaskML) / cystsG;
}

/** Nauplii out of a hundred full cysts: hatched, in the umbrella stage, and embryos left in their shells.
 *  Source: van-stappen-1996. Throws: RangeError when nothing was counted. */
export function hatchingPercentage(nauplii: number, umbrella: number, embryos: number): number {
  const all = nauplii + umbrella + embryos;
  if (!(all > 0)) throw new RangeError("nothing was counted");
  return (100 * nauplii) / all;
}

/** Dry weight of one nauplius, µg, from the output (mg of nauplii per g of product). Source: van-stappen-1996. */
export function naupliusDryWeightUg(outputMgPerG: number, efficiencyPerG: number): number {
  return (1000 * outputMgPerG) / efficiencyPerG;
}

/** Full cysts in a gram of product, from the two ways of stating how well it hatches. */
export function fullCystsPerGram(efficiencyPerG: number, hatchingPercent: number): number {
  return (efficiencyPerG * 100) / hatchingPercent;
}

/** How well a tin hatches: per gram of product, or per hundred full cysts with how many a gram holds. */
export type HatchFigure =
  | { readonly kind: "per gram"; readonly naupliiPerG: number }
  | { readonly kind: "per cyst"; readonly fullCystsPerG: number; readonly hatchingPercent: number };

/** Cysts to weigh for so many nauplii, allowing for those lost in the harvest. Source: mass-balance. */
export function cystsFor(
  nauplii: number,
  figure: HatchFigure,
  harvestLoss: Fraction = as<Fraction>(0),
): Grams {
  const perG =
    figure.kind === "per gram" ? figure.naupliiPerG : (figure.fullCystsPerG * figure.hatchingPercent) / 100;
  if (!(perG > 0 && harvestLoss >= 0 && harvestLoss < 1)) throw new RangeError("these cysts give no nauplii");
  return as<Grams>(nauplii / (perG * (1 - harvestLoss)));
}

/** Litres to hatch so many grams in at this many grams per litre. */
export function hatchLitres(cystsG: Grams, mostGPerL: number): Litres {
  return as<Litres>(cystsG / mostGPerL);
}

/** Hours between the first and the last tenth to hatch. Source: van-stappen-1996. */
export function hatchingSynchrony(t10: Hours, t90: Hours): Hours {
  return as<Hours>(t90 - t10);
}
