import { normalCdf } from "./normal.ts";

/** What a rank test for a steady rise or fall finds. */
export interface MannKendall {
  /** Pairs that rise minus pairs that fall. */
  readonly s: number;
  readonly variance: number;
  /** s with one pair taken off towards zero, in standard deviations. */
  readonly z: number;
  /** Share of all pairs: 1 when every later reading is higher. */
  readonly tauA: number;
  /** Chance, with no trend at all, of an s at least this far from zero, either way. */
  readonly pTwoSided: number;
  readonly pMethod: "exact" | "all orders" | "normal";
}

/** The longest record for which every order of the readings is looked at. */
const ALL_ORDERS_UP_TO = 8;
const EXACT_UP_TO = 10;

/** Pairs rising minus pairs falling; `y` in order of time. O(n log n), by counting while merging. */
export function kendallS(y: readonly number[]): number {
  const n = y.length;
  let source = Float64Array.from(y);
  let merged = new Float64Array(n);
  let falling = 0;
  for (let width = 1; width < n; width *= 2) {
    for (let start = 0; start < n; start += 2 * width) {
      const middle = Math.min(start + width, n);
      const end = Math.min(start + 2 * width, n);
      let left = start;
      let right = middle;
      for (let out = start; out < end; out += 1) {
        if (left < middle && (right >= end || (source[left] as number) <= (source[right] as number))) {
          merged[out] = source[left] as number;
          left += 1;
        } else {
          falling += middle - left;
          merged[out] = source[right] as number;
          right += 1;
        }
      }
    }
    [source, merged] = [merged, source];
  }
  const tiedPairs = tieSizes(y).reduce((sum, t) => sum + (t * (t - 1)) / 2, 0);
  return (n * (n - 1)) / 2 - tiedPairs - 2 * falling;
}

/** How many readings share each repeated value. */
function tieSizes(y: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const value of y) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()].filter((count) => count > 1);
}

/** Variance of s when there is no trend, ties included.
 *  Source: kendall-1975 (tie term). */
export function kendallVariance(y: readonly number[]): number {
  const n = y.length;
  const ties = tieSizes(y).reduce((sum, t) => sum + t * (t - 1) * (2 * t + 5), 0);
  return (n * (n - 1) * (2 * n + 5) - ties) / 18;
}

/** Chance of at least this s among all orders of n different values, by counting inversions.
 *  Source: kendall-1975. */
export function kendallExactUpperTail(n: number, s: number): number {
  let counts = [1];
  for (let k = 2; k <= n; k += 1) {
    const next = new Array<number>(counts.length + k - 1).fill(0);
    counts.forEach((count, i) => {
      for (let j = 0; j < k; j += 1) next[i + j] = (next[i + j] as number) + count;
    });
    counts = next;
  }
  const pairs = (n * (n - 1)) / 2;
  let atLeast = 0;
  let all = 0;
  counts.forEach((count, inversions) => {
    all += count;
    if (pairs - 2 * inversions >= s) atLeast += count;
  });
  return atLeast / all;
}

/** Chance of at least this s among all orders of these very values, ties and all.
 *  Range: up to eight readings; the orders are built one reading at a time, equal states merged. */
export function kendallTiedUpperTail(y: readonly number[], s: number): number {
  const values = [...new Set(y)].sort((a, b) => a - b);
  const amounts = values.map((value) => y.filter((other) => other === value).length);
  let states = new Map<string, Map<number, number>>([[amounts.join(), new Map([[0, 1]])]]);
  for (let placed = 0; placed < y.length; placed += 1) {
    const next = new Map<string, Map<number, number>>();
    for (const [key, scores] of states) {
      const left = key.split(",").map(Number);
      left.forEach((count, chosen) => {
        if (count === 0) return;
        let gain = 0;
        left.forEach((other, index) => {
          gain += Math.sign(index - chosen) * other;
        });
        const after = left.map((other, index) => (index === chosen ? other - 1 : other)).join();
        const target = next.get(after) ?? new Map<number, number>();
        for (const [score, ways] of scores) {
          target.set(score + gain, (target.get(score + gain) ?? 0) + ways * count);
        }
        next.set(after, target);
      });
    }
    states = next;
  }
  let atLeast = 0;
  let all = 0;
  for (const scores of states.values()) {
    for (const [score, ways] of scores) {
      all += ways;
      if (score >= s) atLeast += ways;
    }
  }
  return atLeast / all;
}

/** Rank test for a steady rise or fall in `y`, given in order of time.
 *  Small records use the exact chance: a normal curve is wrong there, and with four readings no
 *  order at all is rarer than 1 in 12.
 *  Source: mann-1945, kendall-1975. Under regular water changes it says nothing about production. */
export function mannKendall(y: readonly number[]): MannKendall {
  const n = y.length;
  const s = kendallS(y);
  const variance = kendallVariance(y);
  const z = variance === 0 ? 0 : (s - Math.sign(s)) / Math.sqrt(variance);
  const hasTies = tieSizes(y).length > 0;
  const tail = Math.abs(s);
  const tauA = n < 2 ? 0 : s / ((n * (n - 1)) / 2);
  if (!hasTies && n <= EXACT_UP_TO) {
    return { s, variance, z, tauA, pTwoSided: twice(kendallExactUpperTail(n, tail)), pMethod: "exact" };
  }
  if (n <= ALL_ORDERS_UP_TO) {
    return { s, variance, z, tauA, pTwoSided: twice(kendallTiedUpperTail(y, tail)), pMethod: "all orders" };
  }
  return { s, variance, z, tauA, pTwoSided: twice(normalCdf(-Math.abs(z))), pMethod: "normal" };
}

function twice(p: number): number {
  return Math.min(1, 2 * p);
}
