import { dutyToNote } from "../../src/core/breeding/duty-to-note.ts";
import { groupOf, nameOf, sayDay, writeFacts } from "../../src/kit/breeding/group.ts";
import { personOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, optional, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "done",
  summary: "Note tonight's duty as done: whoever did it has the credit, planned or not",
  options: {
    day: optional(choice("Which day's duty", ["today", "yesterday"])),
    by: optional(personOption("Who did it; you if left out")),
  },
  examples: ["/rota done"],
  run({ day = "today", by }, context): Reply {
    const { duty, who } = writeFacts(context, ({ state, me, today }) => {
      const doer = by ?? me.number;
      const found = dutyToNote(state, today, day === "yesterday" ? 1 : 0, doer);
      if (found === undefined)
        throw new UserError("not-found", `No duty of ${day} is left to note. /rota week shows them.`);
      return {
        facts: [{ kind: "duty done", duty: found.number, person: doer }],
        result: { duty: found, who: doer },
      };
    });
    const group = groupOf(context);
    return told(context, `${sayDay(duty.day)}, ${duty.slot}: done`, [
      `By ${nameOf(group, who)}${duty.person !== undefined && duty.person !== who ? `, in place of ${nameOf(group, duty.person)}` : ""}. Thank you.`,
    ]);
  },
});
