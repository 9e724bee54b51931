import { offNow } from "../../src/kit/due-lines.ts";
import { capitalised, defineCommand, type Reply } from "../../src/kit/index.ts";
import { sayPlan, sayWhenPlanned } from "../../src/kit/plan-words.ts";
import { plainReply, stateOf } from "./shared.ts";

export default defineCommand({
  name: "list",
  summary: "Your plans with their numbers, and when each is due next",
  options: {},
  examples: ["/plan list"],
  run(_, context): Reply {
    const { records, member } = context;
    const tanks = records.tanks.own(member.id);
    const plans = records.plans.of(member.id);
    const off = offNow(tanks, context);
    if (plans.length === 0 && off.length === 0)
      return plainReply(
        "Your plans",
        ["None yet. Try /plan add task:water change 30 % when:every 7 days 19:00, or /regimen list."],
        context,
      );
    return plainReply("Your plans", off, context, {
      table: {
        columns: ["no.", "tank", "what", "when", "next"],
        rows: plans.map((plan) => [
          String(plan.id),
          tanks.find(({ id }) => id === plan.tankId)?.name ?? "",
          capitalised(sayPlan(plan)),
          sayWhenPlanned(plan),
          stateOf(plan, context),
        ]),
      },
    });
  },
});
