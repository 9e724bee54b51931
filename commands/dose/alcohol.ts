import { alcoholReservoir } from "../../src/core/dosing/alcohol.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { answerReply, choice, defineCommand, optional, quantity } from "../../src/kit/index.ts";
import { showGrams, showPour } from "./shared.ts";

export default defineCommand({
  name: "alcohol",
  summary: "Let alcohol down for a dosing reservoir; per cent is by volume",
  options: {
    stock: quantity.percent("Strength of the bottle, % by volume", "40 %"),
    target: quantity.percent("Strength in the reservoir, % by volume", "10 %"),
    volume: quantity.volume("How much of the finished mix", "1 L"),
    denatured: optional(choice("Is it denatured (made unfit to drink)?", ["no", "yes"])),
  },
  examples: ["/dose alcohol stock:40 % target:10 % volume:1 L"],
  audience: "channel",
  run({ stock, target, volume, denatured }, context) {
    const answer = alcoholReservoir({
      stockPercent: stock,
      targetPercent: target,
      finalVolume: volume.estimate,
      isDenatured: denatured === "yes",
    });
    return answerReply(answer, context, {
      title: `${showPour(volume.estimate)} of ${showEstimate(target, "% alcohol by volume")}`,
      headline: (it) =>
        `${showPour(it.stockVolume)} of the ${showEstimate(stock, "%")} bottle, made up to ${showPour(it.finalVolume)}`,
      body: (it) => [
        "Alcohol and water shrink when they mix: fill to the mark, do not measure out the water.",
        `It holds ${showGrams(it.ethanol)} of ethanol; burnt up in the water, each millilitre takes ${showNumber(it.codPerLitre.best, 3)} mg of oxygen.`,
      ],
    });
  },
});
