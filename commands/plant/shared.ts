import { isRead } from "../../src/core/quantity/read.ts";
import { type Context, listed, type Option, type Reply, reading } from "../../src/kit/index.ts";
import { PLANT_READERS, readPlant } from "../../src/kit/plant-notes.ts";
import type { PlantNote, Tank } from "../../src/records/tank.ts";
import { ownTank } from "../tank/shared.ts";

/** Reads as the sums will read it, so that nothing unreadable is kept, and hands on the text itself. */
export function noteText(key: PlantNote, description: string): Option<string, true> {
  return reading(`${description}; “clear” forgets it`, PLANT_READERS[key].example, (text, { habits }) => {
    if (text.toLowerCase() === "clear") return { kind: "read", value: "", readAs: "cleared" };
    const read = readPlant(key, text, habits);
    return isRead(read) ? { kind: "read", value: text, readAs: read.readAs } : read;
  });
}

/** Keeps what was given, and says it back as it was read. */
export function keepNotes(
  input: Readonly<Partial<Record<PlantNote, string | undefined>>>,
  given: Tank | undefined,
  context: Context,
): Reply {
  const tank = ownTank(given, context);
  const entries = Object.entries(input).flatMap(([key, text]) =>
    text === undefined ? [] : [[key as PlantNote, text] as const],
  );
  context.records.tanks.setPlant(context.member.id, tank.id, Object.fromEntries(entries));
  return {
    kind: "reply",
    ok: entries.length > 0,
    title: `${tank.name}: ${entries.length === 0 ? "nothing to note" : "noted"}`,
    body:
      entries.length === 0
        ? [`Say at least one of ${listed(Object.keys(input))}.`]
        : entries.map(
            ([key, text]) =>
              `${PLANT_READERS[key].name}: ${text === "" ? "cleared" : (context.readAs.get(key)?.readAs ?? text)}`,
          ),
    cautions: [],
    audience: context.audience,
  };
}
