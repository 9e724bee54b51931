import { clean, quote } from "../quantity/clean.ts";
import { type Estimate, mapEstimate } from "../quantity/estimate.ts";
import { readLength } from "../quantity/length.ts";
import { readPlainNumber } from "../quantity/plain-number.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import { as, type SquareMetres } from "../quantity/units.ts";

const EXAMPLES = "“2.6 m2”, “260 x 100 cm” or “28 sq ft”";
/** Square metres in one. Source: nist-sp-811. */
const UNITS: readonly (readonly [RegExp, number])[] = [
  [/(?:m\^?2|sq\.? ?m|square (?:metres?|meters?))$/i, 1],
  [/(?:cm\^?2|sq\.? ?cm|square (?:centimetres?|centimeters?))$/i, 1e-4],
  [/(?:mm\^?2)$/i, 1e-6],
  [/(?:ft\^?2|sq\.? ?ft|square (?:feet|foot))$/i, 0.09290304],
  [/(?:in\^?2|sq\.? ?in|square inch(?:es)?)$/i, 0.00064516],
];

/** An area in m²: a figure with its unit, or two sides. */
export function readArea(typed: string, habits: Habits): Read<Estimate<SquareMetres>> {
  const cleaned = clean(typed, EXAMPLES);
  if ("complaint" in cleaned) return { kind: "unreadable", message: cleaned.complaint };
  const { text } = cleaned;
  const sides = /^(\d.*?) ?(?:x|×|by) ?(\d.*)$/i.exec(text);
  if (sides !== null && !UNITS.slice(0, 2).some(([words]) => words.test(text)))
    return ofSides(text, sides[1] ?? "", sides[2] ?? "", habits);
  // The longer unit first: "cm2" ends with "m2" as well.
  const unit = [...UNITS].reverse().find(([words]) => words.test(text));
  if (unit === undefined)
    return { kind: "unreadable", message: `${quote(typed)} is not an area I can read. Try ${EXAMPLES}.` };
  const [words, factor] = unit;
  const number = text.replace(words, "").trim();
  const read = readPlainNumber(number, habits);
  if (read.kind === "ask")
    return {
      ...read,
      choices: read.choices.map((each) => ({
        ...each,
        text: `${each.text} ${text.slice(number.length).trim()}`,
      })),
    };
  if (read.kind === "unreadable" || !(read.value.estimate.low > 0))
    return { kind: "unreadable", message: `${quote(typed)} is not an area above nothing. Try ${EXAMPLES}.` };
  return areaRead(
    mapEstimate(read.value.estimate, (value) => as<SquareMetres>(Number((value * factor).toPrecision(12)))),
  );
}

function ofSides(text: string, first: string, second: string, habits: Habits): Read<Estimate<SquareMetres>> {
  const unit = /[a-z"']+$/i.exec(second)?.[0] ?? "";
  const a = readLength(/\d$/.test(first) ? `${first} ${unit}` : first, habits);
  const b = readLength(second, habits);
  if (a.kind !== "read" || b.kind !== "read")
    return { kind: "unreadable", message: `${quote(text)} is not an area I can read. Try ${EXAMPLES}.` };
  const product = (one: number, other: number) => as<SquareMetres>((one * other) / 10_000);
  const [p, q] = [a.value.estimate, b.value.estimate];
  return areaRead({
    best: product(p.best, q.best),
    low: product(p.low, q.low),
    high: product(p.high, q.high),
  });
}

function areaRead(value: Estimate<SquareMetres>): Read<Estimate<SquareMetres>> {
  return { kind: "read", value, readAs: showEstimate(value, "m²") };
}
