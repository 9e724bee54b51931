import { dutiesOn, substituteFor } from "../../src/core/breeding/rota-plan.ts";
import { groupOf, nameOf, sayDay, writeFacts } from "../../src/kit/breeding/group.ts";
import { comingDayOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "cannot",
  summary: "“I can't do Thursday”: your duty opens to all, and the next fair one is named",
  options: { day: comingDayOption("Which day") },
  examples: ["/rota cannot day:thursday"],
  run({ day }, context): Reply {
    const given = writeFacts(context, ({ state, me }) => {
      const mine = dutiesOn(state, day).filter(
        ({ person, doneBy }) => person === me.number && doneBy === undefined,
      );
      if (mine.length === 0) throw new UserError("not-found", `You have no duty on ${sayDay(day)}.`);
      return {
        facts: mine.map(({ number }) => ({ kind: "duty given up", duty: number }) as const),
        result: mine.map((duty) => ({ duty, next: substituteFor(state, duty, me.number) })),
      };
    });
    const group = groupOf(context);
    return told(
      context,
      `${sayDay(day)}: open to all`,
      given.map(
        ({ duty, next }) =>
          `${duty.slot}: ${next === undefined ? "nobody else is free that day; ask a keeper" : `${nameOf(group, next)} would be next by load`}. Whoever takes it types /rota take day:${day}, and has the credit.`,
      ),
    );
  },
});
