import { clean, quote } from "../quantity/clean.ts";
import { type Estimate, mapEstimate } from "../quantity/estimate.ts";
import { readLength } from "../quantity/length.ts";
import { readMass } from "../quantity/mass.ts";
import { readPlainNumber } from "../quantity/plain-number.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import { as, type KiloPascals, type Litres, type LitresPerHour } from "../quantity/units.ts";
import { readVolume } from "../quantity/volume.ts";
import { readPart, readParts } from "./described-part.ts";
import type { FloorLoadInputs } from "./floor-load.ts";
import { CONDUCTIVITY, type WallMaterial } from "./heat.ts";
import type { Millimetres } from "./plant-units.ts";
import { readArea } from "./read-area.ts";

const PARTS = "“stand 160 kg; acrylic shell 244 kg; two people 160 kg”";
const WALLS = "“acrylic 25 mm”, “glass 12 mm” or “plastic 4 mm”";
const FEET = "“6 x 79 cm2”";
const PRESSURE = "“60 psi”, “4 bar” or “400 kPa”";
const SIDE_TANKS = "“algae tank 250 L at 600 L/h”";
/** Kilopascals in one. Source: nist-sp-811 (psi 6.894757 kPa). */
const PRESSURE_UNITS: readonly (readonly [RegExp, number])[] = [
  [/psi$/i, 6.894757],
  [/mbar$/i, 0.1],
  [/bar$/i, 100],
  [/kpa$/i, 1],
];

/** Things that weigh, beside water: "stand 160 kg; shell 244 kg". */
export function readMasses(typed: string, habits: Habits): Read<FloorLoadInputs["parts"]> {
  return readParts(typed, PARTS, (text) =>
    readPart(text, PARTS, habits, (part) => {
      const name = part.name === "" ? part.refuse(`name what weighs. Try ${PARTS}.`) : part.name;
      const piece = part.take(/(?<q>\d.*)/)?.groups?.["q"];
      if (piece === undefined) return part.refuse(`how heavy is it? Try ${PARTS}.`);
      const massKg = part.settled(readMass(piece, habits), piece).estimate;
      return { value: { name, massKg }, readAs: `${name} ${showEstimate(massKg, "kg")}` };
    }),
  );
}

/** What the walls are of and how thick: for the heat they pass, never for their strength. */
export function readWalls(
  typed: string,
  habits: Habits,
): Read<{ readonly material: WallMaterial; readonly thicknessMm: Millimetres }> {
  const [, word = "", rest = ""] = /^\s*([a-z]+)[ ,]+(.+)$/i.exec(typed) ?? [];
  const material = (Object.keys(CONDUCTIVITY) as WallMaterial[]).find((each) => each === word.toLowerCase());
  if (material === undefined)
    return {
      kind: "unreadable",
      message: `${quote(typed)} does not say what the walls are of. Try ${WALLS}.`,
    };
  const read = readLength(rest, habits);
  if (read.kind === "ask")
    return { ...read, choices: read.choices.map((each) => ({ ...each, text: `${material} ${each.text}` })) };
  if (read.kind === "unreadable") return read;
  const thicknessMm = as<Millimetres>(read.value.estimate.best * 10);
  return {
    kind: "read",
    value: { material, thicknessMm },
    readAs: `${material}, ${showEstimate(
      mapEstimate(read.value.estimate, (cm) => cm * 10),
      "mm",
    )}`,
  };
}

/** The feet of a stand: how many, and the area of each. */
export function readFeet(typed: string, habits: Habits): Read<NonNullable<FloorLoadInputs["feet"]>> {
  const [, count = "", rest = ""] =
    /^\s*(\d{1,3}) ?(?:feet |legs )?(?:x|×|of|with)? ?(.+)$/i.exec(typed) ?? [];
  const area = readArea(rest, habits);
  if (area.kind !== "read")
    return { kind: "unreadable", message: `${quote(typed)} is not feet I can read. Try ${FEET}.` };
  const areaCm2 = mapEstimate(area.value, (m2) => m2 * 10_000);
  return {
    kind: "read",
    value: { count: Number(count), areaCm2 },
    readAs: `${count} feet of ${showEstimate(areaCm2, "cm²")}`,
  };
}

/** A water pressure in kPa. */
export function readPressure(typed: string, habits: Habits): Read<Estimate<KiloPascals>> {
  const cleaned = clean(typed, PRESSURE);
  if ("complaint" in cleaned) return { kind: "unreadable", message: cleaned.complaint };
  const unit = PRESSURE_UNITS.find(([words]) => words.test(cleaned.text));
  if (unit === undefined)
    return {
      kind: "unreadable",
      message: `${quote(typed)} is not a pressure with its unit. Try ${PRESSURE}.`,
    };
  const [words, factor] = unit;
  const suffix = words.exec(cleaned.text)?.[0] ?? "";
  const read = readPlainNumber(cleaned.text.replace(words, "").trim(), habits);
  if (read.kind === "ask")
    return { ...read, choices: read.choices.map((each) => ({ ...each, text: `${each.text} ${suffix}` })) };
  if (read.kind === "unreadable" || !(read.value.estimate.low > 0))
    return {
      kind: "unreadable",
      message: `${quote(typed)} is not a pressure above nothing. Try ${PRESSURE}.`,
    };
  const value = mapEstimate(read.value.estimate, (each) => as<KiloPascals>(each * factor));
  return { kind: "read", value, readAs: showEstimate(value, "kPa", { significant: 4 }) };
}

/** Tanks on a flow of their own beside the loop. */
export function readSideTanks(
  typed: string,
  habits: Habits,
): Read<
  readonly {
    readonly name: string;
    readonly volumeL: Estimate<Litres>;
    readonly flow: Estimate<LitresPerHour>;
  }[]
> {
  return readParts(typed, SIDE_TANKS, (text) =>
    readPart(text, SIDE_TANKS, habits, (part) => {
      const name = part.name === "" ? part.refuse(`name the tank. Try ${SIDE_TANKS}.`) : part.name;
      const both = part.take(/(?<v>\d.*?) (?:at|@) (?<q>\d.*)/);
      const volumeText = both?.groups?.["v"];
      const flowText = both?.groups?.["q"];
      if (volumeText === undefined || flowText === undefined)
        return part.refuse(`its volume and its own flow are both needed. Try ${SIDE_TANKS}.`);
      const volumeL = part.settled(readVolume(volumeText, habits), volumeText).estimate;
      const flow = part.flow(flowText);
      return {
        value: { name, volumeL, flow },
        readAs: `${name} ${showEstimate(volumeL, "L")} at ${showEstimate(flow, "L/h")}`,
      };
    }),
  );
}
