import { as, type DegreesC, type PracticalSalinity, type Quantity } from "../quantity/units.ts";
import { requireWithin } from "./domain.ts";
import { invertRising } from "./invert.ts";

/** Refractive index against air, for yellow sodium light unless said. */
export type RefractiveIndex = Quantity<"n">;

const SODIUM_LIGHT_NM = 589.3;

/** Empirical index of seawater. Source: quan-fry-1995, coefficients n0…n9. */
const N = [
  1.31405, 1.779e-4, -1.05e-6, 1.6e-8, -2.02e-6, 15.868, 0.01155, -0.00423, -4382, 1.1455e6,
] as const;

/** Index of sodium chloride solutions at 20 °C for 0, 1, 2 … 5 % by mass. Source: crc-handbook-concentrative. */
const BRINE_INDEX = [1.333, 1.3347, 1.3365, 1.3383, 1.34, 1.3418] as const;

/**
 * Refractive index of seawater in sodium light.
 * Source: quan-fry-1995. Range: salinity 0–35, 0–30 °C, 400–700 nm. Throws: RangeError when salinity is negative.
 */
export function seawaterRefractiveIndex(s: PracticalSalinity, t: DegreesC): RefractiveIndex {
  requireWithin("salinity", s, 0);
  requireWithin("temperature", t, -5, 60);
  const [n0, n1, n2, n3, n4, n5, n6, n7, n8, n9] = N;
  const L = SODIUM_LIGHT_NM;
  return as<RefractiveIndex>(
    n0 + (n1 + n2 * t + n3 * t * t) * s + n4 * t * t + (n5 + n6 * s + n7 * t) / L + n8 / L ** 2 + n9 / L ** 3,
  );
}

/**
 * What a refractometer with a table-salt (sodium chloride) scale in g/kg shows when it holds seawater
 * at 20 °C. At salinity 35 it shows about 36.4, give or take 0.4: a reason to calibrate with a
 * seawater standard near 35, and too loose for a correction.
 * Source: quan-fry-1995 and crc-handbook-concentrative, joined by straight lines.
 * Range: salinity 0–35 (linear beyond the paper's upper end up to 42).
 * Throws: RangeError when salinity is not within 0–42.
 */
export function brineScaleReading(s: PracticalSalinity): number {
  requireWithin("salinity", s, 0, 42);
  const twenty = as<DegreesC>(20);
  const fromFresh =
    seawaterRefractiveIndex(s, twenty) - seawaterRefractiveIndex(as<PracticalSalinity>(0), twenty);
  return invertRising((grams) => brineIndex(grams) - BRINE_INDEX[0], fromFresh, 0, 50);
}

/** Salinity of the seawater that shows `reading` on a table-salt scale in g/kg.
 *  Source: as `brineScaleReading`, solved for salinity. Throws: RangeError when no salinity from 0 to 42 does. */
export function salinityFromBrineScale(reading: number): PracticalSalinity {
  const salinity = invertRising((s) => brineScaleReading(as<PracticalSalinity>(s)), reading, 0, 42);
  return as<PracticalSalinity>(salinity);
}

/** Index of a sodium chloride solution at 20 °C, grams per kg of solution from 0 to 50. */
function brineIndex(gramsPerKg: number): number {
  const step = Math.min(Math.floor(gramsPerKg / 10), BRINE_INDEX.length - 2);
  const below = BRINE_INDEX[step] ?? BRINE_INDEX[0];
  const above = BRINE_INDEX[step + 1] ?? below;
  return below + (above - below) * (gramsPerKg / 10 - step);
}
