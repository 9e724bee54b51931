import type { Duty } from "../records/plan.ts";
import type { Tank } from "../records/tank.ts";
import { sayMoment } from "./calendar.ts";
import { offLines } from "./plan-words.ts";
import type { FigureContext } from "./tank-figures.ts";
import { capitalised } from "./text.ts";

/** Whether an open task is due, or its other half is yet to come. */
export function isShownDue({ dueAt, half }: Duty, now: number): boolean {
  return half !== "notice" && Date.parse(dueAt) <= now;
}

/** What one member has to do now, and what is switched off on their tanks: plain lines, none when all is done. */
export function dueNow(context: FigureContext): readonly string[] {
  const { records, member, now } = context;
  const tanks = records.tanks.own(member.id);
  const due = records.plans.open(member.id).filter((duty) => isShownDue(duty, now));
  return [...dueLines(due, tanks, context), ...offNow(tanks, context)];
}

/** "Lagoon: skimmer off since Tue 20:10, due on Thu 20:10." */
export function offNow(tanks: readonly Tank[], context: FigureContext): readonly string[] {
  return tanks.flatMap((tank) =>
    offLines(tank, context).map((line) => (tanks.length === 1 ? capitalised(line) : `${tank.name}: ${line}`)),
  );
}

/** One line for each open task: number, what, how much, since when. Older due times of one plan are gathered. */
export function dueLines(
  duties: readonly Duty[],
  tanks: readonly Pick<Tank, "id" | "name">[],
  { member, now }: Pick<FigureContext, "member" | "now">,
): readonly string[] {
  const at = (iso: string): string => sayMoment(Date.parse(iso), member.zone, now);
  const isNewest = (duty: Duty): boolean =>
    duty.half !== "whole" ||
    duties.findLast(({ planId, half }) => planId === duty.planId && half === "whole") === duty;
  return duties.filter(isNewest).map((duty) => {
    const tank = tanks.find(({ id }) => id === duty.tankId)?.name;
    const earlier = duties.filter(
      (other) =>
        duty.half === "whole" && other.half === "whole" && other.planId === duty.planId && other !== duty,
    );
    const missed = earlier.length === 0 ? "" : `, missed ${earlier.map(({ dueAt }) => at(dueAt)).join(", ")}`;
    const amounts = duty.words.lines.length === 0 ? "" : ` ${duty.words.lines.join(" ")}`;
    const where = tank === undefined || tanks.length === 1 ? "" : `${tank}: `;
    return `${duty.id}: ${where}${duty.words.title} (due ${at(duty.dueAt)}${missed}).${amounts}`;
  });
}
