import {
  as,
  type DegreesC,
  type KiloPascals,
  type Metres,
  type MgPerL,
  type MicromolPerKg,
  type PracticalSalinity,
  type Quantity,
} from "../quantity/units.ts";
import { requirePositive, requireWithin } from "./domain.ts";
import { polynomial } from "./polynomial.ts";
import { t68FromT90 } from "./temperature-scale.ts";

/** A share of what the water would hold in equilibrium with air. */
export type PercentSaturation = Quantity<"% saturation">;

/** ln(O₂, mg/L) in powers of 1/T (kelvin), and its fall per unit of salinity.
 *  Source: benson-krause-1984, as used by usgs-2011-03. */
const FRESH = [-139.34411, 1.575701e5, -6.642308e7, 1.2438e10, -8.621949e11];
const SALT = [1.7674e-2, -10.754, 2140.7];
/** ln of water vapour pressure (atm) in powers of 1/T. Source: usgs-2011-03. */
const VAPOUR = [11.8571, -3840.7, -216961];
/** Departure of oxygen from an ideal gas, per atm, in powers of °C. Source: usgs-2011-03. */
const NON_IDEAL = [0.000975, -1.426e-5, 6.436e-8];

/** ln(O₂, µmol/kg) in powers of scaled temperature. Source: garcia-gordon-1992, Benson & Krause
 *  column; the A3·Ts² term printed a second time in the paper's equation is left out. */
const GG_A = [5.80871, 3.20291, 4.17887, 5.10006, -9.86643e-2, 3.80369];
const GG_B = [-7.01577e-3, -7.70028e-3, -1.13864e-2, -9.51519e-3];
const GG_C0 = -2.75915e-7;

/** Standard sea-level pressure. Source: definition. */
export const SEA_LEVEL_KPA = as<KiloPascals>(101.325);

/** Where the oxygen equations were fitted. */
export const OXYGEN_FITTED = { salinity: { min: 0, max: 40 }, temperatureC: { min: 0, max: 40 } } as const;

/** Pressure against that at sea level: 1 − 2.25577e-5 × height, to the power 5.25588.
 *  Source: us-standard-atmosphere-1976, troposphere. */
const LAPSE_PER_M = 2.25577e-5;
const PRESSURE_EXPONENT = 5.25588;

/**
 * Air pressure at a height above the sea in the standard atmosphere. A weather report's pressure is
 * brought down to sea level and must not be used in its place.
 * Source: us-standard-atmosphere-1976. Range: −500 to 11 000 m.
 * Throws: RangeError outside that range.
 */
export function pressureAtAltitude(altitude: Metres): KiloPascals {
  requireWithin("altitude", altitude, -500, 11_000);
  return as<KiloPascals>(SEA_LEVEL_KPA * (1 - LAPSE_PER_M * altitude) ** PRESSURE_EXPONENT);
}

/**
 * Oxygen in water at equilibrium with moist air at the true air pressure.
 * Source: benson-krause-1984; pressure as in usgs-2011-03.
 * Range: salinity 0–40, 0–40 °C.
 * Throws: RangeError when salinity is negative, the temperature outside −5 to 60 °C, or the pressure
 * not above that of the water vapour.
 */
export function oxygenSaturation(
  s: PracticalSalinity,
  t: DegreesC,
  pressure: KiloPascals = SEA_LEVEL_KPA,
): MgPerL {
  requireWithin("salinity", s, 0);
  requireWithin("temperature", t, -5, 60);
  requirePositive("pressure", pressure);
  const perKelvin = 1 / (t + 273.15);
  const atOneAtm = Math.exp(polynomial(FRESH, perKelvin) - s * polynomial(SALT, perKelvin));
  const atm = pressure / SEA_LEVEL_KPA;
  const vapour = Math.exp(polynomial(VAPOUR, perKelvin));
  requirePositive("air pressure above the water vapour's", atm - vapour);
  const nonIdeal = polynomial(NON_IDEAL, t);
  return as<MgPerL>((atOneAtm * (atm - vapour) * (1 - nonIdeal * atm)) / ((1 - vapour) * (1 - nonIdeal)));
}

/**
 * Oxygen in water at equilibrium with moist air at sea level, by mass of water.
 * Source: garcia-gordon-1992, Benson & Krause fit, temperature brought to the 1968 scale.
 * Range: salinity 0–42, −2 to 40 °C.
 * Throws: RangeError when salinity is negative or the temperature outside −5 to 60 °C.
 */
export function oxygenSaturationPerKg(s: PracticalSalinity, t: DegreesC): MicromolPerKg {
  requireWithin("salinity", s, 0);
  requireWithin("temperature", t, -5, 60);
  const t68 = t68FromT90(t);
  const ts = Math.log((298.15 - t68) / (273.15 + t68));
  return as<MicromolPerKg>(Math.exp(polynomial(GG_A, ts) + s * (polynomial(GG_B, ts) + GG_C0 * s)));
}

/** What share of saturation a measured oxygen content is. Source: definition.
 *  Throws: RangeError when it is negative, or saturation not above zero. */
export function percentSaturation(measured: MgPerL, saturation: MgPerL): PercentSaturation {
  requireWithin("oxygen", measured, 0);
  requirePositive("saturation", saturation);
  return as<PercentSaturation>((100 * measured) / saturation);
}
