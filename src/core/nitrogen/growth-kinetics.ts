import type { DegreesC } from "../quantity/units.ts";

const GAS_CONSTANT_J = 8.314;
const KELVIN = 273.15;

/** Rate relative to the reference temperature, by activation energy. Source: vannecke-volcke (68 and 44 kJ/mol). */
export function arrheniusFactor(energyJPerMol: number, temperatureC: DegreesC, referenceC: DegreesC): number {
  const t = temperatureC + KELVIN;
  const reference = referenceC + KELVIN;
  return Math.exp((energyJPerMol * (t - reference)) / (GAS_CONSTANT_J * reference * t));
}

/** A rate per day between its published values at 10 and 20 °C. Source: asm-iwa-str9. Range: 10–25 °C. */
export function asmRate(at20C: number, at10C: number, temperatureC: DegreesC): number {
  return at20C * Math.exp((Math.log(at20C / at10C) / 10) * (temperatureC - 20));
}

/** Share of its full speed that a process reaches at this concentration. Source: asm-iwa-str9 (Monod term). */
export function monod(concentration: number, halfSaturation: number): number {
  return concentration / (halfSaturation + concentration);
}
