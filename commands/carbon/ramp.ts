import { carbonRamp } from "../../src/core/dosing/carbon-ramp.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import {
  answerReply,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { showPour } from "../dose/shared.ts";
import { askRoute, askToday, conditionsOf, routeOf, routeOption, todayOptions } from "./shared.ts";

const TITLE = "Starting with carbon";
const USUAL_WEEKS = 6;
const USUAL_DOSES = 8;

export default defineCommand({
  name: "ramp",
  summary: "A slow start on dilute alcohol, week by week, each dose checked for its oxygen",
  options: {
    strength: quantity.percent("Strength of the dosing reservoir, % by volume", "10 %"),
    weeks: optional(quantity.count("How many weeks to plan; 6 if left out", "6")),
    doses: optional(quantity.count("Into how many doses a day is split; 8 if left out", "8")),
    route: routeOption,
    ...todayOptions,
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: ["/carbon ramp strength:10 % route:open water today:all runs, fish eat volume:2700 L"],
  run(input, context): Outcome {
    const known = knownFigures(input.tank, input.volume, context);
    const conditions = conditionsOf(input);
    if (conditions === undefined) return askToday(context, TITLE);
    const route = routeOf(input);
    if (route === undefined) return askRoute(context, TITLE);
    const systemVolume = known.volume(input.volume);
    if (systemVolume === undefined) return known.ask("volume", TITLE);
    const dosesPerDay = input.doses?.best ?? USUAL_DOSES;
    if (input.doses === undefined)
      known.assume({ name: "doses a day", from: "not said", readAs: String(USUAL_DOSES) });
    const answer = carbonRamp({
      route,
      systemVolume,
      reservoirPercent: input.strength,
      weeks: input.weeks?.best ?? USUAL_WEEKS,
      dosesPerDay,
      conditions,
    });
    return answerReply(answer, context, {
      title: known.titled(`Carbon for ${showVolume(systemVolume)}, week by week`),
      headline: ({ weeks }) => {
        const [first] = weeks;
        return first === undefined
          ? "No weeks to plan"
          : `Start with ${showPour(first.daily)} a day of the ${showEstimate(input.strength, "%")} mix`;
      },
      body: () => [
        "Each week adds the same again, but only while nitrate does not fall yet. Once it falls, stay.",
        "At the nitrate you want, halve the dose.",
      ],
      table: ({ weeks }) => ({
        columns: ["week", "a day", "each dose", "oxygen per dose, mg/L", "at worst"],
        rows: weeks.map((week) => [
          String(week.week),
          showPour(week.daily),
          showPour(week.perDose),
          showEstimate(week.oxygenPerDose, "", { significant: 2 }),
          showEstimate(week.worstOxygenPerDose, "", { significant: 2 }),
        ]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
