import type { Estimate } from "./estimate.ts";
import type { Habits, Read } from "./read.ts";
import { type LinearKind, type Measured, readLinear, writeEstimate } from "./reader.ts";
import { UNITS } from "./unit-table.ts";
import type { Kilograms } from "./units.ts";

const MASS: LinearKind = {
  kind: "mass",
  grammar: {
    noun: "a mass",
    examples: "“2.5 kg”, “400 g” or “3 lb 4 oz”",
    units: UNITS.mass,
    hasArithmetic: true,
    min: 0,
    max: 1e9,
  },
  likely: [1e-6, 1e5],
  offered: ["g", "kg", "lb"],
};

/** A mass in kg, from g, kg, mg, lb, oz (avoirdupois) or tonnes. */
export function readMass(typed: string, habits: Habits): Read<Measured<Kilograms>> {
  return readLinear<Kilograms>(typed, habits, MASS);
}

/** Reads back as the same mass. */
export function formatMass(estimate: Estimate<Kilograms>): string {
  return writeEstimate(estimate, "kg");
}
