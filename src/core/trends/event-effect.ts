import { filterRecord } from "./balance-filter.ts";
import { type Belief, watchedPlaces } from "./belief.ts";
import { type Band, bandOf, evenNormal } from "./draws.ts";
import { isAtBottom, isAtTop, type TrendEvent } from "./readings.ts";
import { SETTINGS } from "./settings.ts";
import type { Timeline, TimelineStep } from "./timeline.ts";

/** Whether something dated changed production. "Not shown" is not "no effect". */
export interface EventEffect {
  readonly kind: "event";
  readonly at: number;
  readonly what: string;
  /** Production just after that week's events over production just before them. */
  readonly ratio: Band;
  readonly verdict: "raised" | "lowered" | "not shown";
  /** Everything else that happened within a week of it, oldest first: no one of them can be given the credit. */
  readonly alsoThatWeek: readonly string[];
  /** Chance that production changed at all. */
  readonly chanceOfEffect: number;
  readonly looksBefore: number;
  readonly looksAfter: number;
}

/** What a change of water did, against what it had to do. */
export interface ChangeEffect {
  readonly kind: "water change";
  readonly at: number;
  readonly fraction: number;
  /** Level just before and just after, as the whole record has it. */
  readonly before: Band;
  readonly after: Band;
  /** Whether the tests beside it could show the fall at all. */
  readonly canBeSeen: boolean;
  readonly alsoThatWeek: readonly string[];
}

/** Why an event's effect cannot be weighed. */
export interface EventUnknown {
  readonly kind: "too little beside it";
  readonly at: number;
  readonly what: string;
  readonly looksBefore: number;
  readonly looksAfter: number;
}

const POINTS = 1024;
const SAME_WEEK_DAYS = 7;

/** Weighs one dated event of the timeline, with the others of its week: the record is filtered anew with
 *  production just before and just after them kept, so that every later reading still has a say in both. */
export function eventEffect(
  timeline: Timeline,
  events: readonly TrendEvent[],
  event: Extract<TrendEvent, { kind: "other" }>,
): EventEffect | EventUnknown | undefined {
  const { at, what } = event;
  // What falls in one week cannot be told apart: it is weighed as one.
  const sameWeek = timeline.steps.filter((s) => s.kind === "event" && Math.abs(s.at - at) <= SAME_WEEK_DAYS);
  const [first] = sameWeek;
  const last = sameWeek.at(-1);
  if (!first || !last || !sameWeek.some((s) => s.at === at)) return undefined;
  const before = timeline.looks.filter((l) => l.at <= at);
  const after = timeline.looks.filter((l) => l.at > at);
  const looksBefore = before.length;
  const looksAfter = after.length;
  const daysBefore = at - (before[0]?.at ?? at);
  const daysAfter = (after.at(-1)?.at ?? at) - at;
  if (
    Math.min(looksBefore, looksAfter) < SETTINGS.looksBesideEvent ||
    Math.min(daysBefore, daysAfter) < SETTINGS.daysBesideEvent
  ) {
    return { kind: "too little beside it", at, what, looksBefore, looksAfter };
  }
  const { beliefs } = filterRecord(timeline, { first, last });
  // The size of the effect is told by the beliefs that allow one; how likely there is one, by their weight.
  const open = beliefs.filter((b) => b.eventSpread > 0);
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  const weight = (set: readonly Belief[]) => set.reduce((sum, b) => sum + Math.exp(b.logWeight - best), 0);
  const chanceOfEffect = weight(open) / weight(beliefs);
  const ratios = pairs(open.length > 0 ? open : beliefs).map(([b, a]) => a / b);
  const up = ratios.filter((r) => r > 1).length / ratios.length;
  const isShown = chanceOfEffect > SETTINGS.effectChance && Math.max(up, 1 - up) > SETTINGS.effectSideChance;
  return {
    kind: "event",
    at,
    what,
    ratio: bandOf(Float64Array.from(ratios)),
    verdict: isShown ? (up > 0.5 ? "raised" : "lowered") : "not shown",
    alsoThatWeek: alsoThatWeek(timeline, events, event),
    chanceOfEffect,
    looksBefore,
    looksAfter,
  };
}

/** Sets the fall a change of water had to bring beside what the tests could show. */
export function changeEffect(
  timeline: Timeline,
  events: readonly TrendEvent[],
  event: Extract<TrendEvent, { kind: "water change" }>,
): ChangeEffect | undefined {
  const step = timeline.steps.find((s): s is Extract<TimelineStep, { kind: "change" }> => {
    return s.kind === "change" && s.at === event.at && s.fraction === event.fraction;
  });
  if (!step) return undefined;
  const { beliefs } = filterRecord(timeline, { first: step, last: step });
  const levels = pairs(beliefs);
  const before = bandOf(Float64Array.from(levels, ([b]) => b));
  const after = bandOf(Float64Array.from(levels, ([, a]) => a));
  const last = timeline.looks.filter((l) => l.at <= event.at).at(-1);
  const next = timeline.looks.find((l) => l.at > event.at);
  const isInside = (level: number, look: { low: number; high: number }) =>
    level > look.low && level < look.high;
  const canBeSeen =
    last !== undefined &&
    next !== undefined &&
    (last.low === last.high || !isInside(after.best, last)) &&
    !(isAtTop(last) && isAtTop(next)) &&
    !(isAtBottom(last) && isAtBottom(next));
  const { at, fraction } = event;
  return {
    kind: "water change",
    at,
    fraction,
    before,
    after,
    canBeSeen,
    alsoThatWeek: alsoThatWeek(timeline, events, event),
  };
}

/** Everything else dated within a week, and a change of instrument. */
export function alsoThatWeek(
  timeline: Timeline,
  events: readonly TrendEvent[],
  event: TrendEvent,
): readonly string[] {
  const near = events
    .filter((other) => other !== event && Math.abs(other.at - event.at) <= SAME_WEEK_DAYS)
    .map((other) => ({ at: other.at, name: nameOf(other) }));
  timeline.looks.forEach((look, i) => {
    const previous = timeline.looks[i - 1];
    const isNew = previous && previous.instrument.id !== look.instrument.id;
    if (isNew && Math.abs(look.at - event.at) <= SAME_WEEK_DAYS) {
      near.push({
        at: look.at,
        name: `tests with ${look.instrument.id} in place of ${previous.instrument.id}`,
      });
    }
  });
  return near.sort((a, b) => a.at - b.at).map(({ name }) => name);
}

function nameOf(event: TrendEvent): string {
  if (event.kind === "water change") return `a ${Math.round(event.fraction * 100)} % water change`;
  return event.kind === "dose" ? "a dose" : event.what;
}

/** Draws of what was so just before and just after the watched moment; below-zero ones are left out. */
function pairs(beliefs: readonly Belief[]): readonly (readonly [number, number])[] {
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  const weights = beliefs.map((b) => Math.exp(b.logWeight - best));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const drawn: (readonly [number, number])[] = [];
  let reached = 0;
  let point = 0;
  beliefs.forEach((belief, index) => {
    const { mean, covariance: P, size: n } = belief;
    const [early, late] = watchedPlaces(belief);
    reached += ((weights[index] as number) / total) * POINTS;
    const first = Math.sqrt(Math.max(P[early * n + early] as number, 0));
    const shared = first > 0 ? (P[early * n + late] as number) / first : 0;
    const second = Math.sqrt(Math.max((P[late * n + late] as number) - shared * shared, 0));
    for (; point + 0.5 < reached && point < POINTS; point += 1) {
      const x = evenNormal(point, 0);
      const before = (mean[early] as number) + first * x;
      const after = (mean[late] as number) + shared * x + second * evenNormal(point, 1);
      if (before > 0 && after >= 0) drawn.push([before, after]);
    }
  });
  return drawn;
}
