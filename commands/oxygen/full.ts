import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { oxygenSolubility } from "../../src/core/water/oxygen-solubility.ts";
import { answerReply, defineCommand, optional, quantity, tankOption } from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { air } from "./shared.ts";

const TITLE = "Oxygen in fully aerated water";

export default defineCommand({
  name: "full",
  summary: "How much oxygen your water can hold",
  options: {
    temperature: optional(quantity.temperature("Of the water; your tank's if left out", "26 °C")),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out", "34 ppt")),
    air: optional(air()),
    tank: optional(tankOption()),
  },
  examples: [
    "/oxygen full temperature:25 °C salinity:35 ppt",
    "/oxygen full temperature:20 °C salinity:0 ppt air:1500 m",
  ],
  run(input, context) {
    const known = knownFigures(input.tank, undefined, context);
    const temperature = known.temperature(input.temperature);
    if (temperature === undefined) return known.ask("temperature", TITLE);
    const salinity = known.salinity(input.salinity);
    if (salinity === undefined) return known.ask("salinity", TITLE);
    return answerReply(oxygenSolubility(salinity, temperature, { air: input.air }), context, {
      title: known.titled(TITLE),
      headline: ({ saturation }) => showEstimate(saturation, "mg/L", { significant: 3 }),
      body: ({ freshWaterSaturation, pressure }) => [
        `At ${showEstimate(temperature, "°C")}, ${showEstimate(salinity, "ppt")} and ${showNumber(pressure.best, 4)} kPa; the same water without salt would hold ${showEstimate(freshWaterSaturation, "mg/L", { significant: 3 })}.`,
        "Warmer or saltier water holds less.",
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
