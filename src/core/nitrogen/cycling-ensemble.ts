import { normalBetween, normalQuantile } from "../trends/normal.ts";
import {
  BELIEF,
  type Belief,
  believedAt,
  type CyclingReading,
  type CyclingSituation,
} from "./cycling-input.ts";
import { type CyclingParameters, cyclingState } from "./cycling-model.ts";
import { type CyclingPlan, type CyclingRun, runCycle } from "./cycling-run.ts";

/** Gives numbers evenly spread over 0 ≤ u < 1. */
export type Random = () => number;

/** One believed course of the cycle and how much it counts. Weights of an ensemble add up to 1. */
export interface Member {
  readonly place: Float64Array;
  readonly run: CyclingRun;
  readonly weight: number;
}

const RUNS = 200;
/** Runs of the first look, which only has to show where the readings point. */
const FIRST_RUNS = 150;
/** Runs that must really count; below that the readings are given less say. */
const LEAST_COUNTING = 25;
/** How far a true level may lie from the model's: a floor in mg/L, and a share. Source: assumption. */
const MODEL_ERROR = { floorMgPerL: 0.08, share: 0.2 };
/** Chance that a reading is plainly wrong. Source: assumption. */
const BLUNDER = 0.05;
/** Accuracy of each run: far inside the spread between runs. */
const ACCURACY = { relative: 1e-3, mgPerL: 1e-4 };

/** Everything fixed about the runs of one situation. */
export interface Setting {
  readonly situation: CyclingSituation;
  readonly beliefs: readonly Belief[];
  readonly plan: CyclingPlan;
}

/** Parameters and start of the run at one place among the beliefs. */
export function runAt({ situation, beliefs, plan }: Setting, place: Float64Array): CyclingRun {
  const at = (index: number): number => {
    const belief = beliefs[index];
    if (belief === undefined) throw new Error(`no belief ${index}`);
    return believedAt(belief, place[index] as number);
  };
  const isFedByAnimals = situation.ammonia.kind === "animals";
  const parameters: CyclingParameters = {
    temperatureC: Math.min(40, Math.max(1, at(BELIEF.temperature))),
    oxygenMgPerL: situation.oxygen?.best ?? DEFAULT_OXYGEN,
    saltFactor: at(BELIEF.growth),
    ammoniaGrowthScale: 1,
    nitriteGrowthScale: at(BELIEF.secondStep),
    halfFoodScale: at(BELIEF.halfFood),
    mineralisationPerDay: MINERALISATION_PER_DAY,
    loadMgNPerLDay: isFedByAnimals ? at(BELIEF.ammonia) : 0,
    loadAlkalinity: 1,
    isAlkalinityLimited: situation.alkalinity !== undefined,
  };
  const seed = at(BELIEF.seed);
  const start = cyclingState(
    isFedByAnimals ? 0 : Math.max(0, at(BELIEF.ammonia)),
    seed,
    seed * at(BELIEF.secondSeed),
    situation.alkalinity?.best ?? KEPT_UP_ALKALINITY,
  );
  return runCycle(parameters, start, plan, ACCURACY);
}

/** Oxygen when none is named, mg/L. Source: assumption, well aerated sea water. */
export const DEFAULT_OXYGEN = 6.5;
/** Source: assumption. */
const MINERALISATION_PER_DAY = 0.03;
const KEPT_UP_ALKALINITY = 2.5;

/**
 * Runs of the model spread over what is believed, weighted by how well each agrees with the readings.
 * With readings there are two rounds: the first finds where they point, the second looks there closely.
 * Source: standard importance sampling; the seed and the growth are thereby fitted to the readings.
 */
export function ensemble(
  setting: Setting,
  readings: readonly CyclingReading[],
  random: Random,
): readonly Member[] {
  const size = setting.beliefs.length;
  const flat = { middle: new Float64Array(size), spread: new Float64Array(size).fill(1) };
  if (readings.length === 0) {
    return places(RUNS, flat, random).map((place) => ({
      place,
      run: runAt(setting, place),
      weight: 1 / RUNS,
    }));
  }
  const doseTo = setting.plan.doseTo ?? setting.plan.proof;
  const lastDay = Math.ceil(readings.reduce((last, each) => Math.max(last, each.day), 1));
  const short = { ...setting, plan: { ...setting.plan, days: lastDay } };
  const first = places(FIRST_RUNS, flat, random);
  const firstWeights = tempered(first.map((place) => agreement(runAt(short, place), readings, doseTo)));
  const proposal = fitted(first, firstWeights);
  const second = places(RUNS, proposal, random);
  const runs = second.map((place) => runAt(setting, place));
  const weights = tempered(
    second.map((place, index) => {
      const run = runs[index];
      return run === undefined
        ? Number.NEGATIVE_INFINITY
        : agreement(run, readings, doseTo) + logDensity(place, flat) - logDensity(place, proposal);
    }),
  );
  return second.flatMap((place, index) => {
    const run = runs[index];
    return run === undefined ? [] : [{ place, run, weight: weights[index] ?? 0 }];
  });
}

interface Cloud {
  readonly middle: Float64Array;
  readonly spread: Float64Array;
}

/** Normal places, each figure cut into as many equal chances as there are runs and shuffled on its own. */
function places(count: number, cloud: Cloud, random: Random): readonly Float64Array[] {
  const size = cloud.middle.length;
  const result = Array.from({ length: count }, () => new Float64Array(size));
  for (let figure = 0; figure < size; figure += 1) {
    const order = Array.from({ length: count }, (_, index) => index);
    for (let index = count - 1; index > 0; index -= 1) {
      const other = Math.floor(random() * (index + 1));
      [order[index], order[other]] = [order[other] ?? 0, order[index] ?? 0];
    }
    result.forEach((place, index) => {
      const chance = ((order[index] ?? 0) + random()) / count;
      const z = normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, chance)));
      place[figure] = (cloud.middle[figure] as number) + (cloud.spread[figure] as number) * z;
    });
  }
  return result;
}

function logDensity(place: Float64Array, { middle, spread }: Cloud): number {
  return place.reduce((sum, z, figure) => {
    const s = spread[figure] as number;
    return sum - 0.5 * ((z - (middle[figure] as number)) / s) ** 2 - Math.log(s);
  }, 0);
}

/** How well a run agrees with the readings: the sum of log chances of each kit interval. */
function agreement(run: CyclingRun, readings: readonly CyclingReading[], doseTo: number): number {
  return readings.reduce((sum, reading) => sum + Math.log(chanceOf(run, reading, doseTo)), 0);
}

/**
 * Chance that this run gives a reading in its interval, with a little left for a blunder. Readings
 * are taken before the day's dose. Once the model has dosed by itself its ammonia may stand
 * anywhere up to a dose, and says little about the member's.
 */
export function chanceOf(run: CyclingRun, { day, kind, value }: CyclingReading, doseTo: number): number {
  if (kind === "ammonia" && day > run.firstModelDose) return value.low <= doseTo ? 0.5 : BLUNDER * 0.2;
  const curve = kind === "ammonia" ? run.tan : run.nitrite;
  const level = curve[Math.min(curve.length - 1, Math.round(day))] ?? 0;
  const error = MODEL_ERROR.floorMgPerL + MODEL_ERROR.share * level;
  // A reading with no interval still has the width of its last digit; zero on a card means "under the first colour".
  const low = value.low <= 0 ? Number.NEGATIVE_INFINITY : Math.min(value.low, value.best * 0.95);
  const high = Math.max(value.high, value.best * 1.05, 0.02);
  const within = normalBetween((low - level) / error, (high - level) / error);
  return (1 - BLUNDER) * within + BLUNDER * 0.2;
}

/** Weights from log weights, flattened just enough that several runs count. */
function tempered(logWeights: readonly number[]): readonly number[] {
  const best = Math.max(...logWeights);
  for (let power = 1; ; power *= 0.8) {
    const raw = logWeights.map((each) => Math.exp(power * (each - best)));
    const total = raw.reduce((sum, each) => sum + each, 0);
    const weights = raw.map((each) => each / total);
    const counting = 1 / weights.reduce((sum, each) => sum + each * each, 0);
    if (counting >= LEAST_COUNTING || power < 0.01) return weights;
  }
}

/** The normal cloud with the weighted middle and spread of some places, a little wider for safety. */
function fitted(placed: readonly Float64Array[], weights: readonly number[]): Cloud {
  const size = placed[0]?.length ?? 0;
  const middle = new Float64Array(size);
  const spread = new Float64Array(size);
  placed.forEach((place, index) => {
    for (let figure = 0; figure < size; figure += 1) {
      middle[figure] = (middle[figure] as number) + (weights[index] ?? 0) * (place[figure] as number);
    }
  });
  placed.forEach((place, index) => {
    for (let figure = 0; figure < size; figure += 1) {
      const away = (place[figure] as number) - (middle[figure] as number);
      spread[figure] = (spread[figure] as number) + (weights[index] ?? 0) * away * away;
    }
  });
  return { middle, spread: spread.map((variance) => Math.max(0.3, 1.2 * Math.sqrt(variance))) };
}
