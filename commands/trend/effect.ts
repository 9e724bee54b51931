import { DateTime } from "luxon";
import { showNumber } from "../../src/core/quantity/show.ts";
import { trendCourse } from "../../src/core/trends/course.ts";
import type { ChangeEffect, EventEffect } from "../../src/core/trends/event-effect.ts";
import { eventAnswer, type TrendQuestion } from "../../src/core/trends/trend-answer.ts";
import { answerReply, type Context, listed, quoted, type Reply, UserError } from "../../src/kit/index.ts";
import { firstDayShown } from "../../src/kit/trend-chart.ts";
import { type DatedEvent, momentOf, type TrendRecord } from "../../src/kit/trend-record.ts";
import { unhurried } from "../../src/kit/unhurried.ts";
import { readWhen } from "../../src/kit/when-option.ts";
import { type BalanceWish, chartOf } from "./balance.ts";
import { likely, showLevel, showRough } from "./words.ts";

/** The logged event a member means: by its words ("harvest"), or by its day. Throws: UserError when there is none. */
export function eventMeant(text: string, record: TrendRecord, context: Context): DatedEvent {
  const { member, now } = context;
  const wanted = text.toLowerCase();
  const named = record.dated.find(
    ({ readAs, kind }) => readAs.toLowerCase().includes(wanted) || kind === wanted,
  );
  if (named !== undefined) return named;
  const when = readWhen(text, member, now);
  const dayOf = (at: number): string =>
    DateTime.fromMillis(momentOf(at), { zone: member.zone }).toISODate() ?? "";
  if (when.kind === "read") {
    const day = DateTime.fromISO(when.value, { zone: member.zone }).toISODate();
    const thatDay = record.dated.filter(({ at }) => dayOf(at) === day);
    // Changes of water have their own arithmetic; what else was done that day is what is asked about.
    const found = thatDay.find(({ event }) => event.kind === "other") ?? thatDay[0];
    if (found !== undefined) return found;
  }
  const latest = record.dated.slice(0, 5).map(({ at, readAs }) => `${readAs} (${dayOf(at)})`);
  throw new UserError(
    "not-found",
    `Nothing logged matches ${quoted(text)}. ${latest.length === 0 ? "No event is logged for this tank yet: /log takes them, e.g. “harvested 200 g”." : `The latest are: ${listed(latest)}.`}`,
  );
}

/** What one dated change did, and what else happened that week. */
export async function effectReply(
  record: TrendRecord,
  meant: DatedEvent,
  wish: BalanceWish,
  context: Context,
): Promise<Reply> {
  const { event } = meant;
  if (event.kind === "dose")
    throw new UserError("not-now", "What a dose raises at once is no effect to be weighed.");
  const events = record.events.includes(event) ? record.events : [...record.events, event];
  const question: TrendQuestion = { ...record, events };
  const answer = eventAnswer(question, event);
  const course =
    answer.kind === "answer" ? await unhurried(trendCourse(question, firstDayShown(record))) : undefined;
  const day = DateTime.fromMillis(momentOf(meant.at), { zone: context.member.zone }).toFormat("d MMM yyyy", {
    locale: "en",
  });
  const title = `${wish.title} since ${meant.readAs} (${day})`;
  const alt = (finding: string): string =>
    `${record.parameter.name} before and after ${day}, ${record.readings.length} readings. ${finding}`;
  const reply = answerReply(answer, context, {
    title,
    headline: (it) => (it.kind === "event" ? eventHeadline(it) : changeHeadline(it, record)),
    body: (it) => [
      ...(it.kind === "event" ? eventLines(it) : changeLines(it, record)),
      ...alsoLines(it.alsoThatWeek),
      ...record.remarks,
    ],
    chart: (it) =>
      chartOf(
        record,
        wish,
        course,
        alt(it.kind === "event" ? eventHeadline(it) : changeHeadline(it, record)),
        context,
      ),
  });
  return reply.ok || record.readings.length === 0
    ? reply
    : { ...reply, chart: chartOf(record, wish, undefined, alt("Too few tests beside it."), context) };
}

function eventHeadline({ verdict, ratio }: EventEffect): string {
  const times = showRough(likely(ratio), "times");
  return verdict === "not shown"
    ? "No effect can be shown"
    : `Since then the tank makes ${times} as much a day`;
}

function eventLines({ verdict, ratio, looksBefore, looksAfter }: EventEffect): readonly string[] {
  const { low, high } = likely(ratio);
  return [
    ...(verdict === "not shown"
      ? [
          `These tests fit anything from ${showNumber(low, 2)} to ${showNumber(high, 2)} times as much a day as before. That is not proof of no effect: a larger one would have shown.`,
        ]
      : []),
    `Weighed from ${looksBefore} tests before and ${looksAfter} after. After is not because.`,
  ];
}

function changeHeadline({ before, after, fraction }: ChangeEffect, { parameter }: TrendRecord): string {
  return `${showNumber(fraction * 100, 2)} % took it from ${showLevel(likely(before), parameter)} to ${showLevel(likely(after), parameter)}`;
}

function changeLines({ canBeSeen }: ChangeEffect, { parameter }: TrendRecord): readonly string[] {
  return canBeSeen
    ? ["That is what the sums and all the tests together say."]
    : [
        `The tests beside it could not show such a fall: it lies within one step of the ${parameter.name} chart. The sums say it all the same.`,
      ];
}

function alsoLines(others: readonly string[]): readonly string[] {
  return others.length === 0
    ? ["Nothing else is logged in that week."]
    : [`In the same week: ${listed(others)}. No one of them can be given the credit.`];
}
