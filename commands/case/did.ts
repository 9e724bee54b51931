import { defineCommand, UserError, words } from "../../src/kit/index.ts";
import { cardReply, caseInMind, caseOption, hurtIn } from "./shared.ts";

export default defineCommand({
  name: "did",
  summary: "Say what you did, in words or by a step's number",
  options: {
    what: words("What you did, or the number of a step", "changed 30 % of the water", 500),
    case: caseOption(),
  },
  examples: ["/case did what:changed 30 % of the water", "/case did what:step 2"],
  run({ what, case: given }, context) {
    const hurt = hurtIn({ worry: what }, context);
    if (hurt !== undefined) return hurt;
    const helped = caseInMind(given, context);
    const { help } = context.records;
    const number = /^(?:step )?#?(\d{1,3})$/i.exec(what.trim())?.[1];
    const step = help
      .entries(helped.id)
      .find((entry) => entry.kind === "step" && entry.number === Number(number));
    if (number !== undefined && (step === undefined || !help.settleStep(helped.id, Number(number))))
      throw new UserError("bad-input", `Case ${helped.id} has no open step ${number}.`);
    const text = step === undefined ? what : step.text;
    help.add(helped.id, context.member.id, { kind: "done", text }, new Date(context.now).toISOString());
    return cardReply(helped, context, { remark: "Noted as done. Test again before the next step." });
  },
});
