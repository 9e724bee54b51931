import { defineCommand, quoted, UserError, words } from "../../src/kit/index.ts";
import type { MemberId } from "../../src/records/ids.ts";
import { cardReply, caseInMind, caseOption } from "./shared.ts";

export default defineCommand({
  name: "hand",
  summary: "Hand a help case to one named helper",
  options: { to: words("The helper, e.g. @bruno", "@bruno", 60), case: caseOption() },
  examples: ["/case hand to:@bruno"],
  run({ to, case: given }, context) {
    const helped = caseInMind(given, context);
    if (helped.club === undefined)
      throw new UserError("not-now", "This case is private: open one in the club's server to hand it on.");
    const [place = ""] = context.member.id.split(":");
    const mentioned = /^<@!?(\d{5,20})>$/.exec(to)?.[1];
    const name = mentioned ?? /^@?([\p{L}\p{N}_.-]{1,32})$/u.exec(to)?.[1];
    if (name === undefined || (place === "discord" && !/^\d{5,20}$/.test(name)))
      throw new UserError(
        "bad-input",
        `${quoted(to)} is nobody I can find. Mention the member, e.g. @bruno.`,
      );
    const helper = `${place}:${name.toLowerCase()}` as MemberId;
    context.records.help.hand(helped.id, helper, new Date(context.now).toISOString());
    const now =
      context.records.help.find({ member: context.member.id, club: helped.club }, helped.id) ?? helped;
    return cardReply(now, context, {
      remark: `Handed over to ${mentioned === undefined ? name : "that helper"}.`,
    });
  },
});
