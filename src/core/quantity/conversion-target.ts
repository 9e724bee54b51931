import { quote } from "./clean.ts";
import { readConcentration } from "./concentration.ts";
import { CONVERTIBLE_KINDS, type ConvertibleKind, type FactorKind } from "./convertible.ts";
import type { GravityScale, Habits, Read } from "./read.ts";
import { splitConditions } from "./salinity-conditions.ts";
import { type Basis, formOf, type Substance } from "./substances.ts";
import { UNITS, type Unit, unitNamed } from "./unit-table.ts";

/** What a salinity is wanted on. */
export type SalinityTarget =
  | {
      readonly on: "ppt" | "g/kg" | "g/L" | "mS/cm at 25 °C" | "mS/cm as measured" | "chlorinity" | "density";
    }
  | { readonly on: "SG"; readonly gravity: GravityScale };

/** A concentration unit: mg (of the basis) in one of it. */
export interface ConcentrationTarget {
  readonly mgPerUnit: number;
  readonly per: "L" | "kg";
  readonly basis: Basis | undefined;
  readonly label: string;
}

const STRENGTH_UNITS = ["% w/v", "% v/v", "% w/w", "g/L", "mg/mL", "mg/L", "mL/L"] as const;
export type StrengthUnit = (typeof STRENGTH_UNITS)[number];

/** Alkalinity per kilogram, as oceanographers count it, beside the units of the table. */
export const ALKALINITY_PER_KG = "µmol/kg";

/** The wanted unit in plain form. A gallon that may be two, and a specific gravity without its two
 *  temperatures, are asked about. */
export function readTarget(typed: string, habits: Habits): Read<string> {
  const text = typed.trim().replace(/^(?:in|to|as|into)\s+/i, "");
  const unit = unitNamed(text);
  const asks = unit?.asks;
  if (asks !== undefined) {
    const own = habits.gallon === undefined ? undefined : asks[habits.gallon === "US" ? 0 : 1];
    if (own !== undefined) return { kind: "read", value: own, readAs: own };
    return {
      kind: "ask",
      question: `Which do you mean by ${quote(text)}: ${asks.join(" or ")}?`,
      choices: asks.map((each, at) => ({
        label: each,
        text: each,
        remember: { gallon: at === 0 ? "US" : "imperial" },
      })),
    };
  }
  if (/^(sg|specific gravity)$/i.test(text)) {
    if (habits.gravity !== undefined) return { kind: "read", value: text, readAs: text };
    return {
      kind: "ask",
      question: "A specific gravity means little without its two temperatures. Which shall they be?",
      choices: ["25/25", "20/20", "60/60 °F", "15.6/4"].map((scale) => ({
        label: `SG ${scale}`,
        text: `SG ${scale}`,
      })),
    };
  }
  if (kindsWith(text, habits).length > 0) return { kind: "read", value: text, readAs: text };
  return {
    kind: "unreadable",
    message: `${quote(text)} is no unit I can turn anything into. Try “L”, “US gal”, “°F”, “SG 25/25”, “mS/cm”, “µmol/L”, “meq/L” or “mg/kg”; or leave it out for all.`,
  };
}

/** The kinds that have the unit. */
export function kindsWith(target: string, habits: Habits): readonly ConvertibleKind[] {
  return CONVERTIBLE_KINDS.filter((kind) => hasUnit(kind, target, habits));
}

function hasUnit(kind: ConvertibleKind, target: string, habits: Habits): boolean {
  switch (kind) {
    case "salinity":
      return salinityTarget(target, habits) !== undefined;
    case "concentration":
      return concentrationTarget(target, undefined, undefined) !== undefined || /mol/i.test(target);
    case "strength":
      return strengthUnit(target) !== undefined;
    default:
      return factorUnit(kind, target) !== undefined || (kind === "alkalinity" && isMicromolPerKg(target));
  }
}

export function factorUnit(kind: FactorKind, target: string): Unit | undefined {
  const units: readonly Unit[] = UNITS[kind];
  const unit = units.find(({ id }) => id === target) ?? unitNamed(target.replace(/\s*apart$/i, ""), kind);
  return unit?.asks === undefined ? unit : undefined;
}

export function isMicromolPerKg(target: string): boolean {
  return /^[uµμ](mol|eq)\s*(\/|per)\s*kg$/i.test(target.trim());
}

export function strengthUnit(target: string): StrengthUnit | undefined {
  const plain = target.trim().toLowerCase().replace(/\s+/g, "").replace("m/v", "w/v").replace("m/m", "w/w");
  return STRENGTH_UNITS.find((unit) => unit.toLowerCase().replace(/\s+/g, "") === plain);
}

export function salinityTarget(target: string, habits: Habits): SalinityTarget | undefined {
  const text = target.trim();
  if (/^(ppt|psu|‰|pss-?78|practical salinity|salinity)$/i.test(text)) return { on: "ppt" };
  if (/^g\s*\/\s*kg$/i.test(text)) return { on: "g/kg" };
  if (/^g\s*\/\s*l$/i.test(text)) return { on: "g/L" };
  if (/^chlorinity$/i.test(text)) return { on: "chlorinity" };
  if (/^(density|kg\s*\/\s*m(\^?3|³))$/i.test(text)) return { on: "density" };
  if (/^(ms\/cm|ms|conductivity)\s*(as measured|uncompensated)$/i.test(text))
    return { on: "mS/cm as measured" };
  if (/^(ms\/cm|ms|conductivity)\s*(,?\s*(at|@)\s*25\s*°?\s*c?)?$/i.test(text))
    return { on: "mS/cm at 25 °C" };
  const gravity = /^(?:sg|specific gravity)\b(.*)$/i.exec(text);
  if (gravity === null) return undefined;
  const scale = scaleOf(gravity[1] ?? "") ?? (gravity[1]?.trim() === "" ? habits.gravity : undefined);
  return scale === undefined ? undefined : { on: "SG", gravity: scale };
}

function scaleOf(text: string): GravityScale | undefined {
  try {
    const { gravity, figure } = splitConditions(`1.0260 ${text.trim()}`);
    return figure.trim() === "1.0260" ? gravity : undefined;
  } catch {
    return undefined;
  }
}

const NAMES_A_FORM = /\b(?:as|no3|no2|nh3|nh4|po4|tan|n|p|ion)\b|nitr|ammon|phosph/i;

/** A unit of concentration for a substance on a basis; moles need the substance. */
export function concentrationTarget(
  target: string,
  substance: Substance | undefined,
  basis: Basis | undefined,
): ConcentrationTarget | undefined {
  const perKg = /\b(mg|g|mmol|[uµμ]mol|[uµμ]g|mcg)\s*(?:\/|per)\s*kg\b/i;
  const isPerKg = perKg.test(target);
  const text = target.trim().replace(perKg, "$1/L");
  const isNamed = NAMES_A_FORM.test(text);
  const form = substance === undefined || basis === undefined ? undefined : formOf(substance, basis);
  const isBareForm = /^(?:as\s+)?[\w-]+$/.test(text) && isNamed && !/mol/i.test(text);
  const worded = isBareForm ? `1 mg/L as ${text.replace(/^as\s+/i, "")}` : `1 ${text}`;
  const whole = isNamed || form === undefined ? worded : `${worded} as ${form.label}`;
  const read = readConcentration(whole, {}, substance === undefined ? {} : { substance });
  if (read.kind !== "read") return undefined;
  const { estimate, basis: found, typedUnit, substance: named } = read.value;
  const label = formOf(named, found)?.label;
  const unit = isPerKg ? typedUnit.replace("/L", "/kg") : typedUnit;
  const isMolar = unit.includes("mol");
  return {
    mgPerUnit: estimate.best,
    per: isPerKg ? "kg" : "L",
    basis: isMolar ? (basis ?? found) : isNamed || form !== undefined ? found : undefined,
    label: label === undefined || named === undefined || isMolar ? unit : `${unit} as ${label}`,
  };
}

const OTHER_TARGETS = [
  "ppt",
  "SG 25/25",
  "SG 20/20",
  "SG 60/60 °F",
  "SG 15.6/4",
  "mS/cm at 25 °C",
  "mS/cm as measured",
  "g/kg",
  "chlorinity",
  "density",
  "mg/L as N",
  "mg/L as NO3",
  "mg/L as P",
  "mg/L as PO4",
  "µmol/L",
  "mmol/L",
  "mg/kg",
  "µmol/kg",
  "% w/v",
  "% v/v",
  "% w/w",
  "mg/mL",
  "mL/L",
] as const;

/** Units whose name goes on from what has been typed; every one of them reads. */
export function suggestTargets(typed: string): readonly string[] {
  const begun = typed.trim().toLowerCase();
  const units = Object.values(UNITS).flatMap((table: readonly Unit[]) =>
    table.filter(({ asks }) => asks === undefined).map(({ id }) => id),
  );
  return [...new Set([...units, ...OTHER_TARGETS])]
    .filter((unit) => unit.toLowerCase().includes(begun))
    .slice(0, 25);
}
