import type { Grams, GramsPerHour, Hours } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import { requirePositive } from "../water/domain.ts";

/** Ammonia given off in the first hours after one meal; τ is when it peaks.
 *  Source: assumption: rate = N (t/τ²) e^(−t/τ), τ 8 h, 3–16 h likely.
 *  Throws: RangeError when the time of the peak is not above zero. */
export function mealAmmoniaSoFar(total: Grams, peakAfter: Hours, hours: Hours): Grams {
  requirePositive("time of the peak", peakAfter);
  const x = hours / peakAfter;
  return as<Grams>(total * (1 - (1 + x) * Math.exp(-x)));
}

/** Fastest output after a single meal. Source: assumption, same pulse; N/(e τ).
 *  Throws: RangeError when the time of the peak is not above zero. */
export function mealAmmoniaPeak(total: Grams, peakAfter: Hours): GramsPerHour {
  requirePositive("time of the peak", peakAfter);
  return as<GramsPerHour>(total / (Math.E * peakAfter));
}

/** The settled output of equal meals repeated for ever: rate(t) = (A t + B) e^(−t/τ) since the last one. */
interface Train {
  readonly slope: number;
  readonly start: number;
}

function mealTrain(perMealG: Grams, peakAfter: Hours, everyHours: Hours): Train {
  const q = Math.exp(-everyHours / peakAfter);
  const scale = perMealG / peakAfter ** 2;
  return { slope: scale / (1 - q), start: (scale * everyHours * q) / (1 - q) ** 2 };
}

/** Fastest output when equal meals follow each other: near the single-meal peak when they are far
 *  apart, near the average when they are close. Source: mass-balance over the same pulse. */
export function repeatedMealPeak(perMealG: Grams, peakAfter: Hours, everyHours: Hours): GramsPerHour {
  const { slope, start } = mealTrain(perMealG, peakAfter, everyHours);
  const t = slope > 0 ? Math.max(0, peakAfter - start / slope) : 0;
  return as<GramsPerHour>((slope * t + start) * Math.exp(-t / peakAfter));
}

const STEPS = 48;

/**
 * Highest amount standing in the water between meals, as grams, when it is taken out at the constant
 * relative rate `removalPerHour`: dM/dt = rate(t) − κ M, settled into its rhythm.
 * Source: mass-balance.
 */
export function highestStanding(
  perMealG: Grams,
  peakAfter: Hours,
  everyHours: Hours,
  removalPerHour: number,
): Grams {
  const { slope, start } = mealTrain(perMealG, peakAfter, everyHours);
  const delta = removalPerHour - 1 / peakAfter;
  // Where both decays agree the closed form is 0/0; a nudge of a millionth is far below any input's doubt.
  const d = Math.abs(delta) < 1e-6 / peakAfter ? 1e-6 / peakAfter : delta;
  const nudged = d + 1 / peakAfter;
  const added = (t: number, output: number, removal: number) =>
    slope * ((t * output) / d - (output - removal) / d ** 2) + (start * (output - removal)) / d;
  const whole = added(everyHours, Math.exp(-everyHours / peakAfter), Math.exp(-nudged * everyHours));
  const atMeal = whole / (1 - Math.exp(-removalPerHour * everyHours));
  // The three decays go down by the same factor from step to step.
  const stepHours = everyHours / STEPS;
  const outputStep = Math.exp(-stepHours / peakAfter);
  const removalStep = Math.exp(-nudged * stepHours);
  const keptStep = Math.exp(-removalPerHour * stepHours);
  let highest = atMeal;
  for (let step = 1, output = 1, removal = 1, kept = 1; step <= STEPS; step += 1) {
    output *= outputStep;
    removal *= removalStep;
    kept *= keptStep;
    highest = Math.max(highest, atMeal * kept + added(stepHours * step, output, removal));
  }
  return as<Grams>(highest);
}
