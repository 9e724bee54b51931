import { as, type Grams, type Kilograms, type Litres } from "../quantity/units.ts";
import { gramsOf } from "./grams.ts";

/** The subsample the hatching figure is defined on, mL. Source: lavens-sorgeloos-1996. */
const SUBSAMPLE_ML = 0.25;

/** Samples of any volume brought to the test's own; undefined when nothing hatched or nothing was put in. */
export function testFigures(
  samples: { readonly counts: readonly number[]; readonly scoopML: number },
  water: Litres,
  cysts: Kilograms,
): { readonly meanPer250uL: number; readonly flaskML: number; readonly cystsG: Grams } | undefined {
  const sum = samples.counts.reduce((total, count) => total + count, 0);
  const meanPer250uL = (sum / samples.counts.length / samples.scoopML) * SUBSAMPLE_ML;
  const cystsG = as<Grams>(gramsOf(cysts));
  return meanPer250uL > 0 && cystsG > 0 && water > 0
    ? { meanPer250uL, flaskML: water * 1000, cystsG }
    : undefined;
}
