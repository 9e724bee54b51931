import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { moveCautions } from "../../src/kit/breeding/moving.ts";
import { batchOption, numberOption, placeOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "split",
  summary: "Split some animals off a batch into another tank: both sides balance",
  options: { number: numberOption("How many go"), batch: batchOption(), to: placeOption("Where to") },
  examples: ["/batch split number:40 batch:B3 to:grow-out"],
  run({ number, batch, to }, context): Reply {
    const { state, today } = groupOf(context);
    const into = writeFacts(context, (group) => {
      const id = `B${group.state.last.batch + 1}`;
      return {
        facts: [{ kind: "split", batch: batch.id, into: id, number, tank: to.name }],
        result: id,
      };
    });
    const after = groupOf(context).state;
    const [left, gone] = [after.batches[keyOf(batch.id)]?.alive, after.batches[keyOf(into)]?.alive];
    return told(
      context,
      `${batch.id}: ${number} split off as ${into}`,
      [
        `${into} in ${to.name}: ${gone === undefined ? number : sayCount(gone)}. ${batch.id} in ${batch.tank}: ${left === undefined ? "–" : sayCount(left)}.`,
      ],
      { cautions: moveCautions(state, batch.tank, to, after.tanks[keyOf(to.name)], today) },
    );
  },
});
