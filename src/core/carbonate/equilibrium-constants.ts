import type { DegreesC, PracticalSalinity } from "../quantity/units.ts";

/** Where K1 and K2 were fitted. Source: lueker-2000. */
export const FITTED_SALINITY = { min: 19, max: 43 } as const;
export const FITTED_C = { min: 2, max: 35 } as const;

const kelvin = (temperatureC: DegreesC): number => temperatureC + 273.15;
/** Share of water in sea water: moles per kilogram of water become moles per kilogram of sea water. */
const lnWaterShare = (s: PracticalSalinity): number => Math.log(1 - 0.001005 * s);
/** Ionic strength, mol per kg of water. Source: dickson-2007-guide. */
const ionicStrength = (s: PracticalSalinity): number => (19.924 * s) / (1000 - 1.005 * s);

/** log₁₀ of the first dissociation constant of carbonic acid, mol/kg, total scale.
 *  Source: lueker-2000. Range: salinity 19–43, 2–35 °C. */
export function log10K1(s: PracticalSalinity, temperatureC: DegreesC): number {
  const t = kelvin(temperatureC);
  return -(3633.86 / t - 61.2172 + 9.6777 * Math.log(t) - 0.011555 * s + 0.0001152 * s * s);
}

/** log₁₀ of the second dissociation constant of carbonic acid, mol/kg, total scale.
 *  Source: lueker-2000. Range: salinity 19–43, 2–35 °C. */
export function log10K2(s: PracticalSalinity, temperatureC: DegreesC): number {
  const t = kelvin(temperatureC);
  return -(471.78 / t + 25.929 - 3.16967 * Math.log(t) - 0.01781 * s + 0.0001122 * s * s);
}

/** ln of the solubility of carbon dioxide, mol/(kg·atm of fugacity). Source: weiss-1974. Range: salinity 0–40, −1–40 °C. */
export function lnK0(s: PracticalSalinity, temperatureC: DegreesC): number {
  const t = kelvin(temperatureC) / 100;
  return -60.2409 + 93.4517 / t + 23.3585 * Math.log(t) + s * (0.023517 - 0.023656 * t + 0.0047036 * t * t);
}

/** ln of the dissociation constant of boric acid, mol/kg, total scale. Source: dickson-1990-borate. Range: salinity 5–45, 0–45 °C. */
export function lnKB(s: PracticalSalinity, temperatureC: DegreesC): number {
  const t = kelvin(temperatureC);
  const root = Math.sqrt(s);
  return (
    (-8966.9 - 2890.53 * root - 77.942 * s + 1.728 * s * root - 0.0996 * s * s) / t +
    148.0248 +
    137.1942 * root +
    1.62142 * s -
    (24.4344 + 25.085 * root + 0.2474 * s) * Math.log(t) +
    0.053105 * root * t
  );
}

/** ln of the ionic product of water, mol²/kg², total scale. Source: millero-1995. Range: salinity 0–45, 0–45 °C. */
export function lnKW(s: PracticalSalinity, temperatureC: DegreesC): number {
  const t = kelvin(temperatureC);
  const lnT = Math.log(t);
  return (
    148.9652 - 13847.26 / t - 23.6521 * lnT + (118.67 / t - 5.977 + 1.0495 * lnT) * Math.sqrt(s) - 0.01615 * s
  );
}

/** ln of the dissociation constant of bisulphate, mol/kg, free scale. Source: dickson-1990-sulphate. Range: salinity 5–45, 0–45 °C. */
export function lnKS(s: PracticalSalinity, temperatureC: DegreesC): number {
  const t = kelvin(temperatureC);
  const lnT = Math.log(t);
  const i = ionicStrength(s);
  const root = Math.sqrt(i);
  return (
    -4276.1 / t +
    141.328 -
    23.093 * lnT +
    (-13856 / t + 324.57 - 47.986 * lnT) * root +
    (35474 / t - 771.54 + 114.723 * lnT) * i -
    (2698 / t) * i * root +
    (1776 / t) * i * i +
    lnWaterShare(s)
  );
}

/** ln of the dissociation constant of hydrogen fluoride, mol/kg, free scale. Source: dickson-riley-1979. */
export function lnKF(s: PracticalSalinity, temperatureC: DegreesC): number {
  return 1590.2 / kelvin(temperatureC) - 12.641 + 1.525 * Math.sqrt(ionicStrength(s)) + lnWaterShare(s);
}

/** Total boron, mol/kg; in proportion to salinity. Source: uppstrom-1974. */
export const totalBoron = (s: PracticalSalinity): number => (0.0004157 * s) / 35;
/** Total sulphate, mol/kg; in proportion to salinity. Source: dickson-2007-guide. */
export const totalSulphate = (s: PracticalSalinity): number => (0.02824 * s) / 35;
/** Total fluoride, mol/kg; in proportion to salinity. Source: dickson-2007-guide. */
export const totalFluoride = (s: PracticalSalinity): number => (6.83e-5 * s) / 35;
