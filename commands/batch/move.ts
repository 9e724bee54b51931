import { waterNameOf } from "../../src/core/breeding/ledger/advance.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { isUphill } from "../../src/core/breeding/tonight.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { moveCautions } from "../../src/kit/breeding/moving.ts";
import { batchOption, placeOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "move",
  summary: "Move a whole batch to another tank, with a word on what may go with it",
  options: { batch: batchOption(), to: placeOption("Where to") },
  examples: ["/batch move batch:B3 to:grow-out"],
  run({ batch, to }, context): Reply {
    const { state, today } = groupOf(context);
    writeFacts(context, () => ({
      facts: [{ kind: "moved", batch: batch.id, tank: to.name }],
      result: undefined,
    }));
    const after = groupOf(context).state.tanks[keyOf(to.name)];
    return told(
      context,
      `${batch.id}: ${batch.tank} → ${to.name}`,
      [
        waterNameOf(state, batch.tank) === to.water
          ? "Both share their water: for disease they are one tank."
          : isUphill(state, batch.tank, to.name)
            ? "Another water, and a more delicate one."
            : "Another water: nets and water stay behind.",
      ],
      { cautions: moveCautions(state, batch.tank, to, after, today) },
    );
  },
});
