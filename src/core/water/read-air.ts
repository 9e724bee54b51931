import { quote } from "../quantity/clean.ts";
import { mapEstimate } from "../quantity/estimate.ts";
import { readPlainNumber } from "../quantity/plain-number.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import { as, type KiloPascals, type Metres } from "../quantity/units.ts";
import type { OxygenConditions } from "./oxygen-solubility.ts";

export type AirEntry = NonNullable<OxygenConditions["air"]>;

const EXAMPLES = "“650 m”, “2100 ft” or “95 kPa”";

/** Metres for one unit of height; kilopascals for one unit of pressure. Source: nist-sp-811. */
const UNITS: readonly { readonly words: RegExp; readonly kind: AirEntry["kind"]; readonly factor: number }[] =
  [
    { words: /^(?:m|metres?|meters?)$/, kind: "altitude", factor: 1 },
    { words: /^(?:ft|feet|foot)$/, kind: "altitude", factor: 0.3048 },
    { words: /^km$/, kind: "altitude", factor: 1000 },
    { words: /^kpa$/, kind: "pressure", factor: 1 },
    { words: /^(?:hpa|mbar|millibars?|mb)$/, kind: "pressure", factor: 0.1 },
    { words: /^bar$/, kind: "pressure", factor: 100 },
    { words: /^atm$/, kind: "pressure", factor: 101.325 },
    { words: /^mm ?hg$/, kind: "pressure", factor: 0.1333224 },
    { words: /^in ?hg$/, kind: "pressure", factor: 3.386389 },
  ];

/** The air a tank stands in: its height above the sea, or the true air pressure there. */
export function readAir(typed: string, habits: Habits): Read<AirEntry> {
  const text = typed.trim().toLowerCase().slice(0, 60);
  const [, number = text, word = ""] = /^(.*?\d\)?)\s*([a-z][a-z ]*)?$/.exec(text) ?? [];
  const read = readPlainNumber(number, habits);
  if (read.kind === "unreadable")
    return {
      kind: "unreadable",
      message: `${quote(typed)} is not a height or an air pressure. Try ${EXAMPLES}.`,
    };
  if (read.kind === "ask")
    return {
      ...read,
      choices: read.choices.map((each) => ({ ...each, text: `${each.text} ${word}`.trim() })),
    };
  if (word === "")
    return {
      kind: "ask",
      question: `${quote(typed)} has no unit. Which do you mean?`,
      choices: ["m", "ft", "kPa", "hPa"].map((unit) => ({
        label: `${number} ${unit}`,
        text: `${number} ${unit}`,
      })),
    };
  const unit = UNITS.find(({ words }) => words.test(word.trim()));
  if (unit === undefined)
    return {
      kind: "unreadable",
      message: `${quote(word)} is no unit of height or air pressure. Try ${EXAMPLES}.`,
    };
  const { estimate } = read.value;
  if (unit.kind === "altitude") {
    const altitude = mapEstimate(estimate, (value) => as<Metres>(value * unit.factor));
    return {
      kind: "read",
      value: { kind: "altitude", altitude },
      readAs: `${showEstimate(altitude, "m")} above the sea`,
    };
  }
  const pressure = mapEstimate(estimate, (value) => as<KiloPascals>(value * unit.factor));
  return {
    kind: "read",
    value: { kind: "pressure", pressure },
    readAs: showEstimate(pressure, "kPa", { significant: 5 }),
  };
}
