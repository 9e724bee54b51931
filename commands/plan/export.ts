import { iCalendar } from "../../src/core/plans/icalendar.ts";
import { calendarOf, sayMoment } from "../../src/kit/calendar.ts";
import { capitalised, counted, defineCommand, optional, type Reply, UserError } from "../../src/kit/index.ts";
import { hoursFrom } from "../../src/kit/later.ts";
import { ahead } from "../../src/kit/plan-change.ts";
import { sayPlan, sayWhenPlanned } from "../../src/kit/plan-words.ts";
import { plainReply, planOption } from "./shared.ts";

const AHEAD_H = 180 * 24;

export default defineCommand({
  name: "export",
  summary: "Your plans as a calendar file (.ics)",
  options: { plan: optional(planOption) },
  examples: ["/plan export", "/plan export plan:3"],
  run(input, context): Reply {
    const { records, member, now } = context;
    const running = records.plans.of(member.id).filter(({ state }) => state === "running");
    const plans = input.plan === undefined ? running : running.filter(({ id }) => id === input.plan);
    if (plans.length === 0)
      throw new UserError("not-found", "There is no running plan to export. /plan list shows yours.");
    const tanks = records.tanks.own(member.id);
    const until = hoursFrom(now, AHEAD_H);
    const dates = plans.flatMap((plan) => {
      const tank = tanks.find(({ id }) => id === plan.tankId)?.name ?? "";
      return ahead(plan, calendarOf(member.zone), records, until).map(({ at, day }) => ({
        uid: `plan-${plan.id}-day-${day}@standpipe.invalid`,
        at,
        summary: `${tank}: ${sayPlan(plan)}`,
        description: `${capitalised(sayWhenPlanned(plan))}. Amounts are worked out when it falls due.`,
      }));
    });
    return plainReply(
      "Calendar file",
      [
        `${counted(plans.length, "plan")}, until ${sayMoment(until, member.zone, now)}. Each date stands by itself, so a change of clocks moves none.`,
        "A calendar program that takes it in again replaces its dates. What hangs on the log is in it as far as it is known today.",
      ],
      context,
      {
        headline: counted(dates.length, "date"),
        files: [
          {
            name: input.plan === undefined ? "plans.ics" : `plan-${input.plan}.ics`,
            mediaType: "text/calendar",
            content: iCalendar(dates, now),
            encoding: "utf8",
            altText: `${counted(dates.length, "date")} of ${counted(plans.length, "plan")}`,
          },
        ],
      },
    );
  },
});
