import { oxygenBudgetOfStock } from "../../src/core/nitrogen/oxygen-budget-of-stock.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, type Outcome, optional, quantity } from "../../src/kit/index.ts";
import { livestock, situationOf, situationOptions } from "../stocking/shared.ts";

const TITLE = "Oxygen budget";
/** Notes of the tank that this sum does not use. */
const UNUSED = ["filter media", "flow"];

export default defineCommand({
  name: "budget",
  summary: "Oxygen held against oxygen breathed, and how long it lasts when pumps and air stop",
  options: {
    livestock: optional(livestock("Animals with length or mass; your tank's if left out")),
    food: situationOptions.food,
    measured: optional(
      quantity.concentration("Oxygen now, between meals, all running: tells your aeration", "6.2 mg/L"),
    ),
    volume: situationOptions.volume,
    salinity: situationOptions.salinity,
    temperature: situationOptions.temperature,
    tank: situationOptions.tank,
  },
  examples: [
    "/oxygen budget livestock:2 queen triggerfish 25 cm food:280 g prawn 3 times a week volume:2300 L salinity:34 ppt temperature:26 °C",
    "/oxygen budget measured:6.2 mg/L tank:Lagoon",
  ],
  run(input, context): Outcome {
    const { measured, ...stock } = input;
    const ready = situationOf(
      { ...stock, growth: undefined, media: undefined, flow: undefined, change: undefined, every: undefined },
      context,
      TITLE,
    );
    if ("kind" in ready) return ready;
    const { situation, tank } = ready;
    const answer = oxygenBudgetOfStock(
      situation,
      measured === undefined ? {} : { measuredMgPerL: measured.estimate },
    );
    return answerReply(answer, context, {
      title: tank === undefined ? TITLE : `${tank.name}: ${TITLE.toLowerCase()}`,
      headline: ({ hoursAfterMeal }) =>
        `${showEstimate(hoursAfterMeal, "h", { significant: 2 })} of oxygen after a meal, if pumps and air stop`,
      body: ({ hoursAtRest, afterMealMgPerL, exchangeNowPerH, exchangeNeededPerH }) => [
        `Between meals it would last ${showEstimate(hoursAtRest, "h", { significant: 2 })}. Both count down to 4 mg/L.`,
        `After a meal the air has to renew ${showEstimate(exchangeNeededPerH, "water volumes an hour", { significant: 2 })}${exchangeNowPerH === undefined ? "" : `; yours does ${showEstimate(exchangeNowPerH, "", { significant: 2 })}`}.`,
        ...(afterMealMgPerL === undefined
          ? ["Measure oxygen between meals and add measured: to learn whether your aeration is enough."]
          : [
              `After a meal oxygen would settle near ${showEstimate(afterMealMgPerL, "mg/L", { significant: 2 })}.`,
            ]),
      ],
      table: (it) => ({
        columns: ["what", "oxygen"],
        rows: [
          ["held when fully aerated", showEstimate(it.saturationMgPerL, "mg/L", { significant: 3 })],
          ["held now, in all", showEstimate(it.heldG, "g", { significant: 2 })],
          ["used at rest", showEstimate(it.restGPerHour, "g/h", { significant: 2 })],
          ["used after a meal", showEstimate(it.afterMealGPerHour, "g/h", { significant: 2 })],
        ],
      }),
      taken: ready.taken.filter(({ name }) => !UNUSED.includes(name)),
      cautions: ready.cautions,
    });
  },
});
