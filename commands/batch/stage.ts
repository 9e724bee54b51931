import { writeFacts } from "../../src/kit/breeding/group.ts";
import { batchOption, nameOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply, words } from "../../src/kit/index.ts";
import { whenOption } from "../../src/kit/when-option.ts";

/** Words to choose from; any other is as good: not every animal is a larva first. */
const USUAL = ["hatched", "larvae", "settled", "juveniles", "grow-out", "broodstock", "lost"];

export default defineCommand({
  name: "stage",
  summary: "Note the stage a batch has reached, in your own word, and by which sign",
  options: {
    batch: batchOption(),
    stage: {
      ...nameOption("hatched, larvae, settled, juveniles, grow-out, lost, or a word of yours", "juveniles"),
      suggest: (typed: string) => USUAL.filter((stage) => stage.startsWith(typed.toLowerCase())),
    },
    sign: optional(words("By which sign, e.g. settled, first bar", "first white bar", 80)),
    when: optional(whenOption("When; now if left out")),
  },
  examples: ["/batch stage batch:B3 stage:juveniles sign:first white bar"],
  run({ batch, stage, sign, when }, context): Reply {
    writeFacts(
      context,
      () => ({
        facts: [
          {
            kind: "stage reached",
            batch: batch.id,
            stage: stage.toLowerCase(),
            ...(sign === undefined ? {} : { criterion: sign }),
          },
        ],
        result: undefined,
      }),
      { at: when },
    );
    return told(context, `${batch.id}: ${stage.toLowerCase()}`, [
      stage.toLowerCase() === "lost"
        ? "The batch is closed; whatever was left counts as not accounted for."
        : `From ${batch.stage}${sign === undefined ? "; note the sign next time, or days cannot be compared" : `, by ${sign}`}.`,
    ]);
  },
});
