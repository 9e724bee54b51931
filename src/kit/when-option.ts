import { casual } from "chrono-node/en";
import { DateTime } from "luxon";
import type { Read } from "../core/quantity/read.ts";
import type { Member } from "../records/member.ts";
import { type Option, reading } from "./option.ts";
import { quoted } from "./text.ts";

/** Clocks differ a little; what lies no further ahead than this is taken as now. */
const AHEAD_MS = 5 * 60_000;
/** Nobody logs a tank from longer ago. */
const OLDEST_YEARS = 40;
const EXAMPLES = "“yesterday 9pm”, “2 days ago” or “2026-03-01 20:30”";

/** A moment in the past, in the member's own time zone; UTC, ISO 8601 when read. */
export function whenOption(description = "When; now if left out, e.g. yesterday 9pm"): Option<string, true> {
  return reading(description, "yesterday 9pm", (text, { member, now }) => readWhen(text, member, now));
}

/** Reads a date or time in words. Daylight saving is the member's zone's own affair. */
export function readWhen(text: string, member: Member, now: number): Read<string> {
  const here = DateTime.fromMillis(now, { zone: member.zone });
  const slashed = /^(?:on )?(\d{1,2})[/.](\d{1,2})(?:[/.](\d{2,4}))?\b/i.exec(text.trim());
  if (slashed !== null) return readSlashed(text, slashed, member, here);
  const [found, ...others] = casual.parse(text.slice(0, 100), {
    instant: new Date(now),
    timezone: here.offset,
  });
  if (found === undefined || others.length > 0 || found.end !== null)
    return {
      kind: "unreadable",
      message: `${quoted(text)} is not a day or time I can read. Try ${EXAMPLES}.`,
    };
  const { start } = found;
  const part = (name: "year" | "month" | "day" | "hour" | "minute" | "second"): number =>
    start.get(name) ?? 0;
  const hasTime = start.isCertain("hour") || /now|ago/i.test(text);
  const isToday = part("year") === here.year && part("month") === here.month && part("day") === here.day;
  const at = DateTime.fromObject(
    {
      year: part("year"),
      month: part("month"),
      day: part("day"),
      // A day without a time: noon, or now if it is today.
      hour: hasTime ? part("hour") : isToday ? here.hour : 12,
      minute: hasTime ? part("minute") : isToday ? here.minute : 0,
    },
    { zone: member.zone },
  );
  return judged(text, at, here);
}

function readSlashed(text: string, match: RegExpExecArray, member: Member, here: DateTime): Read<string> {
  const [whole, first = "", second = "", yearText] = match;
  const rest = text.trim().slice(whole.length).trim();
  const year =
    yearText === undefined ? undefined : yearText.length === 2 ? 2000 + Number(yearText) : Number(yearText);
  const days = [
    [Number(first), Number(second)],
    [Number(second), Number(first)],
  ]
    .map(([day = 0, month = 0]) => latest(day, month, year, here))
    .filter((day) => day.isValid);
  const texts = [...new Set(days.map((day) => day.toFormat("yyyy-MM-dd")))];
  const [only] = texts;
  if (only === undefined)
    return { kind: "unreadable", message: `${quoted(text)} is no day of the calendar. Try ${EXAMPLES}.` };
  if (texts.length === 1) return readWhen(`${only} ${rest}`.trim(), member, here.toMillis());
  return {
    kind: "ask",
    question: `Which day is ${quoted(whole)}?`,
    choices: texts.map((day) => ({
      label: DateTime.fromISO(day).toFormat("d MMMM yyyy", { locale: "en" }),
      text: `${day} ${rest}`.trim(),
    })),
  };
}

/** The day in the year said, else the last time it came round: nobody logs what is still to come. */
function latest(day: number, month: number, year: number | undefined, here: DateTime): DateTime {
  const on = (itsYear: number): DateTime =>
    DateTime.fromObject({ year: itsYear, month, day }, { zone: here.zone });
  if (year !== undefined) return on(year);
  const thisYear = on(here.year);
  return thisYear.isValid && thisYear <= here ? thisYear : on(here.year - 1);
}

function judged(text: string, at: DateTime, here: DateTime): Read<string> {
  if (!at.isValid)
    return { kind: "unreadable", message: `${quoted(text)} is no day of the calendar. Try ${EXAMPLES}.` };
  const said = at.toFormat("ccc d MMM yyyy, HH:mm", { locale: "en" });
  if (at.toMillis() > here.toMillis() + AHEAD_MS)
    return {
      kind: "unreadable",
      message: `${quoted(text)} would be ${said}, which is still to come. Try ${EXAMPLES}.`,
    };
  if (here.diff(at, "years").years > OLDEST_YEARS)
    return {
      kind: "unreadable",
      message: `${quoted(text)} would be ${said}: too long ago to be meant. Try ${EXAMPLES}.`,
    };
  return { kind: "read", value: at.toUTC().toISO() ?? "", readAs: said };
}

/** A moment as the member's own clock showed it; "just now" within the last minutes. */
export function sayWhen(at: string, member: Member, now: number): string {
  const then = DateTime.fromISO(at, { zone: member.zone });
  if (Math.abs(then.toMillis() - now) < AHEAD_MS) return "just now";
  return then.toFormat("ccc d MMM yyyy, HH:mm", { locale: "en" });
}
