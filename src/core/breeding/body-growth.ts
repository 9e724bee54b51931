import type { Days, Grams, Litres } from "../quantity/units.ts";

/** Growth in per cent per day: of the logarithm of weight, and the true gain of one day.
 *  Source: definition. Range: weights and days > 0. Throws: RangeError outside it. */
export function specificGrowth(
  startMass: number,
  endMass: number,
  days: Days,
): { readonly percentPerDay: number; readonly dailyGainPercent: number } {
  if (!(startMass > 0 && endMass > 0 && days > 0))
    throw new RangeError(`${startMass} to ${endMass} in ${days} days`);
  const rate = Math.log(endMass / startMass) / days;
  return { percentPerDay: 100 * rate, dailyGainPercent: 100 * Math.expm1(rate) };
}

/** Dry feed per gain of wet fish; the biological figure counts those that died as gain, too.
 *  Undefined where nothing was gained. */
export function feedConversion(
  feed: Grams,
  start: Grams,
  end: Grams,
  dead: Grams,
): { readonly economic?: number; readonly biological?: number } {
  const gain = end - start;
  const whole = gain + dead;
  return {
    ...(gain > 0 ? { economic: feed / gain } : {}),
    ...(whole > 0 ? { biological: feed / whole } : {}),
  };
}

/** How crowded a tank is, on the water that is in it. Throws: RangeError without water. */
export function crowding(
  animals: number,
  meanMass: Grams,
  tankL: Litres,
): { readonly perL: number; readonly biomassG: number; readonly gPerL: number } {
  if (!(tankL > 0)) throw new RangeError("a tank without water");
  const biomassG = animals * meanMass;
  return { perL: animals / tankL, biomassG, gPerL: biomassG / tankL };
}
