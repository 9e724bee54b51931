import { logNormalBetween, logNormalDensity } from "./normal.ts";

/** What a reading known as an interval does to a normal belief about the level. */
export interface IntervalUpdate {
  /** Natural logarithm of the chance the belief gave to this reading. */
  readonly logChance: number;
  /** First and second slopes of that chance, in standard deviations of belief and reading together:
   *  the mean moves by −covariance·first/sd, the covariance shrinks by covariance²·second/sd². */
  readonly first: number;
  readonly second: number;
  /** Standard deviation of belief and reading together. */
  readonly sd: number;
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
  const logChance = logNormalBetween(a, b);
  const atA = Number.isFinite(a) ? Math.exp(logNormalDensity(a) - logChance) : 0;
  const atB = Number.isFinite(b) ? Math.exp(logNormalDensity(b) - logChance) : 0;
  const first = atB - atA;
  const second = first * first + (atB === 0 ? 0 : b * atB) - (atA === 0 ? 0 : a * atA);
  return { logChance, first, second, sd };
}
