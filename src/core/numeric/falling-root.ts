/** How much of the first interval may be left unknown: about the last figures of a double. */
const LEFT_UNKNOWN = 2 ** -46;
/** Halving alone would be done after this many steps; nothing takes more than a few times as many. */
const MOST_STEPS = 150;

/**
 * The x between `low` and `high` where a falling `f` crosses zero; the nearer end when it does not cross.
 * Inverse quadratic interpolation where the last three points allow it, else halving: a dozen calls on
 * smooth functions, where halving needs 46.
 * Source: chandrupatla-1997.
 */
export function fallingRoot(f: (x: number) => number, low: number, high: number): number {
  let b = low;
  let fb = f(b);
  if (!(fb > 0)) return low;
  let a = high;
  let fa = f(a);
  if (fa > 0) return high;
  const unknown = (high - low) * LEFT_UNKNOWN;
  for (let step = 0, t = 0.5; step < MOST_STEPS; step += 1) {
    const x = a + t * (b - a);
    const fx = f(x);
    if (fx === 0) return x;
    const isSameSide = fx > 0 === fa > 0;
    const c = isSameSide ? a : b;
    const fc = isSameSide ? fa : fb;
    if (!isSameSide) {
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    const least = unknown / Math.abs(b - a);
    if (!(least < 0.5)) break;
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    const isSmooth = phi ** 2 < xi && (1 - phi) ** 2 < 1 - xi;
    const guess = isSmooth
      ? ((fa / (fb - fa)) * fc) / (fb - fc) + ((((c - a) / (b - a)) * fa) / (fc - fa)) * (fb / (fc - fb))
      : 0.5;
    t = Math.min(1 - least, Math.max(least, guess));
  }
  return Math.abs(fa) < Math.abs(fb) ? a : b;
}
