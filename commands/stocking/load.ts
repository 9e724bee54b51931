import { type LimitingFactor, stockingLoad } from "../../src/core/nitrogen/stocking-load.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, type Outcome, optional } from "../../src/kit/index.ts";
import { livestock, situationOf, situationOptions, used } from "./shared.ts";

const TITLE = "Stocking load";

const FACTOR: Readonly<Record<LimitingFactor, string>> = {
  "nitrifying area, on average": "the filter's nitrifying area, day by day",
  "nitrifying area after a meal": "the filter's nitrifying area after a meal",
  oxygen: "oxygen",
  "nitrate export": "getting rid of nitrate",
  "nothing known about the filter": "not known: say what filter media there are",
};

export default defineCommand({
  name: "load",
  summary: "What animals and food ask of the system, and what gives out first",
  options: {
    livestock: optional(livestock("Animals with length or mass; your tank's if left out")),
    ...situationOptions,
  },
  examples: [
    "/stocking load livestock:1 brown-marbled grouper 55 cm; 2 queen triggerfish 25 cm food:280 g prawn 3 times a week media:60 L ceramic rings volume:2700 L salinity:34 ppt temperature:26 °C",
    "/stocking load tank:Lagoon change:30 % every:10 days",
  ],
  run(input, context): Outcome {
    const ready = situationOf(input, context, TITLE);
    if ("kind" in ready) return ready;
    const { situation, tank, taken, cautions } = ready;
    return answerReply(stockingLoad(situation), context, {
      title:
        tank === undefined || input.volume !== undefined ? TITLE : `${tank.name}: ${TITLE.toLowerCase()}`,
      headline: (load) => {
        const [first] = load.uses;
        return first === undefined || load.limiting === "nothing known about the filter"
          ? `${grams(load.tanGPerDay)} of ammonia nitrogen a day`
          : `First to give out: ${FACTOR[load.limiting]}, ${used(first.used)}`;
      },
      body: (load) => [
        `Food brings ${grams(load.feedNGPerDay)} of nitrogen a day; ${grams(load.tanGPerDay)} of it comes out as ammonia (as N), ${showEstimate(load.peakTimesAverage, "", { significant: 2 })} times that rate after a meal.`,
        `If nothing took it out, ammonia would rise ${showEstimate(load.dailyRiseMgPerL, "mg/L N", { significant: 2 })} in a day.`,
        `Nitrate climbs ${showEstimate(load.nitratePerWeekMgPerL, "mg/L", { significant: 2 })} a week${load.steadyNitrateMgPerL === undefined ? "" : ` and settles at ${showEstimate(load.steadyNitrateMgPerL, "mg/L", { significant: 2 })} before each change`}.`,
        ...(load.limiting === "nothing known about the filter"
          ? [`The filter is ${FACTOR[load.limiting]}.`]
          : []),
      ],
      table: (load) => ({
        columns: ["what", "a day"],
        rows: [
          ...(load.fishMassG === undefined ? [] : [["mass of the animals", grams(load.fishMassG)]]),
          ["food", grams(load.feedGPerDay)],
          ["oxygen, at rest", `${grams(load.oxygen.totalRestGPerDay)}`],
          ["oxygen, after a meal", `${grams(load.oxygen.totalAfterMealGPerDay)}`],
          ["hours of oxygen if all stops", showEstimate(load.oxygen.reserveH, "h", { significant: 2 })],
          ["surface needed, average", showEstimate(load.area.averageM2, "m²", { significant: 2 })],
          ["surface needed, after a meal", showEstimate(load.area.afterMealM2, "m²", { significant: 2 })],
          ...(load.area.installedM2 === undefined
            ? []
            : [["surface installed", showEstimate(load.area.installedM2, "m²", { significant: 2 })]]),
          [`that is, of ${load.area.neededOf}`, showEstimate(load.area.neededL, "L", { significant: 2 })],
          ["alkalinity used a week", showEstimate(load.alkalinityDkhPerWeek, "dKH", { significant: 2 })],
          ...load.uses.map((use) => [use.factor, used(use.used)]),
        ],
      }),
      taken,
      cautions,
    });
  },
});

function grams(estimate: Estimate): string {
  return estimate.best >= 1000
    ? showEstimate(
        { best: estimate.best / 1000, low: estimate.low / 1000, high: estimate.high / 1000 },
        "kg",
        { significant: 2 },
      )
    : showEstimate(estimate, "g", { significant: 2 });
}
