import { showEstimate } from "../../src/core/quantity/show.ts";
import { oxygenReading } from "../../src/core/water/oxygen-reading.ts";
import { readOxygen } from "../../src/core/water/read-oxygen.ts";
import { answerReply, defineCommand, optional, quantity, reading, tankOption } from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { air } from "./shared.ts";

const TITLE = "An oxygen reading";

export default defineCommand({
  name: "reading",
  summary: "What an oxygen reading means: mg/L to per cent of saturation, and back",
  options: {
    reading: reading("What the meter or kit shows, e.g. 6.2 mg/L or 92 %", "6.2 mg/L", (text, { habits }) =>
      readOxygen(text, habits),
    ),
    temperature: optional(quantity.temperature("Of the water; your tank's if left out", "26 °C")),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out", "34 ppt")),
    air: optional(air()),
    tank: optional(tankOption()),
  },
  examples: [
    "/oxygen reading reading:6 mg/L temperature:25 °C salinity:35 ppt",
    "/oxygen reading reading:92 % temperature:26 °C salinity:34 ppt",
  ],
  run(input, context) {
    const known = knownFigures(input.tank, undefined, context);
    const temperature = known.temperature(input.temperature);
    if (temperature === undefined) return known.ask("temperature", TITLE);
    const salinity = known.salinity(input.salinity);
    if (salinity === undefined) return known.ask("salinity", TITLE);
    const isShare = input.reading.kind === "share";
    return answerReply(oxygenReading(input.reading, salinity, temperature, input.air), context, {
      title: known.titled(TITLE),
      headline: ({ mgPerL, percent }) =>
        isShare
          ? `${showEstimate(mgPerL, "mg/L", { significant: 3 })} of oxygen`
          : `${showEstimate(percent, "%", { significant: 3 })} of saturation`,
      body: ({ saturation }) => [
        `Fully aerated, this water would hold ${showEstimate(saturation, "mg/L", { significant: 3 })}.`,
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
