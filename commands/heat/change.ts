import { temperatureChange } from "../../src/core/plant/temperature-change.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { readPower } from "../../src/core/quantity/power.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { readTemperatureDifference } from "../../src/core/quantity/temperature.ts";
import { as, type Watts } from "../../src/core/quantity/units.ts";
import { answerReply, defineCommand, optional, quantity, reading, tankOption } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";

const TITLE = "Time to change the temperature";

export default defineCommand({
  name: "change",
  summary: "How long a heater or chiller takes to warm or cool a volume, and the energy it needs",
  options: {
    by: reading("By how much, e.g. 2 °C", "2 °C", (text, { habits }) =>
      readTemperatureDifference(text, habits),
    ),
    power: reading("Heater power, or heat the chiller removes", "1500 W", (text, { habits }) =>
      readPower(text, habits),
    ),
    against: optional(
      reading("Heat working against it all the while", "500 W", (text, { habits }) =>
        readPower(text, habits),
      ),
    ),
    volume: optional(quantity.volume("How much water; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: ["/heat change by:2 °C power:1500 W against:500 W volume:2300 L"],
  run(input, context) {
    const known = plantFigures(input.tank, input.volume, context);
    const volumeL = known.volume(input.volume);
    if (volumeL === undefined) return known.ask("volume", TITLE);
    if (input.against === undefined)
      known.assume({ name: "heat working against it", from: "not said", readAs: "0 W" });
    const answer = temperatureChange({
      volumeL,
      kelvin: input.by.estimate,
      powerW: input.power.estimate,
      againstW: input.against?.estimate ?? exactly(as<Watts>(0)),
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ hours }) => showEstimate(hours, "h", { significant: 2 }),
      body: ({ energyKWh }) => [
        `${showEstimate(input.by.estimate, "°C")} of ${showEstimate(volumeL, "L", { significant: 3 })} hold ${showEstimate(energyKWh, "kWh", { significant: 2 })}. Animals want such a change slower than equipment can make it.`,
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
