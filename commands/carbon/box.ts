import { sideStreamCarbon } from "../../src/core/dosing/side-stream-carbon.ts";
import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type MgPerL } from "../../src/core/quantity/units.ts";
import { answerReply, defineCommand, type Outcome, quantity } from "../../src/kit/index.ts";
import { nitrate } from "../algae/shared.ts";
import { showPour } from "../dose/shared.ts";
import { askToday, conditionsOf, todayOptions } from "./shared.ts";

const TITLE = "Carbon for a slow box";

export default defineCommand({
  name: "box",
  summary: "Alcohol for a slow box that turns nitrate to gas, its feed's oxygen counted",
  options: {
    flow: quantity.flow("Flow through the box", "50 L/h"),
    nitrate: nitrate("How far nitrate falls from its inlet to its outlet, e.g. 40 mg/L"),
    oxygen: quantity.concentration("Oxygen of the water going in", "6 mg/L"),
    strength: quantity.percent("Strength of the dosing reservoir, % by volume", "10 %"),
    ...todayOptions,
  },
  examples: ["/carbon box flow:50 L/h nitrate:44 mg/L oxygen:6 mg/L strength:10 % today:all runs, fish eat"],
  run(input, context): Outcome {
    const conditions = conditionsOf(input);
    if (conditions === undefined) return askToday(context, TITLE);
    const answer = sideStreamCarbon({
      flow: input.flow.estimate,
      nitrateNRemoved: mapEstimate(input.nitrate, (nitrogen) => as<MgPerL>(nitrogen)),
      oxygenIn: input.oxygen.estimate,
      reservoirPercent: input.strength,
      conditions,
    });
    return answerReply(answer, context, {
      title: `${TITLE} at ${showEstimate(input.flow.estimate, "L/h")}`,
      headline: ({ reservoirPerDay }) =>
        `${showPour(reservoirPerDay)} a day of the ${showEstimate(input.strength, "%")} mix`,
      body: ({ ethanolPerDay, wastedOnOxygen }) => [
        `That is ${showEstimate(ethanolPerDay, "g", { significant: 2 })} of ethanol; ${showEstimate(
          mapEstimate(wastedOnOxygen, (share) => share * 100),
          "%",
          { significant: 2 },
        )} of it only burns the oxygen coming in.`,
        "Start with a quarter, and test nitrate and smell at the outlet before each step up.",
      ],
    });
  },
});
