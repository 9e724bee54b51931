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
import { daysLater, wholeDays } from "../../src/kit/later.ts";
import { shifted } from "../../src/kit/plan-change.ts";
import { plainReply } from "../plan/shared.ts";
import { regimenMeant, regimenOption } from "./shared.ts";

const LONGEST_H = 366 * 24;

export default defineCommand({
  name: "shift",
  summary: "Move all of a regimen some days later",
  options: { by: quantity.span("How much later, e.g. 2 days", "2 days"), regimen: optional(regimenOption) },
  examples: ["/regimen shift by:2 days"],
  run(input, context): Outcome {
    const found = regimenMeant(input.regimen, "Shift", context);
    if ("kind" in found) return found;
    const { regimen, tank } = found;
    const { records, member, now } = context;
    if (regimen.state !== "running") throw new UserError("not-now", `Regimen ${regimen.id} does not run.`);
    if (input.by.estimate.best > LONGEST_H)
      throw new UserError("bad-input", "At most a year: try by:2 days.");
    const days = wholeDays(input.by.estimate.best);
    records.plans.changeRegimen(member.id, regimen.id, {
      state: "running",
      startedAt: daysLater(regimen.startedAt, days),
      ...(regimen.why === undefined ? {} : { why: regimen.why }),
    });
    const calendar = calendarOf(member.zone);
    for (const plan of records.plans.plansOf(member.id, regimen.id))
      if (plan.state === "running")
        records.plans.change(member.id, plan.id, shifted(plan, days, now, calendar, records));
    return plainReply(`${tank.name}: ${regimen.pattern}`, ["/regimen show gives the new page."], context, {
      headline: `${capitalised(counted(days, "day"))} later`,
    });
  },
});
