import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { moveCautions } from "../../src/kit/breeding/moving.ts";
import { batchOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "merge",
  summary: "Put one batch to another: the sum is kept, and the spawns of both",
  options: { batch: batchOption("The one that goes"), into: batchOption("The one it joins") },
  examples: ["/batch merge batch:B4 into:B3"],
  run({ batch, into }, context): Reply {
    const { state, today } = groupOf(context);
    writeFacts(context, () => ({
      facts: [{ kind: "merged", batch: batch.id, into: into.id }],
      result: undefined,
    }));
    const after = groupOf(context).state;
    const sum = after.batches[keyOf(into.id)];
    const place = after.tanks[keyOf(into.tank)];
    return told(
      context,
      `${batch.id} is now part of ${into.id}`,
      [
        `${into.id}: ${sum?.alive === undefined ? "–" : sayCount(sum.alive)}, of spawns ${(sum?.spawns ?? []).join(", ")}.`,
        ...(batch.pair === into.pair
          ? []
          : ["They have different parents: their young can no longer be told apart."]),
      ],
      { cautions: place === undefined ? [] : moveCautions(state, batch.tank, place, place, today) },
    );
  },
});
