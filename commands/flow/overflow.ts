import { overflowHead } from "../../src/core/plant/overflow-head.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, optional } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { flowOption, showFlow, tank } from "./shared.ts";

const TITLE = "Water over the overflow";
const TEETH = {
  no: "Even half blocked it stays between the teeth.",
  "when half blocked": "Half blocked it would run over the teeth.",
  "even clean": "It may run over the teeth even when clean.",
} as const;

export default defineCommand({
  name: "overflow",
  summary: "How high the water stands over an overflow, clean and half blocked",
  options: {
    crest: optional(plantOption("crest", "Its length, or its slots; your tank's if left out")),
    flow: flowOption,
    tank,
  },
  examples: [
    "/flow overflow crest:60 cm flow:11000 L/h",
    "/flow overflow crest:60 slots of 6 mm, teeth 40 mm flow:8000 L/h",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const crest = known.plant("crest", input.crest);
    if (crest === undefined) return known.askPlant("crest", TITLE);
    const flow = known.flow(input.flow);
    if (flow === undefined) return known.askPlant("flow", TITLE);
    return answerReply(overflowHead(flow, crest), context, {
      title: known.titled(TITLE),
      headline: ({ headMm }) =>
        `${showEstimate(headMm, "mm", { significant: 2 })} above the ${crest.kind === "plain" ? "crest" : "foot of the teeth"}`,
      body: ({ thirdBlockedMm, halfBlockedMm, overTeeth }) => [
        `At ${showFlow(flow)}. With 30 % closed by growth ${showEstimate(thirdBlockedMm, "mm", { significant: 2 })}, with half closed ${showEstimate(halfBlockedMm, "mm", { significant: 2 })}.`,
        ...(overTeeth === undefined ? [] : [TEETH[overTeeth]]),
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
