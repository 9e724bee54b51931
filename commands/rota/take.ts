import { dutiesOn } from "../../src/core/breeding/rota-plan.ts";
import { groupOf, nameOf, sayDay, writeFacts } from "../../src/kit/breeding/group.ts";
import { comingDayOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "take",
  summary: "Take a duty that is open to all",
  options: { day: comingDayOption("Which day") },
  examples: ["/rota take day:thursday"],
  run({ day }, context): Reply {
    const slots = writeFacts(context, ({ state, me }) => {
      const open = dutiesOn(state, day).filter(
        ({ person, doneBy }) => person === undefined && doneBy === undefined,
      );
      if (open.length === 0)
        throw new UserError(
          "not-now",
          `Nothing is open on ${sayDay(day)}: somebody may have been quicker. /rota week shows it.`,
        );
      return {
        facts: open.map(({ number }) => ({ kind: "duty taken", duty: number, person: me.number }) as const),
        result: { slots: open.map(({ slot }) => slot), by: open[0]?.givenUpBy },
      };
    });
    return told(context, `${sayDay(day)} is yours`, [
      `${slots.slots.join(", ")}${slots.by === undefined ? "" : `, from ${nameOf(groupOf(context), slots.by)}`}. The credit goes to you.`,
    ]);
  },
});
