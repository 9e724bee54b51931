import { between } from "../quantity/estimate.ts";
import { as, type Fraction, type Kilograms, type Litres, type SquareMetres } from "../quantity/units.ts";

/** Space between the grains of a bed of sand, as a share of its bulk.
 *  Source: freeze-cherry-1979 for the range; the best value is the middle of common sands. */
export const SAND_POROSITY = between(0.25, 0.5, 0.4);

/**
 * What the grains of a sand bed displace; the water between them stays water.
 * Source: freeze-cherry-1979, the definition of porosity.
 * Throws: RangeError for a negative area or depth, or a porosity outside 0–1.
 */
export function sandSolidsL(areaM2: SquareMetres, depthCm: number, porosity: Fraction): Litres {
  if (!(areaM2 >= 0 && depthCm >= 0)) throw new RangeError("a bed cannot be less than nothing");
  if (!(porosity >= 0 && porosity <= 1)) throw new RangeError(`a porosity cannot be ${porosity}`);
  // 1 m² × 1 cm = 10 L.
  return as<Litres>(areaM2 * depthCm * 10 * (1 - porosity));
}

/** Mass of those grains. Source: mineral-densities, through the density given. */
export function sandMassKg(solidsL: Litres, grainKgPerM3: number): Kilograms {
  return as<Kilograms>((solidsL * grainKgPerM3) / 1000);
}
