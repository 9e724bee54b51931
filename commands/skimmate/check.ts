import { skimmate } from "../../src/core/plant/skimmate.ts";
import { exactly, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showHours } from "../../src/core/quantity/show.ts";
import { as, type Litres, type LitresPerDay } from "../../src/core/quantity/units.ts";
import { answerReply, defineCommand, optional, quantity, tankOption } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";

const TITLE = "Skimmate container";

export default defineCommand({
  name: "check",
  summary: "When the skimmate container runs over, and the salt it takes from the tank",
  options: {
    rate: quantity.flow("How much collects, e.g. 0.6 L/day", "0.6 L/day"),
    holds: quantity.volume("What the container holds", "4 L"),
    now: optional(quantity.volume("What stands in it now; empty if left out", "1 L")),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out")),
    tank: optional(tankOption()),
  },
  examples: ["/skimmate check rate:0.6 L/day holds:4 L now:1 L volume:2300 L salinity:35 ppt"],
  run(input, context) {
    const known = plantFigures(input.tank, input.volume, context);
    const systemL = known.volume(input.volume);
    if (systemL === undefined) return known.ask("volume", TITLE);
    const salinity = known.salinity(input.salinity);
    if (salinity === undefined) return known.ask("salinity", TITLE);
    const answer = skimmate({
      rate: mapEstimate(input.rate.estimate, (perHour) => as<LitresPerDay>(perHour * 24)),
      cupL: input.holds.estimate,
      inCupL: input.now?.estimate ?? exactly(as<Litres>(0)),
      systemL,
      salinity,
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ hoursToFull }) => `Full in ${showHours(hoursToFull)}`,
      body: ({ salinityFallPerWeek, litresPerWeek }) => [
        `${showEstimate(litresPerWeek, "L", { significant: 2 })} of salt water leave in a week; topped off with fresh water, salinity falls ${showEstimate(salinityFallPerWeek, "ppt", { significant: 2 })}.`,
        "Put the same amount of salt water back, or count it into the next change.",
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
