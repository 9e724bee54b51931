import {
  type FilterTrainResult,
  filterTrain,
  type OxygenState,
} from "../../src/core/nitrogen/filter-train.ts";
import { readTrain } from "../../src/core/nitrogen/read-train.ts";
import { readFlow } from "../../src/core/quantity/flow.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import {
  answerReply,
  askFor,
  choice,
  counted,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  reading,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { ammonia } from "../ammonia/shared.ts";
import { food } from "../stocking/shared.ts";
import { ammoniaOf, askForBoxes } from "./shared.ts";

const TITLE = "Filter train";
const EXAMPLE =
  "settling box 150 L; 2 x drum 110 L with 60 L ceramic rings; drum 110 L low oxygen, side stream 20 L/h, dirt 2 g/day";

const OXYGEN: Readonly<Record<OxygenState, string>> = {
  oxic: "oxygen in order",
  low: "low in oxygen",
  anoxic: "no oxygen left",
};

export default defineCommand({
  name: "check",
  summary: "Your filter container by container: flow, time, ammonia, oxygen, and its order",
  options: {
    boxes: optional(
      reading(
        "Containers in order: litres of water, media, side stream, by-pass, aerated, dirt",
        EXAMPLE,
        (text, { habits }) => readTrain(text, habits),
      ),
    ),
    flow: optional(quantity.flow("What the pump really moves, in use; your tank's if left out", "6000 L/h")),
    food: optional(food("Food as given: decides the ammonia made; your tank's if left out")),
    growth: optional(choice("Whether the animals are grown or growing", ["adult", "growing"])),
    ammonia: optional(ammonia("Or the ammonia measured in the tank, instead of the food")),
    oxygen: optional(
      quantity.concentration("Oxygen of the water leaving the tank; 85–98 % full if left out", "6.5 mg/L"),
    ),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out", "34 ppt")),
    temperature: optional(quantity.temperature("Of the water; your tank's if left out", "26 °C")),
    tank: optional(tankOption()),
  },
  examples: [
    `/train check boxes:${EXAMPLE} flow:8000 L/h food:120 g prawn daily salinity:34 ppt temperature:26 °C`,
  ],
  run(input, context): Outcome {
    const known = knownFigures(input.tank, undefined, context);
    const { boxes } = input;
    if (boxes === undefined) return askForBoxes(TITLE, EXAMPLE, known, context);
    const flow = input.flow?.estimate ?? known.noted("flow", "flow", readFlow)?.estimate;
    if (flow === undefined)
      return askFor(
        context,
        { name: "flow", example: "6000 L/h" },
        { title: TITLE, text: "What flow does the pump really give, measured and not printed?" },
      );
    const load = ammoniaOf(input, known);
    if (load === undefined)
      return askFor(
        context,
        { name: "food", example: "280 g prawn 3 times a week" },
        { title: TITLE, text: "What is fed, and how often? It decides how much ammonia the filter gets." },
      );
    const salinity = known.salinity(input.salinity);
    if (salinity === undefined) return known.ask("salinity", TITLE);
    const temperatureC = known.temperature(input.temperature);
    if (temperatureC === undefined) return known.ask("temperature", TITLE);
    const answer =
      load.kind === "no-answer"
        ? load
        : filterTrain({
            flow,
            salinity,
            temperatureC,
            ammonia: load,
            ...(input.oxygen === undefined ? {} : { tankOxygen: input.oxygen.estimate }),
            boxes,
          });
    return answerReply(answer, context, {
      title: known.titled(`${counted(boxes.length, "container")} at ${showEstimate(flow, "L/h")}`),
      headline,
      body: (it) => [
        `In all the boxes take up ${showEstimate(it.nitrifiedGPerDay, "g of ammonia nitrogen a day", { significant: 2 })}. Fully aerated water here holds ${showEstimate(it.saturationMgPerL, "mg/L of oxygen", { significant: 3 })}.`,
      ],
      table: (it) => ({
        columns: [
          "container",
          "L/h",
          "minutes in it",
          "ammonia N in → out, mg/L",
          "takes up, g N a day",
          "oxygen in → out, mg/L",
          "verdict",
        ],
        rows: it.boxes.map((box) => [
          box.label,
          showNumber(box.flow.best, 3),
          showNumber(box.residenceMin.best, 2),
          `${showNumber(box.tanIn.best, 2)} → ${showNumber(box.tanOut.best, 2)}`,
          showEstimate(box.nitrifiedGPerDay, "", { significant: 2 }),
          `${showNumber(box.oxygenIn.best, 3)} → ${showNumber(box.oxygenOut.best, 3)}`,
          OXYGEN[box.state],
        ]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});

function headline(it: FilterTrainResult): string {
  if (it.isOverloaded) return "This filter cannot take up what is made: ammonia keeps rising";
  return it.tankTan === undefined
    ? `It takes up ${showEstimate(it.nitrifiedGPerDay, "g of ammonia nitrogen a day", { significant: 2 })}`
    : `Ammonia in the tank settles near ${showEstimate(it.tankTan, "mg/L as nitrogen", { significant: 2 })}`;
}
