/** A figure with no more digits than it deserves, for sentences. */
export function rounded(value: number, digits = 3): number {
  return Number(value.toPrecision(digits));
}
