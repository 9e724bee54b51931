import { displacement } from "../../src/core/plant/displacement.ts";
import type { Millimetres } from "../../src/core/plant/plant-units.ts";
import { readArea } from "../../src/core/plant/read-area.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  choice,
  defineCommand,
  optional,
  quantity,
  reading,
} from "../../src/kit/index.ts";

const TITLE = "Water that rock and sand push aside";

export default defineCommand({
  name: "displaced",
  summary: "Water that rock and sand push aside: their solid only, since water fills the pores",
  options: {
    rock: optional(quantity.mass("Mass of the rock", "240 kg")),
    weighed: optional(choice("How the rock was weighed", ["dry", "wet and drained"])),
    sand: optional(quantity.mass("Dry mass of the sand poured in; or say bed: and depth:", "60 kg")),
    bed: optional(
      reading("Area of the sand bed", "260 x 100 cm", (text, { habits }) => readArea(text, habits)),
    ),
    depth: optional(quantity.length("Depth of the sand bed", "4 cm")),
  },
  examples: [
    "/vessel displaced rock:240 kg bed:260 x 100 cm depth:4 cm",
    "/vessel displaced rock:100 kg weighed:wet and drained",
  ],
  audience: "channel",
  run({ rock, weighed, sand, bed, depth }, context) {
    if (rock === undefined && sand === undefined && bed === undefined)
      return askFor(
        context,
        { name: "rock", example: "240 kg" },
        { title: TITLE, text: "How much rock is it?" },
      );
    if (bed !== undefined && depth === undefined)
      return askFor(
        context,
        { name: "depth", example: "4 cm" },
        { title: TITLE, text: "How deep is the sand?" },
      );
    const answer = displacement({
      ...(rock === undefined ? {} : { rock: { mass: rock.estimate, weighed: weighed ?? "dry" } }),
      ...(bed === undefined || depth === undefined
        ? sand === undefined
          ? {}
          : { sand: { dryMass: sand.estimate } }
        : { sand: { areaM2: bed, depthMm: mapEstimate(depth.estimate, (cm) => as<Millimetres>(cm * 10)) } }),
    });
    return answerReply(answer, context, {
      title: TITLE,
      headline: ({ totalL }) => showEstimate(totalL, "L", { significant: 3 }),
      body: ({ rockL, sandL, sandPoreWaterL }) => [
        ...(rock === undefined
          ? []
          : [
              `Rock: ${showEstimate(rockL, "L", { significant: 3 })}${weighed === undefined ? ", taken as weighed dry" : ""}.`,
            ]),
        ...(sandL.best > 0 ? [`Sand: ${showEstimate(sandL, "L", { significant: 3 })}.`] : []),
        ...(sandPoreWaterL.best > 0
          ? [
              `${showEstimate(sandPoreWaterL, "L", { significant: 3 })} of water stand between the grains: they count, and mix slowly.`,
            ]
          : []),
      ],
    });
  },
});
