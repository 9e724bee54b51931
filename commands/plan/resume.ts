import { calendarOf } from "../../src/kit/calendar.ts";
import { capitalised, defineCommand, type Outcome, optional } from "../../src/kit/index.ts";
import { resumed } from "../../src/kit/plan-change.ts";
import { sayPlan } from "../../src/kit/plan-words.ts";
import { isQuestion, plainReply, planMeant, planOption, stateOf } from "./shared.ts";

export default defineCommand({
  name: "resume",
  summary: "Let a paused plan go on from now",
  options: { plan: optional(planOption) },
  examples: ["/plan resume plan:3"],
  run(input, context): Outcome {
    const plan = planMeant(input.plan, "Resume", context);
    if (isQuestion(plan)) return plan;
    const { records, member, now } = context;
    if (plan.state === "paused")
      records.plans.change(member.id, plan.id, resumed(plan, now, calendarOf(member.zone), records));
    const next = records.plans.find(member.id, plan.id) ?? plan;
    return plainReply(`Plan ${plan.id} runs`, [`Next: ${stateOf(next, context)}.`], context, {
      headline: capitalised(sayPlan(plan)),
    });
  },
});
