import { calendarOf } from "../../src/kit/calendar.ts";
import { capitalised, defineCommand, type Outcome, optional, UserError } from "../../src/kit/index.ts";
import { movedBy } from "../../src/kit/later.ts";
import { resumed } from "../../src/kit/plan-change.ts";
import { plainReply } from "../plan/shared.ts";
import { regimenMeant, regimenOption, standing } from "./shared.ts";

export default defineCommand({
  name: "resume",
  summary: "Let a paused regimen go on",
  options: { regimen: optional(regimenOption) },
  examples: ["/regimen resume"],
  run(input, context): Outcome {
    const found = regimenMeant(input.regimen, "Resume", context);
    if ("kind" in found) return found;
    const { regimen, tank } = found;
    const { records, member, now } = context;
    if (regimen.state !== "paused") throw new UserError("not-now", `Regimen ${regimen.id} is not paused.`);
    const at = new Date(now).toISOString();
    const startedAt = movedBy(regimen.startedAt, regimen.pausedAt ?? at, at);
    records.plans.changeRegimen(member.id, regimen.id, { state: "running", startedAt });
    const calendar = calendarOf(member.zone);
    for (const plan of records.plans.plansOf(member.id, regimen.id))
      if (plan.state === "paused")
        records.plans.change(member.id, plan.id, resumed(plan, now, calendar, records));
    const going = records.plans.regimen(member.id, regimen.id) ?? regimen;
    return plainReply(`${tank.name}: regimen ${regimen.id}`, [standing(going, tank, context)], context, {
      headline: `${capitalised(regimen.pattern)} goes on`,
    });
  },
});
