import { REGIMENS } from "../../src/core/plans/regimens.ts";
import { calendarOf, sayMoment } from "../../src/kit/calendar.ts";
import { capitalised, defineCommand, type Outcome, optional, quantity } from "../../src/kit/index.ts";
import { wholeDays } from "../../src/kit/later.ts";
import { offLines } from "../../src/kit/plan-words.ts";
import { calendarPage, pageFrom } from "../../src/kit/regimen-page.ts";
import { plainReply } from "../plan/shared.ts";
import { regimenMeant, regimenOption, standing } from "./shared.ts";

const USUAL_DAYS = 14;
const MOST_DAYS = 60;

export default defineCommand({
  name: "show",
  summary: "A regimen as a calendar page: what was, what is due, what comes",
  options: {
    regimen: optional(regimenOption),
    days: optional(quantity.span("How far ahead; 14 days if left out", "30 days")),
  },
  examples: ["/regimen show", "/regimen show regimen:1 days:30 days"],
  run(input, context): Outcome {
    const found = regimenMeant(input.regimen, "Regimen", context);
    if ("kind" in found) return found;
    const { regimen, tank } = found;
    const { records, member, now } = context;
    const plans = records.plans.plansOf(member.id, regimen.id);
    const ids = plans.map(({ id }) => id);
    const days = Math.min(
      MOST_DAYS,
      input.days === undefined ? USUAL_DAYS : wholeDays(input.days.estimate.best),
    );
    const rows = calendarPage(
      plans,
      records.plans.settled(member.id, ids, pageFrom(now)),
      records.plans.open(member.id).filter(({ planId }) => ids.includes(planId)),
      days,
      { calendar: calendarOf(member.zone), records, now },
    );
    return plainReply(
      `${tank.name}: ${regimen.pattern}`,
      [
        `Since ${sayMoment(Date.parse(regimen.startedAt), member.zone, now)}.`,
        ...(REGIMENS.find(({ id }) => id === regimen.pattern)?.rules ?? []),
        ...offLines(tank, context).map(capitalised),
      ],
      context,
      {
        headline: standing(regimen, tank, context),
        ...(rows.length === 0 ? {} : { table: { columns: ["day", "what"], rows } }),
      },
    );
  },
});
