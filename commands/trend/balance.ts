import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import { waterChange } from "../../src/core/trends/balance.ts";
import { type Course, trendCourse } from "../../src/core/trends/course.ts";
import type { Crossing } from "../../src/core/trends/limit-crossing.ts";
import { type TrendAnswer, type TrendQuestion, trendAnswer } from "../../src/core/trends/trend-answer.ts";
import type { ChartSpec } from "../../src/kit/chart.ts";
import { answerReply, type Context, counted, type Reply } from "../../src/kit/index.ts";
import { bandFrom, firstDayShown, trendChart } from "../../src/kit/trend-chart.ts";
import type { TrendRecord } from "../../src/kit/trend-record.ts";
import { unhurried } from "../../src/kit/unhurried.ts";
import { showRange, type WantedRange } from "../../src/kit/wanted-range.ts";
import { likely, sayChance, sayDays, sayRate, showLevel } from "./words.ts";

export interface BalanceWish {
  readonly title: string;
  readonly wanted: WantedRange | undefined;
  /** A level not to be passed, when one was given. */
  readonly limit: Estimate | undefined;
  readonly aheadDays: number;
}

/** The trend of something a tank makes and water changes take away. */
export async function balanceReply(record: TrendRecord, wish: BalanceWish, context: Context): Promise<Reply> {
  const limit = wish.limit?.best ?? wish.wanted?.high;
  const question: TrendQuestion = { ...record, limit, forecastDays: wish.aheadDays };
  const answer = trendAnswer(question);
  const course =
    answer.kind === "answer" ? await unhurried(trendCourse(question, firstDayShown(record))) : undefined;
  const reply = answerReply(answer, context, {
    title: wish.title,
    headline: (it) => headline(it, record),
    body: (it) => [...bodyOf(it, record, limit), ...record.remarks],
    chart: (it) => chartOf(record, wish, course, altText(it, record, wish), context),
  });
  if (reply.ok || record.readings.length === 0) return reply;
  const chart = chartOf(record, wish, undefined, `${heading(record)}: too little for a rate yet.`, context);
  return { ...reply, body: [...reply.body, ...record.remarks], chart };
}

function headline(it: TrendAnswer, { parameter }: TrendRecord): string {
  const rate = sayRate(likely(it.productionPerDay), it.leftAlone, "a day", parameter);
  return it.basis.changes === 0 ? rate : `${rate}, left alone between water changes`;
}

function bodyOf(it: TrendAnswer, { parameter }: TrendRecord, limit: number | undefined): readonly string[] {
  const { basis, level, plan } = it;
  const changes =
    basis.changes === 0
      ? "with no water change logged"
      : `taking ${counted(basis.changes, "water change")} as logged`;
  return [
    `Now about ${showLevel(likely(it.levelNow), parameter)}, from ${counted(basis.readings, "test")} over ${Math.round(basis.fromDaysAgo)} days, ${changes}. The ranges hold four times in five.`,
    ...(basis.changes > 0 && level.firmness !== "cannot tell"
      ? [
          `Changes included, the level itself ${level.firmness === "probably" ? "is probably" : "is"} ${level.way} (last ${Math.round(level.stretchDays)} days against those before).`,
        ]
      : []),
    ...(it.limit === undefined ? [] : limitLines(it, it.limit, parameter.unit)),
    ...(plan === undefined && limit !== undefined
      ? ["No habit of water changes is in the log; /change routine works one out."]
      : []),
    ...readingLine(it),
  ];
}

function limitLines(
  { plan, forecast }: TrendAnswer,
  limit: NonNullable<TrendAnswer["limit"]>,
  unit: string,
): readonly string[] {
  const { value, withoutChanges, onPlan, needed } = limit;
  const edge = `${showNumber(value, 3)} ${unit}`;
  const alone = crossingLine("Left alone, it", withoutChanges, edge);
  if (plan === undefined || needed === undefined || onPlan === undefined) return [alone];
  const share = `${showNumber(plan.fraction * 100, 2)} %`;
  const every = showNumber(plan.everyDays, 2);
  const peak = needed.settledPeak.best;
  const trough = waterChange(peak, plan.fraction, plan.newWater);
  const isEnough = needed.chancePeakAbove < 0.1;
  return [
    alone,
    `Your ${share} every ${every} days settles it between about ${showNumber(trough, 2)} and ${showNumber(peak, 2)} ${unit}.`,
    ...(onPlan.chanceNow > 0.9 ? [] : [crossingLine("On that plan it", onPlan, edge)]),
    ...(isEnough ? [] : [enoughLine(needed, edge, share, every)]),
    ...(needed.changesFirst !== undefined && needed.changesFirst > 0
      ? [
          `It is above ${edge} now: ${counted(needed.changesFirst, "change")} of ${share} in a row, tested between, would bring it under.`,
        ]
      : []),
    ...(forecast.onPlan === undefined
      ? []
      : [
          `On it the level is about ${showNumber(forecast.onPlan.low80, 2)}–${showNumber(forecast.onPlan.high80, 2)} ${unit} in ${showNumber(forecast.days, 2)} days.`,
        ]),
  ];
}

function enoughLine(
  { fraction, everyDays }: NonNullable<NonNullable<TrendAnswer["limit"]>["needed"]>,
  edge: string,
  share: string,
  every: string,
): string {
  const ways = [
    ...(fraction === undefined ? [] : [`${Math.ceil(fraction * 100)} % every ${every} days`]),
    ...(everyDays === undefined || everyDays < 1 ? [] : [`${share} every ${Math.floor(everyDays)} days`]),
  ];
  return ways.length === 0
    ? `No water change every ${every} days keeps it under ${edge}: change more often, or find what makes so much.`
    : `To stay under ${edge}, nine times in ten: ${ways.join(", or ")}.`;
}

function crossingLine(subject: string, crossing: Crossing, edge: string): string {
  const { chanceNow, chanceWithin, middleDays, earlyDays, horizonDays } = crossing;
  if (chanceNow > 0.9) return `${subject} stands above ${edge} now.`;
  if (chanceNow > 0.1) return `${subject} may stand above ${edge} already (${sayChance(chanceNow)}).`;
  if (chanceWithin < 0.1) return `${subject} stays under ${edge}.`;
  if (!Number.isFinite(middleDays))
    return `${subject} probably stays under ${edge} (${sayChance(chanceWithin)} of passing it within ${Math.round(horizonDays)} days).`;
  return `${subject} passes ${edge} ${sayDays(middleDays, earlyDays)}.`;
}

/** What the chart will read, which comes in steps. */
function readingLine({ forecast }: TrendAnswer): readonly string[] {
  const [first, second] = forecast.reading;
  if (first === undefined) return [];
  const also = second === undefined || second.chance < 0.15 ? "" : `, perhaps ${showNumber(second.value)}`;
  return [
    `A test in ${showNumber(forecast.days, 2)} days will most likely read ${showNumber(first.value)}${also}.`,
  ];
}

function heading({ parameter, readings }: TrendRecord): string {
  return `${parameter.name}, ${counted(readings.length, "reading")}`;
}

function altText(it: TrendAnswer, record: TrendRecord, { wanted }: BalanceWish): string {
  const range =
    wanted === undefined ? "" : ` Wanted: ${showRange(wanted, record.parameter)} (${wanted.from}).`;
  return `${heading(record)}. ${headline(it, record)}; now about ${showLevel(likely(it.levelNow), record.parameter)}.${range}`;
}

export function chartOf(
  record: TrendRecord,
  { wanted, limit, aheadDays }: BalanceWish,
  course: Course | undefined,
  alt: string,
  context: Context,
): ChartSpec {
  const bands =
    course === undefined
      ? { forecasts: [] }
      : {
          fitted: bandFrom("likely level (4 times in 5)", course.past),
          forecasts: [
            bandFrom("left alone", course.withoutChanges),
            ...(course.onPlan === undefined ? [] : [bandFrom("with your changes", course.onPlan)]),
          ],
        };
  const picture = {
    altText: alt,
    wanted,
    limit: limit?.best,
    aheadDays: course === undefined ? 0 : aheadDays,
    ...bands,
  };
  return trendChart(record, picture, context);
}
