import { casual } from "chrono-node/en";
import { DateTime, type DurationLikeObject } from "luxon";
import type { Read } from "../core/quantity/read.ts";
import type { Member } from "../records/member.ts";
import { quoted } from "./text.ts";

/** From a moment up to another, milliseconds since 1970. */
export interface TimeSpan {
  readonly from: number;
  readonly to: number;
}

const UNITS: Readonly<Record<string, keyof DurationLikeObject>> = {
  hour: "hours",
  day: "days",
  week: "weeks",
  month: "months",
  year: "years",
};

/** "june", "last week", "3 weeks ago", "the end of january": the days meant, in the member's own calendar. */
export function readTimeSpan(text: string, member: Member, now: number): Read<TimeSpan> {
  const here = DateTime.fromMillis(now, { zone: member.zone });
  const found = partOfMonth(text, here) ?? wordedSpan(text, here) ?? namedDays(text, here);
  if (found === undefined || !found.from.isValid || !found.to.isValid)
    return {
      kind: "unreadable",
      message: `${quoted(text)} is no day or time I can read. Try “june”, “last week” or “2026-03-01”.`,
    };
  if (found.from > here)
    return { kind: "unreadable", message: `${quoted(text)} is still to come: there is no record of it.` };
  const to = DateTime.min(found.to, here);
  const said = (at: DateTime): string => at.toFormat("d MMM yyyy", { locale: "en" });
  const [first, last] = [said(found.from), said(to.minus({ milliseconds: 1 }))];
  return {
    kind: "read",
    value: { from: found.from.toMillis(), to: to.toMillis() },
    readAs: first === last ? first : `${first} to ${last}`,
  };
}

interface Span {
  readonly from: DateTime;
  readonly to: DateTime;
}

/** "last week" is the calendar week before, "last 3 weeks" runs up to now. */
function wordedSpan(text: string, here: DateTime): Span | undefined {
  const counted = /\b(?:last|past) (\d+|few|couple of|couple) (hour|day|week|month|year)s?\b/.exec(text);
  const [, count = "", unitCounted = ""] = counted ?? [];
  const length = UNITS[unitCounted];
  if (length !== undefined) {
    const times = Number.parseInt(count, 10) || (count === "few" ? 3 : 2);
    return { from: here.minus({ [length]: times }), to: here };
  }
  const single = /\b(last|past|previous|this) (week|month|year)\b/.exec(text);
  const [, which, unit] = single ?? [];
  if (unit !== "week" && unit !== "month" && unit !== "year") return undefined;
  const start = here.startOf(unit);
  if (which === "this") return { from: start, to: here };
  return { from: start.minus({ [`${unit}s`]: 1 }), to: start };
}

/** "end of january": a third of the month. */
function partOfMonth(text: string, here: DateTime): Span | undefined {
  const part = /\b(end|late|start|beginning|early|middle|mid)\b/.exec(text)?.[1];
  if (part === undefined) return undefined;
  const month = namedDays(
    text.replace(/\b(?:the|end|late|start|beginning|early|middle|mid|of)\b|-/g, " ").trim(),
    here,
  );
  if (month === undefined || month.to.diff(month.from, "days").days < 27) return undefined;
  const [tenth, twentieth] = [month.from.plus({ days: 10 }), month.from.plus({ days: 20 })];
  if (part === "end" || part === "late") return { from: twentieth, to: month.to };
  if (part === "middle" || part === "mid") return { from: tenth, to: twentieth };
  return { from: month.from, to: tenth };
}

/** A day, a month or a year by name; without a year, the last time it came round. */
function namedDays(text: string, here: DateTime): Span | undefined {
  const year = /^(?:in )?(20\d\d)$/.exec(text)?.[1];
  if (year !== undefined) {
    const start = DateTime.fromObject({ year: Number(year) }, { zone: here.zone });
    return { from: start, to: start.plus({ years: 1 }) };
  }
  const [found] = casual.parse(text, { instant: here.toJSDate(), timezone: here.offset });
  if (found === undefined) return undefined;
  const dayOf = (parts: (typeof found)["start"]): DateTime =>
    DateTime.fromObject(
      {
        year: parts.get("year") ?? here.year,
        month: parts.get("month") ?? here.month,
        day: parts.get("day") ?? 1,
      },
      { zone: here.zone },
    );
  const { start, end } = found;
  const isMonth = start.isCertain("month") && !start.isCertain("day");
  const first = isMonth ? dayOf(start).startOf("month") : dayOf(start);
  const isYearSaid = start.isCertain("year") || /\b20\d\d\b/.test(text);
  const from =
    first > here && !isYearSaid
      ? first.minus(start.isCertain("weekday") ? { weeks: 1 } : { years: 1 })
      : first;
  if (end !== null && end !== undefined) return { from, to: dayOf(end).plus({ days: 1 }) };
  return { from, to: from.plus(isMonth ? { months: 1 } : { days: 1 }) };
}
