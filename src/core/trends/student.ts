import { normalQuantile } from "./normal.ts";

/** Chance that a Student t value with whole degrees of freedom lies between -t and t.
 *  Source: abramowitz-stegun-1964, 26.7.3 and 26.7.4 (finite sums in the angle). */
function chanceWithin(t: number, df: number): number {
  const angle = Math.atan(t / Math.sqrt(df));
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const isOdd = df % 2 === 1;
  let term = isOdd ? cosine : 1;
  let sum = df === 1 ? 0 : term;
  for (let j = isOdd ? 3 : 2; j < df - 1; j += 2) {
    term *= (cosine * cosine * (j - 1)) / j;
    sum += term;
  }
  return isOdd ? (2 / Math.PI) * (angle + sine * sum) : sine * sum;
}

/** The value below which a Student t with `df` degrees of freedom lies with chance q.
 *  Range: whole df ≥ 1, 0 < q < 1.
 *  Throws: RangeError outside it. */
export function studentQuantile(q: number, df: number): number {
  if (!Number.isInteger(df) || df < 1) throw new RangeError(`degrees of freedom must be whole, not ${df}`);
  if (q === 0.5) return 0;
  const inside = Math.abs(2 * q - 1);
  let low = 0;
  let high = Math.abs(normalQuantile(q));
  while (chanceWithin(high, df) < inside) {
    low = high;
    high *= 2;
  }
  for (let step = 0; step < 200 && high - low > 1e-15 * high; step += 1) {
    const middle = (low + high) / 2;
    if (chanceWithin(middle, df) < inside) low = middle;
    else high = middle;
  }
  return q < 0.5 ? -(low + high) / 2 : (low + high) / 2;
}
