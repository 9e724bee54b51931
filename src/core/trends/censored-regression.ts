import { logNormalBetween, logNormalDensity } from "./normal.ts";
import type { Interval } from "./turnbull.ts";

/** One reading for a straight model: it lies in `value`, and the model says offset + Σ design·coefficient. */
export interface CensoredRow {
  readonly value: Interval;
  readonly design: readonly number[];
  readonly offset: number;
}

export interface CensoredFit {
  readonly coefficients: readonly number[];
  /** Scatter about the model, the likeliest one or the one given. */
  readonly scale: number;
  readonly logLikelihood: number;
  /** One per coefficient, then one for the logarithm of the scale when that was fitted. */
  readonly standardErrors: readonly number[];
  /** False when the likelihood has no top to climb to, as when one line passes through every cell. */
  readonly isSettled: boolean;
}

const MOST_STEPS = 200;

interface Slopes {
  readonly logLikelihood: number;
  readonly gradient: number[];
  readonly information: number[][];
}

/**
 * Straight model with normal scatter, fitted by likelihood to readings known as intervals, bounds or
 * exact values. Newton's method, damped until it climbs. With `scale` given only the coefficients move;
 * `from` is a place to start, when a fit close by is known.
 * Source: tobin-1958 for one side; the interval form is the same likelihood.
 */
export function censoredRegression(
  rows: readonly CensoredRow[],
  scale?: number,
  from?: Pick<CensoredFit, "coefficients" | "scale">,
): CensoredFit {
  const m = rows[0]?.design.length ?? 0;
  const isFree = scale === undefined;
  const start = from?.coefficients ?? startingCoefficients(rows, m);
  let at = [...start, Math.log(scale ?? from?.scale ?? startingScale(rows))];
  let here = slopes(rows, at, isFree);
  let damping = 1e-3;
  let isSettled = false;
  for (let step = 0; step < MOST_STEPS && !isSettled; step += 1) {
    const move = solve(
      here.information.map((row, i) =>
        row.map((v, j) => (i === j ? v + damping * (Math.abs(v) + 1e-12) : v)),
      ),
      here.gradient,
    );
    const next = at.map((value, i) => value + (move?.[i] ?? 0));
    const there = move ? slopes(rows, next, isFree) : undefined;
    if (there && there.logLikelihood >= here.logLikelihood) {
      const gain = there.logLikelihood - here.logLikelihood;
      const reach = Math.max(
        ...(move ?? []).map((v, i) => Math.abs(v) / (Math.abs(next[i] as number) + 1e-6)),
      );
      at = next;
      here = there;
      damping /= 10;
      isSettled = gain < 1e-13 * (1 + Math.abs(here.logLikelihood)) && reach < 1e-8;
    } else if (damping > 1e12) {
      break;
    } else {
      damping *= 10;
    }
  }
  const covariance = here.information.map((_, i) =>
    solve(
      here.information,
      here.gradient.map((__, j) => +(i === j)),
    ),
  );
  const variances = covariance.map((column, i) => column?.[i] ?? Number.NaN);
  return {
    coefficients: at.slice(0, m),
    scale: Math.exp(at[m] as number),
    logLikelihood: here.logLikelihood,
    standardErrors: variances.map(Math.sqrt),
    isSettled: isSettled && variances.every((v) => v > 0),
  };
}

/** Ends of {c : 2·(best − likelihood with coefficient `index` held at c) ≤ drop}: they bend with the
 *  likelihood, and need no symmetry. Either may be infinite when the likelihood levels off. */
export function profileInterval(
  rows: readonly CensoredRow[],
  index: number,
  drop: number,
  scale?: number,
): readonly [number, number] {
  const best = censoredRegression(rows, scale);
  const centre = best.coefficients[index] as number;
  let last: Pick<CensoredFit, "coefficients" | "scale"> = {
    coefficients: best.coefficients.filter((_, j) => j !== index),
    scale: best.scale,
  };
  const excess = (c: number) => {
    const held = rows.map((row) => ({
      value: row.value,
      design: row.design.filter((_, j) => j !== index),
      offset: row.offset + c * (row.design[index] as number),
    }));
    const fit = censoredRegression(held, scale, last);
    last = fit;
    return 2 * (best.logLikelihood - fit.logLikelihood) - drop;
  };
  const reach = best.standardErrors[index] || Math.abs(centre) || 1;
  return [crossing(excess, centre, -reach), crossing(excess, centre, reach)];
}

/** Where the excess turns from below zero to above, by false position with the stale end halved. */
function crossing(excess: (c: number) => number, centre: number, reach: number): number {
  let near = centre;
  let atNear = excess(centre);
  let far = centre + reach;
  let atFar = excess(far);
  for (let doubling = 0; atFar < 0; doubling += 1) {
    if (doubling > 30) return reach > 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
    near = far;
    atNear = atFar;
    far = centre + (far - centre) * 2;
    atFar = excess(far);
  }
  for (let step = 0; step < 60 && Math.abs(far - near) > 1e-10 * Math.abs(reach); step += 1) {
    const middle = (near * atFar - far * atNear) / (atFar - atNear);
    const there = excess(middle);
    if (Math.abs(there) < 1e-11) return middle;
    if (there < 0) {
      near = middle;
      atNear = there;
      atFar /= 2;
    } else {
      far = middle;
      atFar = there;
      atNear /= 2;
    }
  }
  return (near + far) / 2;
}

/** Log-likelihood with its slope and curvature in the coefficients and, when free, the log scale. */
function slopes(rows: readonly CensoredRow[], at: readonly number[], isFree: boolean): Slopes {
  const m = at.length - 1;
  const size = isFree ? m + 1 : m;
  const gradient = new Array<number>(size).fill(0);
  const information = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const sigma = Math.exp(at[m] as number);
  let logLikelihood = 0;
  for (const { value, design, offset } of rows) {
    const centre = design.reduce((sum, x, j) => sum + x * (at[j] as number), offset);
    const reading = oneReading((value.low - centre) / sigma, (value.high - centre) / sigma, at[m] as number);
    logLikelihood += reading.logLikelihood;
    const along = [...design.map((x) => x / sigma), 1].slice(0, size);
    for (let i = 0; i < size; i += 1) {
      const isScale = i === m;
      gradient[i] =
        (gradient[i] as number) + (isScale ? reading.bySpread : reading.byCentre * (along[i] as number));
      for (let j = 0; j < size; j += 1) {
        const curve =
          isScale || j === m
            ? isScale && j === m
              ? reading.spreadTwice
              : reading.cross * (along[isScale ? j : i] as number)
            : reading.centreTwice * (along[i] as number) * (along[j] as number);
        const row = information[i] as number[];
        row[j] = (row[j] as number) - curve;
      }
    }
  }
  return { logLikelihood, gradient, information };
}

/** One reading's log-likelihood and its first and second slopes; centre slopes in units of the scale. */
function oneReading(low: number, high: number, logScale: number) {
  if (low === high) {
    const z = low;
    return {
      logLikelihood: logNormalDensity(z) - logScale,
      byCentre: z,
      bySpread: z * z - 1,
      centreTwice: -1,
      cross: -2 * z,
      spreadTwice: -2 * z * z,
    };
  }
  const logChance = logNormalBetween(low, high);
  const atLow = Number.isFinite(low) ? Math.exp(logNormalDensity(low) - logChance) : 0;
  const atHigh = Number.isFinite(high) ? Math.exp(logNormalDensity(high) - logChance) : 0;
  const l = Number.isFinite(low) ? low : 0;
  const h = Number.isFinite(high) ? high : 0;
  const byCentre = atLow - atHigh;
  const bySpread = l * atLow - h * atHigh;
  return {
    logLikelihood: logChance,
    byCentre,
    bySpread,
    centreTwice: bySpread - byCentre * byCentre,
    cross: (l * l - 1) * atLow - (h * h - 1) * atHigh - byCentre * bySpread,
    spreadTwice: (l * l - 1) * l * atLow - (h * h - 1) * h * atHigh - bySpread * bySpread,
  };
}

/** A value inside each interval to start from: its middle, or its finite end. */
function inside({ low, high }: Interval): number {
  if (!Number.isFinite(low)) return Number.isFinite(high) ? high : 0;
  return Number.isFinite(high) ? (low + high) / 2 : low;
}

function startingCoefficients(rows: readonly CensoredRow[], m: number): number[] {
  const design = (i: number, j: number) =>
    rows.reduce((sum, row) => sum + (row.design[i] as number) * (row.design[j] as number), 0);
  const matrix = Array.from({ length: m }, (_, i) =>
    Array.from({ length: m }, (__, j) => design(i, j) * (i === j ? 1 + 1e-9 : 1)),
  );
  const right = matrix.map((_, i) =>
    rows.reduce((sum, row) => sum + (row.design[i] as number) * (inside(row.value) - row.offset), 0),
  );
  return solve(matrix, right) ?? right.map(() => 0);
}

function startingScale(rows: readonly CensoredRow[]): number {
  const values = rows.map((row) => inside(row.value) - row.offset);
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / values.length) || 1;
}

/** Gaussian elimination with row exchange; undefined for a singular matrix. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | undefined {
  const n = right.length;
  const work = matrix.map((row, i) => [...row, right[i] as number]);
  for (let c = 0; c < n; c += 1) {
    let pivot = c;
    for (let r = c + 1; r < n; r += 1) {
      if (Math.abs(work[r]?.[c] as number) > Math.abs(work[pivot]?.[c] as number)) pivot = r;
    }
    const row = work[pivot] as number[];
    if (!(Math.abs(row[c] as number) > 0)) return undefined;
    work[pivot] = work[c] as number[];
    work[c] = row;
    for (let r = 0; r < n; r += 1) {
      const other = work[r] as number[];
      const factor = (other[c] as number) / (row[c] as number);
      if (r !== c && factor !== 0) {
        for (let k = c; k <= n; k += 1) other[k] = (other[k] as number) - factor * (row[k] as number);
      }
    }
  }
  return work.map((row, i) => (row[n] as number) / (row[i] as number));
}
