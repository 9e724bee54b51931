import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { nameOption } from "../../src/kit/breeding/options.ts";
import { handoverCautions, told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, optional, type Reply, reading, UserError } from "../../src/kit/index.ts";

export default defineCommand({
  name: "want",
  summary: "Ask for young of a species, or withdraw the wish with number:0",
  options: {
    species: nameOption("Which species", "clownfish"),
    number: reading("How many; 0 withdraws the wish", "4", (text) =>
      /^\d{1,4}$/.test(text.trim())
        ? { kind: "read", value: Number(text), readAs: text.trim() }
        : { kind: "unreadable", message: "A whole number is needed. Try “4”, or “0” to withdraw." },
    ),
    ready: optional(choice("Is a cycled tank ready for them?", ["yes", "not yet"])),
  },
  examples: ["/juveniles want species:clownfish number:4 ready:yes"],
  run({ species, number, ready }, context): Reply {
    writeFacts(context, ({ state, me }) => {
      const mine = Object.values(state.wants).filter(
        (want) => want.person === me.number && keyOf(want.species) === keyOf(species),
      );
      if (number === 0 && mine.length === 0)
        throw new UserError("not-found", `You have no wish for ${species}.`);
      return {
        facts: [
          ...mine.map((want) => ({ kind: "want closed", want: want.number }) as const),
          ...(number === 0
            ? []
            : [
                {
                  kind: "wanted",
                  want: state.last.want + 1,
                  person: me.number,
                  species,
                  number,
                  isReady: ready === "yes",
                } as const,
              ]),
        ],
        result: undefined,
      };
    });
    const open = Object.values(groupOf(context).state.wants).filter(
      (want) => keyOf(want.species) === keyOf(species),
    );
    return told(
      context,
      number === 0 ? `Your wish for ${species} is withdrawn` : `You would like ${number} ${species}`,
      [
        `${open.length} on the list for ${species}. /juveniles share deals them out evenly.`,
        ...(number > 0 && ready !== "yes"
          ? ["Say ready:yes once a cycled tank waits; those with one go first."]
          : []),
      ],
      { cautions: number === 0 ? [] : handoverCautions(species) },
    );
  },
});
