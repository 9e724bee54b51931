import { filterRecord, type Meeting } from "./balance-filter.ts";
import type { Belief } from "./belief.ts";
import { type Band, bandOf, type Draw, drawsFrom } from "./draws.ts";
import { isAtBottom, isAtTop, type Look, type TrendEvent, type TrendReading } from "./readings.ts";
import { SETTINGS } from "./settings.ts";
import { type Timeline, timelineOf } from "./timeline.ts";

/** Why a rate cannot be told. */
export type RateRefusal =
  | { readonly why: "too few"; readonly readings: number; readonly days: number }
  | { readonly why: "at top"; readonly atLeast: number }
  | { readonly why: "all at bottom"; readonly below: number }
  | { readonly why: "too old"; readonly days: number }
  | { readonly why: "contradictory"; readonly readings: number }
  | { readonly why: "too vague"; readonly low: number; readonly high: number };

/** Everything the record says about now. */
export interface Production {
  readonly timeline: Timeline;
  readonly draws: readonly Draw[];
  readonly beliefs: readonly Belief[];
  readonly meetings: readonly Meeting[];
  readonly logEvidence: number;
  readonly level: Band;
  /** Production less uptake at the present level, per day. */
  readonly net: Band;
  readonly refusal: RateRefusal | undefined;
}

/** Production per day with its range, or why it cannot be told. Undefined with no reading at all. */
export function productionNow(
  readings: readonly TrendReading[],
  events: readonly TrendEvent[],
  now: number,
): Production | undefined {
  const timeline = timelineOf(readings, events, now);
  if (timeline.looks.length === 0) return undefined;
  const { beliefs, meetings, logEvidence } = filterRecord(timeline);
  const { draws, isContradicted } = drawsFrom(beliefs);
  const level = bandOf(Float64Array.from(draws, (d) => d.level));
  const net = bandOf(Float64Array.from(draws, (d) => d.production - d.uptakePerDay * d.level));
  const refusal = rateRefusal(timeline, net, isContradicted);
  return { timeline, draws, beliefs, meetings, logEvidence, level, net, refusal };
}

/** A production that lifts the level by less than about one colour step in a month does not matter. */
export function rateThatMatters(timeline: Timeline): number {
  const first = timeline.looks[0] as Look;
  return Math.max(first.least, SETTINGS.stepShareOfLevel * timeline.typicalLevel) / SETTINGS.stepDays;
}

function rateRefusal(timeline: Timeline, net: Band, isContradicted: boolean): RateRefusal | undefined {
  const { looks: found, now } = timeline;
  const first = found[0] as Look;
  const last = found.at(-1) as Look;
  const days = last.at - first.at;
  if (found.length < SETTINGS.leastLooks || days < SETTINGS.leastDays) {
    return { why: "too few", readings: found.length, days };
  }
  const atTop = found.filter(isAtTop);
  if (isAtTop(last) && atTop.length > SETTINGS.mostAtTop * found.length) {
    return { why: "at top", atLeast: Math.max(...atTop.map((l) => l.low)) };
  }
  if (found.every(isAtBottom)) return { why: "all at bottom", below: Math.min(...found.map((l) => l.high)) };
  if (now - last.at > Math.max(SETTINGS.freshDays, days)) return { why: "too old", days: now - last.at };
  if (isContradicted) return { why: "contradictory", readings: found.length };
  const half = (net.high80 - net.low80) / 2;
  if (half > SETTINGS.vagueness * Math.max(Math.abs(net.best), rateThatMatters(timeline))) {
    return { why: "too vague", low: net.low80, high: net.high80 };
  }
  return undefined;
}
