import { branchFlows } from "../../src/core/plant/parallel-branches.ts";
import { readBranches } from "../../src/core/plant/read-pipe.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, optional, reading } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { showFlow, tank } from "./shared.ts";

const TITLE = "Branches of one pump";
const EXAMPLE =
  "display height 1.7 m, 2 in, 8 m, 3 elbows; algae tank height 0.4 m, 1 in, 3 m, 2 elbows, valve";

export default defineCommand({
  name: "branches",
  summary: "How one pump's flow shares itself over several pipes from a common node",
  options: {
    branches: reading(
      "Each branch: height of its end, pipe, fittings; parted by “;”",
      EXAMPLE,
      (text, { habits }) => readBranches(text, habits),
    ),
    pump: optional(plantOption("pump", "Points of its curve, or its greatest head and flow")),
    common: optional(plantOption("pipe", "Pipe between pump and node; none if left out")),
    tank,
  },
  examples: [
    `/flow branches branches:${EXAMPLE} pump:0 L/h at 5.2 m; 4000 L/h at 4.8 m; 8000 L/h at 3.9 m; 12000 L/h at 2.4 m; 15000 L/h at 0 m`,
  ],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const curve = known.plant("pump", input.pump);
    if (curve === undefined) return known.askPlant("pump", TITLE);
    return answerReply(
      branchFlows({ curve, common: input.common ?? [], branches: input.branches }),
      context,
      {
        title: known.titled(TITLE),
        headline: ({ totalLPerH }) => `${showFlow(totalLPerH)} in all`,
        body: ({ nodeHeadM }) => [
          `All branches see the same ${showEstimate(nodeHeadM, "m", { significant: 2 })} of head at the node.`,
        ],
        table: ({ branches }) => ({
          columns: ["branch", "gets"],
          rows: branches.map(({ name, flowLPerH }) => [name, showFlow(flowLPerH)]),
        }),
        taken: known.taken,
        cautions: known.cautions,
      },
    );
  },
});
