import { readArea } from "../../src/core/plant/read-area.ts";
import { openSurface } from "../../src/core/plant/tank-row.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import type { SquareMetres } from "../../src/core/quantity/units.ts";
import {
  askFor,
  type Context,
  choice,
  type Option,
  optional,
  type Question,
  quantity,
  reading,
  tankOption,
} from "../../src/kit/index.ts";
import type { PlantFigures } from "../../src/kit/plant-figures.ts";
import { plantOption } from "../../src/kit/plant-notes.ts";

export const area = (description: string, example: string): Option<Estimate<SquareMetres>, true> =>
  reading(description, example, (text, { habits }) => readArea(text, habits));

export const climate = {
  open: optional(
    area("Open water of all containers, covers taken off; from dimensions if left out", "2.6 m2"),
  ),
  temperature: optional(quantity.temperature("Of the water; your tank's if left out")),
  room: optional(plantOption("room", "Room temperature, or its range over the year")),
  humidity: optional(plantOption("humidity", "Humidity of the room's air")),
  water: optional(choice("Is the surface still, or stirred by jets, falls and fans?", ["still", "stirred"])),
  tank: optional(tankOption()),
};

/** Open water as typed, else of all the tank's containers in the system; a question when neither is known. */
export function openWater(
  typed: Estimate<SquareMetres> | undefined,
  known: PlantFigures,
  context: Context,
  title: string,
): Estimate<SquareMetres> | Question {
  if (typed !== undefined) return typed;
  const found =
    known.tank === undefined ? undefined : openSurface(known.tank.containers, ({ inSystem }) => inSystem);
  if (found !== undefined) {
    known.measured("open water", found, "m²");
    return found;
  }
  return askFor(
    context,
    { name: "open", example: "2.6 m2" },
    { title, text: "How much open water is there in all containers together?" },
  );
}
