import { mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showVolume } from "../../src/core/quantity/show.ts";
import { as, type Days } from "../../src/core/quantity/units.ts";
import { topOff } from "../../src/core/water/top-off.ts";
import {
  answerReply,
  askFor,
  defineCommand,
  optional,
  quantity,
  tankInMind,
  tankOption,
} from "../../src/kit/index.ts";
import { tankSalinity, tankVolume } from "../../src/kit/tank-figures.ts";
import { mixingTemperature, takenOf } from "./shared.ts";

const TITLE = "Topping off";

export default defineCommand({
  name: "topoff",
  summary: "Fresh water to replace what evaporated, and the drift without it",
  options: {
    evaporated: optional(
      quantity.volume("How much has gone, e.g. 12 L; or give the two salinities instead", "12 L"),
    ),
    full: optional(
      quantity.salinity("Salinity when the system is full; your usual one if left out", "35 ppt"),
    ),
    now: optional(quantity.salinity("Salinity read now, with the water low", "36.2 ppt")),
    over: optional(quantity.span("In what time it evaporated", "1 day")),
    reservoir: optional(quantity.volume("What an automatic top-off's reservoir holds", "60 L")),
    volume: optional(quantity.volume("Net water of the full system; your tank's if left out", "2300 L")),
    temperature: optional(quantity.temperature("Of the water; your tank's if left out")),
    tank: optional(tankOption()),
  },
  examples: [
    "/salt topoff evaporated:12 L over:1 day full:34 ppt volume:300 L",
    "/salt topoff full:35 ppt now:36.2 ppt volume:200 L",
  ],
  run(input, context) {
    const tank = tankInMind(input.tank, input.volume, context);
    const water = input.volume === undefined && tank !== undefined ? tankVolume(tank, context) : undefined;
    const volume = input.volume?.estimate ?? water?.estimate;
    if (volume === undefined)
      return askFor(
        context,
        { name: "volume", example: "300 L" },
        { title: TITLE, text: "How much water is in the full system?" },
      );
    const kept = input.full === undefined && tank !== undefined ? tankSalinity(tank, context) : undefined;
    const full = input.full?.salinity ?? kept?.estimate;
    if (full === undefined)
      return askFor(
        context,
        { name: "full", example: "35 ppt" },
        { title: TITLE, text: "What is the salinity when the system is full?" },
      );
    if (input.evaporated === undefined && input.now === undefined)
      return askFor(
        context,
        { name: "evaporated", example: "12 L" },
        { title: TITLE, text: "How much has evaporated? (Or give now: with the salinity you read.)" },
      );
    const temperature = mixingTemperature(input.temperature?.estimate, tank, context);
    const typedUnit = input.evaporated?.typedUnit ?? input.volume?.typedUnit ?? "L";
    const answer = topOff({
      volume,
      temperature: temperature.estimate,
      lost:
        input.evaporated !== undefined
          ? { kind: "litres", evaporated: input.evaporated.estimate, salinityFull: full }
          : { kind: "salinity", before: full, now: input.now?.salinity ?? full },
      days:
        input.over === undefined
          ? undefined
          : mapEstimate(input.over.estimate, (hours) => as<Days>(hours / 24)),
      reservoir: input.reservoir?.estimate,
    });
    return answerReply(answer, context, {
      title: tank !== undefined && water !== undefined ? `${TITLE}: ${tank.name}` : TITLE,
      headline: (it) => `Add ${showVolume(it.freshWaterL, typedUnit)} of fresh water`,
      body: (it) => [
        `With the water low, salinity is ${showEstimate(it.salinityNow, "ppt", { significant: 3 })}; full it is ${showEstimate(it.salinityFull, "ppt", { significant: 3 })}.`,
        ...(it.freshWaterPerDay === undefined || it.driftPerDay === undefined
          ? []
          : [
              `That is ${showEstimate(it.freshWaterPerDay, "L", { significant: 3 })} a day; left alone, salinity climbs ${showEstimate(it.driftPerDay, "ppt", { significant: 2 })} a day.`,
            ]),
        ...(it.salinityIfDumped === undefined
          ? []
          : [
              `If the whole reservoir ran into the full system: ${showEstimate(it.salinityIfDumped, "ppt", { significant: 3 })}.`,
            ]),
      ],
      taken: [...takenOf(kept, water), ...temperature.taken],
      cautions: water?.cautions ?? [],
    });
  },
});
