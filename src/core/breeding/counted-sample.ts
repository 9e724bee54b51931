import { normalQuantile } from "../trends/normal.ts";
import { chiSquaredQuantile, gammaShare } from "./incomplete-functions.ts";

/** Two ends between which a figure lies with the level asked for. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** The level used wherever none is named: nineteen times in twenty. */
export const USUAL_LEVEL = 0.95;

/** What a count of individuals says of the number to be expected in as much water: the exact interval.
 *  Source: garwood-1936. Range: whole count ≥ 0, 0 < level < 1. Throws: RangeError outside it. */
export function poissonInterval(count: number, level: number = USUAL_LEVEL): Interval {
  mustBeCount(count);
  const tail = (1 - level) / 2;
  return {
    low: count === 0 ? 0 : chiSquaredQuantile(tail, 2 * count) / 2,
    high: chiSquaredQuantile(1 - tail, 2 * count + 2) / 2,
  };
}

export interface Density extends Interval {
  readonly best: number;
}

/** Individuals per unit of volume from several scoops: their sum over the volume of them all.
 *  The interval is that of the sum. Source: garwood-1936. Throws: RangeError without scoops or volume. */
export function densityFromScoops(
  counts: readonly number[],
  volumeEach: number,
  level: number = USUAL_LEVEL,
): Density {
  if (counts.length === 0 || !(volumeEach > 0)) throw new RangeError("a density needs scoops with a volume");
  for (const count of counts) mustBeCount(count);
  const sum = counts.reduce((total, count) => total + count, 0);
  const volume = counts.length * volumeEach;
  const { low, high } = poissonInterval(sum, level);
  return { best: sum / volume, low: low / volume, high: high / volume };
}

export interface Dispersion {
  readonly index: number;
  readonly degreesOfFreedom: number;
  /** Chance that evenly spread animals would scatter at least so much between scoops. */
  readonly chance: number;
}

/** Whether scoops differ more than chance lets them: squared deviations over the mean against chi-squared.
 *  Source: fisher-1925. Range: two counts or more, not all zero. Throws: RangeError outside it. */
export function dispersionOf(counts: readonly number[]): Dispersion {
  const mean = counts.reduce((total, count) => total + count, 0) / counts.length;
  if (counts.length < 2 || !(mean > 0))
    throw new RangeError("scatter needs two scoops with something in them");
  const index = counts.reduce((total, count) => total + (count - mean) ** 2, 0) / mean;
  const degreesOfFreedom = counts.length - 1;
  return { index, degreesOfFreedom, chance: 1 - gammaShare(degreesOfFreedom / 2, index / 2) };
}

/** Below this chance the scoops count as clumped. Source: common-practice. */
export const CLUMPED_BELOW = 0.05;

/** How many individuals must be counted so that the interval reaches no further than `halfWidth` (a share)
 *  either way; by the normal approximation. Range: 0 < halfWidth. */
export function countNeeded(halfWidth: number, level: number = USUAL_LEVEL): number {
  return Math.ceil((normalQuantile(0.5 + level / 2) / halfWidth) ** 2);
}

/** Mean and second moment about it of squares sorted by how many cells lie on them. */
export function squaresMoments(squaresByCount: Readonly<Record<string, number>>): {
  readonly squares: number;
  readonly mean: number;
  readonly variance: number;
} {
  const pairs = Object.entries(squaresByCount).map(([count, squares]) => [Number(count), squares] as const);
  const squares = pairs.reduce((total, [, times]) => total + times, 0);
  if (!(squares > 0)) throw new RangeError("no squares were counted");
  const mean = pairs.reduce((total, [count, times]) => total + count * times, 0) / squares;
  const variance = pairs.reduce((total, [count, times]) => total + times * (count - mean) ** 2, 0) / squares;
  return { squares, mean, variance };
}

const MM3_PER_ML = 1000;

/** Cells per mL in the culture from the mean count of one square of a counting chamber.
 *  Source: definition (1 mm² × depth is the volume counted). */
export function chamberDensityPerML(
  meanPerSquare: number,
  squareMm2: number,
  depthMm: number,
  dilutionFactor: number,
): number {
  const volumeMm3 = squareMm2 * depthMm;
  if (!(volumeMm3 > 0 && dilutionFactor >= 1))
    throw new RangeError("a chamber needs an area, a depth and a dilution");
  return (meanPerSquare * dilutionFactor * MM3_PER_ML) / volumeMm3;
}

function mustBeCount(count: number): void {
  if (!Number.isInteger(count) || count < 0) throw new RangeError(`a count must be whole, not ${count}`);
}
