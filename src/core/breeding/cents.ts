import type { Estimate } from "../quantity/estimate.ts";

const NEAR = 1e-6;
const MOST_CENTS = 1e11;

/** Whole cents of an exact amount; undefined where it is a range, not whole, or nothing. */
export function centsOf({ best, low, high }: Estimate): number | undefined {
  const cents = Math.round(best * 100);
  const isWhole = Math.abs(best * 100 - cents) < NEAR * Math.max(1, cents);
  return low === high && isWhole && cents > 0 && cents <= MOST_CENTS ? cents : undefined;
}
