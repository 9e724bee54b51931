import type { DegreesKH } from "../nitrogen/nitrification.ts";
import { readAlkalinity } from "../quantity/alkalinity.ts";
import { quote } from "../quantity/clean.ts";
import { readConcentration } from "../quantity/concentration.ts";
import { type Estimate, mapEstimate } from "../quantity/estimate.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { as, type MgPerL, type MilliequivPerL } from "../quantity/units.ts";
import { alkalinityFromMeq } from "./alkalinity-units.ts";

/** A level as typed: an alkalinity in dKH, or mg/L of calcium or magnesium. */
export type MineralLevel =
  | { readonly kind: "alkalinity"; readonly dkh: Estimate<DegreesKH> }
  | { readonly kind: "concentration"; readonly mgPerL: Estimate<MgPerL> };

const EXAMPLES = "“8 dKH”, “2.9 meq/L” or “420 mg/L”";
const ALKALINITY_WORDS = /dkh|°\s*dh|\bkh\b|meq|mmol|caco3|carbonate/i;
/** A number with no unit at all. */
const BARE = /^\s*[\d.,\s–-]+\s*$/;

/** "8 dKH", "2.9 meq/L", "143 ppm CaCO3", "420 mg/L": what unit it is in tells which mineral it can be of. */
export function readMineralLevel(typed: string, habits: Habits): Read<MineralLevel> {
  if (ALKALINITY_WORDS.test(typed)) return readDkh(typed, habits);
  if (BARE.test(typed))
    return {
      kind: "ask",
      question: `${quote(typed)} has no unit. Which does the kit print?`,
      choices: ["dKH", "meq/L", "mg/L"].map((unit) => ({
        label: `${typed.trim()} ${unit}`,
        text: `${typed.trim()} ${unit}`,
      })),
    };
  const read = readConcentration(typed, habits);
  if (read.kind !== "read")
    return read.kind === "ask"
      ? read
      : { kind: "unreadable", message: `${quote(typed)} is not a level I can read. Try ${EXAMPLES}.` };
  return { ...read, value: { kind: "concentration", mgPerL: read.value.estimate } };
}

/** An alkalinity in dKH, however the kit prints it. */
export function readDegreesKH(typed: string, habits: Habits): Read<Estimate<DegreesKH>> {
  const read = readAlkalinity(typed, habits);
  return read.kind === "read" ? { ...read, value: inDkh(read.value.estimate) } : read;
}

/** An alkalinity as it is stored, in the unit the sums of this room count in. Source: definition. */
export function inDkh(alkalinity: Estimate<MilliequivPerL>): Estimate<DegreesKH> {
  return mapEstimate(alkalinity, (meq) => as<DegreesKH>(alkalinityFromMeq(meq, "dKH")));
}

function readDkh(typed: string, habits: Habits): Read<MineralLevel> {
  const read = readDegreesKH(typed, habits);
  return read.kind === "read" ? { ...read, value: { kind: "alkalinity", dkh: read.value } } : read;
}
