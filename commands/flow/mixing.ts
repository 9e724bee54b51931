import { mixingTime } from "../../src/core/plant/mixing-time.ts";
import { readSideTanks } from "../../src/core/plant/read-load.ts";
import { showHours } from "../../src/core/quantity/show.ts";
import { answerReply, askFor, defineCommand, optional, quantity, reading } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { flowOption, showFlow, tank } from "./shared.ts";

const TITLE = "Mixing through the loop";

export default defineCommand({
  name: "mixing",
  summary: "How long until something put in is evenly spread over display and filters",
  options: {
    display: optional(quantity.volume("Net water of the display; your tank's if left out", "1700 L")),
    rest: optional(quantity.volume("Net water of all else in the loop; your tank's if left out", "600 L")),
    flow: flowOption,
    slow: optional(
      reading(
        "Tanks on a slow flow of their own, counted apart",
        "algae tank 250 L at 600 L/h",
        (text, { habits }) => readSideTanks(text, habits),
      ),
    ),
    tank,
  },
  examples: [
    "/flow mixing display:1700 L rest:600 L flow:6000 L/h",
    "/flow mixing display:1700 L rest:600 L flow:6000 L/h slow:algae tank 250 L at 600 L/h",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, input.display ?? input.rest, context);
    const parts = input.display === undefined || input.rest === undefined ? known.parts() : {};
    const displayL = input.display?.estimate ?? parts.display;
    if (displayL === undefined)
      return askFor(
        context,
        { name: "display", example: "1700 L" },
        { title: TITLE, text: "How much water is in the display?" },
      );
    const restL = input.rest?.estimate ?? parts.rest;
    if (restL === undefined)
      return askFor(
        context,
        { name: "rest", example: "600 L" },
        { title: TITLE, text: "How much water is in the rest of the loop?" },
      );
    const flow = known.flow(input.flow);
    if (flow === undefined) return known.askPlant("flow", TITLE);
    return answerReply(mixingTime({ displayL, restL, flow, sideTanks: input.slow ?? [] }), context, {
      title: known.titled(TITLE),
      headline: ({ hours }) => `${showHours(hours)} until it is spread to 95 %`,
      body: ({ boundHours, slowest }) => [
        `At ${showFlow(flow)}. Wait ${showHours(boundHours)} to be safe: ${slowest === "the loop" ? "corners and rock mix later" : `${slowest} is the slowest part`}.`,
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
