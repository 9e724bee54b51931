import type { Parameter } from "../../src/core/log/parameters.ts";
import { type Place, placeInRange } from "../../src/core/log/place-in-range.ts";
import { trendAnswer } from "../../src/core/trends/trend-answer.ts";
import type { ChartMark } from "../../src/kit/chart.ts";
import type { TrendRecord } from "../../src/kit/trend-record.ts";
import type { WantedRange } from "../../src/kit/wanted-range.ts";
import { toldTrend } from "../trend/plain.ts";
import { BALANCED, likely, sayDays, sayRate } from "../trend/words.ts";

/** What one parameter did in the days looked at. */
export interface Finding {
  readonly record: TrendRecord;
  /** Oldest first; those of the days looked at. */
  readonly marks: readonly ChartMark[];
  readonly wanted: WantedRange | undefined;
  /** Of the newest reading. */
  readonly place: Place;
  /** Moment of the first reading of the unbroken row that stands there. */
  readonly since: number;
  /** Where it is heading, in words, when that can be told and matters. */
  readonly heading: string | undefined;
}

/** Every reading of the days looked at; undefined when there was none. */
export function findingOf(
  record: TrendRecord,
  wanted: WantedRange | undefined,
  from: number,
): Finding | undefined {
  const marks = record.series
    .flatMap((series) => series.marks)
    .filter(({ at }) => at >= from)
    .sort((a, b) => a.at - b.at);
  const last = marks.at(-1);
  if (last === undefined) return undefined;
  const placeOf = (mark: ChartMark): Place =>
    wanted === undefined ? "cannot tell" : placeInRange(endsOf(mark), wanted);
  const place = placeOf(last);
  const firstElsewhere = marks.findLastIndex((mark) => placeOf(mark) !== place);
  return {
    record,
    marks,
    wanted,
    place,
    since: marks[firstElsewhere + 1]?.at ?? last.at,
    heading: headingOf(record, wanted, place),
  };
}

/** What a reading may stand for. */
function endsOf(mark: ChartMark): { readonly low: number; readonly high: number } {
  switch (mark.kind) {
    case "point":
      return { low: mark.value, high: mark.value };
    case "interval":
      return { low: mark.low, high: mark.high };
    case "at least":
      return { low: mark.low, high: Number.POSITIVE_INFINITY };
    case "below":
      return { low: Math.min(0, mark.high), high: mark.high };
  }
}

/** The lowest and the highest that any of the readings may stand for; an open end counts by its known one. */
export function spanOf(marks: readonly ChartMark[]): { readonly low: number; readonly high: number } {
  const ends = marks.flatMap((mark) => Object.values(endsOf(mark))).filter(Number.isFinite);
  return { low: Math.min(...ends), high: Math.max(...ends) };
}

/** A single figure to show the shape by. */
export function figureOf(mark: ChartMark): number {
  const { low, high } = endsOf(mark);
  return Number.isFinite(high) ? (low + high) / 2 : low;
}

/** "33", "15–30", "<5", "≥120". */
export function showMark(mark: ChartMark, show: (value: number) => string): string {
  switch (mark.kind) {
    case "point":
      return show(mark.value);
    case "interval":
      return `${show(mark.low)}–${show(mark.high)}`;
    case "at least":
      return `≥${show(mark.low)}`;
    case "below":
      return `<${show(mark.high)}`;
  }
}

const SOON_DAYS = 60;

function headingOf(record: TrendRecord, wanted: WantedRange | undefined, place: Place): string | undefined {
  const subject = record.parameter;
  return BALANCED.has(subject.id)
    ? balanceHeading(record, wanted, subject)
    : place === "inside"
      ? driftHeading(record, wanted, subject)
      : undefined;
}

function balanceHeading(
  record: TrendRecord,
  wanted: WantedRange | undefined,
  subject: Parameter,
): string | undefined {
  const answer = trendAnswer({ ...record, limit: wanted?.high });
  if (answer.kind === "no-answer" || answer.value.leftAlone.firmness === "cannot tell") return undefined;
  const { productionPerDay, leftAlone, limit } = answer.value;
  const rate = sayRate(likely(productionPerDay), leftAlone, "a day", subject);
  const crossing = limit?.onPlan ?? limit?.withoutChanges;
  const when =
    crossing === undefined || crossing.chanceNow > 0.5 || !(crossing.middleDays < SOON_DAYS)
      ? ""
      : `; ${limit?.onPlan === undefined ? "left alone" : "with your changes"} it leaves the range ${sayDays(crossing.middleDays, crossing.earlyDays)}`;
  return `${subject.name}: ${lowered(rate)} if left alone${when}.`;
}

function driftHeading(
  record: TrendRecord,
  wanted: WantedRange | undefined,
  subject: Parameter,
): string | undefined {
  const target = {
    low: wanted?.low ?? Number.NEGATIVE_INFINITY,
    high: wanted?.high ?? Number.POSITIVE_INFINITY,
  };
  const answer = toldTrend({ ...record, target });
  if (answer.kind === "no-answer") return undefined;
  const { slopePerDay, direction, target: found } = answer.value;
  if (direction.firmness === "cannot tell" || found === undefined || !(found.leavesInDays < SOON_DAYS))
    return undefined;
  const { low80, best, high80 } = slopePerDay;
  const rate = sayRate({ low: low80, best, high: high80 }, direction, "a week", subject);
  return `${subject.name}: ${lowered(rate)}; at this rate it leaves the range ${sayDays(found.leavesInDays, found.leavesEarliestDays)}.`;
}

function lowered(text: string): string {
  return `${text.slice(0, 1).toLowerCase()}${text.slice(1)}`;
}
