import type { EventKind } from "../log/entry.ts";
import { type Calendar, clockText, WEEKDAY_NAMES, weekdayOf } from "./calendar.ts";

/** When something is to be done. Every rule gives a day at most one due time. */
export type Rule =
  | { readonly kind: "once"; readonly day: number; readonly minute: number }
  | { readonly kind: "every"; readonly days: number; readonly from: number; readonly minute: number }
  | { readonly kind: "weekdays"; readonly weekdays: readonly number[]; readonly minute: number }
  | {
      readonly kind: "after";
      readonly event: EventKind;
      readonly days: number;
      /** The event's own time of day when left out. */
      readonly minute?: number;
    };

export interface Due {
  readonly day: number;
  /** Milliseconds since 1970. */
  readonly at: number;
}

/** What has been made of a plan so far. */
export interface Progress {
  /** The day of the last due time made, in whatever zone held then. */
  readonly lastDay?: number;
  /** Nothing due before this is made: when the plan was made, resumed or shifted to. */
  readonly notBefore: number;
}

/** A year and a day: no rule stays silent longer unless it has ended. */
const LONGEST_WAIT_DAYS = 800;

/**
 * The next due time after those made; undefined when there is none, or none yet.
 * `events` are the instants of the logged events that an "after" rule follows, in any order.
 */
export function nextDue(
  rule: Rule,
  progress: Progress,
  calendar: Calendar,
  events: readonly number[] = [],
): Due | undefined {
  if (rule.kind === "after") return afterEvents(rule, progress, calendar, events);
  const first = Math.max(
    progress.lastDay === undefined ? Number.NEGATIVE_INFINITY : progress.lastDay + 1,
    calendar.local(progress.notBefore).day,
  );
  const from = rule.kind === "once" ? rule.day : rule.kind === "every" ? Math.max(first, rule.from) : first;
  if (rule.kind === "once" && rule.day < first) return undefined;
  for (let day = from; day <= from + LONGEST_WAIT_DAYS; day++) {
    if (!isDay(rule, day)) continue;
    const at = calendar.instant({ day, minute: rule.minute });
    if (at >= progress.notBefore) return { day, at };
    if (rule.kind === "once") return undefined;
  }
  return undefined;
}

function isDay(rule: Exclude<Rule, { kind: "after" }>, day: number): boolean {
  switch (rule.kind) {
    case "once":
      return day === rule.day;
    case "every":
      return day >= rule.from && (day - rule.from) % rule.days === 0;
    case "weekdays":
      return rule.weekdays.includes(weekdayOf(day));
  }
}

function afterEvents(
  { days, minute }: Extract<Rule, { kind: "after" }>,
  { lastDay, notBefore }: Progress,
  calendar: Calendar,
  events: readonly number[],
): Due | undefined {
  let next: Due | undefined;
  for (const event of events) {
    const local = calendar.local(event);
    const day = local.day + days;
    const at = calendar.instant({ day, minute: minute ?? local.minute });
    if (at < notBefore || (lastDay !== undefined && day <= lastDay)) continue;
    if (next === undefined || at < next.at) next = { day, at };
  }
  return next;
}

/** All due times up to and including `until`, at most `most` of them. */
export function dueUntil(
  rule: Rule,
  progress: Progress,
  until: number,
  most: number,
  calendar: Calendar,
  events: readonly number[] = [],
): readonly Due[] {
  const all: Due[] = [];
  let so = progress;
  while (all.length < most) {
    const due = nextDue(rule, so, calendar, events);
    if (due === undefined || due.at > until) break;
    all.push(due);
    so = { lastDay: due.day, notBefore: so.notBefore };
  }
  return all;
}

/** Moves the rule by whole days; weekdays and events stay what they are. */
export function shiftedRule(rule: Rule, days: number): Rule {
  if (rule.kind === "once") return { ...rule, day: rule.day + days };
  if (rule.kind === "every") return { ...rule, from: rule.from + days };
  return rule;
}

/** "every 7 days at 19:00", without the day of a single date, which needs a calendar's names. */
export function sayRule(rule: Rule): string {
  switch (rule.kind) {
    case "once":
      return `once at ${clockText(rule.minute)}`;
    case "every":
      return `${rule.days === 1 ? "every day" : `every ${rule.days} days`} at ${clockText(rule.minute)}`;
    case "weekdays":
      return `every ${rule.weekdays.map((day) => WEEKDAY_NAMES[day - 1]).join(", ")} at ${clockText(rule.minute)}`;
    case "after": {
      const time = rule.minute === undefined ? "" : ` at ${clockText(rule.minute)}`;
      const days =
        rule.days === 0 ? "on the day of" : rule.days === 1 ? "a day after" : `${rule.days} days after`;
      return `${days} each ${EVENT_WORDS[rule.event]}${time}`;
    }
  }
}

export const EVENT_WORDS: Readonly<Record<EventKind, string>> = {
  "water change": "water change",
  dose: "dose",
  feeding: "feeding",
  harvest: "harvest",
  "media change": "media change",
  "livestock in": "new arrival",
  "livestock out": "departure",
  death: "death",
  "equipment on": "switching on",
  "equipment off": "switching off",
  note: "note",
};
