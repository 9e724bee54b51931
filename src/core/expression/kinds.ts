import { UNITS, type Unit, type UnitKind } from "../quantity/unit-table.ts";
import { type Dimension, isSame } from "./dimension.ts";

/** A unit a result may be shown in, and its size in the measures of dimension.ts. */
export interface ResultUnit {
  readonly id: string;
  readonly size: number;
}

/** What a combination of measures is called, and the units it is usually shown in. */
export interface ResultKind {
  /** With its article: "a volume". */
  readonly noun: string;
  readonly dimension: Dimension;
  /** In the order of liking; the first that gives a handy figure is shown first. */
  readonly units: readonly ResultUnit[];
}

const HOURS_PER_DAY = 24;
/** dm³ and dm² in the units of the length table, which counts in cm. */
const CM_PER_DM = 10;

function sizeOf(kind: UnitKind, id: string): number {
  const units: readonly Unit[] = UNITS[kind];
  const unit = units.find((each) => each.id === id);
  if (unit === undefined) throw new RangeError(`no unit ${id} of ${kind}`);
  return unit.factor;
}

const from = (kind: UnitKind, ...ids: readonly string[]): readonly ResultUnit[] =>
  ids.map((id) => ({ id, size: sizeOf(kind, id) }));
const lengths = (power: number, suffix: string, ...ids: readonly string[]): readonly ResultUnit[] =>
  ids.map((id) => ({ id: id + suffix, size: (sizeOf("length", id) / CM_PER_DM) ** power }));

const PER_TIME = { time: -1 } as const;
const PER_VOLUME = { length: -3 } as const;
const MG_PER_L = 1e-6;
const METRE_PER_SECOND = 10 * 3600;

/** Every kind a sum may end in. Source: definition, with the sizes of the unit table. */
export const RESULT_KINDS: readonly ResultKind[] = [
  { noun: "a plain number", dimension: {}, units: [{ id: "", size: 1 }] },
  { noun: "a length", dimension: { length: 1 }, units: lengths(1, "", "cm", "m", "mm", "in", "ft") },
  { noun: "an area", dimension: { length: 2 }, units: lengths(2, "²", "m", "cm", "ft", "in") },
  { noun: "a volume", dimension: { length: 3 }, units: from("volume", "L", "mL", "m³", "US gal", "imp gal") },
  { noun: "a mass", dimension: { mass: 1 }, units: from("mass", "kg", "g", "mg", "t", "lb") },
  { noun: "a span of time", dimension: { time: 1 }, units: from("span", "h", "min", "d", "s") },
  {
    noun: "a flow",
    dimension: { length: 3, ...PER_TIME },
    units: from("flow", "L/h", "L/d", "mL/d", "m³/h", "US gal/h", "imp gal/h"),
  },
  {
    noun: "a mass per time",
    dimension: { mass: 1, ...PER_TIME },
    units: [
      { id: "g/d", size: 1e-3 / HOURS_PER_DAY },
      { id: "mg/d", size: 1e-6 / HOURS_PER_DAY },
      { id: "kg/d", size: 1 / HOURS_PER_DAY },
      { id: "g/h", size: 1e-3 },
      { id: "mg/h", size: 1e-6 },
    ],
  },
  {
    noun: "a rate",
    dimension: PER_TIME,
    units: [
      { id: "per hour", size: 1 },
      { id: "per day", size: 1 / HOURS_PER_DAY },
    ],
  },
  {
    noun: "a speed",
    dimension: { length: 1, ...PER_TIME },
    units: [
      { id: "cm/s", size: METRE_PER_SECOND / 100 },
      { id: "m/s", size: METRE_PER_SECOND },
      { id: "m/h", size: 10 },
      { id: "cm/d", size: 0.1 / HOURS_PER_DAY },
    ],
  },
  {
    noun: "a concentration",
    dimension: { mass: 1, ...PER_VOLUME },
    units: [
      { id: "mg/L", size: MG_PER_L },
      { id: "g/L", size: 1e-3 },
      { id: "kg/L", size: 1 },
      { id: "µg/L", size: 1e-9 },
    ],
  },
  {
    noun: "a change of concentration",
    dimension: { mass: 1, length: -3, time: -1 },
    units: [
      { id: "mg/L per day", size: MG_PER_L / HOURS_PER_DAY },
      { id: "mg/L per hour", size: MG_PER_L },
    ],
  },
  { noun: "a salinity", dimension: { salinity: 1 }, units: [{ id: "ppt", size: 1 }] },
  {
    noun: "a change of salinity",
    dimension: { salinity: 1, ...PER_TIME },
    units: [
      { id: "ppt per day", size: 1 / HOURS_PER_DAY },
      { id: "ppt per hour", size: 1 },
    ],
  },
  {
    noun: "a temperature difference",
    dimension: { temperature: 1 },
    units: from("temperature difference", "°C", "°F"),
  },
  {
    noun: "a change of temperature",
    dimension: { temperature: 1, ...PER_TIME },
    units: [
      { id: "°C per hour", size: 1 },
      { id: "°F per hour", size: 5 / 9 },
      { id: "°C per day", size: 1 / HOURS_PER_DAY },
    ],
  },
  {
    noun: "an alkalinity",
    dimension: { charge: 1, ...PER_VOLUME },
    units: from("alkalinity", "dKH", "meq/L", "mg/L CaCO3"),
  },
  {
    noun: "a change of alkalinity",
    dimension: { charge: 1, length: -3, time: -1 },
    units: [
      { id: "dKH per day", size: sizeOf("alkalinity", "dKH") / HOURS_PER_DAY },
      { id: "meq/L per day", size: 1 / HOURS_PER_DAY },
    ],
  },
  {
    noun: "an amount of alkalinity",
    dimension: { charge: 1 },
    units: [
      { id: "meq", size: 1 },
      { id: "eq", size: 1000 },
    ],
  },
  {
    noun: "alkalinity per time",
    dimension: { charge: 1, ...PER_TIME },
    units: [{ id: "meq per day", size: 1 / HOURS_PER_DAY }],
  },
  { noun: "a power", dimension: { power: 1 }, units: from("power", "W", "kW", "hp") },
  {
    noun: "an energy",
    dimension: { power: 1, time: 1 },
    units: [
      { id: "kWh", size: 1000 },
      { id: "Wh", size: 1 },
      { id: "kJ", size: 1 / 3.6 },
    ],
  },
  {
    noun: "a power per volume",
    dimension: { power: 1, ...PER_VOLUME },
    units: [
      { id: "W/L", size: 1 },
      { id: "W/US gal", size: 1 / sizeOf("volume", "US gal") },
    ],
  },
  { noun: "a power per degree", dimension: { power: 1, temperature: -1 }, units: [{ id: "W/°C", size: 1 }] },
  {
    noun: "a number per volume",
    dimension: PER_VOLUME,
    units: [
      { id: "per litre", size: 1 },
      { id: "per 100 L", size: 0.01 },
    ],
  },
  { noun: "a volume per mass", dimension: { length: 3, mass: -1 }, units: [{ id: "L/kg", size: 1 }] },
  {
    noun: "a load on an area",
    dimension: { mass: 1, length: -2 },
    units: [
      { id: "kg/m²", size: 1e-2 },
      { id: "lb/ft²", size: sizeOf("mass", "lb") / (sizeOf("length", "ft") / CM_PER_DM) ** 2 },
    ],
  },
];

/** The kind of a combination of measures, when it has a name here. */
export function kindOf(dimension: Dimension): ResultKind | undefined {
  return RESULT_KINDS.find((kind) => isSame(kind.dimension, dimension));
}
