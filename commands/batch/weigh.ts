import { batchSurvival } from "../../src/core/breeding/batch-survival.ts";
import { gramsOf } from "../../src/core/breeding/grams.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { batchOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, quantity, type Reply } from "../../src/kit/index.ts";
import { whenOption } from "../../src/kit/when-option.ts";

export default defineCommand({
  name: "weigh",
  summary: "Note the mean weight of a batch: growth per day and feed conversion since the last time",
  options: {
    batch: batchOption(),
    mean: quantity.mass("Mean weight of one, wet", "0.85 g"),
    feed: optional(quantity.mass("Dry feed given since the last weighing", "18 g")),
    when: optional(whenOption("When; now if left out")),
  },
  examples: ["/batch weigh batch:B3 mean:0.85 g feed:18 g"],
  run({ batch, mean, feed, when }, context): Reply {
    writeFacts(
      context,
      () => ({
        facts: [
          {
            kind: "weighed",
            batch: batch.id,
            meanG: gramsOf(mean.estimate.best),
            ...(feed === undefined ? {} : { feedG: gramsOf(feed.estimate.best) }),
          },
        ],
        result: undefined,
      }),
      { at: when },
    );
    const { state, today } = groupOf(context);
    const after = state.batches[keyOf(batch.id)];
    const fared = after === undefined ? undefined : batchSurvival(after, today)?.value;
    const growth = fared?.growth;
    const conversion = fared?.feedConversion;
    return told(context, `${batch.id}: ${showNumber(gramsOf(mean.estimate.best), 3)} g each`, [
      growth === undefined
        ? "The next weighing gives growth per day."
        : `Growth ${growth.percentPerDay.toFixed(1)} % a day (on weight, logarithmic) over ${growth.days} days.`,
      ...(conversion?.economic === undefined
        ? []
        : [
            `Feed conversion ${conversion.economic.toFixed(2)}${conversion.biological === undefined ? "" : `, ${conversion.biological.toFixed(2)} with the dead counted in`} (dry feed, wet fish).`,
          ]),
    ]);
  },
});
