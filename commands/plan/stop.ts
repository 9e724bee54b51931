import { capitalised, defineCommand, type Outcome, optional } from "../../src/kit/index.ts";
import { sayPlan } from "../../src/kit/plan-words.ts";
import { isQuestion, plainReply, planMeant, planOption } from "./shared.ts";

export default defineCommand({
  name: "stop",
  summary: "End a plan for good",
  options: { plan: optional(planOption) },
  examples: ["/plan stop plan:3"],
  run(input, context): Outcome {
    const plan = planMeant(input.plan, "Stop", context);
    if (isQuestion(plan)) return plan;
    context.records.plans.change(context.member.id, plan.id, { state: "over", why: "you stopped it" });
    return plainReply(
      `Plan ${plan.id} is over`,
      ["What is due already stays on the list, and what is switched off still has to come back."],
      context,
      { headline: capitalised(sayPlan(plan)) },
    );
  },
});
