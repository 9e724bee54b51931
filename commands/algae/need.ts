import { algaeExport } from "../../src/core/dosing/algae-export.ts";
import { nitrogenToRemove } from "../../src/core/dosing/nitrogen-to-remove.ts";
import { showVolume } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, optional, quantity, tankOption } from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { showGrams } from "../dose/shared.ts";
import { algaeOptions, nitrate } from "./shared.ts";

const TITLE = "Algae to take nitrate out";

export default defineCommand({
  name: "need",
  summary: "How much algae has to be harvested each week to take off so much nitrate",
  options: {
    nitrate: nitrate("How much nitrate it should take off in a week, e.g. 10 mg/L"),
    ...algaeOptions,
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: ["/algae need nitrate:5 mg/L volume:2700 L"],
  run(input, context) {
    const known = knownFigures(input.tank, input.volume, context);
    const systemVolume = known.volume(input.volume);
    if (systemVolume === undefined) return known.ask("volume", TITLE);
    const { perWeek } = nitrogenToRemove(input.nitrate, systemVolume);
    const answer = algaeExport({
      nitrogenPerWeek: perWeek,
      systemVolume,
      ...(input.dry === undefined ? {} : { dryShare: input.dry }),
      ...(input.nitrogen === undefined ? {} : { nitrogenOfDry: input.nitrogen }),
    });
    return answerReply(answer, context, {
      title: known.titled(`Algae to take off ${context.readAs.get("nitrate")?.readAs ?? ""} a week`),
      headline: ({ wetPerWeek }) => `Harvest ${showGrams(wetPerWeek)} of drained algae a week`,
      body: () => [
        `It has to carry off ${showGrams(perWeek)} of nitrogen from ${showVolume(systemVolume)}, and to grow back as fast.`,
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
