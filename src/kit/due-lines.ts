import type { Duty } from "../records/plan.ts";
import type { Tank } from "../records/tank.ts";
import { sayMoment } from "./calendar.ts";
import type { FigureContext } from "./tank-figures.ts";

/** Whether an open task is due, or its other half is yet to come. */
export function isShownDue({ dueAt, half }: Duty, now: number): boolean {
  return half !== "notice" && Date.parse(dueAt) <= now;
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
