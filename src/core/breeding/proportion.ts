import { normalQuantile } from "../trends/normal.ts";
import { type Interval, USUAL_LEVEL } from "./counted-sample.ts";
import { betaQuantile } from "./incomplete-functions.ts";

/** What x of n says of the share behind it; sensible at 0 and at n. Source: wilson-1927.
 *  Range: 0 ≤ x ≤ n, n > 0. Throws: RangeError outside it. */
export function wilsonInterval(x: number, n: number, level: number = USUAL_LEVEL): Interval {
  mustBeShare(x, n);
  const z = normalQuantile(0.5 + level / 2);
  const share = x / n;
  const middle = (share + (z * z) / (2 * n)) / (1 + (z * z) / n);
  const half = (z / (1 + (z * z) / n)) * Math.sqrt((share * (1 - share)) / n + (z * z) / (4 * n * n));
  return { low: x === 0 ? 0 : Math.max(0, middle - half), high: x === n ? 1 : Math.min(1, middle + half) };
}

/** The exact interval, never narrower than its level; wider than Wilson's. Source: clopper-pearson-1934.
 *  Range: whole 0 ≤ x ≤ n, n > 0. Throws: RangeError outside it. */
export function exactInterval(x: number, n: number, level: number = USUAL_LEVEL): Interval {
  mustBeShare(x, n);
  const tail = (1 - level) / 2;
  return {
    low: x === 0 ? 0 : betaQuantile(tail, x, n - x + 1),
    high: x === n ? 1 : betaQuantile(1 - tail, x + 1, n - x),
  };
}

export interface Ratio extends Interval {
  readonly best: number;
}

/** Survival between two counted samples, each a count from some volume: the ratio of the two densities, with
 *  the interval that holds when both ends are samples. Source: przyborowski-wilenski-1940 (the first count
 *  given the sum of both is binomial). Range: whole counts ≥ 0, start count and volumes > 0. */
export function ratioOfCounts(
  start: { readonly count: number; readonly volume: number },
  end: { readonly count: number; readonly volume: number },
  level: number = USUAL_LEVEL,
): Ratio {
  if (!(start.count > 0 && start.volume > 0 && end.volume > 0))
    throw new RangeError("a ratio needs something counted at the start, and volumes");
  const both = exactInterval(end.count, end.count + start.count, level);
  const scale = start.volume / end.volume;
  const odds = (share: number): number => (share / (1 - share)) * scale;
  return { best: (end.count / start.count) * scale, low: odds(both.low), high: odds(both.high) };
}

function mustBeShare(x: number, n: number): void {
  if (!(n > 0 && x >= 0 && x <= n)) throw new RangeError(`${x} of ${n} is no share`);
}
