import type { SourceId } from "../sources.ts";

export type ParameterId =
  | "temperature"
  | "salinity"
  | "ph"
  | "ammonia"
  | "nitrite"
  | "nitrate"
  | "phosphate"
  | "alkalinity"
  | "calcium"
  | "magnesium"
  | "oxygen"
  | "redox"
  | "hardness";

export type TankKind = "marine" | "brackish" | "fresh";

interface Band {
  readonly min: number;
  readonly max: number;
}

/** One thing that is tested in water. */
export interface Parameter {
  readonly id: ParameterId;
  readonly name: string;
  /** Every spelling taken from a member, in lower case. The first is the one shown in examples. */
  readonly spellings: readonly string[];
  /** What readings are stored in. */
  readonly unit: string;
  /** Of which the unit counts the mass: "as NO₃". Empty where there is only one way to count. */
  readonly basis: string;
  /** Outside this no kept water can be: the reading is refused or questioned. In `unit`. */
  readonly possible: Band;
  /** What such tanks are commonly kept at, in `unit`; absent where no habit exists. */
  readonly usual: Readonly<Partial<Record<TankKind, Band>>>;
  readonly usualSource: SourceId;
  /** Where "not detected" is taken to end when no limit is named: the first edge of a common colour
   *  chart, in `unit`. Absent where nothing can be "not detected". An assumption. */
  readonly notDetectedBelow?: number;
}

/** The catalogue. Usual ranges are habits of the trade, not limits of nature; possible ranges are
 *  set wide (assumption) so that a true reading, however bad, is never refused. */
export const PARAMETERS: readonly Parameter[] = [
  {
    id: "temperature",
    name: "temperature",
    spellings: ["temp", "temperature", "t"],
    unit: "°C",
    basis: "",
    possible: { min: -2, max: 45 },
    usual: { marine: { min: 24, max: 27 }, brackish: { min: 24, max: 28 }, fresh: { min: 20, max: 28 } },
    usualSource: "common-practice",
  },
  {
    id: "salinity",
    name: "salinity",
    spellings: ["salinity", "sal", "sg", "ppt", "psu", "specific gravity", "gravity", "conductivity", "ec"],
    unit: "PSS-78",
    basis: "",
    possible: { min: 0, max: 60 },
    usual: { marine: { min: 32, max: 36 }, brackish: { min: 2, max: 20 }, fresh: { min: 0, max: 1 } },
    usualSource: "common-practice",
  },
  {
    id: "ph",
    name: "pH",
    spellings: ["ph"],
    unit: "pH",
    basis: "",
    possible: { min: 3, max: 11 },
    usual: { marine: { min: 7.8, max: 8.4 }, brackish: { min: 7.5, max: 8.4 }, fresh: { min: 6, max: 8 } },
    usualSource: "common-practice",
  },
  {
    id: "ammonia",
    name: "ammonia (total)",
    spellings: ["ammonia", "amm", "nh3", "nh4", "nh3/nh4", "tan", "ammonium", "total ammonia"],
    unit: "mg/L",
    basis: "as N",
    possible: { min: 0, max: 200 },
    usual: { marine: { min: 0, max: 0.1 }, brackish: { min: 0, max: 0.1 }, fresh: { min: 0, max: 0.1 } },
    usualSource: "common-practice",
    notDetectedBelow: 0.125,
  },
  {
    id: "nitrite",
    name: "nitrite",
    spellings: ["nitrite", "no2", "nitrites"],
    unit: "mg/L",
    basis: "as NO₂",
    possible: { min: 0, max: 300 },
    usual: { marine: { min: 0, max: 0.3 }, brackish: { min: 0, max: 0.3 }, fresh: { min: 0, max: 0.3 } },
    usualSource: "common-practice",
    notDetectedBelow: 0.125,
  },
  {
    id: "nitrate",
    name: "nitrate",
    spellings: ["nitrate", "no3", "nitrates"],
    unit: "mg/L",
    basis: "as NO₃",
    possible: { min: 0, max: 999 },
    usual: { marine: { min: 0, max: 50 }, brackish: { min: 0, max: 50 }, fresh: { min: 0, max: 50 } },
    usualSource: "common-practice",
    notDetectedBelow: 2.5,
  },
  {
    id: "phosphate",
    name: "phosphate",
    spellings: ["phosphate", "po4", "phosphates", "phosphorus"],
    unit: "mg/L",
    basis: "as PO₄",
    possible: { min: 0, max: 100 },
    usual: { marine: { min: 0, max: 0.2 }, brackish: { min: 0, max: 1 }, fresh: { min: 0, max: 2 } },
    usualSource: "common-practice",
    notDetectedBelow: 0.1,
  },
  {
    id: "alkalinity",
    name: "alkalinity",
    spellings: ["alkalinity", "alk", "kh", "dkh", "carbonate hardness"],
    unit: "meq/L",
    basis: "",
    possible: { min: 0, max: 15 },
    usual: {
      marine: { min: 2.5, max: 4.3 },
      brackish: { min: 1.5, max: 4.5 },
      fresh: { min: 0.5, max: 4.5 },
    },
    usualSource: "common-practice",
  },
  {
    id: "calcium",
    name: "calcium",
    spellings: ["calcium", "ca"],
    unit: "mg/L",
    basis: "",
    possible: { min: 0, max: 1500 },
    usual: { marine: { min: 380, max: 460 } },
    usualSource: "common-practice",
  },
  {
    id: "magnesium",
    name: "magnesium",
    spellings: ["magnesium", "mg"],
    unit: "mg/L",
    basis: "",
    possible: { min: 0, max: 3000 },
    usual: { marine: { min: 1200, max: 1400 } },
    usualSource: "common-practice",
  },
  {
    id: "oxygen",
    name: "oxygen",
    spellings: ["oxygen", "do", "o2", "dissolved oxygen"],
    unit: "mg/L",
    basis: "",
    possible: { min: 0, max: 30 },
    usual: { marine: { min: 5.5, max: 8 }, brackish: { min: 5.5, max: 9 }, fresh: { min: 6, max: 10 } },
    usualSource: "common-practice",
  },
  {
    id: "redox",
    name: "redox potential",
    spellings: ["redox", "orp"],
    unit: "mV",
    basis: "",
    possible: { min: -600, max: 1000 },
    usual: { marine: { min: 250, max: 450 } },
    usualSource: "common-practice",
  },
  {
    id: "hardness",
    name: "general hardness",
    spellings: ["gh", "hardness", "general hardness", "dgh"],
    unit: "°dH",
    basis: "",
    possible: { min: 0, max: 500 },
    usual: { fresh: { min: 3, max: 20 } },
    usualSource: "common-practice",
  },
];

const bySpelling = new Map(PARAMETERS.flatMap((parameter) => parameter.spellings.map((s) => [s, parameter])));
const byId = new Map(PARAMETERS.map((parameter) => [parameter.id, parameter]));

/** The parameter a member's word names; case and a trailing colon do not matter. */
export function parameterNamed(word: string): Parameter | undefined {
  const plain = word
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\s_]+/g, " ")
    .replace(/^ | ?:?=? ?$/g, "");
  return bySpelling.get(plain);
}

/** Throws: RangeError for an id outside the catalogue, which the type excludes. */
export function parameter(id: ParameterId): Parameter {
  const found = byId.get(id);
  if (found === undefined) throw new RangeError(`no parameter ${id}`);
  return found;
}

/** "mg/L as NO₃", "°C", "" for a pure number. */
export function unitText({ unit, basis }: Pick<Parameter, "unit" | "basis">): string {
  if (unit === "pH") return "";
  return basis === "" ? unit : `${unit} ${basis}`;
}

export function isPossible(subject: Parameter, value: number): boolean {
  return Number.isFinite(value) && value >= subject.possible.min && value <= subject.possible.max;
}
