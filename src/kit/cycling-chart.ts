import type { CyclingDay } from "../core/nitrogen/cycling.ts";
import type { CyclingReading } from "../core/nitrogen/cycling-input.ts";
import type { ChartMark, ChartPanel, ChartSpec } from "./chart.ts";

const DAY_MS = 86_400_000;

interface CyclingCourse {
  readonly curve: readonly CyclingDay[];
  readonly readings: readonly CyclingReading[];
  /** The last day drawn. */
  readonly lastDay: number;
  /** When the first ammonia went in; the day of the last reading is today when nobody said. */
  readonly started: string | undefined;
  readonly now: number;
  readonly zone: string;
  /** The finding in words. */
  readonly finding: string;
}

/** The expected course of a new filter with its spread, and the readings that it was weighed against. */
export function cyclingChart(course: CyclingCourse): ChartSpec {
  const readSoFar = Math.max(0, ...course.readings.map(({ day }) => day));
  const start = course.started === undefined ? course.now - readSoFar * DAY_MS : Date.parse(course.started);
  const moment = (day: number): number => start + day * DAY_MS;
  const days = course.curve.filter(({ day }) => day <= course.lastDay);
  const panel = (kind: "ammonia" | "nitrite" | "nitrate", axisTitle: string): ChartPanel => ({
    axisTitle,
    series: [
      {
        name: kind,
        marks: course.readings
          .filter((reading) => reading.kind === kind)
          .map(({ day, value }): ChartMark => markOf(moment(day), value)),
      },
    ],
    forecasts: [
      {
        name: "expected, four times in five",
        levels: days.map((each) => {
          const { low, best, high } = each[kind];
          return { at: moment(each.day), low, middle: best, high };
        }),
      },
    ],
  });
  return {
    altText: course.finding,
    from: start,
    until: moment(course.lastDay),
    now: course.now,
    zone: course.zone,
    panels: [
      panel("ammonia", "ammonia, mg/L as nitrogen"),
      panel("nitrite", "nitrite, mg/L as nitrogen"),
      panel("nitrate", "nitrate, mg/L as nitrogen"),
    ],
    events: [],
  };
}

function markOf(at: number, { low, best, high }: CyclingReading["value"]): ChartMark {
  return low === high ? { kind: "point", at, value: best } : { kind: "interval", at, low, high };
}
