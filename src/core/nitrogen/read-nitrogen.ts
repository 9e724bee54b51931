import { readConcentration } from "../quantity/concentration.ts";
import { type Estimate, mapEstimate } from "../quantity/estimate.ts";
import type { Habits, Read } from "../quantity/read.ts";
import type { Basis } from "../quantity/substances.ts";
import { asNitrogen, type MgNPerL, type NitrogenForm } from "./nitrogen-units.ts";

/** A kit's total ammonia, with what the kit counts it as. */
export interface AmmoniaReading {
  /** mg/L in `form`. */
  readonly reading: Estimate;
  readonly form: Extract<NitrogenForm, "TAN" | "NH3" | "NH4">;
  readonly asNitrogen: Estimate<MgNPerL>;
}

/** Total ammonia as a kit prints it: "0.5 mg/L as NH4". What it counts is asked for when not said. */
export function readAmmonia(typed: string, habits: Habits): Read<AmmoniaReading> {
  const read = readConcentration(typed, habits, { substance: "ammonia" });
  if (read.kind !== "read") return read;
  const { estimate, basis } = read.value;
  const form = basis === "NH3" || basis === "NH4" ? basis : "TAN";
  return {
    ...read,
    value: {
      reading: estimate,
      form,
      asNitrogen: mapEstimate(estimate, (value) => asNitrogen(value, form)),
    },
  };
}

/** Nitrate in mg/L of nitrogen: “20 mg/L” is the ion, as most kits print it; “4.5 mg/L as N” the nitrogen. */
export function readNitrate(typed: string, habits: Habits): Read<Estimate<MgNPerL>> {
  return readIon(typed, habits, "nitrate", "NO3");
}

/** Nitrite in mg/L of nitrogen: “0.5 mg/L” is the ion, “0.15 mg/L as N” the nitrogen. */
export function readNitrite(typed: string, habits: Habits): Read<Estimate<MgNPerL>> {
  return readIon(typed, habits, "nitrite", "NO2");
}

function readIon(
  typed: string,
  habits: Habits,
  substance: "nitrate" | "nitrite",
  ion: "NO3" | "NO2",
): Read<Estimate<MgNPerL>> {
  const read = readConcentration(typed, habits, { substance });
  if (read.kind !== "read") return read;
  const isNitrogen: boolean = (read.value.basis satisfies Basis) === "N";
  return {
    ...read,
    value: mapEstimate(read.value.estimate, (value) => asNitrogen(value, isNitrogen ? "TAN" : ion)),
  };
}
