import { readLivestock } from "../../src/core/nitrogen/read-livestock.ts";
import { outageFish } from "../../src/core/plant/outage-stock.ts";
import type { SheetInputs } from "../../src/core/plant/system-sheet.ts";
import { displayRoom, failingContainers } from "../../src/core/plant/tank-row.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { as, type DegreesC, type PracticalSalinity } from "../../src/core/quantity/units.ts";
import { seawaterDensity } from "../../src/core/water/density.ts";
import { type Context, counted, type TakenFigure } from "../../src/kit/index.ts";
import type { PlantFigures } from "../../src/kit/plant-figures.ts";
import type { Tank } from "../../src/records/tank.ts";
import { pumpOffFigures } from "../flood/shared.ts";

const USUAL = { salinity: as<PracticalSalinity>(35), temperature: as<DegreesC>(25) };

export interface Gathered {
  readonly inputs: SheetInputs;
  /** What is not noted yet, with where to note it. */
  readonly missing: readonly string[];
}

/** Everything that is noted of a tank, for its one page; nothing is asked, what is missing is named. */
export function gather(tank: Tank, known: PlantFigures, context: Context): Gathered {
  const missing: string[] = [];
  const flow = known.flow(undefined);
  if (flow === undefined) missing.push("flow (/tank note)");
  const flood = pumpOffFigures(known, {}, context, "");
  if (flood.kind === "question") missing.push("what the flood check needs (/flood check asks for it)");
  const inlet = known.plant("inlet", undefined);
  if (inlet === undefined) missing.push("water over the pump's inlet (/plant water)");
  const reservoir = known.plant("reservoir", undefined);
  const room = displayRoom(tank.containers);
  const animals = known.noted("animals", "livestock", readLivestock);
  const salinity = known.salinity(undefined);
  const temperature = known.temperature(undefined);
  const display = known.parts().display;
  const surface = known.surface(undefined);
  if (animals === undefined) missing.push("animals (/tank note)");
  if (salinity === undefined || temperature === undefined)
    missing.push("salinity and temperature (/tank note, or /log)");
  const roomC = known.plant("room", undefined);
  const air = known.plant("air", undefined);
  const devices = known.plant("devices", undefined);
  if (devices === undefined) missing.push("devices (/plant room)");
  const masses = known.plant("masses", undefined);
  const footprint = known.plant("footprint", undefined);
  const isOutageKnown =
    animals !== undefined &&
    salinity !== undefined &&
    temperature !== undefined &&
    display !== undefined &&
    surface !== undefined;
  return {
    missing,
    inputs: {
      containers: tank.containers,
      order: flood.kind === "ready" ? flood.facts.map(({ name }) => name) : [],
      ...(flow === undefined ? {} : { flow }),
      ...(flood.kind === "ready"
        ? {
            flood: {
              pumpOff: flood.pumpOff,
              failing: failingContainers(tank.containers, flood.facts),
              ...(flow === undefined ? {} : { flow }),
              ...(inlet === undefined ? {} : { inletL: inlet.estimate }),
              ...(reservoir === undefined ? {} : { reservoirL: reservoir.estimate }),
              ...(room === undefined ? {} : { displayRoomMm: room }),
            },
          }
        : {}),
      ...(isOutageKnown
        ? {
            outage: {
              displayL: display,
              surfaceM2: surface,
              waterC: temperature,
              salinity,
              demand: { fish: outageFish(animals) },
              roomC: roomC?.estimate ?? exactly(temperature.best),
              hasGenerator: known.plant("generator", undefined) ?? false,
              ...(air === undefined ? {} : { airPump: air }),
            },
          }
        : {}),
      floor: {
        density: exactly(
          seawaterDensity(salinity?.best ?? USUAL.salinity, temperature?.best ?? USUAL.temperature),
        ),
        masses: masses ?? [],
        ...(footprint === undefined ? {} : { footprintM2: footprint }),
      },
      ...(devices === undefined ? {} : { devices }),
    },
  };
}

/** A page rests on too many notes to name each: they are listed where they can be changed. */
export function takenWhole(tank: Tank, known: PlantFigures): readonly TakenFigure[] {
  return [
    {
      name: "all",
      from: `${tank.name}; /plant show and /tank show list them`,
      readAs: counted(known.taken.length, "noted figure"),
    },
  ];
}
