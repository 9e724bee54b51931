import { readStrength } from "../dosing/read-strength.ts";
import type { Strength } from "../dosing/strength.ts";
import { readAlkalinity } from "./alkalinity.ts";
import { quote } from "./clean.ts";
import { type ConcentrationEntry, readConcentration } from "./concentration.ts";
import { type Estimate, exactly } from "./estimate.ts";
import { readFlow } from "./flow.ts";
import { readLength } from "./length.ts";
import { readMass } from "./mass.ts";
import { readPlainNumber } from "./plain-number.ts";
import { readPower } from "./power.ts";
import { type Choice, type Habits, isRead, type Read } from "./read.ts";
import { type Measured, readText } from "./reader.ts";
import { readSalinity, type SalinityEntry } from "./salinity.ts";
import { readSpan } from "./span.ts";
import type { Substance } from "./substances.ts";
import { readTemperature, readTemperatureDifference } from "./temperature.ts";
import { UNITS, type UnitKind } from "./unit-table.ts";
import { readVolume } from "./volume.ts";

/** Kinds whose units differ by factors alone. */
export type FactorKind = Exclude<UnitKind, "concentration">;
export type ConvertibleKind = FactorKind | "concentration" | "salinity" | "strength";

/** A quantity that is to be shown in another unit. */
export type Convertible =
  | {
      readonly kind: FactorKind;
      readonly estimate: Estimate;
      readonly typedUnit: string;
      readonly censored?: "below" | "above";
    }
  | {
      readonly kind: "concentration";
      readonly entry: ConcentrationEntry;
      readonly per: "L" | "kg";
      readonly isFormSaid: boolean;
    }
  | { readonly kind: "salinity"; readonly entry: SalinityEntry }
  | { readonly kind: "strength"; readonly strength: Strength };

export const KIND_NOUNS: Readonly<Record<ConvertibleKind, string>> = {
  volume: "a volume",
  mass: "a mass",
  length: "a length",
  temperature: "a temperature",
  "temperature difference": "a difference of temperatures",
  flow: "a flow",
  power: "a power",
  span: "a span of time",
  alkalinity: "an alkalinity",
  concentration: "a concentration",
  salinity: "a salinity",
  strength: "the strength of a solution",
};

export const CONVERTIBLE_KINDS = Object.keys(KIND_NOUNS) as readonly ConvertibleKind[];

/** What a text turned out to be: one quantity, or a matter to be asked about first. */
export type ReadConvertible =
  | { readonly is: "one"; readonly quantity: Convertible }
  | { readonly is: "several"; readonly kinds: readonly ConvertibleKind[] }
  | { readonly is: "of what" };

export interface Hints {
  readonly kind?: ConvertibleKind | undefined;
  readonly of?: Substance | "alkalinity" | undefined;
  /** Kinds that have the unit wanted. */
  readonly wanted?: readonly ConvertibleKind[] | undefined;
}

const EXAMPLES = "“55 US gal”, “78 °F”, “8 dKH”, “35 ppt” or “nitrate 20 mg/L”";

/** A quantity of any kind, by whichever reader knows it; the hints settle what several of them know. */
export function readConvertible(typed: string, habits: Habits, hints: Hints): Read<ReadConvertible> {
  const isMolar = /mol\b|mol\s*\//i.test(typed);
  const readings = CONVERTIBLE_KINDS.map((kind) => ({
    kind,
    read: readAs(kind, typed, habits, hints),
  })).filter(({ read }) => read.kind !== "unreadable");
  if (
    isMolar &&
    hints.of === undefined &&
    hints.kind === undefined &&
    !readings.some(({ kind }) => kind === "concentration")
  )
    return { kind: "read", value: { is: "of what" }, readAs: typed };
  if (isBare(typed, habits)) return askUnit(typed, habits, hints);
  const meant = settled(readings, typed, hints);
  const [first, ...others] = meant;
  if (first === undefined) return { kind: "unreadable", message: unreadable(typed, habits, hints) };
  if (others.length > 0)
    return { kind: "read", value: { is: "several", kinds: meant.map(({ kind }) => kind) }, readAs: typed };
  const { read } = first;
  return isRead(read) ? { ...read, value: { is: "one", quantity: read.value } } : read;
}

type Reading = { readonly kind: ConvertibleKind; readonly read: Read<Convertible> };

/** Of several kinds that a text fits, those that it can well mean. */
function settled(
  readings: readonly Reading[],
  typed: string,
  { kind, of, wanted }: Hints,
): readonly Reading[] {
  if (kind !== undefined) return readings.filter((each) => each.kind === kind);
  if (of === "alkalinity") return readings.filter((each) => each.kind === "alkalinity");
  if (of !== undefined) return readings.filter((each) => each.kind === "concentration");
  const fitting = wanted === undefined ? readings : readings.filter((each) => wanted.includes(each.kind));
  const left = fitting.length === 0 ? readings : fitting;
  const has = (wantedKind: ConvertibleKind) => left.some((each) => each.kind === wantedKind);
  const isLooseAlkalinity = has("concentration") && !/caco|kh|dh|meq|mval/i.test(typed);
  const isStrength = /%|mg\s*\/\s*ml|\bpart/i.test(typed);
  return left.filter((each) => {
    if (each.kind === "alkalinity") return !isLooseAlkalinity;
    if (each.kind === "temperature difference") return SAYS_APART.test(typed) || isSmall(each.read);
    if (each.kind === "strength") return isStrength || left.length === 1;
    return true;
  });
}

/** Waters further apart than this are not met with; a temperature it is then. °C. Source: assumption. */
const WIDEST_APART = 20;

function isSmall(read: Read<Convertible>): boolean {
  return isRead(read) && "estimate" in read.value && Math.abs(read.value.estimate.best) <= WIDEST_APART;
}

function readAs(kind: ConvertibleKind, typed: string, habits: Habits, { of }: Hints): Read<Convertible> {
  switch (kind) {
    case "salinity":
      return mapped(readSalinity(typed, habits), (entry) => ({ kind, entry }));
    case "strength":
      return mapped(readStrength(typed, habits), (strength) => ({ kind, strength }));
    case "concentration":
      return readPerLitreOrKilogram(typed, habits, of === "alkalinity" ? undefined : of);
    case "temperature":
      return SAYS_APART.test(typed) ? NOT_ONE : factor(kind, readTemperature(typed, habits));
    case "temperature difference":
      return factor(kind, readTemperatureDifference(typed.replace(/\s*apart\s*$/i, ""), habits));
    case "volume":
      return factor(kind, readVolume(typed, habits));
    case "mass":
      return factor(kind, readMass(typed, habits));
    case "length":
      return factor(kind, readLength(typed, habits));
    case "flow":
      return factor(kind, readFlow(typed, habits));
    case "power":
      return factor(kind, readPower(typed, habits));
    case "span":
      return factor(kind, readSpan(typed, habits));
    case "alkalinity":
      return factor(kind, readAlkalinity(typed, habits));
  }
}

const SAYS_APART = /apart|\dk\b|\bk(elvins?)?\b/i;
const NOT_ONE: Read<never> = { kind: "unreadable", message: "" };

function factor(kind: FactorKind, read: Read<Measured<never> | Measured<number>>): Read<Convertible> {
  return mapped(read, ({ estimate, typedUnit, censored }) => ({
    kind,
    estimate: bound(estimate, censored),
    typedUnit,
    ...(censored === undefined ? {} : { censored }),
  }));
}

const SAYS_FORM = /mol|\b(?:as|no3|no2|nh3|nh4|po4|tan)\b|-[np]\b/i;

/** Of "<5" and ">160" the one figure that is known. */
function bound<Q extends number>(
  estimate: Estimate<Q>,
  censored: "below" | "above" | undefined,
): Estimate<Q> {
  return censored === undefined ? estimate : exactly(estimate.high);
}

/** "20 mg/kg" is read by the reader of litres, and kept apart from them. */
function readPerLitreOrKilogram(typed: string, habits: Habits, of: Substance | undefined): Read<Convertible> {
  const PER_KG = /\b(mg|g|mmol|[uµμ]mol|[uµμ]g|mcg)\s*(?:\/|per)\s*kg\b/i;
  const isPerKg = PER_KG.test(typed);
  const text = typed.replace(PER_KG, "$1/L");
  const options = of === undefined ? {} : { substance: of };
  const read = readConcentration(text, habits, options);
  const back = (said: string) => (isPerKg ? said.replace(/\/L\b/g, "/kg") : said);
  if (read.kind === "ask")
    return {
      ...read,
      choices: read.choices.map((choice) => ({
        ...choice,
        label: back(choice.label),
        text: back(choice.text),
      })),
    };
  return read.kind === "read"
    ? {
        kind: "read",
        value: {
          kind: "concentration",
          entry: { ...read.value, estimate: bound(read.value.estimate, read.value.censored) },
          per: isPerKg ? "kg" : "L",
          isFormSaid: SAYS_FORM.test(typed),
        },
        readAs: back(read.readAs),
      }
    : read;
}

function mapped<A>(read: Read<A>, map: (value: A) => Convertible): Read<Convertible> {
  return read.kind === "read" ? { ...read, value: map(read.value) } : read;
}

function isBare(typed: string, habits: Habits): boolean {
  return readPlainNumber(typed, habits).kind !== "unreadable";
}

const GRAVITY_ENDINGS = ["SG 25/25", "SG 20/20", "SG 60/60 °F", "SG 15.6/4"];

/** A figure with no unit: asked about, by what may be meant by its size and the unit wanted. */
function askUnit(typed: string, habits: Habits, { kind, wanted }: Hints): Read<ReadConvertible> {
  const number = readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: () => true,
    read: () => ({ kind: "read", value: typed, readAs: typed }),
  });
  const figure = readPlainNumber(typed, { ...habits, decimal: habits.decimal ?? "point" });
  const best = isRead(figure) ? figure.value.estimate.best : 0;
  const kinds = kind === undefined ? wanted : [kind];
  const endings = USUAL_ENDINGS.filter((ending) => kinds === undefined || kinds.includes(ending.kind));
  const texts = [
    ...(best > 0.99 && best < 1.1 && (kinds === undefined || kinds.includes("salinity"))
      ? GRAVITY_ENDINGS.map((ending) => `${typed.trim()} ${ending}`)
      : []),
    ...endings.map(({ unit }) => `${typed.trim()} ${unit}`),
  ];
  const choices: readonly Choice[] = texts.map((text) => ({ label: text, text }));
  if (number.kind === "unreadable" || choices.length === 0)
    return { kind: "unreadable", message: `${quote(typed)} has no unit. Try ${EXAMPLES}.` };
  return { kind: "ask", question: `${quote(typed)} has no unit. Which do you mean?`, choices };
}

const USUAL_ENDINGS: readonly { readonly kind: ConvertibleKind; readonly unit: string }[] = [
  { kind: "salinity", unit: "ppt" },
  { kind: "temperature", unit: "°C" },
  { kind: "temperature", unit: "°F" },
  { kind: "alkalinity", unit: "dKH" },
  { kind: "alkalinity", unit: "meq/L" },
  { kind: "concentration", unit: "mg/L" },
  { kind: "volume", unit: "L" },
  { kind: "volume", unit: "US gal" },
  { kind: "volume", unit: "imp gal" },
  { kind: "mass", unit: "kg" },
  { kind: "mass", unit: "lb" },
  { kind: "length", unit: "cm" },
  { kind: "length", unit: "in" },
  { kind: "flow", unit: "L/h" },
  { kind: "power", unit: "W" },
  { kind: "span", unit: "h" },
  { kind: "strength", unit: "% w/v" },
];

/** The reader of the kind asked for knows best what is wrong. */
function unreadable(typed: string, habits: Habits, hints: Hints): string {
  const kind = hints.kind ?? (hints.of === undefined ? hints.wanted?.[0] : "concentration");
  const only = kind === undefined ? undefined : readAs(kind, typed, habits, hints);
  return only?.kind === "unreadable" && only.message !== ""
    ? only.message
    : `${quote(typed)} is no quantity I can read. Try ${EXAMPLES}.`;
}

/** Ids of the units of a kind that name one unit only. */
export function unitsOf(kind: UnitKind): readonly string[] {
  return UNITS[kind].filter((unit) => !("asks" in unit)).map(({ id }) => id);
}
