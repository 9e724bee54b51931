/** Coefficients of rational fits to erf and erfc, good to about sixteen digits.
 *  Source: cody-1969 (values as remembered; tests hold them to a reference library). */
const ERF_NUMERATOR = [
  0.18577770618460315, 3.1611237438705655, 113.86415415105016, 377.485237685302, 3209.3775891384694,
] as const;
const ERF_DENOMINATOR = [
  1, 23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171,
] as const;
const MIDDLE_NUMERATOR = [
  2.1531153547440383e-8, 0.5641884969886701, 8.883149794388377, 66.11919063714163, 298.6351381974001,
  881.952221241769, 1712.0476126340707, 2051.0783778260716, 1230.3393547979972,
] as const;
const MIDDLE_DENOMINATOR = [
  1, 15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597,
  4362.619090143247, 3439.3676741437216, 1230.3393548037495,
] as const;
const TAIL_NUMERATOR = [
  0.016315387137302097, 0.30532663496123236, 0.36034489994980445, 0.12578172611122926, 0.016083785148742275,
  0.0006587491615298378,
] as const;
const TAIL_DENOMINATOR = [
  1, 2.568520192289822, 1.8729528499234673, 0.5279051029514285, 0.06051834131244132, 0.0023352049762686918,
] as const;

const INVERSE_ROOT_PI = 0.5641895835477563;
const INVERSE_ROOT_TWO_PI = 0.3989422804014327;
const LOG_ROOT_TWO_PI = 0.9189385332046727;

/** Horner's rule, highest power first. */
function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = 0; i < coefficients.length; i += 1) sum = sum * x + (coefficients[i] as number);
  return sum;
}

/** erfc(y)·exp(y²) for y ≥ 0.46875: what is left once the steep part is taken out. */
function scaledErfc(y: number): number {
  if (y <= 4) return polynomial(MIDDLE_NUMERATOR, y) / polynomial(MIDDLE_DENOMINATOR, y);
  const inverse = 1 / (y * y);
  const tail = (inverse * polynomial(TAIL_NUMERATOR, inverse)) / polynomial(TAIL_DENOMINATOR, inverse);
  return (INVERSE_ROOT_PI - tail) / y;
}

/** Height of the standard normal curve. */
export function normalDensity(z: number): number {
  return INVERSE_ROOT_TWO_PI * Math.exp(-0.5 * z * z);
}

/** Natural logarithm of that height. */
export function logNormalDensity(z: number): number {
  return -0.5 * z * z - LOG_ROOT_TWO_PI;
}

/** Chance that a standard normal value lies below z; keeps its relative precision far into the lower tail.
 *  Source: cody-1969. */
export function normalCdf(z: number): number {
  const y = Math.abs(z) * Math.SQRT1_2;
  if (y < 0.46875) {
    const square = y * y;
    const erf = (y * polynomial(ERF_NUMERATOR, square)) / polynomial(ERF_DENOMINATOR, square);
    return z < 0 ? 0.5 - 0.5 * erf : 0.5 + 0.5 * erf;
  }
  const tail = 0.5 * Math.exp(-y * y) * scaledErfc(y);
  return z < 0 ? tail : 1 - tail;
}

/** Natural logarithm of `normalCdf`, finite far below where the chance itself underflows. */
export function logNormalCdf(z: number): number {
  if (z > -1) return Math.log(normalCdf(z));
  const y = -z * Math.SQRT1_2;
  return Math.log(0.5 * scaledErfc(y)) - y * y;
}

/** Chance that a standard normal value lies between two limits, either of which may be infinite.
 *  Both limits are mirrored into the lower tail when they lie above zero, where a plain difference
 *  would lose every digit. */
export function normalBetween(low: number, high: number): number {
  if (low > 0) return normalCdf(-low) - normalCdf(-high);
  return normalCdf(high) - normalCdf(low);
}

/** Natural logarithm of `normalBetween`; -Infinity only for an empty interval. */
export function logNormalBetween(low: number, high: number): number {
  if (!(high > low)) return Number.NEGATIVE_INFINITY;
  const [near, far] = low > 0 ? [-low, -high] : [high, low];
  if (near > -1) {
    const chance = normalBetween(low, high);
    if (chance > 1e-300) return Math.log(chance);
  }
  const outer = logNormalCdf(near);
  return outer + Math.log(-Math.expm1(logNormalCdf(far) - outer));
}

/** The value below which a standard normal lies with chance q.
 *  A rough start (abramowitz-stegun-1964, 26.2.23) put right by three steps of Halley's method.
 *  Throws: RangeError outside 0 < q < 1. */
export function normalQuantile(q: number): number {
  if (!(q > 0 && q < 1)) throw new RangeError(`a chance must lie between 0 and 1, not ${q}`);
  const lower = Math.min(q, 1 - q);
  const t = Math.sqrt(-2 * Math.log(lower));
  const start =
    t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
  let z = -start;
  for (let step = 0; step < 3; step += 1) {
    const miss = (normalCdf(z) - lower) / normalDensity(z);
    z -= miss / (1 + 0.5 * z * miss);
  }
  return q < 0.5 ? z : -z;
}

/** The quantile of a chi-squared value with one degree of freedom: the square of a standard normal. */
export function chiSquaredQuantileOneDf(q: number): number {
  return normalQuantile(0.5 + q / 2) ** 2;
}
