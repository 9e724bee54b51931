import { dilute } from "../../src/core/dosing/dilution.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { answerReply, askFor, defineCommand, optional, quantity, words } from "../../src/kit/index.ts";
import { showPour, strength } from "./shared.ts";

export default defineCommand({
  name: "dilute",
  summary: "How much stock makes a weaker mix, made up to a volume",
  options: {
    target: strength("How strong it shall be, e.g. 10 % v/v, 5 mg/mL or 1 part in 5", "10 % v/v"),
    volume: quantity.volume("How much of the finished mix", "1 L"),
    stock: optional(strength("How strong the stock is; undiluted if left out", "40 % v/v")),
    substance: optional(words("What it is, to check for hazards", "citric acid", 80)),
  },
  examples: [
    "/dose dilute stock:40 % v/v target:10 % v/v volume:1 L",
    "/dose dilute target:1 part in 5 volume:500 mL",
  ],
  audience: "channel",
  run({ target, volume, stock, substance }, context) {
    if (stock === undefined && target.kind !== "parts")
      return askFor(
        context,
        { name: "stock", example: "40 % v/v" },
        { title: "Diluting", text: "How strong is the stock you start from?" },
      );
    const answer = dilute({
      stock: stock ?? { kind: "parts", value: exactly(1) },
      target,
      finalVolume: volume.estimate,
      ...(substance === undefined ? {} : { substance }),
    });
    return answerReply(answer, context, {
      title: `${showPour(volume.estimate)} at ${showEstimate(target.value, target.kind === "parts" ? "of the whole" : target.kind)}`,
      headline: (mix) =>
        `${showPour(mix.stockVolume)} of ${substance ?? "stock"}, made up to ${showPour(mix.finalVolume)}`,
      body: (mix) => [
        `About ${showPour(mix.topUpVolume)} of water, filled to the mark: the volume is that of the finished mix. The stock is ${showNumber(mix.stockShare.best * 100, 3)} % of the whole.`,
      ],
    });
  },
});
