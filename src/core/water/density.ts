import { as, type DegreesC, type KgPerM3, type PracticalSalinity } from "../quantity/units.ts";
import { requireWithin } from "./domain.ts";
import { polynomial } from "./polynomial.ts";
import { type DegreesT68, t68FromT90 } from "./temperature-scale.ts";

/** Density of pure water, kg/m³, in powers of t68. Source: millero-poisson-1981 (as printed in fofonoff-millard-1983). */
const PURE_WATER = [999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9];
/** Coefficients of S, S^1.5 and S², in powers of t68. Source: millero-poisson-1981. */
const A = [8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9];
const B = [-5.72466e-3, 1.0227e-4, -1.6546e-6];
const C = 4.8314e-4;

/** Where EOS-80 was fitted; beyond it the density is an extrapolation (0.02 kg/m³ off at 50, 0.13 at 70). */
export const DENSITY_FITTED = { salinity: { min: 0, max: 42 }, temperatureC: { min: -2, max: 40 } } as const;

/**
 * Density of seawater at one atmosphere, temperature on the 1968 scale.
 * Source: millero-poisson-1981; check values fofonoff-millard-1983 p. 19.
 * Range: practical salinity 0–42, −2 to 40 °C.
 * Throws: RangeError when salinity is negative, or either is not a number.
 */
export function densityAtT68(s: PracticalSalinity, t68: DegreesT68): KgPerM3 {
  requireWithin("salinity", s, 0);
  requireWithin("temperature", t68, -273.15);
  return as<KgPerM3>(
    polynomial(PURE_WATER, t68) + s * polynomial(A, t68) + s ** 1.5 * polynomial(B, t68) + s * s * C,
  );
}

/**
 * Density of seawater at one atmosphere, temperature as a thermometer shows it.
 * Source: millero-poisson-1981. Within 0.009 kg/m³ of TEOS-10 for salinity 0–42 and 0–40 °C.
 * Range: practical salinity 0–42, −2 to 40 °C.
 * Throws: RangeError when salinity is negative, or either is not a number.
 */
export function seawaterDensity(s: PracticalSalinity, t: DegreesC): KgPerM3 {
  return densityAtT68(s, t68FromT90(t));
}

/** Density of pure water at one atmosphere; 999.975 kg/m³ at its heaviest, near 4 °C.
 *  Source: millero-poisson-1981. Range: −2 to 40 °C. Throws: RangeError when t is not a number. */
export function pureWaterDensity(t: DegreesC): KgPerM3 {
  return seawaterDensity(as<PracticalSalinity>(0), t);
}
