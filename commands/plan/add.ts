import { readTask } from "../../src/core/plans/task.ts";
import { readUntil } from "../../src/core/plans/until.ts";
import { calendarOf } from "../../src/kit/calendar.ts";
import { dutyWords } from "../../src/kit/duty-words.ts";
import {
  type Context,
  capitalised,
  defineCommand,
  type Outcome,
  optional,
  reading,
  tankOption,
} from "../../src/kit/index.ts";
import { newPlan } from "../../src/kit/plan-change.ts";
import { sayPlan, sayWhenPlanned } from "../../src/kit/plan-words.ts";
import { tankLogOf } from "../../src/kit/tank-log.ts";
import { planTimeOption } from "../../src/kit/time-of-plan.ts";
import { ownTank } from "../tank/shared.ts";
import { plainReply, stateOf } from "./shared.ts";

const untilOption = reading(
  "When the log ends it, e.g. nitrate under 10 twice",
  "nitrate under 10 twice",
  (text, { habits }) => readUntil(text, habits),
);

export default defineCommand({
  name: "add",
  summary: "Plan something for a tank, once or again and again, and be reminded of it",
  options: {
    task: reading(
      "What to do, e.g. water change 30 %, test nitrate, feed, clean the glass",
      "water change 30 %",
      (text, { habits }) => readTask(text, habits),
    ),
    when: planTimeOption(
      "E.g. every 7 days 19:00; mon, thu 8pm; 2 days after each water change; tomorrow 20:00",
    ),
    until: optional(untilOption),
    tank: optional(tankOption()),
  },
  examples: [
    "/plan add task:water change 30 % when:every 7 days 19:00",
    "/plan add task:test nitrate when:2 days after each water change until:nitrate under 10 twice tank:Lagoon",
    "/plan add task:clean the glass when:mon, thu 20:00",
  ],
  run({ task, when, until, tank: given }, context): Outcome {
    const tank = ownTank(given, context);
    const { records, member, now, request } = context;
    const plan = records.plans.add(
      member.id,
      newPlan(
        {
          tankId: tank.id,
          task,
          rule: when,
          typed: request.options["task"] ?? sayPlan({ task }),
          ...(until === undefined ? {} : { until }),
        },
        now,
        calendarOf(member.zone),
      ),
      new Date(now).toISOString(),
    );
    const today = dutyWords(plan, tank, tankLogOf(tank, plan.createdAt, records), context);
    return plainReply(
      `${tank.name}: planned`,
      [
        `${capitalised(sayWhenPlanned(plan))}. Next: ${stateOf(plan, context)}. Its number is ${plan.id}.`,
        ...(today.kind === "do" && today.words.lines.length > 0
          ? [`As the tank stands now: ${today.words.lines.join(" ")} It is worked out anew each time.`]
          : []),
        ...zoneLine(context),
        ...placeLine(context),
      ],
      context,
      { headline: capitalised(sayPlan(plan)) },
    );
  },
});

/** Times are read by a clock; whoever never said which is told so. */
function zoneLine({ member }: Context): readonly string[] {
  return member.zone === "UTC" ? ["Times are UTC: /settings zone:Europe/Lisbon sets your own."] : [];
}

/** Where the reminder will go; the place of asking is kept as the way out when direct messages are closed. */
export function placeLine({ records, member, request }: Context): readonly string[] {
  const wishes = records.plans.wishes(member.id);
  if (request.place === undefined || wishes.place !== "dm") return [];
  if (wishes.fallback !== undefined) return [];
  records.plans.setWishes(member.id, { ...wishes, fallback: request.place });
  return [
    "I remind you by direct message; if yours are closed, here in this channel. /plan remind changes that.",
  ];
}
