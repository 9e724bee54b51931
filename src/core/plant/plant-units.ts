import type { Quantity } from "../quantity/units.ts";

export type Millimetres = Quantity<"mm">;
export type MetresPerSecond = Quantity<"m/s">;
/** Kinematic viscosity. */
export type M2PerSecond = Quantity<"m²/s">;
export type WattsPerKelvin = Quantity<"W/K">;
export type KilogramsPerDay = Quantity<"kg/d">;
export type KilowattHours = Quantity<"kWh">;
export type Amperes = Quantity<"A">;
export type Volts = Quantity<"V">;
export type MilliJoulesPerCm2 = Quantity<"mJ/cm²">;
export type MilliWattsPerCm2 = Quantity<"mW/cm²">;
export type MilligramsPerHour = Quantity<"mg/h">;
export type CentimetresPerHour = Quantity<"cm/h">;
export type PoundsPerSquareFoot = Quantity<"psf">;
export type KiloNewtons = Quantity<"kN">;
export type Minutes = Quantity<"min">;

/** Standard gravity, m/s². Source: nist-sp-811 (exact). */
export const STANDARD_GRAVITY = 9.80665;
export const SECONDS_PER_HOUR = 3600;
export const LITRES_PER_M3 = 1000;

/** L/h as m³/s. */
export function m3PerSecond(flowLPerH: number): number {
  return flowLPerH / LITRES_PER_M3 / SECONDS_PER_HOUR;
}

/** m³/s as L/h. */
export function litresPerHour(m3PerS: number): number {
  return m3PerS * LITRES_PER_M3 * SECONDS_PER_HOUR;
}
