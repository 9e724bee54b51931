import { ORGANISMS } from "../../src/core/breeding/ledger/facts.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { caution } from "../../src/core/result.ts";
import { groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { cultureOption, litresOption, nameOption, personOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, optional, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "start",
  summary: "Note a live food culture: what, how much, where, and who keeps it",
  options: {
    name: nameOption("What the group calls it", "rotifers A"),
    organism: choice("What grows in it", ORGANISMS),
    litres: litresOption("The water in it", "20 L"),
    place: nameOption("Where it stands; a back-up belongs somewhere else", "cellar"),
    keeper: optional(personOption("Who keeps it; you if left out")),
    from: optional(cultureOption("The culture it was started from")),
  },
  examples: ["/culture start name:rotifers A organism:rotifers litres:20 L place:cellar"],
  run({ name, organism, litres, place, keeper, from }, context): Reply {
    writeFacts(context, ({ me }) => ({
      facts: [
        {
          kind: "culture started",
          culture: name,
          organism,
          litres: litres,
          place,
          keeper: keeper ?? me.number,
          ...(from === undefined ? {} : { parent: from.name }),
        },
      ],
      result: undefined,
    }));
    const group = groupOf(context);
    const others = Object.values(group.state.cultures).filter(
      (each) => each.organism === organism && each.ended === undefined && keyOf(each.name) !== keyOf(name),
    );
    return told(
      context,
      `${name}: ${organism}, at ${place}`,
      [
        others.length === 0
          ? "Count it every other day with /culture count."
          : `Its fellows: ${others.map((each) => `${each.name} at ${each.place} (${nameOf(group, each.keeper)})`).join("; ")}.`,
        "Rotifers carried into algae or brine shrimp end those: tools of its own for each.",
      ],
      { cautions: others.length === 0 ? [caution("breeding-no-backup", { culture: name }, "note")] : [] },
    );
  },
});
