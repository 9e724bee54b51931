import { loopParts, openSurface } from "../core/plant/tank-row.ts";
import type { Estimate } from "../core/quantity/estimate.ts";
import { readFlow } from "../core/quantity/flow.ts";
import { isRead } from "../core/quantity/read.ts";
import { showEstimate } from "../core/quantity/show.ts";
import type { Litres, LitresPerHour, SquareMetres } from "../core/quantity/units.ts";
import type { PlantNote, Tank } from "../records/tank.ts";
import { askFor } from "./ask.ts";
import type { Context } from "./context.ts";
import { type KnownFigures, knownFigures } from "./known-figures.ts";
import { PLANT_READERS, type PlantValue, readPlant } from "./plant-notes.ts";
import type { Question } from "./reply.ts";

/** The figures of a sum about the plant: typed, else noted, else asked for. */
export interface PlantFigures extends KnownFigures {
  /** What was typed, else what the tank's plant notes say. */
  plant<K extends PlantNote>(key: K, typed: PlantValue<K> | undefined): PlantValue<K> | undefined;
  /** The flow typed, else the flow noted of the tank. */
  flow(
    typed: { readonly estimate: Estimate<LitresPerHour> } | undefined,
  ): Estimate<LitresPerHour> | undefined;
  /** The display's water surface: typed, noted, or from its dimensions. */
  surface(typed: Estimate<SquareMetres> | undefined): Estimate<SquareMetres> | undefined;
  /** The net water of the tank's display, and of all else in its loop. */
  parts(): { readonly display?: Estimate<Litres>; readonly rest?: Estimate<Litres> };
  /** The one question for a fact that is neither typed nor noted. */
  askPlant(key: PlantNote | "flow", title: string): Question;
  /** Names a figure that was worked out from the tank's dimensions. */
  measured(name: string, estimate: Estimate, unit: string): void;
}

/** `otherWater` is set when the sum is of other water than a tank's: then nothing is taken from one. */
export function plantFigures(given: Tank | undefined, otherWater: unknown, context: Context): PlantFigures {
  const known = knownFigures(given, otherWater, context);
  const { tank } = known;
  const { habits } = context.member;
  let isPlantUsed = false;
  const took = (name: string, from: string, readAs: string) => {
    isPlantUsed = true;
    if (!known.taken.some((figure) => figure.name === name && figure.readAs === readAs))
      known.taken.push({ name, from, readAs });
  };
  function plant<K extends PlantNote>(key: K, typed: PlantValue<K> | undefined): PlantValue<K> | undefined {
    const text = tank?.plant[key];
    if (typed !== undefined || tank === undefined || text === undefined) return typed;
    const read = readPlant(key, text, habits);
    if (!isRead(read)) return undefined;
    took(PLANT_READERS[key].name, `${tank.name}, as noted`, read.readAs);
    return read.value;
  }
  function measured(name: string, estimate: Estimate, unit: string): void {
    took(
      name,
      `${tank?.name ?? "the tank"}, from its description`,
      showEstimate(estimate, unit, { significant: 3 }),
    );
  }
  return {
    ...known,
    titled: (title) =>
      tank !== undefined && isPlantUsed
        ? `${tank.name}: ${title.slice(0, 1).toLowerCase()}${title.slice(1)}`
        : known.titled(title),
    plant,
    measured,
    flow(typed) {
      const text = tank?.notes.flow;
      if (typed !== undefined || tank === undefined || text === undefined) return typed?.estimate;
      const read = readFlow(text, habits);
      if (!isRead(read)) return undefined;
      took("flow", `${tank.name}, as noted`, read.readAs);
      return read.value.estimate;
    },
    askPlant(key, title) {
      const { question, example } = key === "flow" ? FLOW : PLANT_READERS[key];
      return askFor(
        context,
        { name: key, example },
        {
          title,
          text: `${question} /plant note would remember it.`.replace(
            "/plant note",
            NOTED_BY[key] ?? "/plant water",
          ),
        },
      );
    },
    surface(typed) {
      const said = plant("surface", typed);
      if (said !== undefined || tank === undefined) return said;
      const found = openSurface(tank.containers, ({ role, inSystem }) => role === "display" && inSystem);
      if (found !== undefined) measured("display surface", found, "m²");
      return found;
    },
    parts() {
      if (tank === undefined) return {};
      const { display, rest } = loopParts(tank.containers);
      if (display !== undefined) measured("water in the display", display, "L");
      if (rest !== undefined) measured("water in the rest of the loop", rest, "L");
      return { ...(display === undefined ? {} : { display }), ...(rest === undefined ? {} : { rest }) };
    },
  };
}

const FLOW = { question: "What really flows through the filter?", example: "6000 L/h" };

/** Where a fact is noted, when that is not /plant water. */
const NOTED_BY: { readonly [K in PlantNote | "flow"]?: string } = {
  flow: "/tank note",
  ...Object.fromEntries(
    (
      [
        "room",
        "humidity",
        "walls",
        "devices",
        "circuits",
        "volts",
        "price",
        "battery",
        "air",
        "generator",
        "footprint",
        "masses",
      ] as const
    ).map((key) => [key, "/plant room"]),
  ),
  contacts: "/plant people",
  valves: "/plant people",
};
