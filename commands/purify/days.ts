import { purifiedWater } from "../../src/core/plant/purified-water.ts";
import { readPressure } from "../../src/core/plant/read-load.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type LitresPerDay } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  defineCommand,
  fills,
  optional,
  quantity,
  reading,
  tankOption,
} from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";

const TITLE = "Making purified water";

export default defineCommand({
  name: "days",
  summary: "Days a membrane takes to make an amount of water at your pressure and cold, and the waste",
  options: {
    volume: optional(
      quantity.volume("How much purified water you want; your tank's whole water if left out", "2700 L"),
    ),
    rated: quantity.flow("What the membrane is rated for, e.g. 284 L/day", "284 L/day"),
    "rated-at": optional(
      reading("Pressure of that rating: 50 or 60 psi are in use", "60 psi", (text, { habits }) =>
        readPressure(text, habits),
      ),
    ),
    pressure: reading("Your feed pressure", "50 psi", (text, { habits }) => readPressure(text, habits)),
    temperature: quantity.temperature("Of the tap water", "15 °C"),
    dissolved: optional(quantity.concentration("Dissolved matter in the tap water", "300 mg/L")),
    waste: optional(quantity.plainNumber("Litres to the drain per litre made, when known", "2.3")),
    tank: optional(tankOption()),
  },
  examples: [
    "/purify days volume:2700 L rated:284 L/day rated-at:414 kPa pressure:345 kPa temperature:15 °C waste:2.3",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, input.volume, context);
    const litres = known.volume(input.volume);
    if (litres === undefined) return known.ask("volume", TITLE);
    const rating = input["rated-at"];
    if (rating === undefined)
      return askFor(
        context,
        { name: "rated-at", example: "60 psi" },
        {
          title: TITLE,
          text: "At which pressure was the membrane rated? It stands in its papers.",
          choices: [
            fills("50 psi (345 kPa)", "rated-at", "50 psi"),
            fills("60 psi (414 kPa)", "rated-at", "60 psi"),
          ],
        },
      );
    const answer = purifiedWater({
      litres,
      ratedLPerDay: mapEstimate(input.rated.estimate, (perHour) => as<LitresPerDay>(perHour * 24)),
      ratedPressureKPa: rating.best,
      feedPressureKPa: input.pressure,
      feedC: input.temperature.estimate,
      ...(input.dissolved === undefined ? {} : { dissolvedMgPerL: input.dissolved.estimate }),
      ...(input.waste === undefined ? {} : { rejectRatio: input.waste }),
    });
    return answerReply(answer, context, {
      title: known.titled(`${TITLE}: ${showEstimate(litres, "L", { significant: 3 })}`),
      headline: ({ days }) => showEstimate(days, "days", { significant: 3 }),
      body: ({ perDayL, toDrainL, tapWaterL }) => [
        `${showEstimate(perDayL, "L a day", { significant: 3 })} at your pressure and temperature.`,
        `${showEstimate(toDrainL, "L", { significant: 3 })} go to the drain: ${showEstimate(tapWaterL, "L", { significant: 3 })} of tap water in all.`,
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
