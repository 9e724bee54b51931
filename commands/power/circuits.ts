import { electricLoad } from "../../src/core/plant/electric-load.ts";
import { onCircuits } from "../../src/core/plant/running-cost.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { showEstimate, showNumber } from "../../src/core/quantity/show.ts";
import { as, type Money } from "../../src/core/quantity/units.ts";
import { answerReply, counted, defineCommand, optional, tankOption } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";

const TITLE = "Load on the circuits";

export default defineCommand({
  name: "circuits",
  summary: "How devices load your circuits, running and starting: information for your electrician",
  options: {
    devices: optional(plantOption("devices", "Watts and circuit of each; parted by “;”")),
    circuits: optional(plantOption("circuits", "Amperes of each, and whether ground-fault protected")),
    volts: optional(plantOption("volts", "Mains voltage")),
    tank: optional(tankOption()),
  },
  examples: [
    "/power circuits devices:return pump 180 W, circuit A; heater 600 W, circuit A; light 600 W, power factor 0.6, circuit B circuits:A 20 A, protected; B 15 A volts:120 V",
  ],
  run(input, context) {
    const known = plantFigures(input.tank, undefined, context);
    const devices = known.plant("devices", input.devices);
    if (devices === undefined) return known.askPlant("devices", TITLE);
    const circuits = known.plant("circuits", input.circuits);
    if (circuits === undefined) return known.askPlant("circuits", TITLE);
    const volts = known.plant("volts", input.volts);
    if (volts === undefined) return known.askPlant("volts", TITLE);
    const answer = electricLoad({
      devices: onCircuits(devices, circuits),
      circuits,
      volts,
      pricePerKWh: exactly(as<Money>(0)),
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ totalW }) =>
        `${showEstimate(totalW, "W", { significant: 3 })} on ${counted(circuits.length, "circuit")}, all at once`,
      body: ({ circuits: loads }) => [
        "Continuous limits are those of the United States rule: four fifths of the breaker.",
        ...loads.flatMap(({ circuit, lifeSupport }) =>
          lifeSupport.length === 0 ? [] : [`Life support on ${circuit}: ${lifeSupport.join(", ")}.`],
        ),
      ],
      table: ({ circuits: loads }) => ({
        columns: ["circuit", "runs at, A", "limit, A", "starting, A", "ground-fault"],
        rows: loads.map((each) => [
          each.circuit,
          showEstimate(each.amperes, "", { significant: 3 }).trim(),
          showNumber(each.continuousLimitA, 3),
          showEstimate(each.startUpA, "", { significant: 3 }).trim(),
          each.hasGroundFaultProtection ? "protected" : "NOT protected",
        ]),
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
