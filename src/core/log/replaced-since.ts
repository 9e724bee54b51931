/** Share of the water that several changes together have replaced: what each leaves is multiplied.
 *  Shares outside 0–1 are cut there. Source: mass-balance, 1 − Π(1 − f). */
export function replacedShare(fractions: readonly number[]): number {
  return 1 - fractions.reduce((left, fraction) => left * (1 - Math.min(1, Math.max(0, fraction))), 1);
}
