import { batchSurvival } from "../../src/core/breeding/batch-survival.ts";
import { daysBetween } from "../../src/core/breeding/calendar.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { countIn } from "../../src/kit/breeding/counting.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { batchOption, countOption } from "../../src/kit/breeding/options.ts";
import { percentText, told } from "../../src/kit/breeding/say.ts";
import { defineCommand, optional, type Reply } from "../../src/kit/index.ts";
import { whenOption } from "../../src/kit/when-option.ts";

export default defineCommand({
  name: "hatched",
  summary: "Note that a batch has hatched, and how many",
  options: {
    batch: batchOption(),
    count: optional(countOption()),
    when: optional(whenOption("When; now if left out")),
  },
  examples: ["/spawn hatched batch:B1 count:4 7 5 in 10 mL"],
  run({ batch, count, when }, context): Reply {
    const litres = groupOf(context).state.tanks[keyOf(batch.tank)]?.litres;
    const number = count === undefined ? undefined : countIn(count, litres);
    writeFacts(
      context,
      () => ({
        facts: [
          {
            kind: "stage reached",
            batch: batch.id,
            stage: "hatched",
            ...(number === undefined ? {} : { count: number }),
          },
        ],
        result: undefined,
      }),
      { at: when },
    );
    const group = groupOf(context);
    const after = group.state.batches[keyOf(batch.id)];
    const hatch = after === undefined ? undefined : batchSurvival(after, group.today)?.value.hatch;
    const days = daysBetween(batch.laidDay, after?.hatchDay ?? group.today);
    return told(context, `${batch.id} has hatched`, [
      `${days} days after the eggs were seen; this goes into your own hatching times.`,
      ...(number === undefined ? ["Count them soon: /batch count takes scoops."] : [sayCount(number)]),
      ...(hatch === undefined
        ? []
        : [
            `Hatched of the eggs: ${percentText(hatch.best)} (${percentText(hatch.low)}–${percentText(hatch.high)}).`,
          ]),
      "First feed: /culture feed reckons tonight's rotifers.",
    ]);
  },
});
