import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import { readPart, readParts } from "./described-part.ts";
import type { DrainedOpening } from "./lowest-opening.ts";

const EXAMPLE = "“nozzle: 150 mm below, break 20 mm, inspected” or “none”";

/** Return outlets under water, each with its depth and, where there is one, its siphon break. */
export function readReturns(typed: string, habits: Habits): Read<readonly DrainedOpening[]> {
  if (/^\s*(?:none|no|above(?: the)? water)\s*$/i.test(typed))
    return { kind: "read", value: [], readAs: "none under water" };
  return readParts(typed, EXAMPLE, (text) =>
    readPart(text, EXAMPLE, habits, (part) => {
      const name = part.name === "" ? "the return" : part.name;
      const hole = part.take(/(?:siphon )?(?:break|hole)(?: at)? (?<q>\d.*?)(?<i> inspected)?/);
      const breakText = hole?.groups?.["q"];
      const depth = part.take(/(?<q>\d.*?)(?: (?:below|under|deep)(?: .*)?)?/)?.groups?.["q"];
      if (depth === undefined) return part.refuse(`how deep under the running level is it? Try ${EXAMPLE}.`);
      const belowLevelMm = part.mm(depth);
      const isInspected =
        !part.has(/not inspected/) && (part.has(/inspected(?: .*)?/) || hole?.groups?.["i"] !== undefined);
      const value: DrainedOpening = {
        name,
        belowLevelMm,
        ...(breakText === undefined
          ? {}
          : { siphonBreak: { belowLevelMm: part.mm(breakText), isInspected } }),
      };
      return {
        value,
        readAs: `${name}: ${showEstimate(belowLevelMm, "mm")} under the level${value.siphonBreak === undefined ? ", no siphon break" : `, break at ${showEstimate(value.siphonBreak.belowLevelMm, "mm")}${isInspected ? ", inspected" : ", not inspected: not counted"}`}`,
      };
    }),
  );
}
