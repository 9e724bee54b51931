import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { saltMix } from "../../src/core/water/salt-mix.ts";
import {
  answerReply,
  askFor,
  choice,
  defineCommand,
  optional,
  quantity,
  tankOption,
  words,
} from "../../src/kit/index.ts";
import { tankSalinity } from "../../src/kit/tank-figures.ts";
import { knownYield, mixingTemperature, showSalt, takenOf } from "./shared.ts";

export default defineCommand({
  name: "mix",
  summary: "How much salt mix and fresh water to make salt water",
  options: {
    volume: quantity.volume("How much, e.g. 110 L or 30 US gal", "110 L"),
    salinity: optional(quantity.salinity("To which salinity, e.g. 35 ppt, 1.026 SG or 53 mS/cm")),
    temperature: optional(quantity.temperature("Of the water, e.g. 25 °C; your tank's if left out")),
    measured: optional(
      choice("What the volume is: the finished salt water, or the fresh water put in", [
        "finished water",
        "fresh water",
      ]),
    ),
    product: optional(
      words("Your word for a salt mix you have calibrated; the last one if left out", "blue bag", 40),
    ),
    holds: optional(quantity.volume("Water that already stands in the mixing vessel", "20 L")),
    "holds-salinity": optional(quantity.salinity("Its salinity", "30 ppt")),
    tank: optional(tankOption("The tank it is for: its salinity and temperature are taken")),
  },
  examples: [
    "/salt mix volume:110 L salinity:35 ppt",
    "/salt mix volume:about 30 US gal salinity:1.026 SG 25/25 temperature:77 °F",
  ],
  run(input, context) {
    const { tank } = input;
    const kept = input.salinity === undefined && tank !== undefined ? tankSalinity(tank, context) : undefined;
    const salinity = input.salinity?.salinity ?? kept?.estimate;
    if (salinity === undefined)
      return askFor(
        context,
        { name: "salinity", example: "35 ppt" },
        { title: "Mixing salt water", text: "To which salinity?" },
      );
    if (input.holds !== undefined && input["holds-salinity"] === undefined)
      return askFor(
        context,
        { name: "holds-salinity", example: "0 ppt" },
        { title: "Mixing salt water", text: "How salty is the water that already stands in the vessel?" },
      );
    const temperature = mixingTemperature(input.temperature?.estimate, tank, context);
    const product = knownYield(input.product, context);
    const isFresh = input.measured === "fresh water";
    const { typedUnit } = input.volume;
    const held = input.holds;
    const answer = saltMix({
      volume: { kind: isFresh ? "water" : "final", litres: input.volume.estimate },
      salinity,
      temperature: temperature.estimate,
      yieldFactor: product?.estimate,
      ...(held === undefined || input["holds-salinity"] === undefined
        ? {}
        : { held: { litres: held.estimate, salinity: input["holds-salinity"].salinity } }),
    });
    return answerReply(answer, context, {
      title: `Salt for ${showVolume(input.volume.estimate, typedUnit)} ${isFresh ? "of fresh water" : "of salt water"} at ${showEstimate(salinity, "ppt")}`,
      headline: (mix) => `${showSalt(mix.saltKg, typedUnit)} of salt mix`,
      body: (mix) => [
        `Into ${showVolume(mix.waterL, typedUnit)} of fresh water${held === undefined ? "" : " beside what stands there"}; it becomes ${showVolume(mix.finalVolumeL, typedUnit)}.`,
        `That is ${showEstimate(mix.saltGramsPerLitre, "g", { significant: 3 })} per litre of finished water. ${isRange(mix.saltKg) ? "Start with the low figure, stir until clear, measure, then add." : "Stir until clear, then measure."}`,
      ],
      taken: [...takenOf(kept), ...temperature.taken, ...(product?.taken ?? [])],
    });
  },
});

/** Whether the two ends differ by more than a kitchen scale and a hydrometer would show. */
function isRange({ low, high }: { readonly low: number; readonly high: number }): boolean {
  return high > 1.02 * low;
}
