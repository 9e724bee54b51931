import { unitText } from "../core/log/parameters.ts";
import type { CoursePoint } from "../core/trends/course.ts";
import type { ChartBand, ChartEvent, ChartLevel, ChartSpec } from "./chart.ts";
import type { Context } from "./context.ts";
import { type DatedEvent, momentOf, type TrendRecord } from "./trend-record.ts";
import type { WantedRange } from "./wanted-range.ts";

/** How far back a picture goes, days; a shorter record is shown whole. */
const LONGEST_DAYS = 150;
const SHORTEST_DAYS = 10;
/** Room before the first reading, as a share of the days shown. */
const MARGIN = 0.03;

export interface TrendPicture {
  readonly altText: string;
  readonly wanted?: WantedRange | undefined;
  readonly limit?: number | undefined;
  /** How far ahead it goes, days. */
  readonly aheadDays: number;
  readonly fitted?: ChartBand | undefined;
  readonly forecasts: readonly ChartBand[];
}

/** The day from which a picture of this record starts. */
export function firstDayShown({ readings, now }: TrendRecord): number {
  const first = Math.min(now, ...readings.map(({ at }) => at));
  return Math.min(now - SHORTEST_DAYS, Math.max(first, now - LONGEST_DAYS));
}

/** One parameter through time: readings as what they are, events, the wanted range, and what is made of it. */
export function trendChart(record: TrendRecord, picture: TrendPicture, { now, member }: Context): ChartSpec {
  const { parameter } = record;
  const { wanted, fitted, limit } = picture;
  const fromDay = firstDayShown(record);
  const from = momentOf(fromDay - MARGIN * (record.now - fromDay));
  const unit = unitText(parameter);
  return {
    altText: picture.altText,
    from,
    until: Math.max(momentOf(record.now + picture.aheadDays), now + 3_600_000),
    now,
    zone: member.zone,
    events: record.dated.filter(({ at }) => momentOf(at) >= from).flatMap(chartEvent),
    panels: [
      {
        axisTitle: unit === "" ? parameter.name : `${parameter.name}, ${unit}`,
        series: record.series.map(({ name, marks }) => ({
          name,
          marks: marks.filter(({ at }) => at >= from),
        })),
        ...(fitted === undefined ? {} : { fitted }),
        forecasts: picture.forecasts,
        ...(wanted === undefined ? {} : { target: endsOf(wanted) }),
        ...(limit === undefined ? {} : { limit }),
      },
    ],
  };
}

export function endsOf({ low, high }: WantedRange): { readonly low?: number; readonly high?: number } {
  return { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
}

/** Course points as a band: the range that holds the level four times in five. */
export function bandFrom(name: string, points: readonly CoursePoint[]): ChartBand {
  return {
    name,
    levels: points.map(
      ({ at, band }): ChartLevel => ({
        at: momentOf(at),
        low: band.low80,
        middle: band.best,
        high: band.high80,
      }),
    ),
  };
}

/** Words of our own: what a member wrote may be in letters the font has not. */
const EVENT_WORDS: Readonly<Partial<Record<DatedEvent["kind"], string>>> = {
  dose: "dose",
  harvest: "harvest",
  "media change": "media",
  "livestock in": "stock in",
  "livestock out": "stock out",
  death: "death",
  "equipment on": "on",
  "equipment off": "off",
};

function chartEvent({ at, kind, event }: DatedEvent): readonly ChartEvent[] {
  const label =
    event.kind === "water change"
      ? `${Math.round(event.fraction * 100)} %`
      : kind === "water change"
        ? "change"
        : EVENT_WORDS[kind];
  return label === undefined ? [] : [{ at: momentOf(at), label }];
}
