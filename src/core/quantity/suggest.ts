import { readAlkalinity } from "./alkalinity.ts";
import { clean } from "./clean.ts";
import { readConcentration } from "./concentration.ts";
import { readFlow } from "./flow.ts";
import { readFraction } from "./fraction.ts";
import { readLength } from "./length.ts";
import { readMass } from "./mass.ts";
import { doubtfulNumbers, scanNumber } from "./number-text.ts";
import { readPower } from "./power.ts";
import type { Habits, Read } from "./read.ts";
import { readSalinity } from "./salinity.ts";
import { readSpan } from "./span.ts";
import { readTemperature, readTemperatureDifference } from "./temperature.ts";
import { UNITS, type Unit, type UnitKind } from "./unit-table.ts";
import { readVolume } from "./volume.ts";

/** Kinds with units to suggest: those of the table, and those with a reader of their own. */
export type SuggestedKind = UnitKind | "salinity" | "fraction";

interface Ending {
  readonly id: string;
  readonly spellings: readonly string[];
}

const MOST = 25;
const READERS: Readonly<Record<SuggestedKind, (text: string, habits: Habits) => Read<unknown>>> = {
  volume: readVolume,
  mass: readMass,
  length: readLength,
  temperature: readTemperature,
  "temperature difference": readTemperatureDifference,
  flow: readFlow,
  power: readPower,
  span: readSpan,
  concentration: readConcentration,
  alkalinity: readAlkalinity,
  salinity: readSalinity,
  fraction: readFraction,
};
/** What may follow the number of a kind that the table does not hold, in the order offered. */
const SPECIAL: Readonly<Record<Exclude<SuggestedKind, UnitKind>, readonly string[]>> = {
  salinity: [
    "ppt",
    "PSU",
    "SG 25/25",
    "SG 20/20",
    "SG 60/60 °F",
    "SG 15.6/4",
    "mS/cm at 25 °C",
    "mS/cm at 24 °C uncompensated",
    "µS/cm at 25 °C",
    "g/kg",
    "g/L",
  ],
  fraction: ["%"],
};

/**
 * Whole texts that would complete what has been typed so far: "75 g" gives "75 US gal", "75 imp gal" ….
 * Each of them reads, or asks only what its number's marks mean. Without a number there is nothing to complete.
 */
export function suggestUnits(kind: SuggestedKind, typed: string, habits: Habits = {}): readonly string[] {
  const cleaned = clean(typed, "");
  if ("complaint" in cleaned) {
    return [];
  }
  const { text } = cleaned;
  const cut = endOfNumbers(text);
  if (cut === 0) {
    return [];
  }
  const head = text.slice(0, cut).trim();
  const tail = text.slice(cut).trim().toLowerCase();
  const isDoubtful = doubtfulNumbers(head).length > 0;
  const reads = (whole: string) => {
    const { kind: outcome } = READERS[kind](whole, habits);
    return outcome === "read" || (isDoubtful && outcome === "ask");
  };
  return endingsOf(kind, head)
    .filter(({ spellings }) => spellings.some((spelling) => continues(spelling, tail)))
    .map(({ id }) => `${head} ${id}`)
    .filter(reads)
    .slice(0, MOST);
}

function endingsOf(kind: SuggestedKind, head: string): readonly Ending[] {
  if (kind === "salinity" || kind === "fraction") {
    return SPECIAL[kind].map((id) => ({ id, spellings: [id.toLowerCase()] }));
  }
  const isBox = kind === "volume" && /\d\s*[x×*]\s*\d.*[x×*]\s*\d/i.test(head);
  const units: readonly Unit[] = isBox ? UNITS.length : UNITS[kind];
  const doubtful = units.filter(({ asks }) => asks !== undefined);
  return units
    .filter(({ asks }) => asks === undefined)
    .map(({ id, spellings }) => ({
      id,
      // "75 g" should lead to both gallons, though only the doubtful spelling begins so.
      spellings: [
        id.toLowerCase(),
        ...spellings,
        ...doubtful.filter(({ asks }) => asks?.includes(id)).flatMap((unit) => unit.spellings),
      ],
    }));
}

function continues(spelling: string, tail: string): boolean {
  return spelling.startsWith(tail) || spelling.replace(/ /g, "").startsWith(tail.replace(/[ .]/g, ""));
}

/** Where the last number that is not part of a unit such as "m3" ends. */
function endOfNumbers(text: string): number {
  let cut = 0;
  let at = 0;
  while (at < text.length) {
    const number = scanNumber(text, at, ".");
    const before = text[at - 1] ?? "";
    const isInUnit = /[\p{L}^]/u.test(before) && before !== "x";
    if (number !== undefined && !isInUnit) {
      cut = number.end;
    }
    at = number?.end ?? at + 1;
  }
  return cut;
}
