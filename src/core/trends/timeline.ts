import { type Look, looks, mergedLooks, middleOf, type TrendEvent, type TrendReading } from "./readings.ts";
import { SETTINGS } from "./settings.ts";

/** One thing that moves the belief, in order of time. */
export type TimelineStep =
  | { readonly kind: "look"; readonly at: number; readonly look: Look; readonly instrument: number }
  | {
      readonly kind: "change";
      readonly at: number;
      readonly fraction: number;
      readonly newWater: number;
      /** How far the share may be off, as a share of the whole tank; left out for a logged change. */
      readonly spread?: number;
    }
  | { readonly kind: "dose"; readonly at: number; readonly rise: number }
  | { readonly kind: "event"; readonly at: number; readonly what: string }
  /** From here on, one day adds this much of the level to the comparison of two stretches. */
  | { readonly kind: "compare"; readonly at: number; readonly perDay: number };

/** The stretch of the record an answer rests on. */
export interface Timeline {
  readonly looks: readonly Look[];
  readonly steps: readonly TimelineStep[];
  /** Instruments in the stretch; the last one used comes first. */
  readonly instruments: readonly string[];
  readonly now: number;
  /** A level to scale by: the middle look, or the first step of a chart when that is higher. */
  readonly typicalLevel: number;
  /** Production to expect before any reading, per day. */
  readonly usualProduction: number;
  /** Length of each of the two stretches compared for the direction of the level, days. */
  readonly halfSpanDays: number;
}

/** The level's direction compares the last weeks with as many before them. */
const LONGEST_HALF_SPAN_DAYS = 28;
const MOST_INSTRUMENTS = 3;

/**
 * Cuts the record down to what says something about now, merges looks that are not separate, and puts
 * looks and events in one order. A test and a change at the same moment: the test came first (assumption).
 */
export function timelineOf(
  readings: readonly TrendReading[],
  events: readonly TrendEvent[],
  now: number,
): Timeline {
  const sortedEvents = events.filter((e) => e.at <= now).sort((a, b) => a.at - b.at);
  const merged = recentLooks(
    readings,
    sortedEvents.map((e) => e.at),
    now,
  );
  const used = [...new Set(merged.map((l) => l.instrument.id).reverse())].slice(0, MOST_INSTRUMENTS);
  const found = merged.filter((l) => used.includes(l.instrument.id));
  const start = found[0]?.at ?? now;
  const halfSpanDays = Math.min(LONGEST_HALF_SPAN_DAYS, (now - start) / 2);

  const steps: TimelineStep[] = found.map((look) => ({
    kind: "look",
    at: look.at,
    look,
    instrument: used.indexOf(look.instrument.id),
  }));
  for (const event of sortedEvents) {
    if (event.at < start) continue;
    if (event.kind === "water change") {
      steps.push({ kind: "change", at: event.at, fraction: event.fraction, newWater: event.newWater });
    } else if (event.kind === "dose") steps.push({ kind: "dose", at: event.at, rise: event.rise });
    else steps.push({ kind: "event", at: event.at, what: event.what });
  }
  if (halfSpanDays > 0) {
    steps.push({ kind: "compare", at: now - 2 * halfSpanDays, perDay: -1 / halfSpanDays });
    steps.push({ kind: "compare", at: now - halfSpanDays, perDay: 1 / halfSpanDays });
  }
  steps.sort((a, b) => a.at - b.at || Number(b.kind === "look") - Number(a.kind === "look"));
  const typicalLevel = typicalLevelOf(found);
  const usualProduction = usualProductionOf(found, typicalLevel);
  return { looks: found, steps, instruments: used, now, typicalLevel, usualProduction, halfSpanDays };
}

/** The looks that say something about now, in order of time, those that are not separate taken together. */
export function recentLooks(
  readings: readonly TrendReading[],
  eventTimes: readonly number[],
  now: number,
): readonly Look[] {
  const window = looks(recentReadings(readings, now));
  const span = now - (window[0]?.at ?? now);
  const sameLook = window.length > SETTINGS.mostLooks ? span / SETTINGS.mostLooks : 0;
  return mergedLooks(window, eventTimes, Math.max(sameLook, SETTINGS.sameLookDays));
}

/** Readings of the last days, or the last few where those are too few. */
function recentReadings(readings: readonly TrendReading[], now: number): readonly TrendReading[] {
  const isPast = (r: TrendReading) => r.at <= now;
  const recent = readings.filter((r) => isPast(r) && now - r.at <= SETTINGS.windowDays);
  if (recent.length >= SETTINGS.windowReadings) return recent;
  return readings
    .filter(isPast)
    .sort((a, b) => a.at - b.at)
    .slice(-SETTINGS.windowReadings);
}

function typicalLevelOf(looks: readonly Look[]): number {
  const middles = looks.map(middleOf).sort((a, b) => a - b);
  const middle = middles[middles.length >> 1] ?? 0;
  return Math.max(middle, Math.min(...looks.map((l) => l.least)));
}

/** A tank makes its typical level in some weeks, and an instrument is made for the levels its tanks have: the
 *  middle of its range, taken by ratio, stands for those. Assumption; it only leans on short records. */
function usualProductionOf(looks: readonly Look[], typicalLevel: number): number {
  const last = looks.at(-1);
  if (!last) return typicalLevel / SETTINGS.levelDays;
  const range = middleOfRange(last) ?? typicalLevel;
  const share = SETTINGS.rangeShare;
  return (typicalLevel ** (1 - share) * range ** share) / SETTINGS.levelDays;
}

function middleOfRange(look: Look): number | undefined {
  const { instrument } = look;
  const top = instrument.kind === "chart" ? instrument.steps.at(-1) : instrument.highest;
  return top === undefined ? undefined : Math.sqrt(look.least * top);
}
