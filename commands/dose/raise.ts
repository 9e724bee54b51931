import { type DoseSource, targetDose } from "../../src/core/dosing/target-dose.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { as, type Fraction } from "../../src/core/quantity/units.ts";
import {
  answerReply,
  askFor,
  defineCommand,
  optional,
  quantity,
  tankInMind,
  tankOption,
  words,
} from "../../src/kit/index.ts";
import { tankVolume } from "../../src/kit/tank-figures.ts";
import { showGrams, showPour, strength } from "./shared.ts";

const TITLE = "Dosing a whole system";

export default defineCommand({
  name: "raise",
  summary: "Dose that raises a whole system by a chosen mg/L, split over days",
  options: {
    by: quantity.concentration("How far to raise it, e.g. 0.05 mg/L or 20 ppm", "0.05 mg/L"),
    stock: optional(
      strength("How strong your stock is, e.g. 50 g in 1 L; a pure solid if left out", "50 g in 1 L"),
    ),
    purity: optional(quantity.fraction("Of a solid, when it is not pure", "97 %")),
    "per-day": optional(quantity.concentration("The most that one day may change", "20 mg/L")),
    doses: optional(quantity.count("Into how many doses a day is split", "4")),
    pump: optional(quantity.doserFlow("Flow of your dosing pump, for its seconds", "1.5 mL/min")),
    reservoir: optional(quantity.volume("How much stock you have, for how long it lasts", "5 L")),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    substance: optional(words("What it is, to check for hazards", "calcium chloride", 80)),
    tank: optional(tankOption()),
  },
  examples: [
    "/dose raise by:0.05 mg/L stock:50 g in 1 L volume:2700 L",
    "/dose raise by:60 mg/L per-day:20 mg/L tank:Lagoon",
  ],
  run(input, context) {
    const tank = tankInMind(input.tank, input.volume, context);
    const water = input.volume === undefined && tank !== undefined ? tankVolume(tank, context) : undefined;
    const systemVolume = input.volume?.estimate ?? water?.estimate;
    if (systemVolume === undefined)
      return askFor(
        context,
        { name: "volume", example: "200 L" },
        { title: TITLE, text: "How much water is in the system?" },
      );
    const source: DoseSource =
      input.stock === undefined
        ? { kind: "solid", purity: input.purity ?? exactly(as<Fraction>(1)) }
        : {
            kind: "stock",
            strength: input.stock,
            ...(input.reservoir === undefined ? {} : { reservoir: input.reservoir.estimate }),
            ...(input.pump === undefined ? {} : { pump: input.pump }),
          };
    const perDay = input["per-day"]?.estimate.best;
    const answer = targetDose({
      change: input.by.estimate,
      systemVolume,
      source,
      ...(perDay === undefined ? {} : { dailyCap: perDay }),
      ...(input.doses === undefined ? {} : { dosesPerDay: input.doses.best }),
      ...(input.substance === undefined ? {} : { substance: input.substance }),
    });
    return answerReply(answer, context, {
      title: `${tank !== undefined && water !== undefined ? `${tank.name}: ` : ""}${showEstimate(input.by.estimate, "mg/L")} more in ${showVolume(systemVolume)}`,
      headline: (it) =>
        it.mass !== undefined
          ? `${showGrams(it.mass)}${input.substance === undefined ? "" : ` of ${input.substance}`}`
          : it.stockVolume !== undefined
            ? `${showPour(it.stockVolume)} of stock`
            : "",
      body: (it) => [
        it.days === 1
          ? it.dosesPerDay === 1
            ? "All of it may go in on one day."
            : `Split into ${it.dosesPerDay} doses on one day.`
          : `Over ${it.days} days, ${showEstimate(it.changePerDay, "mg/L")} each.`,
        ...(it.massPerDay !== undefined && it.days > 1 ? [`Each day ${showGrams(it.massPerDay)}.`] : []),
        ...(it.stockPerDay !== undefined && it.days > 1 ? [`Each day ${showPour(it.stockPerDay)}.`] : []),
        ...(it.dosesPerDay > 1 && it.massPerDose !== undefined
          ? [`Each dose ${showGrams(it.massPerDose)}.`]
          : []),
        ...(it.dosesPerDay > 1 && it.stockPerDose !== undefined
          ? [`Each dose ${showPour(it.stockPerDose)}.`]
          : []),
        ...(it.pumpSecondsPerDose === undefined
          ? []
          : [`The pump runs ${showEstimate(it.pumpSecondsPerDose, "s", { significant: 3 })} per dose.`]),
        ...(it.reservoirLasts === undefined
          ? []
          : [`The reservoir lasts ${showEstimate(it.reservoirLasts, "days", { significant: 2 })}.`]),
      ],
      taken: water === undefined ? [] : [water.taken],
      cautions: water?.cautions ?? [],
    });
  },
});
