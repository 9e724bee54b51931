import type { Estimate } from "../quantity/estimate.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import type { SquareMetres } from "../quantity/units.ts";
import { readPart, readParts } from "./described-part.ts";
import type { Millimetres } from "./plant-units.ts";
import { readArea } from "./read-area.ts";
import type { RowContainer } from "./row.ts";

const EXAMPLE =
  "“settling box shares level, room 115 mm; drum 1 overflows 14 mm, surface 0.17 m2, room 90 mm; pump box holds the pump, room 120 mm”";

/** What a member says of one container of the row; its surface and room may come from its dimensions. */
export interface RowFact {
  readonly name: string;
  readonly onward: RowContainer["onward"];
  readonly areaM2?: Estimate<SquareMetres>;
  readonly freeboardMm?: Estimate<Millimetres>;
  readonly aboveOutletMm?: Estimate<Millimetres>;
  readonly belowFirstMm?: Millimetres;
}

/** The filter row in the order the water takes: how each passes its water on, and the room above its water. */
export function readRow(typed: string, habits: Habits): Read<readonly RowFact[]> {
  const read = readParts(typed, EXAMPLE, (text) =>
    readPart<RowFact>(named(text), EXAMPLE, habits, (part) => {
      const { name } = part;
      if (name === "") return part.refuse(`name the container first. Try ${EXAMPLE}.`);
      const surface = part.take(/surface (?<q>.+)/)?.groups?.["q"];
      const room = part.take(/(?:room|freeboard|free)(?: (?:of|above))? (?<q>\d.*)/)?.groups?.["q"];
      const step = part.take(/(?<q>\d.*) lower/)?.groups?.["q"];
      const overflow = part.take(/(?:overflows?|cascades?|spills?)(?: (?:at|by|over))?(?: (?<q>\d.*))?/);
      const isPump = part.has(/(?:holds the )?(?:return )?pump(?: container)?/);
      const isShared = part.has(/(?:shares?|shared|same|level)(?: (?:the )?level)?|joined|linked/);
      if (overflow === undefined && !isPump && !isShared)
        return part.refuse(
          `does it overflow onward, share its level with the next, or hold the pump? Try ${EXAMPLE}.`,
        );
      const onward = isPump ? "holds the pump" : overflow === undefined ? "shares level" : "overflows";
      const over = overflow?.groups?.["q"];
      const value: RowFact = {
        name,
        onward,
        ...(surface === undefined ? {} : { areaM2: part.settled(readArea(surface, habits), surface) }),
        ...(room === undefined ? {} : { freeboardMm: part.mm(room) }),
        ...(over === undefined ? {} : { aboveOutletMm: part.mm(over) }),
        ...(step === undefined ? {} : { belowFirstMm: part.mm(step).best }),
      };
      return { value, readAs: sayFact(value) };
    }),
  );
  if (read.kind !== "read" || read.value.some(({ onward }) => onward === "holds the pump")) return read;
  return {
    kind: "unreadable",
    message: `Which container holds the pump? Say “pump” of the last one. Try ${EXAMPLE}.`,
  };
}

/** "drum 1 overflows 14 mm": the name ends where the verb begins. */
function named(text: string): string {
  const [, name, rest] =
    /^([^:=]*?)[ ,]+((?:overflows?|cascades?|spills?|shares?|shared|joined|linked|holds)\b.*)$/is.exec(
      text,
    ) ?? [];
  return name === undefined || name.trim() === "" ? text : `${name}: ${rest ?? ""}`;
}

function sayFact(fact: RowFact): string {
  const { name, onward, areaM2, freeboardMm, aboveOutletMm, belowFirstMm } = fact;
  return [
    `${name}: ${onward}${aboveOutletMm === undefined ? "" : ` ${showEstimate(aboveOutletMm, "mm")}`}`,
    ...(areaM2 === undefined ? [] : [`surface ${showEstimate(areaM2, "m²")}`]),
    ...(freeboardMm === undefined ? [] : [`room ${showEstimate(freeboardMm, "mm")}`]),
    ...(belowFirstMm === undefined ? [] : [`${belowFirstMm} mm lower`]),
  ].join(", ");
}
