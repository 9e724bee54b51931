import type { DegreesC, Fraction, PH, PracticalSalinity } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";

const KELVIN = 273.15;

/** Source: emerson-1975; fitted 0–50 °C. A reprint with 2727.92 is a misprint (NH₃ 1.6 % too high). */
const EMERSON_OFFSET = 0.09018;
const EMERSON_SLOPE_K = 2729.92;

/** Share of dissolved ammonia that is un-ionised NH₃ at this pH; the pH and the pKa must be on one scale. */
export function ammoniaFraction(pKa: number, pH: PH): Fraction {
  return as<Fraction>(1 / (1 + 10 ** (pKa - pH)));
}

/** Ammonium pKa in fresh water. Source: emerson-1975. Range: 0–50 °C. */
export function ammoniumPkaFresh(temperatureC: DegreesC): number {
  return EMERSON_OFFSET + EMERSON_SLOPE_K / (temperatureC + KELVIN);
}

/** Molal ionic strength of sea water, mol per kg of water. Source: epa-440-5-88-004. */
export function ionicStrength(salinity: PracticalSalinity): number {
  return (19.9273 * salinity) / (1000 - 1.005109 * salinity);
}

/**
 * Ammonium pKa in sea water on a free-proton scale: the one to use with a pH read on a meter
 * calibrated in ordinary buffers (NH₃ then comes out about 7 % too high: the safe side).
 * Becomes the fresh-water value at salinity 0.
 * Source: khoo-1977 (abstract) over emerson-1975. Range: 5–40 °C; salinity 20–44.5, below that extrapolated.
 */
export function ammoniumPkaKhoo(salinity: PracticalSalinity, temperatureC: DegreesC): number {
  return ammoniumPkaFresh(temperatureC) + (0.1552 - 0.0003142 * temperatureC) * ionicStrength(salinity);
}

/**
 * Ammonium pKa of the molal total-scale model. Never to be used with a pH from ordinary buffers,
 * which would overstate NH₃ by a third.
 * Source: clegg-whitfield-1995, eq. 18. Range: −2–40 °C, salinity 0–40.
 */
export function ammoniumPkaCleggWhitfield(salinity: PracticalSalinity, temperatureC: DegreesC): number {
  const t = temperatureC + KELVIN;
  const rootT = Math.sqrt(t);
  const rootS = Math.sqrt(salinity);
  return (
    9.244605 -
    2729.33 * (1 / 298.15 - 1 / t) +
    (0.04203362 - 11.24742 / t) * Math.sqrt(rootS) +
    (-13.6416 + 1.176949 * rootT - 0.02860785 * t + 545.4834 / t) * rootS +
    (-0.1462507 + 0.0090226468 * rootT - 0.0001471361 * t + 10.5425 / t) * salinity * rootS +
    (0.004669309 - 0.0001691742 * rootT - 0.5677934 / t) * salinity ** 2 +
    (-2.354039e-5 + 0.009698623 / t) * salinity ** 2 * rootS
  );
}

/** The same pKa in moles per kilogram of sea water, to be paired with a total-scale pH (tris buffer, dye).
 *  Source: clegg-whitfield-1995; the share of water in sea water is 1 − 0.001005 S. */
export function ammoniumPkaTotalScale(salinity: PracticalSalinity, temperatureC: DegreesC): number {
  return ammoniumPkaCleggWhitfield(salinity, temperatureC) - Math.log10(1 - 0.001005 * salinity);
}

/** Ammonium pKa behind the salt-water criteria, at one atmosphere; for comparison with those tables only.
 *  Source: epa-440-5-88-004, after Hampson 1977. */
export function ammoniumPkaEpa(salinity: PracticalSalinity, temperatureC: DegreesC): number {
  const t = temperatureC + KELVIN;
  return 9.245 + 0.116 * ionicStrength(salinity) + 0.0324 * (298 - t) + 0.0415 / t;
}

/** Limits of the salt-water criteria, mg/L as NH₃ (the whole molecule). Source: epa-440-5-88-004. */
export const EPA_LIMIT_MG_NH3_PER_L = { continuous: 0.035, maximum: 0.233 } as const;

/** Total ammonia, mg/L as NH₃, at which the salt-water criterion is met. Source: epa-440-5-88-004. */
export function epaTotalAmmoniaLimit(
  limit: keyof typeof EPA_LIMIT_MG_NH3_PER_L,
  pH: PH,
  temperatureC: DegreesC,
  salinity: PracticalSalinity,
): number {
  return EPA_LIMIT_MG_NH3_PER_L[limit] / ammoniaFraction(ammoniumPkaEpa(salinity, temperatureC), pH);
}
