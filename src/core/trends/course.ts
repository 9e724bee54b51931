import { filterRecord } from "./balance-filter.ts";
import { type Belief, LEVEL, watchedPlaces } from "./belief.ts";
import { datedChanges, presentPlan, type WaterChangePlan } from "./change-plan.ts";
import { type Band, bandOf, type Draw, evenNormal } from "./draws.ts";
import { levelsAt, type PlannedChange } from "./future.ts";
import { productionNow } from "./production.ts";
import { SETTINGS } from "./settings.ts";
import type { Timeline, TimelineStep } from "./timeline.ts";
import type { TrendQuestion } from "./trend-answer.ts";

/** Where the level lay, or will lie, at one moment; days as in the question. */
export interface CoursePoint {
  readonly at: number;
  readonly band: Band;
}

/** The level through time, for drawing: two points at one moment are the two sides of a water change. */
export interface Course {
  /** With every later test having its say. */
  readonly past: readonly CoursePoint[];
  readonly withoutChanges: readonly CoursePoint[];
  /** Undefined with no plan. */
  readonly onPlan: readonly CoursePoint[] | undefined;
}

/** Moments of the past that are worked out; a longer record is drawn with fewer. */
const MOST_MOMENTS = 36;
const FUTURE_POINTS = 8;
const POINTS = 512;

/**
 * The course behind a trend answer, from `fromDay` on. Undefined with no reading, or when no rate can be told.
 * It takes many runs over the record: it pauses after each, so that whoever asks may do other things between.
 */
export function* trendCourse(
  question: TrendQuestion,
  fromDay: number,
): Generator<undefined, Course | undefined, undefined> {
  const { readings, events, now } = question;
  const found = productionNow(readings, events, now);
  if (!found || found.refusal) return undefined;
  const { timeline, draws } = found;
  const plan: WaterChangePlan | undefined = question.plan ?? presentPlan(events, now);
  const until = now + (question.forecastDays ?? SETTINGS.forecastDays);
  const present = { at: now, band: found.level };
  return {
    past: [...(yield* pastOf(timeline, fromDay)), present],
    withoutChanges: [present, ...future(draws, now, until, [])],
    onPlan: plan && [present, ...future(draws, now, until, datedChanges(plan, now, until))],
  };
}

/** Each run over the record keeps the level at two moments, or on both sides of one change. */
function* pastOf(
  timeline: Timeline,
  fromDay: number,
): Generator<undefined, readonly CoursePoint[], undefined> {
  const changes = timeline.steps.filter((s) => s.kind === "change" && s.at >= fromDay);
  const looks = timeline.looks.filter(({ at }) => at >= fromDay && at < timeline.now);
  const kept = 2 * changes.length > MOST_MOMENTS ? [] : changes;
  const room = Math.max(2, MOST_MOMENTS - 2 * kept.length);
  const every = Math.max(1, Math.ceil(looks.length / room));
  const moments = looks
    .filter((_, i) => i % every === 0 || i === looks.length - 1)
    .map(({ at }): TimelineStep => ({ kind: "dose", at, rise: 0 }));
  const points: CoursePoint[] = [];
  for (const change of kept) {
    points.push(...bothSides(timeline, change, change));
    yield;
  }
  for (let i = 0; i < moments.length; i += 2) {
    const first = moments[i] as TimelineStep;
    const last = moments[i + 1] ?? first;
    const [a, b] = bothSides(withSteps(timeline, first, last), first, last);
    points.push(a, ...(last === first ? [] : [b]));
    yield;
  }
  // Stable: the two sides of a change keep their order.
  return points.sort((a, b) => a.at - b.at);
}

/** Moments at which nothing happens, put in where they belong; a test at that moment has come before. */
function withSteps(timeline: Timeline, ...added: readonly TimelineStep[]): Timeline {
  const steps = [...timeline.steps];
  for (const step of new Set(added)) {
    const after = steps.findLastIndex((s) => s.at < step.at || (s.at === step.at && s.kind === "look"));
    steps.splice(after + 1, 0, step);
  }
  return { ...timeline, steps };
}

function bothSides(
  timeline: Timeline,
  first: TimelineStep,
  last: TimelineStep,
): readonly [CoursePoint, CoursePoint] {
  const { beliefs } = filterRecord(timeline, { first, last });
  return [
    { at: first.at, band: levelIn(beliefs, 0) },
    { at: last.at, band: levelIn(beliefs, 1) },
  ];
}

/** The level kept in one of the two places, as equally likely values, the instrument's own error included. */
function levelIn(beliefs: readonly Belief[], place: 0 | 1): Band {
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  const weights = beliefs.map((b) => Math.exp(b.logWeight - best));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const values: number[] = [];
  let reached = 0;
  beliefs.forEach((belief, index) => {
    const at = watchedPlaces(belief)[place];
    reached += ((weights[index] as number) / total) * POINTS;
    const sd = Math.sqrt(Math.max(belief.covariance[at * belief.size + at] as number, 0));
    while (values.length + 0.5 < reached && values.length < POINTS) {
      const own = 1 + SETTINGS.kitSpread * evenNormal(values.length, 1);
      const level = (belief.mean[at] as number) + sd * evenNormal(values.length, LEVEL);
      values.push(Math.max(0, level / Math.max(0.5, own)));
    }
  });
  return bandOf(Float64Array.from(values));
}

/** The level at even steps ahead, and on both sides of each change on the way. */
function future(
  draws: readonly Draw[],
  now: number,
  until: number,
  changes: readonly PlannedChange[],
): readonly CoursePoint[] {
  const pointAt = (at: number, made: readonly PlannedChange[]): CoursePoint => ({
    at,
    band: bandOf(levelsAt(draws, now, at, made)),
  });
  const even = Array.from(
    { length: FUTURE_POINTS },
    (_, i) => now + ((i + 1) / FUTURE_POINTS) * (until - now),
  );
  const sides = changes.flatMap((change, i) => [
    pointAt(change.at, changes.slice(0, i)),
    pointAt(change.at, changes.slice(0, i + 1)),
  ]);
  const atChange = new Set(changes.map(({ at }) => at));
  return [
    ...sides,
    ...even
      .filter((at) => !atChange.has(at))
      .map((at) =>
        pointAt(
          at,
          changes.filter((c) => c.at <= at),
        ),
      ),
  ].sort((a, b) => a.at - b.at);
}
