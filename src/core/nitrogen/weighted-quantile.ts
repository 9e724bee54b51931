import type { Estimate } from "../quantity/estimate.ts";

/** Values that a tenth, half and nine tenths of the weight do not exceed. Infinite values sort last. */
export function weightedEstimate(values: readonly number[], weights: readonly number[]): Estimate {
  const order = values
    .map((_, index) => index)
    .sort((a, b) => {
      const [x, y] = [values[a] as number, values[b] as number];
      return x === y ? 0 : x - y;
    });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const at = (share: number): number => {
    let reached = 0;
    for (const index of order) {
      reached += weights[index] as number;
      if (reached >= share * total * (1 - 1e-12)) return values[index] as number;
    }
    return values[order[order.length - 1] ?? 0] ?? Number.NaN;
  };
  return { low: at(0.1), best: at(0.5), high: at(0.9) };
}
