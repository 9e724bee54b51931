import { sayMoment } from "../../src/kit/calendar.ts";
import {
  capitalised,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  UserError,
} from "../../src/kit/index.ts";
import { hoursFrom } from "../../src/kit/later.ts";
import { dutyMeant, dutyOption, isQuestion, plainReply } from "./shared.ts";

const USUAL_H = 2;
const LONGEST_H = 14 * 24;

export default defineCommand({
  name: "later",
  summary: "Be reminded of a due task again later",
  options: {
    task: optional(dutyOption),
    for: optional(quantity.span("In how long; 2 hours if left out", "3 h")),
  },
  examples: ["/plan later", "/plan later task:12 for:3 h"],
  run(input, context): Outcome {
    const duty = dutyMeant(input.task, "Later", context);
    if (isQuestion(duty)) return duty;
    const hours = input.for?.estimate.best ?? USUAL_H;
    if (!(hours > 0) || hours > LONGEST_H)
      throw new UserError(
        "bad-input",
        "At most 14 days later: try for:3 h. /plan shift moves the plan itself.",
      );
    const { records, member, now } = context;
    const at = hoursFrom(now, hours);
    if (!records.plans.postpone(member.id, duty.id, new Date(at).toISOString()))
      throw new UserError("not-now", `${capitalised(duty.words.title)} is ${duty.state} already.`);
    return plainReply(capitalised(duty.words.title), ["It stays on the list: /plan due shows it."], context, {
      headline: `I ask again ${sayMoment(at, member.zone, now)}`,
    });
  },
});
