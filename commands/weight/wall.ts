import { wallPressure } from "../../src/core/plant/wall-pressure.ts";
import { wallThickness } from "../../src/core/plant/wall-thickness.ts";
import { exactly, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type DegreesC, type Metres, type PracticalSalinity } from "../../src/core/quantity/units.ts";
import { seawaterDensity } from "../../src/core/water/density.ts";
import { answerReply, defineCommand, optional, quantity } from "../../src/kit/index.ts";
import { WALL_REFUSAL } from "../../src/kit/plant-words.ts";

const TITLE = "Push of the water on a wall";
const SEAWATER = exactly(seawaterDensity(as<PracticalSalinity>(35), as<DegreesC>(25)));

export default defineCommand({
  name: "wall",
  summary: "How hard water pushes on a wall, and why no wall thickness is worked out here",
  options: {
    depth: optional(quantity.length("Water depth at the wall", "70 cm")),
    length: optional(quantity.length("Length of the wall", "2.6 m")),
  },
  examples: ["/weight wall depth:70 cm length:2.6 m"],
  run({ depth, length }, context) {
    if (depth === undefined || length === undefined)
      return answerReply(wallThickness(), context, {
        title: "Wall thickness",
        headline: () => "",
        body: () => [],
      });
    const metres = (cm: number) => as<Metres>(cm / 100);
    const answer = wallPressure({
      depthM: mapEstimate(depth.estimate, metres),
      wallLengthM: mapEstimate(length.estimate, metres),
      density: SEAWATER,
    });
    return answerReply(answer, context, {
      title: TITLE,
      headline: ({ pressureKPa, forceKN }) =>
        `${showEstimate(pressureKPa, "kPa", { significant: 2 })} at the bottom, ${showEstimate(forceKN, "kN", { significant: 2 })} on the whole wall`,
      body: () => [WALL_REFUSAL],
    });
  },
});
