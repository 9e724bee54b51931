import type { Days, Fraction, Litres } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";

/** Growth of a culture per day from two densities: the logarithm of their ratio over the time between.
 *  Source: definition. Range: densities and days > 0. Throws: RangeError outside it. */
export function growthRatePerDay(start: number, end: number, days: Days): number {
  if (!(start > 0 && end > 0 && days > 0)) throw new RangeError(`${start} to ${end} in ${days} days`);
  return Math.log(end / start) / days;
}

/** Days to twice the density; negative growth halves instead, and the figure is then negative. */
export function doublingDays(ratePerDay: number): Days {
  return as<Days>(Math.LN2 / ratePerDay);
}

/** The share that can be taken each day so that the culture stands still; nothing when it does not grow. */
export function mostHarvest(ratePerDay: number): Fraction {
  return as<Fraction>(Math.max(0, -Math.expm1(-ratePerDay)));
}

/** The growth a daily harvest of this share asks for. Range: 0 ≤ share < 1. Throws: RangeError outside it. */
export function growthForHarvest(share: Fraction): {
  readonly ratePerDay: number;
  readonly percentPerDay: number;
} {
  if (!(share >= 0 && share < 1)) throw new RangeError(`a harvest of ${share}`);
  const ratePerDay = -Math.log1p(-share);
  return { ratePerDay, percentPerDay: 100 * Math.expm1(ratePerDay) };
}

/** Days until a steadily growing culture stands at the density wanted; 0 when it does already. */
export function daysToDensity(now: number, wanted: number, ratePerDay: number): Days {
  return as<Days>(
    wanted <= now ? 0 : ratePerDay <= 0 ? Number.POSITIVE_INFINITY : Math.log(wanted / now) / ratePerDay,
  );
}

const ML_PER_L = 1000;

/** Litres of culture that hold so many animals. Range: density > 0. Throws: RangeError outside it. */
export function harvestLitres(needed: number, perML: number): Litres {
  if (!(perML > 0)) throw new RangeError("an empty culture cannot be harvested");
  return as<Litres>(needed / perML / ML_PER_L);
}

/** Animals to add so that a tank stands at its target density: what is left counts. Source: mass-balance. */
export function topUp(tankL: Litres, targetPerML: number, leftPerML: number): number {
  return Math.max(0, targetPerML - leftPerML) * tankL * ML_PER_L;
}

/** Litres of culture that give so many animals a day for good at this daily share. Source: mass-balance. */
export function cultureForRation(neededPerDay: number, perML: number, share: Fraction): Litres {
  if (!(share > 0 && share < 1)) throw new RangeError(`a harvest of ${share}`);
  return as<Litres>(harvestLitres(neededPerDay, perML) / share);
}

/** What one larva eats, and what must be offered, over some days. */
export function larvaBudget(
  eatenPerDay: number,
  days: Days,
  offeredMultiple: number,
): { readonly eaten: number; readonly offeredPerDay: number; readonly offered: number } {
  const offeredPerDay = eatenPerDay * offeredMultiple;
  return { eaten: eatenPerDay * days, offeredPerDay, offered: offeredPerDay * days };
}
