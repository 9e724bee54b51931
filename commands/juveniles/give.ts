import { groupOf, nameOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { batchOption, numberOption, personOption } from "../../src/kit/breeding/options.ts";
import { handoverCautions, told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "give",
  summary: "Offer animals of a batch to somebody; it counts once both sides have confirmed",
  options: {
    batch: batchOption(),
    number: numberOption("How many", "4"),
    to: personOption("Who gets them"),
  },
  examples: ["/juveniles give batch:B3 number:4 to:Bruno"],
  run({ batch, number, to }, context): Reply {
    const transfer = writeFacts(context, ({ state }) => {
      const id = state.last.transfer + 1;
      return {
        facts: [{ kind: "transfer offered", transfer: id, batch: batch.id, number, to }],
        result: id,
      };
    });
    return told(
      context,
      `Transfer ${transfer}: ${number} of ${batch.id} to ${nameOf(groupOf(context), to)}`,
      [
        `Both sides confirm at the handover: /juveniles confirm transfer:${transfer}. Until then they count as here, and as promised.`,
      ],
      { cautions: handoverCautions(batch.species) },
    );
  },
});
