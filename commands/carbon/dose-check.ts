import { carbonDoseCheck } from "../../src/core/dosing/carbon-dose-check.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import {
  answerReply,
  askFor,
  counted,
  defineCommand,
  type Outcome,
  optional,
  quantity,
  tankOption,
} from "../../src/kit/index.ts";
import { knownFigures } from "../../src/kit/known-figures.ts";
import { showGrams, showPour } from "../dose/shared.ts";
import { askRoute, askToday, conditionsOf, routeOf, routeOption, todayOptions } from "./shared.ts";

const TITLE = "Checking a carbon dose";

export default defineCommand({
  name: "dose-check",
  summary: "Whether a carbon dose you have in mind leaves the animals their oxygen",
  options: {
    daily: quantity.volume("How much a day, e.g. 30 mL", "30 mL"),
    strength: quantity.percent("Its strength, % by volume", "40 %"),
    doses: optional(quantity.count("In how many doses a day", "4")),
    route: routeOption,
    ...todayOptions,
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    tank: optional(tankOption()),
  },
  examples: [
    "/carbon dose-check daily:12 mL strength:40 % doses:4 route:open water today:all runs, fish eat volume:2700 L",
  ],
  run(input, context): Outcome {
    const known = knownFigures(input.tank, input.volume, context);
    const conditions = conditionsOf(input);
    if (conditions === undefined) return askToday(context, TITLE);
    const route = routeOf(input);
    if (route === undefined) return askRoute(context, TITLE);
    if (input.doses === undefined)
      return askFor(
        context,
        { name: "doses", example: "4" },
        { title: TITLE, text: "In how many doses a day?" },
      );
    const systemVolume = known.volume(input.volume);
    if (systemVolume === undefined) return known.ask("volume", TITLE);
    const dosesPerDay = input.doses.best;
    const answer = carbonDoseCheck({
      route,
      daily: input.daily.estimate,
      dosesPerDay,
      percentByVolume: input.strength,
      systemVolume,
      conditions,
    });
    return answerReply(answer, context, {
      title: known.titled(
        `${showPour(input.daily.estimate)} a day of ${showEstimate(input.strength, "%")} alcohol in ${counted(dosesPerDay, "dose")}`,
      ),
      headline: ({ oxygenPerDose }) =>
        `Each dose takes ${showEstimate(oxygenPerDose, "mg/L of oxygen", { significant: 2 })}`,
      body: (it) => [
        `If bacteria burnt all of it, ${showEstimate(it.worstOxygenPerDose, "mg/L", { significant: 2 })}. It is ${showGrams(it.ethanolPerDay)} of ethanol a day.`,
        it.dosesForComfort > dosesPerDay
          ? `Better in ${it.dosesForComfort} doses a day or more.`
          : "Split like this it stays under 0.5 mg/L a dose.",
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
