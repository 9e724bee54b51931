import { writeFacts } from "../../src/kit/breeding/group.ts";
import { nameOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "clear",
  summary: "Lift the alert on a water group once it is over, for keepers",
  options: { water: nameOption("The water group or the tank's own water, as in /group show", "rack A") },
  examples: ["/group clear water:rack A"],
  run({ water }, context): Reply {
    writeFacts(context, () => ({ facts: [{ kind: "alert lifted", water }], result: undefined }));
    return told(context, `${water}: alert lifted`, [
      "Animals may be moved and given away again. It stands in the ledger who lifted it.",
    ]);
  },
});
