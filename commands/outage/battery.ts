import { batteryRuntime } from "../../src/core/plant/battery-runtime.ts";
import { readPower } from "../../src/core/quantity/power.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { answerReply, defineCommand, optional, reading, tankOption } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";

const TITLE = "Battery running time";

export default defineCommand({
  name: "battery",
  summary: "How long a battery runs an air pump, a circulation pump or all you hang on it",
  options: {
    load: reading("What it runs, in watts, as measured", "60 W", (text, { habits }) =>
      readPower(text, habits),
    ),
    battery: optional(plantOption("battery", "Capacity, voltage, kind; direct if no inverter")),
    tank: optional(tankOption()),
  },
  examples: ["/outage battery load:60 W battery:100 Ah, 12 V, lead-acid"],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const battery = known.plant("battery", input.battery);
    if (battery === undefined) return known.askPlant("battery", TITLE);
    return answerReply(batteryRuntime({ ...battery, load: input.load.estimate }), context, {
      title: known.titled(`${TITLE} at ${showEstimate(input.load.estimate, "W")}`),
      headline: ({ hours }) => showEstimate(hours, "h", { significant: 2 }),
      body: () => [
        `A ${battery.kind} battery, drawn no lower than does it no harm, ${battery.through === "inverter" ? "through an inverter" : "direct"}.`,
        "An air pump or a small circulation pump is what to run; heater and return pump are not.",
      ],
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
