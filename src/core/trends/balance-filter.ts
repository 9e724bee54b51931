import {
  applyEvent,
  applyLook,
  type Belief,
  FIRST_CALIBRATION,
  growTo,
  keepIn,
  LEVEL,
  type Met,
  PRODUCTION,
  watchedPlaces,
} from "./belief.ts";
import { isAtTop, type Look, middleOf } from "./readings.ts";
import { SETTINGS } from "./settings.ts";
import type { Timeline, TimelineStep } from "./timeline.ts";

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
const CLEAR_EVERY = 2;

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

function bestOf(beliefs: readonly Belief[]): number {
  let best = Number.NEGATIVE_INFINITY;
  for (const { logWeight } of beliefs) if (logWeight > best) best = logWeight;
  return best;
}

function logSum(beliefs: readonly Belief[]): number {
  const best = bestOf(beliefs);
  return best + Math.log(beliefs.reduce((sum, b) => sum + Math.exp(b.logWeight - best), 0));
}

/** Lets every belief meet one look. */
function meet(beliefs: readonly Belief[], look: Look, instrument: number, flatDensity: number): Meeting {
  const best = bestOf(beliefs);
  const met: Met = {
    chance: 0,
    sound: 0,
    shown: 0,
    deviation: 0,
    column: new Float64Array(beliefs[0]?.size ?? 0),
  };
  let weightBefore = 0;
  let weightAfter = 0;
  let sound = 0;
  let foretold = 0;
  let deviation = 0;
  for (const belief of beliefs) {
    const before = Math.exp(belief.logWeight - best);
    applyLook(belief, look, instrument, flatDensity, met);
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

function withoutHopeless(beliefs: Belief[]): Belief[] {
  const least = bestOf(beliefs) + Math.log(SETTINGS.dropBelow);
  return beliefs.filter((b) => b.logWeight >= least);
}

function startingBeliefs(timeline: Timeline, isWatched: boolean): Belief[] {
  const first = timeline.looks[0] as Look;
  const middle = Math.max(middleOf(first), first.least);
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
      for (const keeper of SETTINGS.keepers) {
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
                feedingSpread: keeper.feedingSpread,
                changeSpread: keeper.changeSpread,
                drift,
                readerLevel,
                eventSpread,
                size,
                calibrations,
                mean,
                covariance,
                logWeight: Math.log(uptake.belief * bell.belief * keeper.belief),
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
