import type { PlainTrend } from "./plain-trend.ts";

/** A straight drift at one moment, with the range its slope leaves; days from now. */
export interface DriftPoint {
  readonly inDays: number;
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/**
 * The drift from its first test to `aheadDays` after now. The slopes four in five times believable turn about
 * the middle of the record, where it is known best. Range: for drawing; it leaves out the scatter of single tests.
 */
export function driftLine(trend: PlainTrend, aheadDays: number): readonly DriftPoint[] {
  const { slopePerDay, levelNow, fromDaysAgo } = trend;
  const pivot = -fromDaysAgo / 2;
  const moments = [-fromDaysAgo, pivot, 0, ...(aheadDays > 0 ? [aheadDays] : [])];
  return moments.map((inDays) => {
    const middle = levelNow + slopePerDay.best * inDays;
    const turned = [slopePerDay.low80, slopePerDay.high80].map(
      (slope) => middle + (slope - slopePerDay.best) * (inDays - pivot),
    );
    return { inDays, low: Math.min(middle, ...turned), middle, high: Math.max(middle, ...turned) };
  });
}
