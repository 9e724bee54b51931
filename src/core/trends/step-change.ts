/** The one place where a record most likely jumped. */
export interface StepChange {
  /** Index of the first reading after the jump. */
  readonly index: number;
  /** Chance of so clear a jump in a record that has none, the search over all places allowed for. */
  readonly p: number;
}

/**
 * Looks for one jump anywhere in a record, by ranks: no shape of the scatter is assumed, and the p-value
 * already pays for having tried every place.
 * Source: pettitt-1979 (statistic and its approximate tail).
 * Range: four readings or more; the tail is rough for fewer than about ten. It cannot tell a jump from a
 * steady climb.
 */
export function stepChange(y: readonly number[]): StepChange | undefined {
  const n = y.length;
  if (n < 4) return undefined;
  const order = y.map((value, i) => ({ value, i })).sort((a, b) => a.value - b.value);
  const ranks = new Float64Array(n);
  for (let from = 0; from < n; ) {
    let to = from;
    while (to + 1 < n && order[to + 1]?.value === order[from]?.value) to += 1;
    for (let j = from; j <= to; j += 1) ranks[(order[j] as { i: number }).i] = (from + to) / 2 + 1;
    from = to + 1;
  }
  let sum = 0;
  let largest = 0;
  let index = 0;
  for (let t = 1; t < n; t += 1) {
    sum += ranks[t - 1] as number;
    const u = 2 * sum - t * (n + 1);
    if (Math.abs(u) > largest) {
      largest = Math.abs(u);
      index = t;
    }
  }
  if (index === 0) return undefined;
  return { index, p: Math.min(1, 2 * Math.exp((-6 * largest * largest) / (n ** 3 + n ** 2))) };
}
