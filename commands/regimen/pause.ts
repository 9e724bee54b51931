import { capitalised, defineCommand, type Outcome, optional, UserError } from "../../src/kit/index.ts";
import { plainReply } from "../plan/shared.ts";
import { regimenMeant, regimenOption } from "./shared.ts";

export default defineCommand({
  name: "pause",
  summary: "Let a regimen rest; its days stand still",
  options: { regimen: optional(regimenOption) },
  examples: ["/regimen pause"],
  run(input, context): Outcome {
    const found = regimenMeant(input.regimen, "Pause", context);
    if ("kind" in found) return found;
    const { regimen, tank } = found;
    const { records, member, now } = context;
    if (regimen.state !== "running") throw new UserError("not-now", `Regimen ${regimen.id} does not run.`);
    records.plans.changeRegimen(member.id, regimen.id, {
      state: "paused",
      startedAt: regimen.startedAt,
      pausedAt: new Date(now).toISOString(),
    });
    for (const plan of records.plans.plansOf(member.id, regimen.id))
      if (plan.state === "running") records.plans.change(member.id, plan.id, { state: "paused" });
    return plainReply(
      `${tank.name}: regimen ${regimen.id}`,
      ["/regimen resume lets it go on from where it stands; a missed dose stays missed."],
      context,
      { headline: `${capitalised(regimen.pattern)} rests` },
    );
  },
});
