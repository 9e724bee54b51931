import { chartCells } from "./chart-cells.ts";
import type { Interval } from "./turnbull.ts";

/** What a test was read from. One physical kit is one instrument: two kits of one make have two ids. */
export type Instrument =
  | { readonly id: string; readonly kind: "chart"; readonly steps: readonly number[] }
  | {
      readonly id: string;
      readonly kind: "meter";
      /** Scatter that does not grow with the level, in the reading's unit. */
      readonly fixedSd: number;
      /** Scatter as a share of the level. */
      readonly levelSd: number;
      /** Readings below this say only that. */
      readonly lowest?: number;
      /** Readings at this or above say only "at least". */
      readonly highest?: number;
    };

/** One water test. */
export interface TrendReading {
  /** Days since any fixed moment, with hours as parts of a day. */
  readonly at: number;
  readonly value: number;
  /** Written as "<5" or "≥160". */
  readonly bound?: "below" | "at least";
  readonly instrument: Instrument;
}

/** Something dated that happened to the tank. */
export type TrendEvent =
  | {
      readonly kind: "water change";
      readonly at: number;
      /** Share of the water replaced, 0–1. */
      readonly fraction: number;
      /** Level in the new water. */
      readonly newWater: number;
    }
  /** Something that raised the level at once. */
  | { readonly kind: "dose"; readonly at: number; readonly rise: number }
  /** Something that may have changed production: stock, food, filter. `what` names it to the member. */
  | { readonly kind: "other"; readonly at: number; readonly what: string };

/** A reading as the interval it stands for; a meter's value has equal ends. */
export interface Look extends Interval {
  readonly at: number;
  readonly instrument: Instrument;
  /** What the member wrote. */
  readonly value: number;
  /** Cells a slip could have landed on; a meter counts as 20. */
  readonly cells: number;
  /** The least level the instrument tells from nothing. */
  readonly least: number;
}

const METER_CELLS = 20;

/** The steps a member in fact reads a chart by: with the half-way values added once he has used one. */
function stepsInUse(steps: readonly number[], readings: readonly TrendReading[]): readonly number[] {
  const known = new Set(steps);
  const top = steps.at(-1) ?? 0;
  const hasBetween = readings.some((r) => r.bound === undefined && !known.has(r.value) && r.value < top);
  return hasBetween
    ? steps.flatMap((s, i) => (i === 0 ? [s] : [(s + (steps[i - 1] as number)) / 2, s]))
    : steps;
}

/** Turns readings, in any order, into looks in order of time. */
export function looks(readings: readonly TrendReading[]): Look[] {
  const byChart = new Map<string, TrendReading[]>();
  for (const reading of readings) {
    const others = byChart.get(reading.instrument.id);
    if (others) others.push(reading);
    else byChart.set(reading.instrument.id, [reading]);
  }
  const found: Look[] = [];
  for (const own of byChart.values()) {
    const instrument = (own[0] as TrendReading).instrument;
    if (instrument.kind === "meter") {
      for (const r of own) found.push(meterLook(r, instrument));
    } else {
      const steps = stepsInUse(instrument.steps, own);
      const cells = chartCells(steps);
      const least = leastOf(instrument);
      for (const r of own) found.push(chartLook(r, instrument, steps, cells, least));
    }
  }
  return isInOrder(found) ? found : found.sort((a, b) => a.at - b.at);
}

function isInOrder(found: readonly Look[]): boolean {
  for (let i = 1; i < found.length; i += 1) {
    if ((found[i] as Look).at < (found[i - 1] as Look).at) return false;
  }
  return true;
}

function meterLook(reading: TrendReading, instrument: Extract<Instrument, { kind: "meter" }>): Look {
  const { at, value, bound } = reading;
  const base = { at, instrument, value, cells: METER_CELLS, least: leastOf(instrument) };
  if (bound === "below" || value < (instrument.lowest ?? Number.NEGATIVE_INFINITY)) {
    const high = bound === "below" ? value : (instrument.lowest ?? value);
    return { ...base, low: Number.NEGATIVE_INFINITY, high };
  }
  if (bound === "at least" || value >= (instrument.highest ?? Number.POSITIVE_INFINITY)) {
    return { ...base, low: Math.min(value, instrument.highest ?? value), high: Number.POSITIVE_INFINITY };
  }
  return { ...base, low: value, high: value };
}

function chartLook(
  reading: TrendReading,
  instrument: Extract<Instrument, { kind: "chart" }>,
  steps: readonly number[],
  cells: readonly Interval[],
  least: number,
): Look {
  const { at, value, bound } = reading;
  const base = { at, instrument, value, cells: cells.length, least };
  if (bound === "below") return { ...base, low: Number.NEGATIVE_INFINITY, high: value };
  let nearest = 0;
  steps.forEach((step, i) => {
    if (Math.abs(step - value) < Math.abs((steps[nearest] as number) - value)) nearest = i;
  });
  const cell = cells[nearest] as Interval;
  return { ...base, low: cell.low, high: bound === "at least" ? Number.POSITIVE_INFINITY : cell.high };
}

function leastOf(instrument: Instrument): number {
  if (instrument.kind === "chart") return instrument.steps.find((step) => step > 0) ?? 1;
  return Math.max(instrument.fixedSd, instrument.lowest ?? 0, Number.EPSILON);
}

/** Whether the look only says "at least". */
export function isAtTop(look: Interval): boolean {
  return look.high === Number.POSITIVE_INFINITY;
}

/** Whether the look only says "less than". */
export function isAtBottom(look: Interval): boolean {
  return look.low === Number.NEGATIVE_INFINITY;
}

/** A single figure to plot or to scale by; never used as the level itself. */
export function middleOf(look: Look): number {
  if (isAtBottom(look)) return Math.max(0, look.high / 2);
  return isAtTop(look) ? Math.max(look.low, look.value) : (look.low + look.high) / 2;
}

/**
 * Takes looks within `withinDays` of each other, from one instrument, as one: cells are intersected, or
 * joined when they contradict each other; meter values are averaged. Nothing is joined across an event.
 */
export function mergedLooks(
  inOrder: readonly Look[],
  eventTimes: readonly number[],
  withinDays: number,
): Look[] {
  const merged: Look[] = [];
  let event = 0;
  let first = 0;
  let count = 0;
  for (const look of inOrder) {
    let crossed = false;
    while (event < eventTimes.length && (eventTimes[event] as number) < look.at) {
      event += 1;
      crossed = true;
    }
    const last = merged.at(-1);
    if (last && !crossed && last.instrument.id === look.instrument.id && look.at - first <= withinDays) {
      count += 1;
      merged[merged.length - 1] = together(last, look, count);
    } else {
      merged.push(look);
      first = look.at;
      count = 1;
    }
  }
  return merged;
}

function together(a: Look, b: Look, count: number): Look {
  const base = { ...a, at: a.at + (b.at - a.at) / count, value: a.value + (b.value - a.value) / count };
  if (a.low === a.high && b.low === b.high) return { ...base, low: base.value, high: base.value };
  const low = Math.max(a.low, b.low);
  const high = Math.min(a.high, b.high);
  if (low < high) return { ...base, low, high };
  return { ...base, low: Math.min(a.low, b.low), high: Math.max(a.high, b.high) };
}
