import { cultureOutlook } from "../../src/core/breeding/culture-outlook.ts";
import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { shareOf } from "../../src/core/breeding/share-of.ts";
import type { TubCount } from "../../src/core/breeding/tub-count.ts";
import { scoopsIn } from "../../src/kit/breeding/counting.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { countOption, cultureOption } from "../../src/kit/breeding/options.ts";
import {
  answerReply,
  defineCommand,
  optional,
  quantity,
  type Reply,
  UserError,
} from "../../src/kit/index.ts";
import { whenOption } from "../../src/kit/when-option.ts";

export default defineCommand({
  name: "count",
  summary: "Count a culture by small samples: density, exact range, growth since the last count",
  options: {
    culture: cultureOption(),
    count: countOption("Samples, e.g. 23 19 27 21 25 in 0.1 mL"),
    eggs: optional(quantity.percent("Share that carries eggs", "30 %")),
    when: optional(whenOption("When; now if left out")),
  },
  examples: ["/culture count culture:rotifers A count:23 19 27 21 25 in 0.1 mL"],
  run({ culture, count, eggs, when }, context): Reply {
    if (count.kind !== "scoops")
      throw new UserError(
        "bad-input",
        "A culture is counted in samples of a known volume. Try “23 19 27 in 0.1 mL”.",
      );
    const counted = scoopsIn(count, undefined);
    const { perML } = counted.value;
    writeFacts(
      context,
      () => ({
        facts: [
          {
            kind: "culture counted",
            culture: culture.name,
            perML: { best: perML.best, low: perML.low, high: perML.high },
            ...(eggs === undefined ? {} : { eggShare: shareOf(eggs) }),
          },
        ],
        result: undefined,
      }),
      { at: when },
    );
    const { cultures } = groupOf(context).state;
    const after = cultures[keyOf(culture.name)] ?? culture;
    const outlook = cultureOutlook(after, Object.values(cultures), context.now);
    return answerReply<TubCount>(counted, context, {
      title: `${culture.name}, counted`,
      headline: () =>
        `${perML.best.toPrecision(3)} per mL (${perML.low.toPrecision(3)}–${perML.high.toPrecision(3)})`,
      body: () =>
        outlook.kind === "answer"
          ? [
              `Growth since the last count, harvests put back: ${(100 * outlook.value.changePerDay).toFixed(0)} % a day; up to ${(100 * outlook.value.mostHarvest).toFixed(0)} % a day can be taken for good.`,
            ]
          : ["The next count gives its growth."],
      cautions: outlook.cautions,
    });
  },
});
