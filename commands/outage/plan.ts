import { readLivestock } from "../../src/core/nitrogen/read-livestock.ts";
import { outageFish } from "../../src/core/plant/outage-stock.ts";
import { powerCut } from "../../src/core/plant/power-cut.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as } from "../../src/core/quantity/units.ts";
import { answerReply, askFor, defineCommand, optional, quantity, tankOption } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { OUTAGE_WORDS, sayHours } from "../../src/kit/plant-words.ts";
import { livestock } from "../stocking/shared.ts";

const TITLE = "A power cut";
/** A reading of oxygen older than this says nothing about tonight. */
const OXYGEN_DAYS = 1;

export default defineCommand({
  name: "plan",
  summary: "Hours of oxygen and warmth when the power fails, and what to do in which order",
  options: {
    livestock: optional(livestock("Animals with length or mass; your tank's if left out")),
    display: optional(quantity.volume("Net water of the display alone; your tank's if left out", "1670 L")),
    surface: optional(plantOption("surface", "The display's water surface")),
    temperature: optional(quantity.temperature("Of the water; your tank's if left out")),
    salinity: optional(quantity.salinity("Of the water; your tank's if left out")),
    oxygen: optional(quantity.concentration("Oxygen now; nearly full if left out", "6.4 mg/L")),
    room: optional(plantOption("room", "How warm the room is, or becomes")),
    air: optional(plantOption("air", "Battery air pump: its air, and how deep the stone hangs")),
    generator: optional(plantOption("generator", "Is there a generator?")),
    tank: optional(tankOption()),
  },
  examples: [
    "/outage plan livestock:1 grouper 5 kg; 6 triggerfish 1 kg display:1670 L surface:2.6 m2 temperature:25.5 °C salinity:35 ppt room:20 °C air:4 L/min at 50 cm",
    "/outage plan tank:Lagoon",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, input.display, context);
    const groups = input.livestock ?? known.noted("animals", "livestock", readLivestock);
    if (groups === undefined)
      return askFor(
        context,
        { name: "livestock", example: "1 grouper 5 kg; 6 triggerfish 1 kg" },
        { title: TITLE, text: "Which animals live in the display, and how large are they?" },
      );
    const displayL = input.display?.estimate ?? known.parts().display;
    if (displayL === undefined)
      return askFor(
        context,
        { name: "display", example: "1670 L" },
        { title: TITLE, text: "How much water is in the display alone?" },
      );
    const surfaceM2 = known.surface(input.surface);
    if (surfaceM2 === undefined) return known.askPlant("surface", TITLE);
    const waterC = known.temperature(input.temperature);
    if (waterC === undefined) return known.ask("temperature", TITLE);
    const salinity = known.salinity(input.salinity);
    if (salinity === undefined) return known.ask("salinity", TITLE);
    const room = known.plant("room", input.room);
    if (room === undefined)
      known.assume({ name: "room temperature", from: "not said", readAs: "as warm as the water" });
    const air = known.plant("air", input.air);
    const hasGenerator = known.plant("generator", input.generator) ?? false;
    const oxygen = input.oxygen?.estimate ?? known.logged("oxygen", OXYGEN_DAYS);
    const answer = powerCut({
      displayL,
      surfaceM2,
      waterC,
      salinity,
      demand: { fish: outageFish(groups) },
      roomC: room?.estimate ?? exactly(waterC.best),
      hasGenerator,
      ...(oxygen === undefined
        ? {}
        : { oxygenMgPerL: { best: as(oxygen.best), low: as(oxygen.low), high: as(oxygen.high) } }),
      ...(air === undefined ? {} : { airPump: air }),
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ still }) => `Oxygen alarm after ${sayHours(still.toAlarmH)}`,
      body: ({ still, stirred, withAir, temperature, actions, startMgPerL }) => [
        `From ${showEstimate(startMgPerL, "mg/L", { significant: 2 })} down to 4 mg/L; to 2 mg/L, the emergency: ${sayHours(still.toEmergencyH)}.`,
        `Surface stirred by hand or battery: alarm ${sayHours(stirred.toAlarmH)}.`,
        withAir === undefined
          ? "A battery air pump changes most of all: say air: to see by how much."
          : `With your battery air pump: alarm ${sayHours(withAir.toAlarmH)}, emergency ${sayHours(withAir.toEmergencyH)}.`,
        ...(room === undefined
          ? []
          : [
              `Water temperature: ${temperature.map(({ hours, waterC: then }) => `${showEstimate(then, "°C", { significant: 3 })} after ${hours} h`).join(", ")}.`,
            ]),
        "Do, in this order:",
        ...actions.map((action, index) => `${index + 1}. ${OUTAGE_WORDS[action]()}`),
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
