import { capitalised, defineCommand, type Outcome, optional, UserError } from "../../src/kit/index.ts";
import { plainReply } from "../plan/shared.ts";
import { regimenMeant, regimenOption } from "./shared.ts";

export default defineCommand({
  name: "stop",
  summary: "End a regimen for good",
  options: { regimen: optional(regimenOption) },
  examples: ["/regimen stop"],
  run(input, context): Outcome {
    const found = regimenMeant(input.regimen, "Stop", context);
    if ("kind" in found) return found;
    const { regimen, tank } = found;
    const { records, member } = context;
    if (regimen.state === "over") throw new UserError("not-now", `Regimen ${regimen.id} is over already.`);
    const why = "you stopped it";
    records.plans.changeRegimen(member.id, regimen.id, { state: "over", why, startedAt: regimen.startedAt });
    for (const plan of records.plans.plansOf(member.id, regimen.id))
      if (plan.state !== "over") records.plans.change(member.id, plan.id, { state: "over", why });
    return plainReply(
      `${tank.name}: regimen ${regimen.id}`,
      ["What is due already stays on the list; what is switched off still has to come back."],
      context,
      { headline: `${capitalised(regimen.pattern)} is over` },
    );
  },
});
