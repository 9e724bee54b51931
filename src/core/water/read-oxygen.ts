import { quote } from "../quantity/clean.ts";
import { readConcentration } from "../quantity/concentration.ts";
import type { Estimate } from "../quantity/estimate.ts";
import { mapEstimate } from "../quantity/estimate.ts";
import { readPlainNumber } from "../quantity/plain-number.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showEstimate } from "../quantity/show.ts";
import { as, type MgPerL } from "../quantity/units.ts";
import type { PercentSaturation } from "./oxygen-saturation.ts";

/** What an oxygen meter or kit shows: a content, or a share of saturation. */
export type OxygenEntry =
  | { readonly kind: "content"; readonly mgPerL: Estimate<MgPerL> }
  | { readonly kind: "share"; readonly percent: Estimate<PercentSaturation> };

const EXAMPLES = "“6.2 mg/L” or “92 %”";
const PERCENT = /\s*(?:%|per ?cent|pct)(?:\s*(?:sat(?:uration|urated)?|of saturation))?\.?$/i;

/** Oxygen as mg/L or as per cent of saturation, which may well go past a hundred. */
export function readOxygen(typed: string, habits: Habits): Read<OxygenEntry> {
  if (PERCENT.test(typed)) {
    const read = readPlainNumber(typed.replace(PERCENT, "").replaceAll("%", ""), habits);
    if (read.kind === "ask")
      return { ...read, choices: read.choices.map((each) => ({ ...each, text: `${each.text} %` })) };
    if (read.kind === "unreadable" || read.value.estimate.low < 0)
      return {
        kind: "unreadable",
        message: `${quote(typed)} is not a share of saturation. Try ${EXAMPLES}.`,
      };
    const percent = mapEstimate(read.value.estimate, (value) => as<PercentSaturation>(value));
    return {
      kind: "read",
      value: { kind: "share", percent },
      readAs: `${showEstimate(percent, "%")} of saturation`,
    };
  }
  if (/^[\d.,\s]+$/.test(typed))
    return {
      kind: "ask",
      question: `${quote(typed)} has no unit. Which does the meter show?`,
      choices: ["mg/L", "%"].map((unit) => ({
        label: `${typed.trim()} ${unit}`,
        text: `${typed.trim()} ${unit}`,
      })),
    };
  const read = readConcentration(typed, habits, { substance: "oxygen" });
  return read.kind === "read" ? { ...read, value: { kind: "content", mgPerL: read.value.estimate } } : read;
}
