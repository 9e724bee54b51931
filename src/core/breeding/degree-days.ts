import type { Days, DegreesC, Quantity } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";

/** Warmth above a base, summed over days. */
export type DegreeDays = Quantity<"°C·d">;

/** Warmth above the base over days of one temperature. Source: definition. */
export function degreeDays(temperature: DegreesC, days: Days, base: DegreesC): DegreeDays {
  return as<DegreeDays>(Math.max(0, temperature - base) * days);
}

/** The same over days that each had their own mean. */
export function degreeDaysOver(dailyMeans: readonly DegreesC[], base: DegreesC): DegreeDays {
  return as<DegreeDays>(dailyMeans.reduce((sum, mean) => sum + Math.max(0, mean - base), 0));
}

/** Days at one temperature until so much warmth has come together; infinite at or below the base. */
export function daysForDegreeDays(target: DegreeDays, temperature: DegreesC, base: DegreesC): Days {
  return as<Days>(temperature <= base ? Number.POSITIVE_INFINITY : target / (temperature - base));
}

/** A development that takes K degree-days above a base. */
export interface ThermalConstant {
  readonly base: DegreesC;
  readonly degreeDays: DegreeDays;
  /** The temperatures it was fitted on; it says nothing beyond them. */
  readonly fromC: DegreesC;
  readonly toC: DegreesC;
}

/** The base and the sum that explain how long eggs took at several temperatures: a straight line through
 *  1/days over temperature, by least squares (two points give it exactly, and no error).
 *  Source: campbell-1974. Undefined when the temperatures are one, or warmth did not hasten. */
export function fitThermalConstant(
  seen: readonly { readonly temperature: DegreesC; readonly days: Days }[],
): ThermalConstant | undefined {
  const n = seen.length;
  if (n < 2 || seen.some(({ days }) => !(days > 0))) return undefined;
  const meanT = seen.reduce((sum, { temperature }) => sum + temperature, 0) / n;
  const meanRate = seen.reduce((sum, { days }) => sum + 1 / days, 0) / n;
  let spread = 0;
  let together = 0;
  for (const { temperature, days } of seen) {
    spread += (temperature - meanT) ** 2;
    together += (temperature - meanT) * (1 / days - meanRate);
  }
  const slope = together / spread;
  if (!(spread > 0 && slope > 0)) return undefined;
  const temperatures = seen.map(({ temperature }) => temperature as number);
  return {
    base: as<DegreesC>(meanT - meanRate / slope),
    degreeDays: as<DegreeDays>(1 / slope),
    fromC: as<DegreesC>(Math.min(...temperatures)),
    toC: as<DegreesC>(Math.max(...temperatures)),
  };
}
