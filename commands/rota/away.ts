import { groupOf, nameOf, sayDay, writeFacts } from "../../src/kit/breeding/group.ts";
import { comingDayOption, personOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "away",
  summary: "Say when you are away: no duty is planned for you, and those you have open to all",
  options: {
    from: comingDayOption("First day away"),
    until: comingDayOption("Last day away"),
    who: optional(personOption("Somebody else, for keepers")),
  },
  examples: ["/rota away from:2026-03-10 until:2026-03-14"],
  run({ from, until, who }, context): Reply {
    if (until < from) throw new UserError("bad-input", "The last day away comes before the first.");
    const { person, opened } = writeFacts(context, ({ state, me }) => {
      const whose = who ?? me.number;
      if (whose !== me.number && me.role !== "keeper")
        throw new UserError("not-yours", "Only a keeper notes somebody else's absence.");
      const mine = Object.values(state.duties).filter(
        ({ person: of, day, doneBy }) => of === whose && doneBy === undefined && day >= from && day <= until,
      );
      return {
        facts: [
          { kind: "away", person: whose, from, until },
          ...mine.map(({ number }) => ({ kind: "duty given up", duty: number }) as const),
        ],
        result: { person: whose, opened: mine.length },
      };
    });
    return told(context, `${nameOf(groupOf(context), person)}: away ${sayDay(from)} to ${sayDay(until)}`, [
      opened === 0
        ? "No duty falls into those days."
        : `Duties now open to all: ${opened}. /rota week shows them.`,
      "Who comes back finds the others ahead, and is asked a little more often until loads are even.",
    ]);
  },
});
