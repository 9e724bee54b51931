import type { Interval } from "./turnbull.ts";

/**
 * What a colour chart says when one of its steps is read: the true level lies nearer to that step than
 * to its neighbours. The lowest step is open below, and the top step says "at least" and nothing more.
 * Edges are put half-way between steps (assumption; an eye comparing shades may put them lower).
 * Throws: RangeError for fewer than two steps, or steps that do not rise.
 */
export function chartCells(steps: readonly number[]): readonly Interval[] {
  if (steps.length < 2 || steps.some((step, i) => i > 0 && step <= (steps[i - 1] as number))) {
    throw new RangeError("a chart needs two or more rising steps");
  }
  const edges = steps.slice(1).map((step, i) => (step + (steps[i] as number)) / 2);
  return steps.map((_, i) => ({
    low: edges[i - 1] ?? Number.NEGATIVE_INFINITY,
    high: edges[i] ?? Number.POSITIVE_INFINITY,
  }));
}
