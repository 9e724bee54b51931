import { carbonNeedByRoute } from "../../src/core/dosing/carbon-need-by-route.ts";
import { nitrogenToRemove } from "../../src/core/dosing/nitrogen-to-remove.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import {
  answerReply,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { nitrate } from "../algae/shared.ts";
import { showPour } from "../dose/shared.ts";
import { askToday, conditionsOf, todayOptions } from "./shared.ts";

const TITLE = "Carbon to remove nitrate";
const USUAL_DOSES = 8;

const ROUTE = {
  "aerobic assimilation": "open water, skimmed out",
  "anoxic denitrification": "slow box, as gas",
} as const;

export default defineCommand({
  name: "need",
  summary: "How much dilute alcohol would remove so much nitrate, by both routes",
  options: {
    nitrate: nitrate("How much nitrate it should take off in a week, e.g. 10 mg/L"),
    strength: quantity.percent("Strength of the dosing reservoir, % by volume", "10 %"),
    doses: optional(quantity.count("Into how many doses a day is split; 8 if left out", "8")),
    ...todayOptions,
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: ["/carbon need nitrate:10 mg/L strength:10 % today:all runs, fish eat volume:2700 L"],
  run(input, context): Outcome {
    const known = knownFigures(input.tank, input.volume, context);
    const conditions = conditionsOf(input);
    if (conditions === undefined) return askToday(context, TITLE);
    const systemVolume = known.volume(input.volume);
    if (systemVolume === undefined) return known.ask("volume", TITLE);
    if (input.doses === undefined)
      known.assume({ name: "doses a day", from: "not said", readAs: String(USUAL_DOSES) });
    const { perDay } = nitrogenToRemove(input.nitrate, systemVolume);
    const answer = carbonNeedByRoute({
      nitrogenPerDay: perDay,
      systemVolume,
      reservoirPercent: input.strength,
      dosesPerDay: input.doses?.best ?? USUAL_DOSES,
      conditions,
    });
    return answerReply(answer, context, {
      title: known.titled(`Carbon to take off ${context.readAs.get("nitrate")?.readAs ?? ""} a week`),
      headline: ({ routes }) =>
        routes.map((each) => `${showPour(each.reservoirPerDay)} a day (${ROUTE[each.route]})`).join("; or "),
      body: () => [
        `That is ${showEstimate(perDay, "g", { significant: 2 })} of nitrogen a day. Work up to it slowly: /carbon ramp.`,
        "These are amounts once the bacteria are there; your own nitrate readings decide.",
      ],
      table: ({ routes }) => ({
        columns: [
          "where",
          "ethanol a day",
          `${showEstimate(input.strength, "%")} mix a day`,
          "each dose",
          "oxygen per dose, mg/L",
        ],
        rows: routes.map((each) => [
          ROUTE[each.route],
          showEstimate(each.ethanolPerDay, "g", { significant: 2 }),
          showPour(each.reservoirPerDay),
          showPour(each.reservoirPerDose),
          showEstimate(each.oxygenPerDose, "", { significant: 2 }),
        ]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
