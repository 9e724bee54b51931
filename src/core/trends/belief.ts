import { gainDays } from "./balance.ts";
import { cutNormal } from "./interval-update.ts";
import { normalDensity } from "./normal.ts";
import type { Look } from "./readings.ts";
import { SETTINGS } from "./settings.ts";
import type { TimelineStep } from "./timeline.ts";

/** Places in the state: level, production per day, level of the last stretch less the one before it; then one
 *  calibration per instrument but the last used; then, when a moment is watched, two places for what was so
 *  just before and just after it. */
export const LEVEL = 0;
export const PRODUCTION = 1;
export const COMPARISON = 2;
export const FIRST_CALIBRATION = 3;

/** One way the tank may work, and what it makes of the record: a bell over the state, and how well it
 *  foretold the readings. */
export interface Belief {
  readonly uptakePerDay: number;
  readonly feedingSpread: number;
  readonly changeSpread: number;
  readonly drift: number;
  readonly readerLevel: number;
  readonly eventSpread: number;
  readonly size: number;
  /** Instruments with a calibration of their own: all but the last used. */
  readonly calibrations: number;
  readonly mean: Float64Array;
  /** Row by row, size × size. */
  readonly covariance: Float64Array;
  logWeight: number;
  /** Where the comparison of the two stretches stands, per day of level. */
  comparePerDay: number;
  at: number;
}

/** Places of what was so just before and just after the watched moment. */
export function watchedPlaces({ calibrations }: Belief): readonly [number, number] {
  const before = FIRST_CALIBRATION + calibrations;
  return [before, before + 1];
}

/** Copies one place of the state, with all its covariances, into another. */
export function keepIn({ mean, covariance: P, size: n }: Belief, slot: number, source: number): void {
  mean[slot] = mean[source] as number;
  for (let j = 0; j < n; j += 1) P[slot * n + j] = P[source * n + j] as number;
  for (let i = 0; i < n; i += 1) P[i * n + slot] = P[i * n + source] as number;
  P[slot * n + slot] = P[source * n + source] as number;
}

/** Carries one belief forward in time with nothing happening but production and uptake. */
export function growTo(belief: Belief, at: number): void {
  const days = at - belief.at;
  if (days <= 0) return;
  belief.at = at;
  const { mean, covariance: P, size: n, uptakePerDay: k, comparePerDay: w } = belief;
  const kept = Math.exp(-k * days);
  const gained = gainDays(k, days);
  const levelDays = gained;
  const productionDays = k * days < 1e-8 ? (days * days) / 2 : (days - gained) / k;
  const level = mean[LEVEL] as number;
  const production = mean[PRODUCTION] as number;
  mean[LEVEL] = kept * level + gained * production;
  mean[COMPARISON] = (mean[COMPARISON] as number) + w * (levelDays * level + productionDays * production);
  const toC = w * levelDays;
  const toP = w * productionDays;
  for (let j = 0; j < n; j += 1) {
    const c = P[j] as number;
    const p = P[n + j] as number;
    P[j] = kept * c + gained * p;
    P[2 * n + j] = (P[2 * n + j] as number) + toC * c + toP * p;
  }
  for (let i = 0; i < n; i += 1) {
    const row = i * n;
    const c = P[row] as number;
    const p = P[row + 1] as number;
    P[row] = kept * c + gained * p;
    P[row + 2] = (P[row + 2] as number) + toC * c + toP * p;
  }
  const square = production * production + (P[n + 1] as number);
  const feed = belief.feedingSpread * belief.feedingSpread * square;
  const drift = belief.drift * belief.drift * square;
  const two = days * days;
  const three = two * days;
  add(P, n, 0, 0, feed * days + (drift * three) / 3);
  add(P, n, 0, 1, (drift * two) / 2);
  add(P, n, 1, 1, drift * days);
  if (w !== 0) {
    add(P, n, 0, 2, w * ((feed * two) / 2 + (drift * two * two) / 8));
    add(P, n, 1, 2, (w * drift * three) / 6);
    add(P, n, 2, 2, w * w * ((feed * three) / 3 + (drift * two * three) / 20));
  }
}

function add(P: Float64Array, n: number, i: number, j: number, value: number): void {
  P[i * n + j] = (P[i * n + j] as number) + value;
  if (i !== j) P[j * n + i] = (P[j * n + i] as number) + value;
}

export function applyEvent(belief: Belief, step: Exclude<TimelineStep, { kind: "look" }>): void {
  const { mean, covariance: P, size: n } = belief;
  const level = mean[LEVEL] as number;
  if (step.kind === "compare") {
    belief.comparePerDay = step.perDay;
  } else if (step.kind === "dose") {
    mean[LEVEL] = level + step.rise;
    add(P, n, 0, 0, (belief.changeSpread * step.rise) ** 2);
  } else if (step.kind === "event") {
    add(P, n, 1, 1, (belief.eventSpread * (mean[PRODUCTION] as number)) ** 2);
  } else {
    const kept = 1 - step.fraction;
    mean[LEVEL] = kept * level + step.fraction * step.newWater;
    for (let j = 0; j < n; j += 1) P[j] = (P[j] as number) * kept;
    for (let i = 0; i < n; i += 1) P[i * n] = (P[i * n] as number) * kept;
    const spread = step.spread ?? belief.changeSpread * step.fraction;
    const uneven = spread * (level - step.newWater);
    const newWater = SETTINGS.newWaterSpread * step.fraction * step.newWater;
    add(P, n, 0, 0, uneven * uneven + newWater * newWater);
  }
}

/** Variance of reader or meter scatter at a level. */
function scatter(belief: Belief, look: Look, level: number): number {
  const { instrument } = look;
  if (instrument.kind === "meter") {
    const byLevel = instrument.levelSd * level;
    const loosened = belief.readerLevel / SETTINGS.readerLevelShares[0];
    return (instrument.fixedSd * instrument.fixedSd + byLevel * byLevel) * loosened;
  }
  const fixed = SETTINGS.readerFirstStepShare * look.least;
  const byLevel = belief.readerLevel * level;
  return fixed * fixed + byLevel * byLevel;
}

/** What one belief made of one reading; one such record serves a whole run. */
export interface Met {
  /** Chance the belief gave to the reading, slips included. */
  chance: number;
  /** Chance that the reading is sound. */
  sound: number;
  /** Level it foretold in the reading's own scale, and how far off it was, in standard deviations. */
  shown: number;
  deviation: number;
  /** Covariance of each place of the state with what is shown. */
  readonly column: Float64Array;
}

/** Weighs one belief by a reading and moves it. */
export function applyLook(
  belief: Belief,
  look: Look,
  instrument: number,
  flatDensity: number,
  met: Met,
): void {
  const { mean, covariance: P, size: n } = belief;
  const { column } = met;
  const gainAt = instrument === 0 ? -1 : FIRST_CALIBRATION + instrument - 1;
  const level = mean[LEVEL] as number;
  const gain = gainAt < 0 ? 1 : 1 + (mean[gainAt] as number);
  for (let i = 0; i < n; i += 1) {
    const byGain = gainAt < 0 ? 0 : level * (P[i * n + gainAt] as number);
    column[i] = gain * (P[i * n] as number) + byGain;
  }
  const shown = gain * level;
  const variance = gain * (column[0] as number) + (gainAt < 0 ? 0 : level * (column[gainAt] as number));
  const sd = Math.sqrt(variance + scatter(belief, look, Math.max(0, shown)));
  let chance: number;
  let first: number;
  let second: number;
  let slip: number;
  if (look.low === look.high) {
    const z = (look.low - shown) / sd;
    chance = normalDensity(z) / sd;
    first = -z;
    second = 1;
    slip = SETTINGS.misreadChance * flatDensity;
  } else {
    // No level lies below nothing, though the eye may.
    const a = (Math.max(0, look.low) - shown) / sd;
    const b = (look.high - shown) / sd;
    const cut = cutNormal(a, b);
    chance = cut.chance;
    first = cut.first;
    second = cut.second;
    slip = SETTINGS.misreadChance / look.cells;
  }
  const told = (1 - SETTINGS.misreadChance) * chance;
  const sound = told / (told + slip);
  belief.logWeight += Math.log(told + slip);
  met.chance = told + slip;
  met.sound = sound;
  met.shown = shown;
  met.deviation = -first;
  const move = -first / sd;
  const spread = sound * (1 - sound) * move * move - (sound * second) / (sd * sd);
  for (let i = 0; i < n; i += 1) {
    const ci = column[i] as number;
    mean[i] = (mean[i] as number) + sound * move * ci;
    const row = i * n;
    for (let j = 0; j < n; j += 1) P[row + j] = (P[row + j] as number) + spread * ci * (column[j] as number);
  }
}
