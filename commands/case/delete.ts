import { defineCommand, type Outcome, UserError } from "../../src/kit/index.ts";
import { caseInMind, caseOption } from "./shared.ts";

export default defineCommand({
  name: "delete",
  summary: "Delete a help case of yours with all that was told in it",
  options: { case: caseOption() },
  examples: ["/case delete case:7"],
  run({ case: given }, context): Outcome {
    const helped = caseInMind(given, context);
    if (helped.owner !== context.member.id)
      throw new UserError("not-yours", "Only the one who opened a case can delete it.");
    const answer = context.request.answers["delete"];
    if (answer === undefined)
      return {
        kind: "question",
        isMistake: false,
        title: `Delete case ${helped.id}?`,
        text: "All that was told, advised and done in it will be gone for good.",
        body: [],
        cautions: [],
        choices: [
          {
            label: "Delete it",
            settle: { options: { case: String(helped.id) }, answers: { delete: "yes" } },
            tone: "stop",
          },
          { label: "Keep it", settle: { answers: { delete: "no" } } },
        ],
        audience: "asker",
      };
    if (answer === "yes") context.records.help.remove(helped.id);
    return {
      kind: "reply",
      ok: true,
      title: answer === "yes" ? "Deleted" : "Nothing was deleted",
      body: [answer === "yes" ? `Case ${helped.id} is gone.` : "All is as it was."],
      cautions: [],
      ...(answer === "yes" && helped.card !== undefined ? { goneCards: [helped.card] } : {}),
      audience: context.audience,
    };
  },
});
