import { type CensoredRow, censoredRegression, profileInterval } from "./censored-regression.ts";
import { leastSquares } from "./least-squares.ts";
import { chiSquaredQuantileOneDf } from "./normal.ts";
import { type Look, middleOf } from "./readings.ts";
import { SETTINGS } from "./settings.ts";
import { studentQuantile } from "./student.ts";
import { theilSen } from "./theil-sen.ts";

export interface Slope {
  readonly best: number;
  readonly low80: number;
  readonly high80: number;
  readonly low95: number;
  readonly high95: number;
}

/**
 * Slope of looks against time. Exact figures: the middle of all pair slopes. Colour steps and bounds: a line
 * fitted by likelihood to the intervals, since most pairs of equal steps would say "no slope" whatever the
 * level did. The scatter is fitted too, unless one line passes through every cell; then it is the reader's.
 * Throws: RangeError when no two looks differ in time.
 */
export function driftSlope(found: readonly Look[], now: number): Slope {
  const t = found.map((l) => l.at - now);
  if (found.every((l) => l.low === l.high)) {
    const y = found.map((l) => l.low);
    const { slope, low, high } = theilSen(t, y, 0.8);
    const wide = theilSen(t, y, 0.95);
    return { best: slope, low80: low, high80: high, low95: wide.low, high95: wide.high };
  }
  const rows: CensoredRow[] = found.map((l) => ({ value: l, design: [1, l.at - now], offset: 0 }));
  const free = censoredRegression(rows);
  const reader = readerScatter(found);
  const scale = free.isSettled && free.scale > reader / 2 ? undefined : reader;
  const best = (scale === undefined ? free : censoredRegression(rows, scale)).coefficients[1] as number;
  const [low80, high80] = profileInterval(rows, 1, chiSquaredQuantileOneDf(0.8), scale);
  const [low95, high95] = profileInterval(rows, 1, chiSquaredQuantileOneDf(0.95), scale);
  return { best, low80, high80, low95, high95 };
}

/** The straight line through exact figures, the way every spreadsheet draws it: a second opinion, misled by a few
 *  bad readings. Undefined with colour steps or fewer than three figures. */
export function straightLine(
  found: readonly Look[],
  now: number,
): { readonly slope: number; readonly low95: number; readonly high95: number } | undefined {
  if (found.length < 3 || found.some((l) => l.low !== l.high)) return undefined;
  const fit = leastSquares(
    found.map((l) => [1, l.at - now]),
    found.map((l) => l.low),
    true,
  );
  const slope = fit.coefficients[1] as number;
  const reach = studentQuantile(0.975, fit.degreesOfFreedom) * (fit.standardErrors[1] as number);
  return { slope, low95: slope - reach, high95: slope + reach };
}

function readerScatter(found: readonly Look[]): number {
  const levels = found.map(middleOf).sort((a, b) => a - b);
  const level = levels[levels.length >> 1] as number;
  const [fine, coarse] = SETTINGS.readerLevelShares;
  const step = (found[0] as Look).least;
  return Math.hypot(SETTINGS.readerFirstStepShare * step, ((fine + coarse) / 2) * level);
}
