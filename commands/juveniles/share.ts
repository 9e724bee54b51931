import { fairShares } from "../../src/core/breeding/fair-shares.ts";
import { hadBefore, unpromised } from "../../src/core/breeding/handed-out.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { caution } from "../../src/core/result.ts";
import { groupOf, nameOf } from "../../src/kit/breeding/group.ts";
import { batchOption, numberOption } from "../../src/kit/breeding/options.ts";
import { handoverCautions, told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "share",
  summary: "Who would get how many of a batch: a fair list, by wish, readiness and what each has had",
  options: {
    batch: batchOption(),
    number: optional(numberOption("How many are to be given; all that are not promised if left out", "40")),
  },
  examples: ["/juveniles share batch:B3 number:40"],
  run({ batch, number }, context): Reply {
    const group = groupOf(context);
    const { state } = group;
    const wants = Object.values(state.wants).filter((want) => keyOf(want.species) === keyOf(batch.species));
    const available = Math.min(number ?? Number.POSITIVE_INFINITY, unpromised(state, batch));
    const shares = fairShares(available, wants, (person) => hadBefore(state, person, batch.species));
    const unready = shares
      .filter(({ isReady, animals }) => !isReady && animals > 0)
      .map(({ person }) => nameOf(group, person));
    return told(
      context,
      `${batch.id}: ${available} ${batch.species} to share`,
      wants.length === 0
        ? [`Nobody has asked for ${batch.species}: /juveniles want.`]
        : [
            "One at a time to whoever has had the fewest; among equals, who asked first. /juveniles give offers them.",
          ],
      {
        table: {
          columns: ["who", "share", "asked", "tank ready", "had before"],
          rows: shares.map(({ person, animals, asked, isReady }) => [
            nameOf(group, person),
            String(animals),
            String(asked),
            isReady ? "yes" : "not yet",
            String(hadBefore(state, person, batch.species)),
          ]),
        },
        cautions: [
          ...(unready.length === 0 ? [] : [caution("breeding-not-ready", { people: unready }, "note")]),
          ...handoverCautions(batch.species),
        ],
      },
    );
  },
});
