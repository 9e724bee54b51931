import { defineCommand } from "../../src/kit/index.ts";
import { cardReply, FORM, factsOf, hurtIn, readBack } from "./shared.ts";

export default defineCommand({
  name: "open",
  summary: "Open a help case: a short form, all of it optional; the rest is asked one by one",
  options: FORM,
  examples: [
    "/case open",
    "/case open worry:my fish hide all day tank:60 L fresh water, 5 weeks animals:6 neon tetras readings:ammonia 0.5, pH 7.6, 25 °C",
  ],
  run(form, context) {
    const hurt = hurtIn(form, context);
    if (hurt !== undefined) return hurt;
    const { member, request, records, now } = context;
    const opened = records.help.open(member.id, request.club, factsOf(form), new Date(now).toISOString());
    return cardReply(opened, context, {
      remark: `Case ${opened.id} is open. ${readBack(form, context)} Only what you type is shared; photos are welcome in the thread.`,
      isNew: true,
    });
  },
});
