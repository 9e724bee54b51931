import type { Estimate } from "../quantity/estimate.ts";
import { type NoAnswer, noAnswer } from "../result.ts";

/** One input as a question checks it before any arithmetic. */
export interface Figure {
  readonly name: string;
  readonly estimate: Estimate;
  readonly unit: string;
  /** Zero is a fair answer for some figures ("none left"); otherwise the figure has to be above it. */
  readonly zeroAllowed?: boolean;
  readonly max?: number;
}

/** The refusal for the first figure no sum can be made of, over its whole range; undefined when all will do. */
export function unusableFigure(figures: readonly Figure[]): NoAnswer | undefined {
  for (const { name, estimate, unit, zeroAllowed = false, max = Number.MAX_VALUE } of figures) {
    const { low, high } = estimate;
    if (!(zeroAllowed ? low >= 0 : low > 0)) {
      return noAnswer("dose-figure-not-positive", { quantity: name, value: low, unit });
    }
    if (!(high <= max)) {
      return noAnswer("dose-figure-too-large", { quantity: name, value: high, unit, max });
    }
  }
  return undefined;
}
