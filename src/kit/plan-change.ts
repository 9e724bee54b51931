import type { Calendar } from "../core/plans/calendar.ts";
import { type Due, nextDue, shiftedRule } from "../core/plans/recurrence.ts";
import type { Records } from "../records/index.ts";
import type { NewPlan, Plan, PlanChange } from "../records/plan.ts";
import { eventTimes } from "./tank-log.ts";

/** Dates shown ahead of one plan at most. */
const MOST_AHEAD = 200;

/** A plan that begins now, with its first due time. */
export function newPlan(
  plan: Omit<NewPlan, "nextAt" | "notBefore">,
  now: number,
  calendar: Calendar,
): NewPlan {
  // A follow-up waits for the next event: those logged before the plan was made are not meant.
  const next = nextDue(plan.rule, { notBefore: startOfMinute(now) }, calendar);
  return {
    ...plan,
    notBefore: iso(startOfMinute(now)),
    ...(next === undefined ? {} : { nextAt: iso(next.at) }),
  };
}

/** Runs on from now; what fell into the pause is not made up for. */
export function resumed(plan: Plan, now: number, calendar: Calendar, records: Records): PlanChange {
  return moved(plan, plan.rule, now, calendar, records);
}

/** The next date, and for what repeats every so many days all after it, so many days later. */
export function shifted(
  plan: Plan,
  days: number,
  now: number,
  calendar: Calendar,
  records: Records,
): PlanChange {
  const next = nextOf(plan, calendar, records);
  const notBefore =
    next === undefined ? now : Math.max(now, calendar.instant({ day: next.day + days, minute: 0 }));
  return moved(plan, shiftedRule(plan.rule, days), notBefore, calendar, records);
}

function moved(
  plan: Plan,
  rule: Plan["rule"],
  notBefore: number,
  calendar: Calendar,
  records: Records,
): PlanChange {
  const next = nextOf({ ...plan, rule, notBefore: iso(notBefore) }, calendar, records);
  return {
    state: "running",
    rule,
    notBefore: iso(notBefore),
    ...(next === undefined ? {} : { nextAt: iso(next.at) }),
  };
}

function nextOf(plan: Plan, calendar: Calendar, records: Records): Due | undefined {
  return ahead(plan, calendar, records, Number.POSITIVE_INFINITY, 1)[0];
}

/** The due times to come until a moment, as far as they can be known today. */
export function ahead(
  plan: Plan,
  calendar: Calendar,
  records: Records,
  until: number,
  most = MOST_AHEAD,
): readonly Due[] {
  const events =
    plan.rule.kind === "after"
      ? eventTimes({ owner: plan.owner, id: plan.tankId }, plan.rule.event, records)
      : [];
  const all: Due[] = [];
  let { lastDay } = plan;
  while (all.length < most) {
    const progress = {
      notBefore: Date.parse(plan.notBefore),
      ...(lastDay === undefined ? {} : { lastDay }),
    };
    const due = nextDue(plan.rule, progress, calendar, events);
    if (due === undefined || due.at > until) break;
    all.push(due);
    lastDay = due.day;
  }
  return all;
}

function startOfMinute(now: number): number {
  return Math.floor(now / 60_000) * 60_000;
}

function iso(milliseconds: number): string {
  return new Date(milliseconds).toISOString();
}
