import { capitalised, defineCommand, type Outcome, optional } from "../../src/kit/index.ts";
import { sayPlan } from "../../src/kit/plan-words.ts";
import { isQuestion, plainReply, planMeant, planOption } from "./shared.ts";

export default defineCommand({
  name: "pause",
  summary: "Let a plan rest until you resume it",
  options: { plan: optional(planOption) },
  examples: ["/plan pause plan:3"],
  run(input, context): Outcome {
    const plan = planMeant(input.plan, "Pause", context);
    if (isQuestion(plan)) return plan;
    context.records.plans.change(context.member.id, plan.id, { state: "paused" });
    return plainReply(
      `Plan ${plan.id} rests`,
      [
        `/plan resume plan:${plan.id} lets it go on; what falls into the pause is not made up for.`,
        "What is switched off still has to come back: I go on asking for that.",
      ],
      context,
      { headline: capitalised(sayPlan(plan)) },
    );
  },
});
