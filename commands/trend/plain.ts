import { showNumber } from "../../src/core/quantity/show.ts";
import { type Answer, type NoAnswer, noAnswer } from "../../src/core/result.ts";
import { driftLine } from "../../src/core/trends/drift-line.ts";
import { type PlainQuestion, type PlainTrend, plainTrend } from "../../src/core/trends/plain-trend.ts";
import type { ChartBand } from "../../src/kit/chart.ts";
import { answerReply, type Context, counted, listed, type Reply } from "../../src/kit/index.ts";
import { ago } from "../../src/kit/tank-figures.ts";
import { trendChart } from "../../src/kit/trend-chart.ts";
import { momentOf, type TrendRecord } from "../../src/kit/trend-record.ts";
import { showRange } from "../../src/kit/wanted-range.ts";
import type { BalanceWish } from "./balance.ts";
import { sayDays, sayRate } from "./words.ts";

/** The drift of something without a balance to keep: pH, temperature, salinity, hardness. */
export function plainReply(record: TrendRecord, wish: BalanceWish, context: Context): Reply {
  const { wanted, limit } = wish;
  const target = {
    low: wanted?.low ?? Number.NEGATIVE_INFINITY,
    high: limit?.best ?? wanted?.high ?? Number.POSITIVE_INFINITY,
  };
  const answer = toldTrend({ ...record, target });
  const picture = (
    altText: string,
    bands: { fitted?: ChartBand; forecasts: readonly ChartBand[] },
    aheadDays: number,
  ) => trendChart(record, { altText, wanted, limit: limit?.best, aheadDays, ...bands }, context);
  const reply = answerReply(answer, context, {
    title: wish.title,
    headline: (it) => rateOf(it, record),
    body: (it) => [...bodyOf(it, record, wish, context), ...record.remarks],
    chart: (it) => {
      const line = driftLine(it, wish.aheadDays).map(({ inDays, ...level }) => ({
        at: momentOf(record.now + inDays),
        ...level,
      }));
      const band = (name: string, isPast: boolean): ChartBand => ({
        name,
        levels: line.filter(({ at }) => (isPast ? at <= context.now : at >= context.now)),
      });
      const text = `${record.parameter.name}, ${counted(record.readings.length, "reading")}. ${rateOf(it, record)}; now about ${levelOf(it, record)}.`;
      return picture(
        text,
        { fitted: band("drift", true), forecasts: [band("if it goes on", false)] },
        wish.aheadDays,
      );
    },
  });
  if (reply.ok || record.readings.length === 0) return reply;
  const text = `${record.parameter.name}, ${counted(record.readings.length, "reading")}: too little for a trend yet.`;
  return { ...reply, chart: picture(text, { forecasts: [] }, 0) };
}

/** No slope of anything in a tank is as steep as this a day: a range that wide is no range. */
const FREE_PER_DAY = 1e6;

/** The drift, or what to measure when open-ended readings leave its slope free. */
export function toldTrend(question: PlainQuestion): Answer<PlainTrend> | NoAnswer {
  const answer = plainTrend(question);
  if (answer.kind === "no-answer") return answer;
  const { slopePerDay, readings, fromDaysAgo } = answer.value;
  const isBound = [slopePerDay.low80, slopePerDay.high80].every((slope) => Math.abs(slope) < FREE_PER_DAY);
  return isBound
    ? answer
    : noAnswer("trend-too-few", { readings, days: fromDaysAgo, waitDays: 7 }, answer.cautions);
}

function rateOf({ slopePerDay, direction }: PlainTrend, { parameter }: TrendRecord): string {
  const { low80, best, high80 } = slopePerDay;
  return sayRate({ low: low80, best, high: high80 }, direction, "a week", parameter);
}

function levelOf({ levelNow }: PlainTrend, { parameter }: TrendRecord): string {
  return `${showNumber(levelNow, 3)} ${parameter.unit === "pH" ? "" : parameter.unit}`.trim();
}

function bodyOf(it: PlainTrend, record: TrendRecord, wish: BalanceWish, context: Context): readonly string[] {
  return [
    `Now about ${levelOf(it, record)}, from ${counted(it.readings, "test")} over ${Math.round(it.fromDaysAgo)} days.`,
    ...targetLines(it, record, wish),
    ...stepLines(it, record, context),
    ...it.offsets
      .filter(({ pairs }) => pairs > 0)
      .map(
        ({ instrument, difference, pairs }) =>
          `${instrument} reads ${showNumber(Math.abs(difference), 2)} ${difference < 0 ? "less" : "more"} than ${it.instrument} (${counted(pairs, "test")} side by side); it is left out of the drift.`,
      ),
  ];
}

function targetLines(
  { target }: PlainTrend,
  { parameter }: TrendRecord,
  { wanted }: BalanceWish,
): readonly string[] {
  if (target === undefined || wanted === undefined) return [];
  const range = `${showRange(wanted, parameter)} (${wanted.from})`;
  if (target.place !== "inside") return [`That is ${target.place} ${range}.`];
  const inside = `That is within ${range}.`;
  return Number.isFinite(target.leavesInDays) && target.leavesInDays < 365
    ? [
        inside,
        `At this rate it leaves that range ${sayDays(target.leavesInDays, target.leavesEarliestDays)}.`,
      ]
    : [inside];
}

function stepLines({ step }: PlainTrend, { now }: TrendRecord, context: Context): readonly string[] {
  if (step === undefined) return [];
  const when = ago(new Date(momentOf(now - step.daysAgo)).toISOString(), context.now);
  const what =
    step.what.length === 0
      ? "Nothing is logged between those two tests."
      : `Logged between the two tests: ${listed(step.what)}.`;
  return [
    `It may be a jump rather than a drift: about ${showNumber(step.before, 3)} before and ${showNumber(step.after, 3)} from ${when} on. ${what}`,
  ];
}
