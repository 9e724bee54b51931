import { drainPath } from "../../src/core/plant/drain-path.ts";
import { answerReply, defineCommand, optional } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { flowOption, showFlow, tank } from "./shared.ts";

const TITLE = "What a drain carries";

export default defineCommand({
  name: "drain",
  summary: "How much a drain carries, and which of its pieces is the narrowest",
  options: {
    drain: optional(plantOption("drain", "Siphon, standpipe, fall, slope: piece by piece, parted by “;”")),
    flow: flowOption,
    tank,
  },
  examples: [
    "/flow drain drain:siphon: 2 in, drop 75 cm, 2 m, 3 elbows, entry flow:8000 L/h",
    "/flow drain drain:standpipe: 2 in, water 12 mm; fall: 2 in; slope: 2 in, 2 % flow:1200 L/h",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const drain = known.plant("drain", input.drain);
    if (drain === undefined) return known.askPlant("drain", TITLE);
    const flow = known.flow(input.flow);
    if (flow === undefined) return known.askPlant("flow", TITLE);
    return answerReply(drainPath(drain, flow), context, {
      title: known.titled(TITLE),
      headline: ({ capacityLPerH }) => showFlow(capacityLPerH),
      body: ({ narrowest, isEnough, elements }) => [
        `${isEnough ? "Enough" : "Not surely enough"} for ${showFlow(flow)}.`,
        ...(elements.length > 1 ? [`The narrowest piece is ${narrowest}.`] : []),
        ...(drain.some(({ kind }) => kind === "full siphon")
          ? ["/flow siphon tells what is left of it when air gets in."]
          : []),
      ],
      table: ({ elements }) => ({
        columns: ["piece", "carries"],
        rows: elements.map(({ name, capacityLPerH }) => [name, showFlow(capacityLPerH)]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
