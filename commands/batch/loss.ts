import { caution } from "../../src/core/result.ts";
import { writeFacts } from "../../src/kit/breeding/group.ts";
import { batchOption, numberOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { choice, defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "loss",
  summary: "Note animals that were culled, or that are not accounted for",
  options: {
    number: numberOption("How many"),
    batch: batchOption(),
    what: choice("Culled by the owner's decision, or simply missing", ["missing", "culled"]),
  },
  examples: ["/batch loss number:4 batch:B3 what:missing"],
  run({ number, batch, what }, context): Reply {
    writeFacts(context, () => ({
      facts: [{ kind: what === "culled" ? "culled" : "lost", batch: batch.id, number }],
      result: undefined,
    }));
    return told(context, `${batch.id}: ${number} ${what}`, ["Kept apart from deaths that were found."], {
      cautions:
        what === "culled"
          ? [caution("breeding-cull-is-yours", {}, "note")]
          : [caution("breeding-never-release", {}, "note")],
    });
  },
});
