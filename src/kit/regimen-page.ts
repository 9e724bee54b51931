import type { Calendar } from "../core/plans/calendar.ts";
import { clockText } from "../core/plans/calendar.ts";
import type { Records } from "../records/index.ts";
import type { Duty, Plan } from "../records/plan.ts";
import { sayDay } from "./calendar.ts";
import { ahead } from "./plan-change.ts";
import { sayPlan } from "./plan-words.ts";

const DAY_MS = 86_400_000;
/** Days that are behind, shown with what became of them. */
const DAYS_BEHIND = 7;

/** The moment from which a page shows what was done. */
export function pageFrom(now: number): string {
  return new Date(now - DAYS_BEHIND * DAY_MS).toISOString();
}

/** A page of the calendar: a row for each day that has something, past ones with what became of them. */
export function calendarPage(
  plans: readonly Plan[],
  settled: readonly Duty[],
  open: readonly Duty[],
  days: number,
  parts: { readonly calendar: Calendar; readonly records: Records; readonly now: number },
): readonly (readonly string[])[] {
  const { calendar, records, now } = parts;
  const today = calendar.local(now).day;
  const entries = [
    ...settled.map((duty) => entryOf(duty, calendar, duty.state)),
    ...open.map((duty) => entryOf(duty, calendar, Date.parse(duty.dueAt) <= now ? "due" : "to come")),
    ...plans
      .filter(({ state }) => state === "running")
      .flatMap((plan) =>
        ahead(plan, calendar, records, now + days * DAY_MS).map(({ day, at }) => ({
          day,
          minute: calendar.local(at).minute,
          words: sayPlan(plan),
          state: "",
        })),
      ),
  ].sort((a, b) => a.day - b.day || a.minute - b.minute);
  return [...new Set(entries.map(({ day }) => day))].map((day) => {
    const ofDay = entries.filter((entry) => entry.day === day);
    return [
      day === today ? `${sayDay(day)}, today` : sayDay(day),
      ofDay
        .map(
          ({ minute, words, state }) => `${clockText(minute)} ${words}${state === "" ? "" : ` (${state})`}`,
        )
        .join("; "),
    ];
  });
}

function entryOf(duty: Duty, calendar: Calendar, state: string) {
  const { day, minute } = calendar.local(Date.parse(duty.dueAt));
  return { day, minute, words: duty.words.title, state };
}
