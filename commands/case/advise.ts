import { isMedicine } from "../../src/core/help/advice.ts";
import { defineCommand, optional, reading, UserError, words } from "../../src/kit/index.ts";
import { readMoment } from "../../src/kit/time-of-plan.ts";
import { cardReply, caseInMind, caseOption, hurtIn } from "./shared.ts";

export default defineCommand({
  name: "advise",
  summary: "Pin advice to a help case as a numbered step, with a day to look again",
  options: {
    step: words("One thing to do, in plain words", "change 20 % every second day", 300),
    again: optional(
      reading<number>("When to look again", "in 3 days", (text, { member, now }) =>
        readMoment(text, member, now),
      ),
    ),
    case: caseOption(),
  },
  examples: ["/case advise step:change 20 % every second day again:in 3 days"],
  run({ step, again, case: given }, context) {
    const hurt = hurtIn({ worry: step }, context);
    if (hurt !== undefined) return hurt;
    const helped = caseInMind(given, context);
    if (isMedicine(step))
      throw new UserError(
        "not-now",
        "Medicine is not pinned here: which one, and how much, is for a vet who has seen the animals. Say it as “ask a vet about …”, without a dose.",
      );
    context.records.help.add(
      helped.id,
      context.member.id,
      {
        kind: "step",
        text: step,
        ...(again === undefined ? {} : { followUpAt: new Date(again).toISOString() }),
      },
      new Date(context.now).toISOString(),
    );
    return cardReply(helped, context, { remark: "Pinned as a step." });
  },
});
