import { kendallVariance } from "./kendall.ts";
import { normalQuantile } from "./normal.ts";

/** The middle one of all slopes between two readings: a straight trend that a few bad readings cannot pull. */
export interface TheilSen {
  readonly slope: number;
  readonly low: number;
  readonly high: number;
  /** Puts the line through the middle reading at the middle time. */
  readonly intercept: number;
}

/** Past this many readings every k-th is used: all pairs of 1000 are half a million slopes. */
export const ALL_PAIRS_UP_TO = 1000;

/**
 * Slope with an interval holding the chance `level`, by interpolated ranks. Readings taken at the
 * same time form no pair.
 * Source: theil-1950, sen-1968; interval ranks gilbert-1987, 16.5.
 * Throws: RangeError when no two readings differ in time.
 */
export function theilSen(t: readonly number[], y: readonly number[], level = 0.95): TheilSen {
  const stride = Math.ceil(t.length / ALL_PAIRS_UP_TO);
  const times = stride === 1 ? t : t.filter((_, i) => i % stride === 0);
  const values = stride === 1 ? y : y.filter((_, i) => i % stride === 0);
  const n = times.length;
  const slopes = new Float64Array((n * (n - 1)) / 2);
  let count = 0;
  for (let i = 0; i < n; i += 1) {
    for (let j = i + 1; j < n; j += 1) {
      const run = (times[j] as number) - (times[i] as number);
      if (run !== 0) {
        slopes[count] = ((values[j] as number) - (values[i] as number)) / run;
        count += 1;
      }
    }
  }
  if (count === 0) throw new RangeError("a slope needs two readings at different times");
  const sorted = slopes.subarray(0, count).sort();
  const reach = normalQuantile(0.5 + level / 2) * Math.sqrt(kendallVariance(values));
  const slope = median(sorted);
  return {
    slope,
    low: atRank(sorted, (count - reach) / 2),
    high: atRank(sorted, (count + reach) / 2 + 1),
    intercept: median(Float64Array.from(y).sort()) - slope * median(Float64Array.from(t).sort()),
  };
}

/** Middle of sorted values. */
export function median(sorted: Float64Array): number {
  const half = sorted.length >> 1;
  const upper = sorted[half] as number;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] as number) + upper) / 2;
}

/** Value at a rank counted from one, straight between neighbours and held at the ends. */
function atRank(sorted: Float64Array, rank: number): number {
  const held = Math.min(Math.max(rank, 1), sorted.length);
  const below = Math.floor(held);
  const lower = sorted[below - 1] as number;
  const upper = sorted[Math.min(below, sorted.length - 1)] as number;
  return lower + (held - below) * (upper - lower);
}
