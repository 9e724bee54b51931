import { equipmentHeat } from "../../src/core/plant/equipment-heat.ts";
import { heatBalance } from "../../src/core/plant/heat-balance.ts";
import { tankWalls } from "../../src/core/plant/tank-row.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { readPower } from "../../src/core/quantity/power.ts";
import { showEstimate } from "../../src/core/quantity/show.ts";
import { as, type Watts } from "../../src/core/quantity/units.ts";
import { answerReply, askFor, defineCommand, listed, optional, reading } from "../../src/kit/index.ts";
import { plantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";
import { area, climate, openWater } from "./shared.ts";

const TITLE = "Heater and chiller";

export default defineCommand({
  name: "duty",
  summary: "Heat a tank loses or gains, and the heater or chiller that calls for",
  options: {
    ...climate,
    walls: optional(plantOption("walls", "Material and thickness of the walls: for heat only")),
    wetted: optional(area("Walls and floors touched by water; from dimensions if left out", "8.2 m2")),
    equipment: optional(
      reading(
        "Mean watts of pumps, lights and UV; from your tank's devices if left out",
        "400 W",
        (text, { habits }) => readPower(text, habits),
      ),
    ),
  },
  examples: [
    "/heat duty open:2.6 m2 wetted:7.6 m2 walls:acrylic 25 mm temperature:25.5 °C room:20 °C humidity:45 % equipment:300 W",
    "/heat duty tank:Lagoon",
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
    const wall = known.plant("walls", input.walls);
    if (wall === undefined) return known.askPlant("walls", TITLE);
    const fromTank =
      input.wetted === undefined && known.tank !== undefined
        ? tankWalls(known.tank.containers, wall)
        : undefined;
    const walls =
      input.wetted === undefined ? (fromTank?.walls ?? []) : [{ areaM2: input.wetted.best, ...wall }];
    if (walls.length === 0)
      return askFor(
        context,
        { name: "wetted", example: "7.6 m2" },
        { title: TITLE, text: "How large are the walls and floors that the water touches?" },
      );
    const devices = input.equipment === undefined ? known.plant("devices", undefined) : undefined;
    const equipment =
      input.equipment?.estimate ?? (devices === undefined ? undefined : equipmentHeat(devices));
    if (equipment === undefined) known.assume({ name: "equipment", from: "not said", readAs: "0 W" });
    const answer = heatBalance({
      walls,
      openAreaM2,
      waterC,
      roomC: room.estimate,
      humidity: humidity.estimate,
      isDisturbed: input.water === "stirred",
      equipmentW: equipment ?? exactly(as<Watts>(0)),
    });
    return answerReply(answer, context, {
      title: known.titled(TITLE),
      headline: ({ heaterW, chillerW }) =>
        `Heater ${showEstimate(heaterW, "W", { significant: 2 })}; chiller ${chillerW.high > 0 ? `${showEstimate(chillerW, "W", { significant: 2 })} of heat removed` : "none"}`,
      body: ({ lossW, chillerTons, uaWPerK, evaporationKgPerDay }) => [
        `The water loses ${showEstimate(lossW, "W", { significant: 2 })} to this room; the heater is counted with all else off and a quarter to spare.`,
        `Choose for the far end of the range: the coldest and the hottest room.`,
        `Each degree of difference takes ${showEstimate(uaWPerK, "W", { significant: 2 })}, beside ${showEstimate(evaporationKgPerDay, "kg a day", { significant: 2 })} of evaporation.`,
        ...(chillerTons.best > 0
          ? [`In tons of refrigeration: ${showEstimate(chillerTons, "", { significant: 2 }).trim()}.`]
          : []),
        ...(fromTank === undefined || fromTank.leftOut.length === 0
          ? []
          : [`Walls of ${listed(fromTank.leftOut)} are left out: no dimensions are known.`]),
      ],
      table: ({ wallsW, surfaceW, evaporationW, lossW }) => ({
        columns: ["heat leaves by", "W"],
        rows: [
          ["walls and floor", showEstimate(wallsW, "", { significant: 2 }).trim()],
          ["the open surface", showEstimate(surfaceW, "", { significant: 2 }).trim()],
          ["evaporation", showEstimate(evaporationW, "", { significant: 2 }).trim()],
          ["in all", showEstimate(lossW, "", { significant: 2 }).trim()],
        ],
      }),
      taken: known.taken,
      cautions: known.cautions,
    });
  },
});
