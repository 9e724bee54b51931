/** Lanczos coefficients (g = 7, nine terms) of the gamma function. Source: press-2007, 6.1. */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const;
const LANCZOS_G = 7;
const HALF_LOG_TWO_PI = 0.9189385332046727;
const TINY = 1e-300;
const ENOUGH = 1e-16;

/** Natural logarithm of the gamma function. Range: x > 0. Throws: RangeError outside it. */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`the gamma function is asked for at ${x}`);
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  const z = x - 1;
  let sum: number = LANCZOS[0];
  for (let i = 1; i < LANCZOS.length; i += 1) sum += (LANCZOS[i] as number) / (z + i);
  const t = z + LANCZOS_G + 0.5;
  return HALF_LOG_TWO_PI + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** Lower incomplete gamma function, regularised: the chance that a chi-squared value with 2a degrees of
 *  freedom lies below 2x. Source: press-2007, 6.2. Range: a > 0, x ≥ 0. */
export function gammaShare(a: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = a + 1; Math.abs(term) > Math.abs(sum) * ENOUGH; n += 1) {
      term *= x / n;
      sum += term;
    }
    return sum * front;
  }
  return 1 - front * upperFraction(a, x);
}

/** Lentz's continued fraction for the upper incomplete gamma function. */
function upperFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 100_000; i += 1) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / away(an * d + b);
    c = away(b + an / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < ENOUGH) break;
  }
  return h;
}

/** Incomplete beta function, regularised: the chance that a beta value lies below x.
 *  Source: press-2007, 6.4. Range: a, b > 0; 0 ≤ x ≤ 1. */
export function betaShare(a: number, b: number, x: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(a, b, x)) / a
    : 1 - (front * betaFraction(b, a, 1 - x)) / b;
}

function betaFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 100_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < ENOUGH) break;
  }
  return h;
}

function away(value: number): number {
  return Math.abs(value) < TINY ? TINY : value;
}

/** Where a rising function first reaches `wanted`, between two places, to the last digit. */
export function crossing(rising: (x: number) => number, wanted: number, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let step = 0; step < 200; step += 1) {
    const middle = (from + to) / 2;
    if (middle === from || middle === to) break;
    if (rising(middle) < wanted) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** The value a chi-squared with `df` degrees of freedom stays below with chance q. Range: df > 0, 0 < q < 1. */
export function chiSquaredQuantile(q: number, df: number): number {
  const share = (x: number): number => gammaShare(df / 2, x / 2);
  let high = df + 10;
  while (share(high) < q) high *= 2;
  return crossing(share, q, 0, high);
}

/** The value a beta stays below with chance q. */
export function betaQuantile(q: number, a: number, b: number): number {
  return crossing((x) => betaShare(a, b, x), q, 0, 1);
}
