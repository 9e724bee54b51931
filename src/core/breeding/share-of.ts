import type { Estimate } from "../quantity/estimate.ts";

/** Per cent as a share of one. */
export function shareOf(percent: Estimate): number {
  return Math.min(1, Math.max(0, percent.best / 100));
}
