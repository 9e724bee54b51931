import { showEstimate } from "../../src/core/quantity/show.ts";
import { convertSalinity } from "../../src/core/water/convert-salinity.ts";
import { answerReply, defineCommand, optional, quantity } from "../../src/kit/index.ts";
import { mixingTemperature } from "./shared.ts";

export default defineCommand({
  name: "convert",
  summary: "One salinity on every scale: ppt, g/L, specific gravity, mS/cm",
  options: {
    salinity: quantity.salinity("E.g. 35 ppt, 1.026 SG 25/25 or 53 mS/cm at 25 °C"),
    temperature: optional(
      quantity.temperature("Of the water, for g/L, density and conductivity as measured"),
    ),
  },
  examples: [
    "/salt convert salinity:1.026 SG 25/25",
    "/salt convert salinity:53 mS/cm at 25 °C temperature:26 °C",
  ],
  audience: "channel",
  run({ salinity, temperature }, context) {
    const water = mixingTemperature(temperature?.estimate, undefined, context);
    return answerReply(convertSalinity(salinity.salinity, water.estimate), context, {
      title: "The same water on every scale",
      headline: ({ practical }) => showEstimate(practical, "ppt"),
      body: () => [
        "A specific gravity means nothing without its two temperatures: look for them on the instrument.",
      ],
      table: (it) => ({
        columns: ["scale", "value"],
        rows: [
          ["practical salinity (ppt, PSU)", showEstimate(it.practical, "")],
          ["specific gravity 25/25 °C", showEstimate(it.gravity25at25, "", { significant: 5 })],
          ["specific gravity 20/20 °C", showEstimate(it.gravity20at20, "", { significant: 5 })],
          ["specific gravity 60/60 °F", showEstimate(it.gravity60FAt60F, "", { significant: 5 })],
          ["specific gravity 15.6/4 °C", showEstimate(it.gravity15point6at4, "", { significant: 5 })],
          ["specific gravity 20/4 °C", showEstimate(it.gravity20at4, "", { significant: 5 })],
          ["conductivity brought to 25 °C", showEstimate(it.conductivityAt25, "mS/cm")],
          ["conductivity as measured", showEstimate(it.conductivityAsMeasured, "mS/cm")],
          ["grams of salt per kg of salt water", showEstimate(it.absolute, "g/kg")],
          ["grams of salt per litre of salt water", showEstimate(it.gramsPerLitre, "g/L")],
          ["chlorinity", showEstimate(it.chlorinity, "g/kg")],
          ["density", showEstimate(it.density, "kg/m³", { significant: 5 })],
        ],
      }),
      taken: water.taken,
    });
  },
});
