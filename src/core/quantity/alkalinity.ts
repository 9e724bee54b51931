import type { Estimate } from "./estimate.ts";
import type { Habits, Read } from "./read.ts";
import { type LinearKind, type Measured, readLinear, writeEstimate } from "./reader.ts";
import { UNITS } from "./unit-table.ts";
import type { MilliequivPerL } from "./units.ts";

const ALKALINITY: LinearKind = {
  kind: "alkalinity",
  grammar: {
    noun: "an alkalinity",
    examples: "“8 dKH”, “2.9 meq/L” or “143 ppm CaCO3”",
    units: UNITS.alkalinity,
    isPrefixed: true,
    hasArithmetic: false,
    hasBounds: true,
    min: 0,
    max: 1000,
  },
  likely: [0.1, 20],
  offered: ["dKH", "meq/L", "ppm CaCO3"],
  asksForUnit: true,
};

/** An alkalinity in meq/L, from dKH, meq/L, mmol/L of bicarbonate, or mg/L as CaCO₃. */
export function readAlkalinity(typed: string, habits: Habits): Read<Measured<MilliequivPerL>> {
  return readLinear<MilliequivPerL>(typed, habits, ALKALINITY);
}

/** Reads back as the same alkalinity. */
export function formatAlkalinity(estimate: Estimate<MilliequivPerL>): string {
  return writeEstimate(estimate, "meq/L");
}
