import type { Estimate } from "./estimate.ts";
import type { Habits, Read } from "./read.ts";
import { type LinearKind, type Measured, readLinear, writeEstimate } from "./reader.ts";
import { UNITS } from "./unit-table.ts";
import type { Watts } from "./units.ts";

const POWER: LinearKind = {
  kind: "power",
  grammar: {
    noun: "a power",
    examples: "“300 W”, “1.5 kW” or “2 x 300 W”",
    units: UNITS.power,
    hasArithmetic: true,
    min: 0,
    max: 1e9,
  },
  likely: [0.1, 1e5],
  offered: ["W", "kW"],
};

/** A power in W. */
export function readPower(typed: string, habits: Habits): Read<Measured<Watts>> {
  return readLinear<Watts>(typed, habits, POWER);
}

/** Reads back as the same power. */
export function formatPower(estimate: Estimate<Watts>): string {
  return writeEstimate(estimate, "W");
}
