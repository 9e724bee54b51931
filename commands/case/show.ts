import { defineCommand } from "../../src/kit/index.ts";
import { cardReply, caseInMind, caseOption } from "./shared.ts";

export default defineCommand({
  name: "show",
  summary: "The card of a help case as it stands now, with its working",
  options: { case: caseOption() },
  examples: ["/case show", "/case show case:7"],
  run({ case: given }, context) {
    return cardReply(caseInMind(given, context), context, { remark: "As it stands now." });
  },
});
