import { backDueAt } from "../../src/core/plans/pairs.ts";
import type { Task } from "../../src/core/plans/task.ts";
import { calendarOf, sayMoment } from "../../src/kit/calendar.ts";
import { dutyWords, wayBackWords } from "../../src/kit/duty-words.ts";
import {
  type Context,
  capitalised,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  tankOption,
  UserError,
  words,
} from "../../src/kit/index.ts";
import { newPlan } from "../../src/kit/plan-change.ts";
import { sayHours, sayPlan, sayWhenPlanned } from "../../src/kit/plan-words.ts";
import { tankLogOf } from "../../src/kit/tank-log.ts";
import { planTimeOption } from "../../src/kit/time-of-plan.ts";
import type { DutyWords, NewDuty } from "../../src/records/plan.ts";
import type { Tank } from "../../src/records/tank.ts";
import { ownTank } from "../tank/shared.ts";
import { placeLine } from "./add.ts";
import { plainReply, stateOf } from "./shared.ts";

/** Nothing stays off for longer than this by plan. */
const LONGEST_H = 90 * 24;

export default defineCommand({
  name: "off",
  summary: "Switch something off for a while; I ask until it is back on",
  options: {
    device: words("What is switched off: skimmer, UV, carbon, return pump", "skimmer", 40),
    for: quantity.span("For how long, e.g. 48 h or 20 min", "48 h"),
    because: optional(words("What for, e.g. bacteria added, feeding", "bacteria added", 80)),
    when: optional(planTimeOption("When; now if left out. E.g. every day 18:00")),
    tank: optional(tankOption()),
  },
  examples: [
    "/plan off device:skimmer for:48 h because:bacteria added",
    "/plan off device:return pump for:20 min because:feeding when:every day 18:00 tank:Lagoon",
  ],
  run(input, context): Outcome {
    const tank = ownTank(input.tank, context);
    const hours = input.for.estimate.best;
    if (!(hours > 0) || hours > LONGEST_H)
      throw new UserError("bad-input", "Say for how long, from a minute to 90 days: for:48 h");
    const task: Extract<Task, { kind: "switch off" }> = {
      kind: "switch off",
      device: input.device,
      hours,
      ...(input.because === undefined ? {} : { because: input.because }),
    };
    const { records, member, now } = context;
    const calendar = calendarOf(member.zone);
    const settled = dutyWords({ task, typed: input.device }, tank, tankLogOf(tank, "", records), context);
    if (settled.kind === "hold") throw new UserError("not-now", settled.why);
    if (input.when === undefined) return offNow(task, settled.words, tank, context);
    const plan = records.plans.add(
      member.id,
      newPlan({ tankId: tank.id, task, rule: input.when, typed: sayPlan({ task }) }, now, calendar),
      new Date(now).toISOString(),
    );
    return plainReply(
      `${tank.name}: planned`,
      [
        `${capitalised(sayWhenPlanned(plan))}. Next: ${stateOf(plan, context)}. Its number is ${plan.id}.`,
        `Each time I ask again until you say the ${input.device} is back on.`,
        ...placeLine(context),
      ],
      context,
      { headline: capitalised(sayPlan(plan)), cautions: settled.words.cautions },
    );
  },
});

function offNow(
  task: Extract<Task, { kind: "switch off" }>,
  off: DutyWords,
  tank: Tank,
  context: Context,
): Outcome {
  const { records, member, now } = context;
  const at = new Date(now).toISOString();
  const backAt = backDueAt(now, task.hours);
  const backIso = new Date(backAt).toISOString();
  const halves: readonly [NewDuty, NewDuty] = [
    { half: "off", plannedAt: at, dueAt: at, words: off },
    { half: "back", plannedAt: backIso, dueAt: backIso, tellAt: backIso, words: wayBackWords(off) },
  ];
  const readAs = `${task.device} off`;
  const back = records.plans.switchOff(
    member.id,
    {
      tankId: tank.id,
      task,
      rule: { kind: "once", ...calendarOf(member.zone).local(now) },
      typed: readAs,
      notBefore: at,
    },
    halves,
    {
      line: readAs,
      readings: [],
      events: [{ event: "equipment off", text: task.device, typed: readAs, readAs, at }],
    },
    at,
  );
  return plainReply(
    `${tank.name}: ${readAs}`,
    [
      `Logged as off now, for ${sayHours(task.hours)}.`,
      `From then on I ask until you say it is back on: /plan done task:${back.id}`,
      ...placeLine(context),
    ],
    context,
    {
      headline: `Back on ${sayMoment(backAt, member.zone, now)}`,
      cautions: off.cautions,
    },
  );
}
