import { gainDays } from "./balance.ts";
import { normalBetween, normalDensity } from "./normal.ts";
import { isAtBottom, isAtTop, type Look, middleOf } from "./readings.ts";
import { SETTINGS } from "./settings.ts";
import { leastStep, type Timeline, type TimelineStep } from "./timeline.ts";

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

/** What one reading met. */
export interface Meeting {
  readonly look: Look;
  /** Chance that it was no slip. */
  readonly soundChance: number;
  /** Level foretold for it, in the reading's own scale, and how far it fell from that in standard deviations. */
  readonly foretold: number;
  readonly deviation: number;
}

export interface FilteredRecord {
  readonly beliefs: readonly Belief[];
  readonly meetings: readonly Meeting[];
  /** Natural logarithm of the chance all beliefs together gave to the readings. */
  readonly logEvidence: number;
}

/** Steps before and after which the state is kept. */
export interface Watched {
  readonly first: TimelineStep;
  readonly last: TimelineStep;
}

/** Looks between two clearings of hopeless beliefs. */
const CLEAR_EVERY = 4;

/**
 * Runs every belief through the timeline: growth with uneven feeding and slow drift, changes with inexact
 * shares, readings as intervals with reader scatter and the odd slip. With `watched`, two steps of the timeline
 * or one twice, the state keeps what was so just before the first and just after the last, and later readings
 * still correct both.
 * Physical meaning: dC/dt = p − kC between events, C ← (1−f)C + f·new at a change.
 * Source: mass-balance; normal filtering with exact cut-normal moments johnson-kotz-1994.
 */
export function filterRecord(timeline: Timeline, watched?: Watched): FilteredRecord {
  let beliefs = startingBeliefs(timeline, watched !== undefined);
  const evidenceBefore = logSum(beliefs);
  const meetings: Meeting[] = [];
  const flatDensity = 1 / (4 * timeline.typicalLevel);
  for (const step of timeline.steps) {
    for (const belief of beliefs) growTo(belief, step.at);
    if (step.kind === "look") {
      meetings.push(meet(beliefs, step.look, step.instrument, flatDensity));
      if (meetings.length % CLEAR_EVERY === 0) beliefs = withoutHopeless(beliefs);
      continue;
    }
    const slotSource = step.kind === "event" ? PRODUCTION : LEVEL;
    if (step === watched?.first)
      for (const belief of beliefs) keepIn(belief, watchedPlaces(belief)[0], slotSource);
    for (const belief of beliefs) applyEvent(belief, step);
    if (step === watched?.last)
      for (const belief of beliefs) keepIn(belief, watchedPlaces(belief)[1], slotSource);
  }
  for (const belief of beliefs) growTo(belief, timeline.now);
  return { beliefs: withoutHopeless(beliefs), meetings, logEvidence: logSum(beliefs) - evidenceBefore };
}

function logSum(beliefs: readonly Belief[]): number {
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  return best + Math.log(beliefs.reduce((sum, b) => sum + Math.exp(b.logWeight - best), 0));
}

/** Lets every belief meet one look. */
function meet(beliefs: readonly Belief[], look: Look, instrument: number, flatDensity: number): Meeting {
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  let weightBefore = 0;
  let weightAfter = 0;
  let sound = 0;
  let foretold = 0;
  let deviation = 0;
  for (const belief of beliefs) {
    const before = Math.exp(belief.logWeight - best);
    const met = applyLook(belief, look, instrument, flatDensity);
    weightBefore += before;
    weightAfter += before * met.chance;
    sound += before * met.chance * met.sound;
    foretold += before * met.shown;
    deviation += before * met.deviation;
  }
  return {
    look,
    soundChance: weightAfter > 0 ? sound / weightAfter : 1,
    foretold: foretold / weightBefore,
    deviation: deviation / weightBefore,
  };
}

/** Copies one place of the state, with all its covariances, into another. */
function keepIn({ mean, covariance: P, size: n }: Belief, slot: number, source: number): void {
  mean[slot] = mean[source] as number;
  for (let j = 0; j < n; j += 1) P[slot * n + j] = P[source * n + j] as number;
  for (let i = 0; i < n; i += 1) P[i * n + slot] = P[i * n + source] as number;
  P[slot * n + slot] = P[source * n + source] as number;
}

function withoutHopeless(beliefs: Belief[]): Belief[] {
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  const least = best + Math.log(SETTINGS.dropBelow);
  return beliefs.filter((b) => b.logWeight >= least);
}

function startingBeliefs(timeline: Timeline, isWatched: boolean): Belief[] {
  const first = timeline.looks[0] as Look;
  const middle = Math.max(middleOf(first), leastStep(first));
  const scale = timeline.usualProduction;
  const calibrations = timeline.instruments.length - 1;
  const size = FIRST_CALIBRATION + calibrations + (isWatched ? 2 : 0);
  const hasEvents = timeline.steps.some((step) => step.kind === "event");
  const eventSpreads = hasEvents ? SETTINGS.eventSpreads : [0];
  const atTop = timeline.looks.filter(isAtTop).length / timeline.looks.length;
  const { beyondBell } = SETTINGS;
  const beyond = atTop > 0 ? [{ ...beyondBell, belief: beyondBell.belief * atTop }] : [];
  const bells = [...SETTINGS.productionBells, ...beyond];
  const beliefs: Belief[] = [];
  for (const uptake of SETTINGS.uptakes) {
    for (const bell of bells) {
      for (const feedingSpread of SETTINGS.feedingSpreads) {
        for (const drift of SETTINGS.drifts) {
          for (const readerLevel of SETTINGS.readerLevelShares) {
            for (const eventSpread of eventSpreads) {
              const mean = new Float64Array(size);
              const covariance = new Float64Array(size * size);
              mean[LEVEL] = middle;
              // With uptake the same level needs more production to hold it.
              mean[PRODUCTION] = bell.centre * scale + uptake.perDay * timeline.typicalLevel;
              covariance[0] = (1.5 * middle) ** 2;
              covariance[size + 1] = (bell.spread * scale + 0.5 * uptake.perDay * timeline.typicalLevel) ** 2;
              for (let i = FIRST_CALIBRATION; i < FIRST_CALIBRATION + calibrations; i += 1) {
                covariance[i * size + i] = SETTINGS.betweenKitsSpread ** 2;
              }
              beliefs.push({
                uptakePerDay: uptake.perDay,
                feedingSpread,
                drift,
                readerLevel,
                eventSpread,
                size,
                calibrations,
                mean,
                covariance,
                logWeight: Math.log(uptake.belief * bell.belief),
                comparePerDay: 0,
                at: first.at,
              });
            }
          }
        }
      }
    }
  }
  return beliefs;
}

/** Carries one belief forward in time with nothing happening but production and uptake. */
function growTo(belief: Belief, at: number): void {
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

function applyEvent(belief: Belief, step: Exclude<TimelineStep, { kind: "look" }>): void {
  const { mean, covariance: P, size: n } = belief;
  const level = mean[LEVEL] as number;
  if (step.kind === "compare") {
    belief.comparePerDay = step.perDay;
  } else if (step.kind === "dose") {
    mean[LEVEL] = level + step.rise;
    add(P, n, 0, 0, (SETTINGS.changeSpread * step.rise) ** 2);
  } else if (step.kind === "event") {
    add(P, n, 1, 1, (belief.eventSpread * (mean[PRODUCTION] as number)) ** 2);
  } else {
    const kept = 1 - step.fraction;
    mean[LEVEL] = kept * level + step.fraction * step.newWater;
    for (let j = 0; j < n; j += 1) P[j] = (P[j] as number) * kept;
    for (let i = 0; i < n; i += 1) P[i * n] = (P[i * n] as number) * kept;
    const uneven = SETTINGS.changeSpread * step.fraction * (level - step.newWater);
    const newWater = SETTINGS.newWaterSpread * step.fraction * step.newWater;
    add(P, n, 0, 0, uneven * uneven + newWater * newWater);
  }
}

/** Reader or meter scatter at a level. */
function scatter(belief: Belief, look: Look, level: number): number {
  const { instrument } = look;
  if (instrument.kind === "meter") {
    const loosened = belief.readerLevel / SETTINGS.readerLevelShares[0];
    return Math.hypot(instrument.fixedSd, instrument.levelSd * level) * Math.sqrt(loosened);
  }
  return Math.hypot(SETTINGS.readerFirstStepShare * leastStep(look), belief.readerLevel * level);
}

/** Weighs one belief by a reading and moves it. Returns the chance it gave to the reading, and the chance
 *  that the reading is sound. */
function applyLook(
  belief: Belief,
  look: Look,
  instrument: number,
  flatDensity: number,
): { readonly chance: number; readonly sound: number; readonly shown: number; readonly deviation: number } {
  const { mean, covariance: P, size: n } = belief;
  const gainAt = instrument === 0 ? -1 : FIRST_CALIBRATION + instrument - 1;
  const level = mean[LEVEL] as number;
  const gain = gainAt < 0 ? 1 : 1 + (mean[gainAt] as number);
  const column = new Float64Array(n);
  for (let i = 0; i < n; i += 1) {
    const byGain = gainAt < 0 ? 0 : level * (P[i * n + gainAt] as number);
    column[i] = gain * (P[i * n] as number) + byGain;
  }
  const shown = gain * level;
  const variance = gain * (column[0] as number) + (gainAt < 0 ? 0 : level * (column[gainAt] as number));
  const s = scatter(belief, look, Math.max(0, shown));
  const sd = Math.sqrt(variance + s * s);
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
    const a = (look.low - shown) / sd;
    const b = (look.high - shown) / sd;
    chance = normalBetween(a, b);
    const atA = isAtBottom(look) ? 0 : normalDensity(a);
    const atB = Number.isFinite(b) ? normalDensity(b) : 0;
    first = chance > 1e-280 ? (atB - atA) / chance : 0;
    second =
      chance > 1e-280 ? first * first + ((atB === 0 ? 0 : b * atB) - (atA === 0 ? 0 : a * atA)) / chance : 0;
    slip = SETTINGS.misreadChance / look.cells;
  }
  const told = (1 - SETTINGS.misreadChance) * chance;
  const sound = told / (told + slip);
  belief.logWeight += Math.log(told + slip);
  const move = -first / sd;
  const shrink = second / (sd * sd);
  const spread = sound * (1 - sound) * move * move - sound * shrink;
  for (let i = 0; i < n; i += 1) {
    const ci = column[i] as number;
    mean[i] = (mean[i] as number) + sound * move * ci;
    for (let j = 0; j < n; j += 1)
      P[i * n + j] = (P[i * n + j] as number) + spread * ci * (column[j] as number);
  }
  return { chance: told + slip, sound, shown, deviation: -first };
}
