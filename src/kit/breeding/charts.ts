import { DateTime } from "luxon";
import type { BatchSurvival } from "../../core/breeding/batch-survival.ts";
import type { Batch, Culture } from "../../core/breeding/ledger/state.ts";
import type { ChartMark, ChartSpec } from "../chart.ts";
import { percentText } from "./say.ts";

const DAY_MS = 86_400_000;

/** Noon of a day where the group lives. */
function noonOf(day: string, zone: string): number {
  return DateTime.fromISO(day, { zone }).set({ hour: 12 }).toMillis();
}

/** The share alive through time: the curve in steps with its band, and the counts as marks. */
export function survivalChart(batch: Batch, survival: BatchSurvival, zone: string, now: number): ChartSpec {
  const levels = survival.points.map(({ day, low, best, high }) => ({
    at: noonOf(day, zone),
    low: 100 * low,
    middle: 100 * best,
    high: 100 * high,
  }));
  const from = levels[0]?.at ?? now;
  const until = Math.max(levels.at(-1)?.at ?? now, from + DAY_MS);
  const stages = batch.stages.slice(1).map(({ stage, day }) => ({ at: noonOf(day, zone), label: stage }));
  return {
    altText: `Of ${survival.start} at the start ${percentText(survival.now.best)} are alive after ${survival.days} days (${percentText(survival.now.low)} to ${percentText(survival.now.high)}).`,
    from,
    until,
    now: until,
    zone,
    panels: [
      {
        axisTitle: "alive, % of those at risk",
        series: [],
        fitted: { name: "survival, with its range", levels },
        forecasts: [],
      },
    ],
    events: stages.filter(({ at }) => at >= from && at <= until),
  };
}

/** A culture's density through time, each count with its range, harvests as events. */
export function cultureChart(culture: Culture, zone: string, now: number): ChartSpec {
  // Points, with their ranges in the band: the legend's word for a bar is a colour step's.
  const marks = culture.counts.map(
    ({ at, best }): ChartMark => ({ kind: "point", at: Date.parse(at), value: best }),
  );
  const first = culture.counts[0];
  const last = culture.counts.at(-1);
  const from = first === undefined ? now - DAY_MS : Date.parse(first.at);
  return {
    altText:
      first === undefined || last === undefined
        ? "Not counted yet."
        : `From ${Number(first.best.toPrecision(3))} to ${Number(last.best.toPrecision(3))} per mL over ${culture.counts.length} counts.`,
    from: from - DAY_MS / 4,
    until: Math.max(now, from + DAY_MS),
    now: Math.max(now, from + DAY_MS),
    zone,
    panels: [
      {
        axisTitle: `${culture.organism}, per mL`,
        series: [{ name: "counts", marks }],
        fitted: {
          name: "counts, with their range",
          levels: culture.counts.map(({ at, low, best, high }) => ({
            at: Date.parse(at),
            low,
            middle: best,
            high,
          })),
        },
        forecasts: [],
      },
    ],
    events: culture.harvests
      .filter(({ at }) => Date.parse(at) >= from)
      .map(({ at }) => ({ at: Date.parse(at), label: "harvest" })),
  };
}
