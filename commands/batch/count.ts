import { keyOf } from "../../src/core/breeding/ledger/state.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import type { TubCount } from "../../src/core/breeding/tub-count.ts";
import { countIn, scoopsIn } from "../../src/kit/breeding/counting.ts";
import { groupOf, writeFacts } from "../../src/kit/breeding/group.ts";
import { batchOption, countOption } from "../../src/kit/breeding/options.ts";
import { told } from "../../src/kit/breeding/say.ts";
import { answerReply, defineCommand, optional, type Reply } from "../../src/kit/index.ts";
import { whenOption } from "../../src/kit/when-option.ts";

const round = (value: number): string => Math.round(value).toLocaleString("en");

export default defineCommand({
  name: "count",
  summary: "Count a batch: a number, a guess, or scoops with their exact range and a check for clumps",
  options: {
    batch: batchOption(),
    count: countOption(),
    when: optional(whenOption("When; now if left out")),
  },
  examples: ["/batch count batch:B3 count:4 7 5 in 10 mL", "/batch count batch:B3 count:131"],
  run({ batch, count, when }, context): Reply {
    const litres = groupOf(context).state.tanks[keyOf(batch.tank)]?.litres;
    const number = countIn(count, litres);
    const before = batch.alive;
    writeFacts(
      context,
      () => ({ facts: [{ kind: "counted", batch: batch.id, count: number }], result: undefined }),
      { at: when },
    );
    const line =
      before === undefined
        ? []
        : [`Reckoned before: ${sayCount(before)}. The difference is kept as missing or found.`];
    if (count.kind === "number") return told(context, `${batch.id}: ${sayCount(number)}`, line);
    return answerReply<TubCount>(scoopsIn(count, litres), context, {
      title: `${batch.id} in ${batch.tank}, counted by scoops`,
      headline: ({ total, isClumped }) =>
        total === undefined
          ? ""
          : isClumped
            ? `About ${round(total.best)}, not to be relied on: they stand clumped`
            : `About ${round(total.best)} (${round(total.low)}–${round(total.high)})`,
      body: ({ perML }) => [
        `${perML.best.toPrecision(3)} per mL (${perML.low.toPrecision(3)}–${perML.high.toPrecision(3)}).`,
        ...line,
      ],
    });
  },
});
