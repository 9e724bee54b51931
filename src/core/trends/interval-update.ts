import { logNormalBetween, logNormalDensity, normalBetween, normalDensity } from "./normal.ts";

/** What cutting a standard normal to a stretch does to it. */
export interface CutNormal {
  /** Chance of the stretch; zero when it is too small for a number to hold. */
  readonly chance: number;
  /** The mean of what is left is −first, its variance 1 − second. */
  readonly first: number;
  readonly second: number;
}

/** Below this the chance is handled by its logarithm. */
const SMALL_CHANCE = 1e-280;

/** Moments of a standard normal cut to the stretch from a to b, either of which may be infinite.
 *  Source: johnson-kotz-1994, ch. 13, 10.1. Range: a < b. */
export function cutNormal(a: number, b: number): CutNormal {
  const chance = normalBetween(a, b);
  let atA = 0;
  let atB = 0;
  if (chance > SMALL_CHANCE) {
    if (a !== Number.NEGATIVE_INFINITY) atA = normalDensity(a) / chance;
    if (b !== Number.POSITIVE_INFINITY) atB = normalDensity(b) / chance;
  } else {
    const logChance = logNormalBetween(a, b);
    if (a !== Number.NEGATIVE_INFINITY) atA = Math.exp(logNormalDensity(a) - logChance);
    if (b !== Number.POSITIVE_INFINITY) atB = Math.exp(logNormalDensity(b) - logChance);
  }
  const first = atB - atA;
  const second = first * first + (atB === 0 ? 0 : b * atB) - (atA === 0 ? 0 : a * atA);
  return { chance, first, second };
}

/** What a reading known as an interval does to a normal belief about the level. */
export interface IntervalUpdate {
  /** Natural logarithm of the chance the belief gave to this reading. */
  readonly logChance: number;
  readonly mean: number;
  readonly variance: number;
}

/**
 * Exact mean and variance of a normal belief after learning that value + reading error lies between
 * `low` and `high`, either of which may be infinite.
 * Source: closed-form moments of a cut normal (johnson-kotz-1994, ch. 13, 10.1).
 * Range: belief variance + readSd² > 0, low < high.
 */
export function intervalUpdate(
  mean: number,
  variance: number,
  readSd: number,
  low: number,
  high: number,
): IntervalUpdate {
  const sd = Math.sqrt(variance + readSd * readSd);
  const a = (low - mean) / sd;
  const b = (high - mean) / sd;
  const { first, second } = cutNormal(a, b);
  return {
    logChance: logNormalBetween(a, b),
    mean: mean - (variance * first) / sd,
    variance: variance - (variance / sd) ** 2 * second,
  };
}
