import {
  defineCommand,
  type Option,
  optional,
  quantity,
  type Reply,
  reading,
  tankOption,
} from "../../src/kit/index.ts";
import type { TankNotes } from "../../src/records/tank.ts";
import { food, livestock, media } from "../stocking/shared.ts";
import { ownTank } from "./shared.ts";

const NAMES: Readonly<Record<keyof TankNotes, string>> = {
  livestock: "animals",
  food: "food",
  media: "filter media",
  flow: "flow through the filter",
  salinity: "usual salinity",
  temperature: "usual temperature",
};

/** Reads as the option would, so that nothing unreadable is kept, and hands on the text itself. */
function asTyped<T>(option: Option<T, true>): Option<string, true> {
  return reading(
    option.description,
    option.example,
    (text, context) => {
      if (text.toLowerCase() === "none") return { kind: "read", value: "", readAs: "none" };
      const read = option.read(text, context);
      return read.kind === "read" ? { ...read, value: text } : read;
    },
    option.suggest,
  );
}

export default defineCommand({
  name: "note",
  summary: "Note a tank's animals, food, media, flow and usual values for later sums",
  options: {
    livestock: optional(asTyped(livestock("Animals with length or mass; “none” clears it"))),
    food: optional(asTyped(food("Food and how often; “none” clears it"))),
    media: optional(asTyped(media("Filter media and litres of each; “none” clears it"))),
    flow: optional(asTyped(quantity.flow("What really passes the filter; “none” clears it", "6000 L/h"))),
    salinity: optional(asTyped(quantity.salinity("Usual salinity; “none” clears it", "35 ppt"))),
    temperature: optional(asTyped(quantity.temperature("Usual temperature; “none” clears it", "26 °C"))),
    tank: optional(tankOption()),
  },
  examples: [
    "/tank note livestock:1 brown-marbled grouper 55 cm; 2 queen triggerfish 25 cm food:280 g prawn 3 times a week media:60 L ceramic rings salinity:34 ppt temperature:26 °C",
  ],
  run(input, context): Reply {
    const tank = ownTank(input.tank, context);
    const { tank: _, ...notes } = input;
    const given = Object.entries(notes).flatMap(([name, text]) =>
      text === undefined ? [] : [[name, text] as const],
    );
    context.records.tanks.setNotes(context.member.id, tank.id, Object.fromEntries(given));
    return {
      kind: "reply",
      ok: given.length > 0,
      title: `${tank.name}: ${given.length === 0 ? "nothing to note" : "noted"}`,
      body:
        given.length === 0
          ? ["Say at least one of livestock, food, media, flow, salinity, temperature."]
          : given.map(
              ([name, text]) =>
                `${NAMES[name as keyof TankNotes]}: ${text === "" ? "cleared" : (context.readAs.get(name)?.readAs ?? text)}`,
            ),
      cautions: [],
      audience: context.audience,
    };
  },
});
