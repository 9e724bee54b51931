import { alkalinityCostOfFeeding } from "../../src/core/carbonate/feeding-alkalinity.ts";
import { foodNitrogenPerDay } from "../../src/core/nitrogen/food-nitrogen-per-day.ts";
import { readFood } from "../../src/core/nitrogen/read-food.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { as, type Days, type Grams } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { showGrams } from "../dose/shared.ts";
import { food } from "../stocking/shared.ts";
import { alkalinity } from "./shared.ts";

const TITLE = "What feeding costs in alkalinity";

export default defineCommand({
  name: "feeding",
  summary: "Alkalinity that turning the food into nitrate uses up, and what makes up for it",
  options: {
    food: optional(food("Food as given, e.g. 280 g prawn 3 times a week; your tank's if left out")),
    change: optional(quantity.fraction("Share of water you change each time", "30 %")),
    every: optional(quantity.span("How often you change it", "10 days")),
    "new-water": optional(alkalinity("Alkalinity of the new water, for where it settles by itself")),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: [
    "/minerals feeding food:120 g prawn daily volume:2700 L",
    "/minerals feeding change:30 % every:10 days new-water:9 dKH tank:Lagoon",
  ],
  run(input, context): Outcome {
    const known = knownFigures(input.tank, input.volume, context);
    const foods = input.food ?? known.noted("food", "food", readFood);
    if (foods === undefined)
      return askFor(
        context,
        { name: "food", example: "280 g prawn 3 times a week" },
        { title: TITLE, text: "What is fed, how much and how often?" },
      );
    const systemVolume = known.volume(input.volume);
    if (systemVolume === undefined) return known.ask("volume", TITLE);
    const { change, every } = input;
    const newWater = input["new-water"];
    const changeWords = [change, every, newWater].filter((each) => each !== undefined).length;
    if (changeWords > 0 && changeWords < 3) return missingOfChange(input, context);
    const nitrogenPerDay = foodNitrogenPerDay(foods);
    const answer =
      "kind" in nitrogenPerDay
        ? nitrogenPerDay
        : alkalinityCostOfFeeding({
            nitrogenPerDay,
            from: "food",
            systemVolume,
            ...(change === undefined || every === undefined || newWater === undefined
              ? {}
              : {
                  changes: {
                    everyDays: mapEstimate(every.estimate, (hours) => as<Days>(hours / 24)),
                    changed: change,
                    newWater,
                  },
                }),
          });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ lossPerWeek }) => `${showEstimate(lossPerWeek, "dKH", { significant: 2 })} a week`,
      body: (it) => [
        `${showGrams(mapEstimate(it.bicarbonatePerDay, (grams) => as<Grams>(grams)))} of sodium bicarbonate a day makes up for it, in ${showVolume(systemVolume)}.`,
        ...(it.settlesBeforeChange === undefined
          ? ["Add change:, every: and new-water: to see whether your water changes hold it up."]
          : [
              `With these water changes alone it settles at ${showEstimate(it.settlesBeforeChange, "dKH", { significant: 2 })} before each change.`,
            ]),
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});

/** Water changes need all three of their figures; asks for the first that is missing. */
function missingOfChange(
  input: { readonly change?: unknown; readonly every?: unknown },
  context: Parameters<typeof askFor>[0],
): Outcome {
  if (input.change === undefined)
    return askFor(
      context,
      { name: "change", example: "30 %" },
      { title: TITLE, text: "What share of the water is changed each time?" },
    );
  if (input.every === undefined)
    return askFor(
      context,
      { name: "every", example: "10 days" },
      { title: TITLE, text: "How often is it changed?" },
    );
  return askFor(
    context,
    { name: "new-water", example: "9 dKH" },
    { title: TITLE, text: "What is the alkalinity of the new water?" },
  );
}
