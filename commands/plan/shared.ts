import { sayMoment } from "../../src/kit/calendar.ts";
import {
  askFor,
  type Context,
  fills,
  type Option,
  type Question,
  quoted,
  type Reply,
  reading,
  UserError,
} from "../../src/kit/index.ts";
import { sayPlan, sayWhenPlanned } from "../../src/kit/plan-words.ts";
import type { Duty, Plan } from "../../src/records/plan.ts";

/** A number as the lists show it. */
export function numberOption(
  description: string,
  suggest: (context: Parameters<Option<number, true>["read"]>[1]) => readonly number[],
): Option<number, true> {
  return reading(
    description,
    "12",
    (text) => {
      const digits = /^(?:no\.? ?|#)?(\d{1,9})$/i.exec(text.trim())?.[1];
      return digits === undefined
        ? { kind: "unreadable", message: `${quoted(text)} is no number of a list. Try “12”.` }
        : { kind: "read", value: Number(digits), readAs: digits };
    },
    (typed, context) =>
      suggest(context)
        .map(String)
        .filter((text) => text.startsWith(typed)),
  );
}

export const planOption = numberOption("The plan's number, as /plan list shows it", ({ records, member }) =>
  records.plans.of(member.id).map(({ id }) => id),
);

export const dutyOption = numberOption("The task's number, as /plan due shows it", ({ records, member }) =>
  records.plans.open(member.id).map(({ id }) => id),
);

/** The plan meant: the one named, else the only one. Throws: UserError where there is none. */
export function planMeant(given: number | undefined, title: string, context: Context): Plan | Question {
  const { records, member } = context;
  if (given !== undefined) {
    const found = records.plans.find(member.id, given);
    if (found === undefined)
      throw new UserError("not-found", `There is no plan ${given} of yours. /plan list shows them.`);
    if (found.state === "over") throw new UserError("not-now", `Plan ${given} is over already.`);
    return found;
  }
  const all = records.plans.of(member.id);
  const [only, ...others] = all;
  if (only === undefined)
    throw new UserError(
      "not-found",
      "You have no plan yet. Try /plan add task:water change 30 % when:every 7 days",
    );
  if (others.length === 0) return only;
  return askFor(
    context,
    { name: "plan", example: String(only.id) },
    {
      title,
      text: "Which plan?",
      choices: all.slice(0, 20).map((plan) => fills(labelOf(plan), "plan", String(plan.id))),
    },
  );
}

/** The due task meant: the one named, else the only one open. Throws: UserError where there is none. */
export function dutyMeant(given: number | undefined, title: string, context: Context): Duty | Question {
  const { records, member, now } = context;
  if (given !== undefined) {
    const found = records.plans.duty(member.id, given);
    if (found === undefined || found.half === "notice")
      throw new UserError("not-found", `There is no task ${given} of yours. /plan due lists what is due.`);
    return found;
  }
  const open = records.plans.open(member.id);
  const [only, ...others] = open;
  if (only === undefined)
    throw new UserError("not-found", "Nothing is due. /plan list shows what is planned.");
  if (others.length === 0) return only;
  return askFor(
    context,
    { name: "task", example: String(only.id) },
    {
      title,
      text: "Which of them?",
      choices: open
        .slice(0, 20)
        .map((duty) =>
          fills(
            `${duty.words.title}, ${sayMoment(Date.parse(duty.dueAt), member.zone, now)}`.slice(0, 80),
            "task",
            String(duty.id),
          ),
        ),
    },
  );
}

export function isQuestion(found: Plan | Duty | Question): found is Question {
  return "kind" in found && found.kind === "question";
}

function labelOf(plan: Plan): string {
  return `${plan.id}: ${sayPlan(plan)}, ${sayWhenPlanned(plan)}`.slice(0, 80);
}

/** "next Tue 20:00", "paused", "waits for the log". */
export function stateOf(plan: Plan, { member, now }: Pick<Context, "member" | "now">): string {
  if (plan.state === "paused") return "paused";
  if (plan.state === "over") return `over${plan.why === undefined ? "" : `: ${plan.why}`}`;
  const holds = plan.why === undefined ? "" : `; holds: ${plan.why}`;
  return plan.nextAt === undefined
    ? `waits for the log${holds}`
    : `${sayMoment(Date.parse(plan.nextAt), member.zone, now)}${holds}`;
}

export function plainReply(
  title: string,
  body: readonly string[],
  { audience }: Pick<Context, "audience">,
  more: Partial<Reply> = {},
): Reply {
  return { kind: "reply", ok: true, title, body, cautions: [], audience, ...more };
}
