/** A straight fit with what it leaves unexplained. */
export interface LeastSquares {
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  /** Square root of the residual sum of squares over (readings − coefficients). */
  readonly residualSd: number;
  /** Share explained; about zero, not about the mean, when the design has no constant column. */
  readonly rSquared: number;
  readonly degreesOfFreedom: number;
}

/**
 * Ordinary least squares by Householder reflections on columns scaled to unit length: no normal
 * equations, so that dates in large units or curved designs keep their digits.
 * Source: golub-1965.
 * Throws: RangeError with fewer rows than columns, or columns that depend on each other.
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  hasConstant: boolean,
): LeastSquares {
  const n = rows.length;
  const m = rows[0]?.length ?? 0;
  if (n < m || m === 0) throw new RangeError(`${n} readings cannot fix ${m} coefficients`);
  const columns = Array.from({ length: m }, (_, j) => Float64Array.from(rows, (row) => row[j] as number));
  const norms = columns.map((column) => Math.hypot(...column) || 1);
  columns.forEach((column, j) => {
    for (let i = 0; i < n; i += 1) column[i] = (column[i] as number) / (norms[j] as number);
  });
  const target = Float64Array.from(y);
  const diagonal = columns.map((column, j) => reflect(column, j, [...columns.slice(j + 1), target]));
  if (diagonal.some((d) => Math.abs(d) < 1e-13)) throw new RangeError("the columns depend on each other");

  const upper = (i: number, j: number) => (i === j ? diagonal[i] : columns[j]?.[i]) as number;
  const inverse = invertUpper(upper, m);
  const coefficients = inverse.map(
    (row, i) => row.reduce((sum, r, j) => sum + r * (target[j] as number), 0) / (norms[i] as number),
  );
  let residual = 0;
  for (let i = m; i < n; i += 1) residual += (target[i] as number) ** 2;
  const degreesOfFreedom = n - m;
  const residualSd = Math.sqrt(residual / degreesOfFreedom);
  const standardErrors = inverse.map((row, i) => (residualSd * Math.hypot(...row)) / (norms[i] as number));
  const mean = hasConstant ? y.reduce((sum, v) => sum + v, 0) / n : 0;
  const total = y.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  return { coefficients, standardErrors, residualSd, rSquared: 1 - residual / total, degreesOfFreedom };
}

/** Zeroes `column` below row j by a mirror, applies the mirror to the others, and returns the new diagonal. */
function reflect(column: Float64Array, j: number, others: readonly Float64Array[]): number {
  const n = column.length;
  let length = 0;
  for (let i = j; i < n; i += 1) length = Math.hypot(length, column[i] as number);
  const head = column[j] as number;
  const diagonal = head > 0 ? -length : length;
  if (length === 0) return 0;
  const mirror = column.slice(j);
  mirror[0] = head - diagonal;
  const half = -diagonal * (mirror[0] as number);
  for (const other of others) {
    let dot = 0;
    for (let i = 0; i < mirror.length; i += 1) dot += (mirror[i] as number) * (other[j + i] as number);
    const scale = half === 0 ? 0 : dot / half;
    for (let i = 0; i < mirror.length; i += 1) {
      other[j + i] = (other[j + i] as number) - scale * (mirror[i] as number);
    }
  }
  return diagonal;
}

/** Inverse of an upper triangular matrix, by back substitution. */
function invertUpper(upper: (i: number, j: number) => number, m: number): number[][] {
  const inverse = Array.from({ length: m }, () => new Array<number>(m).fill(0));
  for (let j = 0; j < m; j += 1) {
    for (let i = j; i >= 0; i -= 1) {
      let sum = i === j ? 1 : 0;
      for (let l = i + 1; l <= j; l += 1) sum -= upper(i, l) * (inverse[l]?.[j] as number);
      (inverse[i] as number[])[j] = sum / upper(i, i);
    }
  }
  return inverse;
}
