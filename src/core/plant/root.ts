/**
 * The x between `low` and `high` where a falling `f` crosses zero, by halving; the nearer end when
 * it does not cross. 60 halvings leave less than a double can show.
 */
export function fallingRoot(f: (x: number) => number, low: number, high: number): number {
  let below = low;
  let above = high;
  for (let step = 0; step < 60; step++) {
    const middle = (below + above) / 2;
    if (f(middle) > 0) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
