import { defineCommand, UserError } from "../../src/kit/index.ts";
import { cardReply, caseInMind, caseOption, FORM, factsOf, hurtIn, readBack } from "./shared.ts";

export default defineCommand({
  name: "correct",
  summary: "Put a fact of a help case right; what it said before is deleted",
  options: { case: caseOption(), ...FORM },
  examples: ["/case correct tank:120 L, 5 weeks", "/case correct case:7 readings:pH 7.4"],
  run({ case: given, ...form }, context) {
    const hurt = hurtIn(form, context);
    if (hurt !== undefined) return hurt;
    const helped = caseInMind(given, context);
    const facts = factsOf(form);
    if (facts.length === 0)
      throw new UserError("bad-input", "Say what it should be, for example tank:120 L or readings:pH 7.4.");
    const now = new Date(context.now).toISOString();
    const { help } = context.records;
    for (const fact of facts) {
      // A reading takes the place of its own kind only; the others stay.
      if (fact.field === "readings") help.add(helped.id, context.member.id, fact, now);
      else help.correct(helped.id, context.member.id, fact, now);
    }
    return cardReply(helped, context, { remark: `Put right. ${readBack(form, context)}` });
  },
});
