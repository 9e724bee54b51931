import { pumpOffFlood } from "../../src/core/plant/pump-off-flood.ts";
import { topOffCheck, USUAL_FILL } from "../../src/core/plant/top-off-check.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showHours } from "../../src/core/quantity/show.ts";
import { as, type Litres } from "../../src/core/quantity/units.ts";
import { answerReply, choice, defineCommand, listed, optional, quantity } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { pumpOffFigures } from "../flood/shared.ts";
import { climate, openWater } from "./shared.ts";

const TITLE = "Evaporation and top-off";

export default defineCommand({
  name: "topoff",
  summary: "Top-off a day, moisture into the room, and what happens when top-off fails off or on",
  options: {
    ...climate,
    salinity: optional(quantity.salinity("Of the water; your tank's if left out")),
    volume: optional(quantity.volume("Net water of the system; your tank's if left out", "2300 L")),
    inlet: optional(plantOption("inlet", "Water over the pump's inlet in its own chamber")),
    reservoir: optional(plantOption("reservoir", "Litres the top-off reservoir holds")),
    fed: optional(choice("What feeds the top-off", ["reservoir", "mains"])),
    fill: optional(quantity.flow("How fast the top-off fills", "60 L/h")),
    free: optional(quantity.volume("Room between running level and lowest opening, all receivers", "106 L")),
    fallback: optional(quantity.volume("What falls back when the pump stops", "65 L")),
  },
  examples: [
    "/heat topoff open:2.6 m2 temperature:25.5 °C room:22 °C humidity:45 %",
    "/heat topoff open:2.6 m2 temperature:25.5 °C room:22 °C humidity:45 % salinity:35 ppt volume:2300 L inlet:20 L reservoir:70 L free:106 L fallback:65 L",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, input.open, context);
    const openAreaM2 = openWater(input.open, known, context, TITLE);
    if ("kind" in openAreaM2) return openAreaM2;
    const waterC = known.temperature(input.temperature);
    if (waterC === undefined) return known.ask("temperature", TITLE);
    const room = known.plant("room", input.room);
    if (room === undefined) return known.askPlant("room", TITLE);
    const humidity = known.plant("humidity", input.humidity);
    if (humidity === undefined) return known.askPlant("humidity", TITLE);
    const inlet = known.plant("inlet", input.inlet);
    const reservoir = input.fed === "mains" ? undefined : known.plant("reservoir", input.reservoir);
    const salinity = known.salinity(input.salinity);
    const volume = known.volume(input.volume);
    const isAsked =
      inlet !== undefined &&
      salinity !== undefined &&
      volume !== undefined &&
      (reservoir !== undefined || input.fed === "mains");
    const ready =
      isAsked && input.free === undefined && known.tank?.plant.row !== undefined
        ? pumpOffFigures(known, {}, context, TITLE)
        : undefined;
    const flood = ready?.kind === "ready" ? pumpOffFlood(ready.pumpOff) : undefined;
    const worked = flood?.kind === "answer" ? flood.value : undefined;
    const freeL = input.free?.estimate ?? worked?.freeL;
    const fallbackL = input.fallback?.estimate ?? worked?.fallback.totalL ?? NOTHING;
    const lacking = [
      ...(inlet === undefined ? ["inlet:"] : []),
      ...(reservoir === undefined && input.fed !== "mains" ? ["reservoir:"] : []),
      ...(volume === undefined ? ["volume:"] : []),
      ...(salinity === undefined ? ["salinity:"] : []),
      ...(freeL === undefined ? ["free:"] : []),
    ];
    const failure =
      isAsked && freeL !== undefined
        ? {
            systemL: volume,
            salinity,
            container: worked?.verdict.container ?? "the pump's container",
            inletL: inlet.estimate,
            reservoirL: reservoir?.estimate ?? ("mains" as const),
            fillLPerH: input.fill?.estimate ?? USUAL_FILL,
            freeL,
            fallbackL,
          }
        : undefined;
    if (failure !== undefined && input.fill === undefined)
      known.assume({ name: "filling rate", from: "assumed", readAs: showEstimate(USUAL_FILL, "L/h") });
    const answer = topOffCheck({
      evaporation: {
        openAreaM2,
        waterC,
        roomC: room.estimate,
        humidity: humidity.estimate,
        isDisturbed: input.water === "stirred",
        ...(salinity === undefined ? {} : { salinity }),
      },
      ...(failure === undefined ? {} : { failure }),
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ evaporation }) =>
        `${showEstimate(evaporation.kgPerDay, "L a day", { significant: 2 })} of top-off`,
      body: ({ evaporation, failure: fails }) => [
        `It cools the water by ${showEstimate(evaporation.coolingW, "W", { significant: 2 })}; the dew point of the room is ${showEstimate(evaporation.dewPointC, "°C", { significant: 2 })}.`,
        ...(fails === undefined
          ? [`To see what a failing top-off does, say ${listed(lacking)}.`]
          : [
              `Fails off: the pump draws air after ${showHours(fails.ifItStops.hoursToDry)}; salinity climbs ${showEstimate(fails.ifItStops.salinityRisePerDay, "ppt a day", { significant: 2 })}.`,
              `Fails on: ${showEstimate(fails.ifItSticksOn.litres, "L", { significant: 3 })} go in, salinity ends at ${showEstimate(fails.ifItSticksOn.salinityThen, "ppt", { significant: 3 })}.`,
              fails.ifItSticksOn.overAfterPumpOffL.high > 0
                ? `It may run over by ${showEstimate(fails.ifItSticksOn.overAfterPumpOffL, "L", { significant: 2 })} once the pump stops.`
                : "It all fits, even with the pump off.",
              ...(fails.reservoirDays === undefined
                ? []
                : [
                    `A full reservoir lasts ${showEstimate(fails.reservoirDays, "days", { significant: 2 })}.`,
                  ]),
            ]),
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});

const NOTHING = exactly(as<Litres>(0));
