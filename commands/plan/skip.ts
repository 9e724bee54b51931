import { capitalised, defineCommand, type Outcome, optional, UserError } from "../../src/kit/index.ts";
import { dutyMeant, dutyOption, isQuestion, plainReply } from "./shared.ts";

export default defineCommand({
  name: "skip",
  summary: "Leave a due task out this time; nothing is logged",
  options: { task: optional(dutyOption) },
  examples: ["/plan skip", "/plan skip task:12"],
  run(input, context): Outcome {
    const duty = dutyMeant(input.task, "Skip", context);
    if (isQuestion(duty)) return duty;
    if (duty.half === "back")
      throw new UserError(
        "not-now",
        `What was switched off has to come back: this one cannot be skipped. Is it on? /plan done task:${duty.id}`,
      );
    const { records, member, now } = context;
    const at = new Date(now).toISOString();
    if (!records.plans.settle(member.id, duty.id, "skipped", undefined, at, at, false))
      throw new UserError("not-now", `${capitalised(duty.words.title)} is ${duty.state} already.`);
    return plainReply(
      "Skipped",
      [
        duty.half === "off"
          ? "It stays on, so I shall not ask for its way back."
          : "The next time stays as planned.",
      ],
      context,
      { headline: capitalised(duty.words.title) },
    );
  },
});
