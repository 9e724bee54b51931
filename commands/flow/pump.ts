import { operatingPoint } from "../../src/core/plant/operating-point.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { as, type Metres } from "../../src/core/quantity/units.ts";
import { answerReply, defineCommand, optional, quantity } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { showFlow, tank } from "./shared.ts";

const TITLE = "What the pump delivers";

export default defineCommand({
  name: "pump",
  summary: "How much a pump delivers through its pipes: where both curves meet",
  options: {
    pump: optional(plantOption("pump", "Points of its curve, or its greatest head and flow")),
    lift: optional(quantity.length("Height from the pump container's water to the display's", "1.7 m")),
    pipe: optional(plantOption("pipe", "Pipes with fittings and devices, as in /flow pipe")),
    tank,
  },
  examples: [
    "/flow pump pump:0 L/h at 5.2 m; 4000 L/h at 4.8 m; 8000 L/h at 3.9 m; 12000 L/h at 2.4 m; 15000 L/h at 0 m lift:1.7 m pipe:2 in, 12 m, 4 elbows, ball valve, exit",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const pump = known.plant("pump", input.pump);
    if (pump === undefined) return known.askPlant("pump", TITLE);
    const lift = known.plant("lift", input.lift);
    if (lift === undefined) return known.askPlant("lift", TITLE);
    const run = known.plant("pipe", input.pipe);
    if (run === undefined) return known.askPlant("pipe", TITLE);
    const staticHeadM = mapEstimate(lift.estimate, (cm) => as<Metres>(cm / 100));
    return answerReply(operatingPoint({ curve: pump, staticHeadM, run }), context, {
      title: known.titled(TITLE),
      headline: ({ flowLPerH }) => showFlow(flowLPerH),
      body: ({ headM, hazenWilliamsFlowLPerH }) => [
        `Against ${showEstimate(headM, "m", { significant: 3 })}: ${showEstimate(staticHeadM, "m")} of height, the rest lost in pipes.`,
        `By Hazen–Williams it would be ${showFlow(hazenWilliamsFlowLPerH)}.`,
      ],
      table: ({ curves }) => ({
        columns: ["L/h", "pump lifts, m", "pipes ask, m"],
        rows: curves
          .filter((_, index) => index % 4 === 0)
          .map((at) => [showNumber(at.flowLPerH, 3), showNumber(at.pumpM, 3), showNumber(at.systemM, 3)]),
      }),
      picture: ({ curves, flowLPerH, headM }) => ({
        kind: "pump",
        altText: `Pump curve and pipe curve over the flow: they meet at ${showFlow(flowLPerH)} and ${showEstimate(headM, "m", { significant: 3 })}.`,
        points: curves,
        meeting: { flowLPerH: flowLPerH.best, headM: headM.best },
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
