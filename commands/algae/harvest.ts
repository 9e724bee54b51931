import { algaeHarvest } from "../../src/core/dosing/algae-harvest.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type Grams } from "../../src/core/quantity/units.ts";
import { answerReply, defineCommand, optional, quantity, tankOption } from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { showGrams } from "../dose/shared.ts";
import { algaeOptions } from "./shared.ts";

const TITLE = "An algae harvest";

export default defineCommand({
  name: "harvest",
  summary: "How much nitrogen a weighed algae harvest took out, as nitrate",
  options: {
    wet: quantity.mass("Weight of the harvest, drained but not dried", "800 g"),
    ...algaeOptions,
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: ["/algae harvest wet:1 kg volume:2700 L", "/algae harvest wet:800 g tank:Lagoon"],
  run(input, context) {
    const known = knownFigures(input.tank, input.volume, context);
    const systemVolume = known.volume(input.volume);
    if (systemVolume === undefined) return known.ask("volume", TITLE);
    const wet = mapEstimate(input.wet.estimate, (kg) => as<Grams>(kg * 1000));
    const answer = algaeHarvest({
      wet,
      systemVolume,
      ...(input.dry === undefined ? {} : { dryShare: input.dry }),
      ...(input.nitrogen === undefined ? {} : { nitrogenOfDry: input.nitrogen }),
    });
    return answerReply(answer, context, {
      title: known.titled(`A harvest of ${showGrams(wet)} of algae`),
      headline: ({ nitrate }) => `${showEstimate(nitrate, "mg/L", { significant: 2 })} less nitrate`,
      body: ({ nitrogen }) => [`It carried off ${showGrams(nitrogen)} of nitrogen for good.`],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
