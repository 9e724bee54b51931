import { clockText } from "../core/plans/calendar.ts";
import { sayRule } from "../core/plans/recurrence.ts";
import { sayTask } from "../core/plans/task.ts";
import { sayUntil } from "../core/plans/until.ts";
import type { Member } from "../records/member.ts";
import type { Duty, Plan } from "../records/plan.ts";
import type { Tank } from "../records/tank.ts";
import { sayDay, sayMoment } from "./calendar.ts";
import type { FigureContext } from "./tank-figures.ts";

/** "every 7 days at 19:00, until nitrate is under 10 mg/L as NO₃ twice in a row". */
export function sayWhenPlanned({ rule, until }: Pick<Plan, "rule" | "until">): string {
  const when = rule.kind === "once" ? `${sayDay(rule.day)} at ${clockText(rule.minute)}` : sayRule(rule);
  return until === undefined ? when : `${when}, ${sayUntil(until)}`;
}

/** What the task is, as a member would say it. */
export function sayPlan({ task }: Pick<Plan, "task">): string {
  return task.kind === "switch off" ? `${sayTask(task)} for ${sayHours(task.hours)}` : sayTask(task);
}

export function sayHours(hours: number): string {
  if (hours < 1) return `${Math.round(hours * 60)} min`;
  const days = hours / 24;
  return hours >= 72 && Number.isInteger(days) ? `${days} days` : `${Number(hours.toFixed(1))} h`;
}

/** "skimmer off since Tue 20:10, due on Thu 20:10". */
export function sayOff(
  { off, back }: { readonly off: Duty; readonly back: Duty },
  { zone }: Pick<Member, "zone">,
  now: number,
): string {
  const at = (iso: string): string => sayMoment(Date.parse(iso), zone, now);
  const { device = "", because } = back.words;
  const why = because === undefined ? "" : ` (${because})`;
  const since =
    off.state === "done"
      ? `off since ${at(off.settledAt ?? off.dueAt)}`
      : `to go off ${at(off.dueAt)}, not confirmed`;
  const overdue = Date.parse(back.dueAt) < now ? ", which has passed" : "";
  return `${device} ${since}${why}, due on ${at(back.dueAt)}${overdue}`;
}

/** Whatever is switched off on a tank at present, a line each; told to whoever may see the tank. */
export function offLines(tank: Tank, { records, member, now }: FigureContext): readonly string[] {
  return records.plans.switchedOff(tank.id).map((pair) => `${sayOff(pair, member, now)}.`);
}
