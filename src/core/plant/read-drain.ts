import { type Estimate, exactly, mapEstimate } from "../quantity/estimate.ts";
import { readFraction } from "../quantity/fraction.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import type { Metres } from "../quantity/units.ts";
import { type DescribedPart, readPart, readParts } from "./described-part.ts";
import type { DrainElement } from "./drain-path.ts";
import type { Millimetres } from "./plant-units.ts";
import { takeBore, takeFittings } from "./read-pipe.ts";

const EXAMPLE =
  "“siphon: 2 in, drop 75 cm, 2 m, 3 elbows, entry”, “standpipe: 2 in, water 12 mm”, “fall: 2 in” or “slope: 2 in, 2 %”";

type Kind = DrainElement["kind"];

/** What a piece of drain is, by its name. */
const KIND_WORDS: readonly (readonly [Kind, RegExp])[] = [
  ["full siphon", /siphon|full/i],
  ["sloped pipe", /slope|sloping|horizontal/i],
  ["open rim", /standpipe|standby|rim|open|emergency|durso|crest/i],
  ["vertical pipe", /fall|vertical|stack|down/i],
];

/** The way down, piece by piece. */
export function readDrain(typed: string, habits: Habits): Read<readonly DrainElement[]> {
  return readParts(typed, EXAMPLE, (text) => readPart(text, EXAMPLE, habits, elementOf));
}

/** The open pipe that takes over from a siphon: "2 in, water 30 mm". */
export function readStandby(
  typed: string,
  habits: Habits,
): Read<Extract<DrainElement, { kind: "open rim" }>> {
  const read = readPart(
    `standby: ${typed.replace(/^\s*standby\s*[:=]?/i, "")}`,
    "“2 in, water 30 mm”",
    habits,
    elementOf,
  );
  if (read.kind !== "read") return read;
  const { value, readAs } = read;
  return value.kind === "open rim"
    ? { kind: "read", value, readAs }
    : { kind: "unreadable", message: "A standby is an open pipe. Try “2 in, water 30 mm”." };
}

function elementOf(part: DescribedPart): { readonly value: DrainElement; readonly readAs: string } {
  const { name } = part;
  const kind = KIND_WORDS.find(([, words]) => words.test(name))?.[0];
  if (kind === undefined)
    return part.refuse(`is it a siphon, a standpipe, a fall or a slope? Try ${EXAMPLE}.`);
  const bore = takeBore(part) ?? part.refuse(`how wide is it? Try ${EXAMPLE}.`);
  const boreMm = exactly(bore.mm);
  switch (kind) {
    case "full siphon": {
      const dropM = needed(
        part,
        /(?:drop|falls?|height) (?<q>\d.*)/,
        "how far below the upper water does it end",
      );
      const fittings = takeFittings(part);
      const length = part.take(/(?:length )?(?<q>\d.*?)(?: (?:long|of pipe))?/)?.groups?.["q"];
      const lengthM = length === undefined ? dropM : part.metres(length);
      return {
        value: { kind, name, dropM, lengthM, boreMm, fittings },
        readAs: `${name}: full siphon, ${bore.said}, drop ${showEstimate(dropM, "m")}, ${showEstimate(lengthM, "m")} long${fittings.map(({ fitting, count }) => `, ${count} × ${fitting}`).join("")}`,
      };
    }
    case "open rim": {
      const headMm = mapEstimate(
        needed(
          part,
          /(?:water|head|over(?: the)? rim)(?: of)? (?<q>\d.*)/,
          "how high may the water stand over its rim",
        ),
        (m) => (m * 1000) as Millimetres,
      );
      return {
        value: { kind, name, diameterMm: boreMm, headMm },
        readAs: `${name}: open, ${bore.said}, water ${showEstimate(headMm, "mm")} over its rim`,
      };
    }
    case "vertical pipe":
      return { value: { kind, name, boreMm }, readAs: `${name}: upright pipe, ${bore.said}` };
    case "sloped pipe": {
      const piece = part.take(/(?:falling |at )?(?<q>\d.*%)(?: .*)?/)?.groups?.["q"];
      if (piece === undefined) return part.refuse("how steep is it, in per cent? 2 % is 2 cm in a metre.");
      const slope: Estimate = part.settled(readFraction(piece, part.habits), piece).estimate;
      return {
        value: { kind, name, boreMm, slope },
        readAs: `${name}: sloped pipe, ${bore.said}, ${showEstimate(
          mapEstimate(slope, (share) => share * 100),
          "%",
        )}`,
      };
    }
  }
}

function needed(part: DescribedPart, words: RegExp, question: string): Estimate<Metres> {
  const piece = part.take(words)?.groups?.["q"];
  return piece === undefined ? part.refuse(`${question}? Try ${EXAMPLE}.`) : part.metres(piece);
}
