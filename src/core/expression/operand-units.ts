import { flowUnits } from "../quantity/flow.ts";
import type { Habits } from "../quantity/read.ts";
import { UNITS, type Unit } from "../quantity/unit-table.ts";
import { volumeUnits } from "../quantity/volume.ts";
import type { Dimension } from "./dimension.ts";

/** A unit as it may stand in a sum: its factor is in the measures of dimension.ts. */
export interface OperandUnit extends Unit {
  readonly dimension: Dimension;
  /** Set on °C and °F, which are points on a scale. */
  readonly isPoint?: true;
}

const CM_PER_DM = 10;
const MG_PER_KG = 1e6;
const VOLUME = { length: 3 } as const;

/**
 * Every unit a sum may hold, by the member's habits. Spellings that two kinds share go to the commoner one:
 * “mg/L” is a concentration, “W” is watts.
 */
export function operandUnits(habits: Habits): readonly OperandUnit[] {
  const of = (units: readonly Unit[], dimension: Dimension, scale = 1): readonly OperandUnit[] =>
    units.map((unit) => ({ ...unit, factor: unit.factor * scale, dimension }));
  return [
    ...of(volumeUnits(habits), VOLUME),
    ...of(UNITS.mass, { mass: 1 }),
    ...of(UNITS.length, { length: 1 }, 1 / CM_PER_DM),
    ...of(flowUnits(habits), { length: 3, time: -1 }),
    ...of(UNITS.power, { power: 1 }),
    ...of(without(UNITS.span, ["w"]), { time: 1 }),
    ...of(UNITS.concentration, { mass: 1, length: -3 }, 1 / MG_PER_KG),
    ...of(without(UNITS.alkalinity, OTHERWISE_TAKEN), { charge: 1, length: -3 }),
    ...UNITS.temperature.map((unit) => ({ ...unit, dimension: { temperature: 1 }, isPoint: true as const })),
    ...EXTRA,
  ];
}

/** Alkalinity's own words for units that mean something else elsewhere. */
const OTHERWISE_TAKEN = [
  "ppm",
  "mg/l",
  "mmol/l",
  "mmol per l",
  "°",
  "degree",
  "degrees",
  "meq",
  "mval",
] as const;

function without(units: readonly Unit[], taken: readonly string[]): readonly Unit[] {
  return units.map((unit) => ({
    ...unit,
    spellings: unit.spellings.filter((spelling) => !taken.includes(spelling)),
  }));
}

const AREAS: readonly [id: string, dm2: number, names: readonly string[]][] = [
  ["cm²", 1e-2, ["cm^2", "cm2", "sq cm", "square cm"]],
  ["m²", 100, ["m^2", "m2", "sq m", "square metre", "square metres", "square meter", "square meters"]],
  ["in²", 0.254 ** 2, ["in^2", "in2", "sq in", "square inch", "square inches"]],
  ["ft²", 3.048 ** 2, ["ft^2", "ft2", "sq ft", "square foot", "square feet"]],
];

/** Units that only sums need. Source: definition; inch and foot nist-sp-811, B.8. */
const EXTRA: readonly OperandUnit[] = [
  ...AREAS.map(([id, factor, spellings]) => ({ id, factor, spellings, dimension: { length: 2 } })),
  {
    id: "K",
    factor: 1,
    spellings: ["k", "kelvin", "kelvins", "°c apart", "degrees c apart", "c apart"],
    dimension: { temperature: 1 },
  },
  {
    id: "°F apart",
    factor: 5 / 9,
    spellings: ["°f apart", "degrees f apart", "f apart"],
    dimension: { temperature: 1 },
  },
  { id: "ppt", factor: 1, spellings: ["ppt", "psu", "‰"], dimension: { salinity: 1 } },
  { id: "meq", factor: 1, spellings: ["meq", "mval"], dimension: { charge: 1 } },
  { id: "Wh", factor: 1, spellings: ["wh", "watt hours", "watt-hours"], dimension: { power: 1, time: 1 } },
  {
    id: "kWh",
    factor: 1000,
    spellings: ["kwh", "kw h", "kilowatt hours", "kilowatt-hours"],
    dimension: { power: 1, time: 1 },
  },
  {
    id: "kJ",
    factor: 1 / 3.6,
    spellings: ["kj", "kilojoule", "kilojoules"],
    dimension: { power: 1, time: 1 },
  },
  {
    id: "kg/L",
    factor: 1,
    spellings: ["kg/l", "kg per l", "g/ml", "g/cm^3", "g/cm3"],
    dimension: { mass: 1, length: -3 },
  },
  { id: "mg/mL", factor: 1e-3, spellings: ["mg/ml", "mg per ml"], dimension: { mass: 1, length: -3 } },
];
