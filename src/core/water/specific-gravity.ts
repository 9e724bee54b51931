import {
  as,
  type DegreesC,
  type KgPerM3,
  type PracticalSalinity,
  type SpecificGravity,
} from "../quantity/units.ts";
import { pureWaterDensity, seawaterDensity } from "./density.ts";
import { requirePositive } from "./domain.ts";
import { invertRising } from "./invert.ts";

/** The highest salinity a density is turned back into; the density equation is extrapolated above 42. */
const HIGHEST_SALINITY = 100;
/** Water lighter than pure water by up to this is read as salinity 0: an instrument's last digit, not
 *  another liquid. kg/m³. Source: common-practice. */
const LIGHTER_THAN_PURE = 0.5;

/**
 * Density of the sample at its temperature over that of pure water at the reference temperature.
 * Both temperatures belong to the figure: 1.026 means 34.5 at 25/25 °C and 36.6 at 20/4 °C.
 * Source: millero-poisson-1981 for both densities.
 * Range: practical salinity 0–42, −2 to 40 °C. Throws: RangeError as `seawaterDensity` does.
 */
export function specificGravity(
  s: PracticalSalinity,
  sampleC: DegreesC,
  referenceC: DegreesC,
): SpecificGravity {
  return as<SpecificGravity>(seawaterDensity(s, sampleC) / pureWaterDensity(referenceC));
}

/**
 * The salinity whose density at t is `density`. Up to 0.5 kg/m³ below pure water counts as salinity 0.
 * Source: millero-poisson-1981, solved for salinity.
 * Throws: RangeError when the density is that of no seawater from 0 to 100.
 */
export function salinityFromDensity(density: KgPerM3, t: DegreesC): PracticalSalinity {
  requirePositive("density", density);
  const pure = pureWaterDensity(t);
  if (density < pure && density >= pure - LIGHTER_THAN_PURE) return as<PracticalSalinity>(0);
  const salinity = invertRising(
    (s) => seawaterDensity(as<PracticalSalinity>(s), t),
    density,
    0,
    HIGHEST_SALINITY,
  );
  return as<PracticalSalinity>(salinity);
}

/**
 * Salinity of a sample whose specific gravity was measured at `sampleC` against pure water at `referenceC`.
 * Source: millero-poisson-1981, solved for salinity. Near 35, 0.001 of specific gravity is 1.3 of salinity.
 * Throws: RangeError when no seawater from 0 to 100 has that density.
 */
export function salinityFromSpecificGravity(
  sg: SpecificGravity,
  sampleC: DegreesC,
  referenceC: DegreesC,
): PracticalSalinity {
  requirePositive("specific gravity", sg);
  return salinityFromDensity(as<KgPerM3>(sg * pureWaterDensity(referenceC)), sampleC);
}
