import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import { readPart } from "./described-part.ts";
import type { Crest } from "./overflow-head.ts";
import type { EndContractions } from "./weir.ts";

const EXAMPLE = "“60 cm” or “60 slots of 6 mm, teeth 40 mm”";

/** An overflow's crest: "60 cm, 2 ends" when plain, "60 slots of 6 mm, teeth 40 mm" when toothed. */
export function readCrest(typed: string, habits: Habits): Read<Crest> {
  return readPart<Crest>(
    `crest: ${typed.replace(/^\s*(?:plain|toothed)\s*,?\s*/i, "")}`,
    EXAMPLE,
    habits,
    (part) => {
      const slots = part.take(/(?<n>\d{1,4}) (?:slots?|gaps?)(?: (?:of|x|at))? (?<w>.+)/);
      if (slots !== undefined) {
        const slotWidthMm = part.mm((slots.groups?.["w"] ?? "").replace(/ wide$/, ""));
        const tooth = part.take(/(?:teeth|tooth)(?: (?:of|height))? (?<h>.+)/);
        const toothHeightMm =
          tooth === undefined ? undefined : part.mm((tooth.groups?.["h"] ?? "").replace(/ high$/, ""));
        const count = Number(slots.groups?.["n"] ?? 0);
        return {
          value: {
            kind: "toothed",
            slots: count,
            slotWidthMm,
            ...(toothHeightMm === undefined ? {} : { toothHeightMm }),
          },
          readAs: `${count} slots of ${showEstimate(slotWidthMm, "mm")}${toothHeightMm === undefined ? "" : `, teeth ${showEstimate(toothHeightMm, "mm")} high`}`,
        };
      }
      const ends = part.take(/(?<n>[0-2]) (?:open )?ends?(?: .*)?/);
      const length = part.take(/(?<l>.*\d.*)/)?.groups?.["l"];
      if (length === undefined) return part.refuse(`how long is the crest? Try ${EXAMPLE}.`);
      const lengthM = part.metres(length.replace(/ (?:long|wide)$/, ""));
      const endContractions = Number(ends?.groups?.["n"] ?? 2) as EndContractions;
      return {
        value: { kind: "plain", lengthM, endContractions },
        readAs: `plain crest ${showEstimate(lengthM, "m")}, the water narrowed at ${endContractions} ends`,
      };
    },
  );
}
