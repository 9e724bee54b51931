import { pipeRunLoss } from "../../src/core/plant/pipe-run.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, optional } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { flowOption, showFlow, tank } from "./shared.ts";

const TITLE = "Head lost in pipes";

export default defineCommand({
  name: "pipe",
  summary: "Head a run of pipe loses at a flow, by two methods, and how fast the water runs",
  options: {
    pipe: optional(plantOption("pipe", "Bore, length, fittings, devices; several bores parted by “;”")),
    flow: flowOption,
    tank,
  },
  examples: ["/flow pipe pipe:riser: 2 in, 12 m, 3 elbows, flush entry, exit flow:9000 L/h"],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const pipe = known.plant("pipe", input.pipe);
    if (pipe === undefined) return known.askPlant("pipe", TITLE);
    const flow = known.flow(input.flow);
    if (flow === undefined) return known.askPlant("flow", TITLE);
    return answerReply(pipeRunLoss(pipe, flow), context, {
      title: known.titled(`${TITLE} at ${showFlow(flow)}`),
      headline: ({ lossM }) => `${showEstimate(lossM, "m", { significant: 3 })} of head`,
      body: ({ hazenWilliamsM }) => [
        `By Hazen–Williams, for comparison: ${showEstimate(hazenWilliamsM, "m", { significant: 3 })}.`,
        "The height lifted comes on top: /flow pump puts both together.",
      ],
      table: ({ velocities }) => ({
        columns: ["pipe", "water runs at"],
        rows: velocities.map(({ segment, velocityMPerS }) => [
          segment,
          `${showNumber(velocityMPerS, 3)} m/s`,
        ]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
