import { harvestNitrogenPerDay } from "../../src/core/dosing/algae-harvest.ts";
import { foodNitrogenPerDay } from "../../src/core/nitrogen/food-nitrogen-per-day.ts";
import { type NitrogenFlows, nitrogenBalance } from "../../src/core/nitrogen/nitrogen-balance.ts";
import { asNitrogen, type GramsNPerDay } from "../../src/core/nitrogen/nitrogen-units.ts";
import { readFood } from "../../src/core/nitrogen/read-food.ts";
import { exactly, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type Days, type Grams } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  choice,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { nitrate } from "../algae/shared.ts";
import { food } from "../stocking/shared.ts";

const TITLE = "Nitrogen balance sheet";
const MOST_DAYS = 30;

export default defineCommand({
  name: "balance",
  summary: "What nitrogen comes in with the food, every way out, and what nitrate does",
  options: {
    food: optional(food("Food as given, e.g. 280 g prawn 3 times a week; your tank's if left out")),
    nitrate: optional(nitrate("Nitrate now, just before a change; your last logged one if left out")),
    change: optional(quantity.fraction("Share of water you change each time", "30 %")),
    every: optional(quantity.span("How often you change it", "10 days")),
    "new-nitrate": optional(nitrate("Nitrate of the new water; none if left out")),
    algae: optional(quantity.mass("Algae you harvest a week, drained, not dried", "800 g")),
    solids: optional(
      quantity.fraction("Share of the food's nitrogen you catch as dirt; 2–20 % if left out", "10 %"),
    ),
    skimmate: optional(quantity.mass("Nitrogen your skimmer takes out a day, if you know it", "0.3 g")),
    growth: optional(quantity.fraction("Share that stays in growing animals; 0–15 % if left out", "5 %")),
    box: optional(quantity.volume("Water in a box without oxygen that turns nitrate to gas", "110 L")),
    fed: optional(choice("Whether carbon is dosed into that box", ["no", "yes"])),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: ["/train balance food:120 g prawn daily nitrate:80 mg/L change:30 % every:10 days volume:2700 L"],
  run(input, context): Outcome {
    const known = knownFigures(input.tank, input.volume, context);
    const foods = input.food ?? known.noted("food", "food", readFood);
    if (foods === undefined)
      return askFor(
        context,
        { name: "food", example: "280 g prawn 3 times a week" },
        { title: TITLE, text: "What is fed, how much and how often?" },
      );
    const volumeL = known.volume(input.volume);
    if (volumeL === undefined) return known.ask("volume", TITLE);
    const logged = input.nitrate === undefined ? known.logged("nitrate", MOST_DAYS) : undefined;
    const now =
      input.nitrate ??
      (logged === undefined ? undefined : mapEstimate(logged, (value) => asNitrogen(value, "NO3")));
    if (now === undefined)
      return askFor(
        context,
        { name: "nitrate", example: "40 mg/L" },
        { title: TITLE, text: "What is the nitrate now?" },
      );
    const { change, every, box } = input;
    if (change !== undefined && every === undefined)
      return askFor(
        context,
        { name: "every", example: "10 days" },
        { title: TITLE, text: "How often is the water changed?" },
      );
    const feedN = foodNitrogenPerDay(foods);
    const answer =
      "kind" in feedN
        ? feedN
        : nitrogenBalance({
            volumeL,
            feedN,
            nitrate: now,
            ...(input.growth === undefined ? {} : { retainedShare: input.growth }),
            ...(input.solids === undefined ? {} : { solidsShare: input.solids }),
            ...(input.skimmate === undefined
              ? {}
              : {
                  skimmate: mapEstimate(input.skimmate.estimate, (kg) => as<GramsNPerDay>(kg * 1000)),
                }),
            ...(input.algae === undefined
              ? {}
              : {
                  algaeHarvest: harvestNitrogenPerDay(
                    mapEstimate(input.algae.estimate, (kg) => as<Grams>(kg * 1000)),
                  ),
                }),
            ...(box === undefined
              ? {}
              : {
                  denitrification: {
                    kind: input.fed === "yes" ? "dosed box" : "porous media",
                    litres: box.estimate,
                  } satisfies NitrogenFlows["denitrification"],
                }),
            ...(change === undefined || every === undefined
              ? {}
              : {
                  waterChange: {
                    changed: change,
                    everyDays: mapEstimate(every.estimate, (hours) => as<Days>(hours / 24)).best,
                    sourceNitrate: input["new-nitrate"] ?? exactly(asNitrogen(0, "NO3")),
                  },
                }),
          });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ nitratePerWeekMgPerL: rise }) =>
        `Nitrate ${rise.low < 0 && rise.high > 0 ? "may rise or fall" : rise.best < 0 ? "falls" : "rises"}: ${showEstimate(rise, "mg/L a week", { significant: 2 })}`,
      body: ({ steadyBeforeMgPerL, steadyAfterMgPerL }) =>
        steadyBeforeMgPerL === undefined || steadyAfterMgPerL === undefined
          ? ["Add change: and every: to see where your water changes let it settle."]
          : [
              `With these water changes it settles at ${showEstimate(steadyBeforeMgPerL, "mg/L", { significant: 3 })} before and ${showEstimate(steadyAfterMgPerL, "mg/L", { significant: 3 })} after each.`,
            ],
      table: ({ lines }) => ({
        columns: ["nitrogen", "g a day"],
        rows: lines.map(({ name, gNPerDay }) => [name, showEstimate(gNPerDay, "", { significant: 2 })]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
