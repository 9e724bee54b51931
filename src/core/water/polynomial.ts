/** c₀ + c₁x + c₂x² + …, coefficients in rising powers. */
export function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}
