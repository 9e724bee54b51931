import type { Estimate } from "./estimate.ts";
import type { Habits, Read } from "./read.ts";
import { type LinearKind, type Measured, readLinear, writeEstimate } from "./reader.ts";
import { UNITS } from "./unit-table.ts";
import type { Centimetres } from "./units.ts";

const LENGTH: LinearKind = {
  kind: "length",
  grammar: {
    noun: "a length",
    examples: "“55 cm”, “1.2 m” or “4 ft 6 in”",
    units: UNITS.length,
    hasArithmetic: true,
    min: 0,
    max: 1e7,
  },
  likely: [0.001, 1e5],
  offered: ["cm", "in"],
};

/** A length in cm, from mm, cm, m, inches or feet. */
export function readLength(typed: string, habits: Habits): Read<Measured<Centimetres>> {
  return readLinear<Centimetres>(typed, habits, LENGTH);
}

/** Reads back as the same length. */
export function formatLength(estimate: Estimate<Centimetres>): string {
  return writeEstimate(estimate, "cm");
}
