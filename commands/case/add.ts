import { defineCommand, type Outcome, UserError } from "../../src/kit/index.ts";
import { cardReply, caseInMind, caseOption, FORM, factsOf, hurtIn, readBack } from "./shared.ts";

export default defineCommand({
  name: "add",
  summary: "Add a reading or any other fact to a help case",
  options: { case: caseOption(), ...FORM },
  examples: ["/case add readings:nitrite 0.5, pH 7.4", "/case add case:7 tank:60 L"],
  run({ case: given, ...form }, context): Outcome {
    const hurt = hurtIn(form, context);
    if (hurt !== undefined) return hurt;
    const helped = caseInMind(given, context);
    if (helped.state === "closed")
      throw new UserError("not-now", `Case ${helped.id} is closed. /case open starts a new one.`);
    const facts = factsOf(form);
    if (facts.length === 0) {
      const { helpCase } = cardReply(helped, context, { remark: "" });
      const next = helpCase?.next;
      return {
        kind: "question",
        isMistake: false,
        title: `Help case ${helped.id}`,
        text: next?.text ?? "What would you like to add?",
        body: [],
        cautions: [],
        choices: [],
        typed: {
          option: next?.field ?? "readings",
          label: next?.field ?? "readings",
          example: next?.example ?? "nitrate 20",
        },
        audience: "asker",
      };
    }
    const now = new Date(context.now).toISOString();
    const wasUrgent = cardReply(helped, context, { remark: "" }).helpCase?.isUrgent ?? false;
    for (const fact of facts) context.records.help.add(helped.id, context.member.id, fact, now);
    return cardReply(helped, context, { remark: readBack(form, context), wasUrgent });
  },
});
