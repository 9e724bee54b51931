/**
 * The x in [min, max] at which a rising function reaches `target`, by halving the interval until it
 * can be halved no more.
 * Throws: RangeError when the target lies outside f(min)…f(max).
 */
export function invertRising(f: (x: number) => number, target: number, min: number, max: number): number {
  const lowest = f(min);
  const highest = f(max);
  if (!(target >= lowest && target <= highest)) {
    throw new RangeError(`${target} lies outside ${lowest} to ${highest}`);
  }
  let low = min;
  let high = max;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (f(middle) < target) low = middle;
    else high = middle;
  }
}
