import { type BatchSurvival, batchSurvival } from "../../src/core/breeding/batch-survival.ts";
import { batchTotals } from "../../src/core/breeding/ledger/totals.ts";
import { sayCount } from "../../src/core/breeding/read-count.ts";
import { survivalChart } from "../../src/kit/breeding/charts.ts";
import { groupOf, sayDay } from "../../src/kit/breeding/group.ts";
import { anyBatchOption } from "../../src/kit/breeding/options.ts";
import { percentText, told } from "../../src/kit/breeding/say.ts";
import { answerReply, defineCommand, type Reply } from "../../src/kit/index.ts";

export default defineCommand({
  name: "show",
  summary: "One batch: survival curve with its range, where everybody went, growth",
  options: { batch: anyBatchOption("Which batch, open or closed") },
  examples: ["/batch show batch:B3"],
  run({ batch }, context): Reply {
    const { state, today } = groupOf(context);
    const title = `${batch.id}: ${batch.species}, ${batch.stage}, ${batch.tank}`;
    const survival = batchSurvival(batch, today);
    const stages = batch.stages.map(
      ({ stage, day, criterion }) =>
        `${stage} ${sayDay(day)}${criterion === undefined ? "" : ` (${criterion})`}`,
    );
    if (survival === undefined)
      return told(context, title, [
        `Stages: ${stages.join(", ")}.`,
        "Not counted since hatching: /batch count begins the curve.",
      ]);
    const totals = batchTotals(batch);
    return answerReply<BatchSurvival>(survival, context, {
      title,
      headline: ({ now, days }) =>
        `${percentText(now.best)} alive (${percentText(now.low)}–${percentText(now.high)}) after ${days} days`,
      body: ({ lossPerDay, medianDay, hatch, growth, feedConversion }) => [
        `${batch.alive === undefined ? "" : `${sayCount(batch.alive)}. `}${totals.start} at the start + ${totals.joined} joined = ${totals.alive} alive + ${totals.dead} dead + ${totals.leftAlive} left alive + ${totals.missing} missing.`,
        ...(lossPerDay === undefined ? [] : [`Losses ${percentText(lossPerDay, 1)} a day on the mean.`]),
        ...(medianDay === undefined ? [] : [`Half were gone by ${sayDay(medianDay)}.`]),
        ...(hatch === undefined
          ? []
          : [
              `Hatched of the eggs: ${percentText(hatch.best)} (${percentText(hatch.low)}–${percentText(hatch.high)}).`,
            ]),
        ...(growth === undefined ? [] : [`Growth ${growth.percentPerDay.toFixed(1)} % a day by weight.`]),
        ...(feedConversion?.economic === undefined
          ? []
          : [`Feed conversion ${feedConversion.economic.toFixed(2)}.`]),
        `Stages: ${stages.join(", ")}.`,
      ],
      chart: (value) => survivalChart(batch, value, state.zone, context.now),
    });
  },
});
