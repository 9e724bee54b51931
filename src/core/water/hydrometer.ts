import {
  as,
  type DegreesC,
  type KgPerM3,
  type PracticalSalinity,
  type Quantity,
  type SpecificGravity,
} from "../quantity/units.ts";
import { pureWaterDensity, seawaterDensity } from "./density.ts";
import { requirePositive, requireWithin } from "./domain.ts";
import { salinityFromDensity, specificGravity } from "./specific-gravity.ts";

/** Growth of a body's volume with temperature, as a share per °C. */
export type PerDegreeC = Quantity<"1/°C">;

/** Soda-lime glass, by volume. Source: iso-1768-1975, conventional value. */
export const GLASS_EXPANSION = as<PerDegreeC>(25e-6);
/** Acrylic, by volume. Source: acrylic-expansion (from memory). Nearly the water's own, so a plastic
 *  swing-arm instrument hardly moves with temperature. */
export const ACRYLIC_EXPANSION = as<PerDegreeC>(2.1e-4);

/** What is printed on the instrument, and what it is made of. */
export interface HydrometerScale {
  /** The temperature at which the scale is right. */
  readonly calibrationC: DegreesC;
  /** The temperature of the pure water that the scale calls 1.000. */
  readonly referenceC: DegreesC;
  /** Volume expansion of the float, `GLASS_EXPANSION` for glass. */
  readonly expansion: PerDegreeC;
}

/** How much larger the float is at the sample's temperature than where it was calibrated. */
function swelling(scale: HydrometerScale, sampleC: DegreesC): number {
  requireWithin("expansion", scale.expansion, 0, 1e-3);
  requireWithin("sample temperature", sampleC, -50, 150);
  requireWithin("calibration temperature", scale.calibrationC, -50, 150);
  return 1 + scale.expansion * (sampleC - scale.calibrationC);
}

/**
 * What a float reads in water of known salinity and temperature: the water is lighter when warm, and
 * the float a little larger. Surface tension, air buoyancy on the stem and scale errors are left out.
 * Source: millero-poisson-1981 for the water, iso-1768-1975 for glass; weight = displaced weight.
 * Throws: RangeError as `seawaterDensity` does, and when the expansion is not within 0–0.001 per °C.
 */
export function hydrometerReading(
  s: PracticalSalinity,
  sampleC: DegreesC,
  scale: HydrometerScale,
): SpecificGravity {
  const density = seawaterDensity(s, sampleC) * swelling(scale, sampleC);
  return as<SpecificGravity>(density / pureWaterDensity(scale.referenceC));
}

/**
 * Salinity from a float's reading in a sample of any temperature.
 * Source: as `hydrometerReading`, solved for salinity.
 * Throws: RangeError when no seawater from 0 to 100 gives that reading.
 */
export function salinityFromHydrometer(
  reading: SpecificGravity,
  sampleC: DegreesC,
  scale: HydrometerScale,
): PracticalSalinity {
  requirePositive("reading", reading);
  const density = (reading * pureWaterDensity(scale.referenceC)) / swelling(scale, sampleC);
  return salinityFromDensity(as<KgPerM3>(density), sampleC);
}

/**
 * The specific gravity the same float would read, had the sample been at its calibration temperature.
 * Source: as `hydrometerReading`. Throws: RangeError when no seawater gives that reading.
 */
export function hydrometerCorrected(
  reading: SpecificGravity,
  sampleC: DegreesC,
  scale: HydrometerScale,
): SpecificGravity {
  return specificGravity(
    salinityFromHydrometer(reading, sampleC, scale),
    scale.calibrationC,
    scale.referenceC,
  );
}
