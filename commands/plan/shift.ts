import { calendarOf } from "../../src/kit/calendar.ts";
import {
  capitalised,
  counted,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  UserError,
} from "../../src/kit/index.ts";
import { wholeDays } from "../../src/kit/later.ts";
import { shifted } from "../../src/kit/plan-change.ts";
import { sayPlan } from "../../src/kit/plan-words.ts";
import { isQuestion, plainReply, planMeant, planOption, stateOf } from "./shared.ts";

const LONGEST_H = 366 * 24;

export default defineCommand({
  name: "shift",
  summary: "Move a plan's next date, and the rhythm after it, by some days",
  options: {
    by: quantity.span("How much later, e.g. 2 days", "2 days"),
    plan: optional(planOption),
  },
  examples: ["/plan shift by:2 days plan:3"],
  run(input, context): Outcome {
    const plan = planMeant(input.plan, "Shift", context);
    if (isQuestion(plan)) return plan;
    if (input.by.estimate.best > LONGEST_H)
      throw new UserError("bad-input", "At most a year: try by:2 days.");
    if (plan.state === "paused")
      throw new UserError("not-now", `Plan ${plan.id} rests. /plan resume plan:${plan.id} first.`);
    const { records, member, now } = context;
    const days = wholeDays(input.by.estimate.best);
    records.plans.change(member.id, plan.id, shifted(plan, days, now, calendarOf(member.zone), records));
    const next = records.plans.find(member.id, plan.id) ?? plan;
    return plainReply(
      `Plan ${plan.id}: ${counted(days, "day")} later`,
      [`Next: ${stateOf(next, context)}.`],
      context,
      { headline: capitalised(sayPlan(plan)) },
    );
  },
});
