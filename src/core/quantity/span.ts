import type { Estimate } from "./estimate.ts";
import type { Habits, Read } from "./read.ts";
import { type LinearKind, type Measured, readLinear, writeEstimate } from "./reader.ts";
import { UNITS } from "./unit-table.ts";
import type { Hours } from "./units.ts";

const SPAN: LinearKind = {
  kind: "span",
  grammar: {
    noun: "a span of time",
    examples: "“10 days”, “2 h 30 min” or “3 weeks”",
    units: UNITS.span,
    hasArithmetic: true,
    min: 0,
    max: 1e7,
  },
  likely: [1 / 3600, 1e5],
  offered: ["h", "days"],
};

/** A span of time in hours, from seconds, minutes, hours, days or weeks. */
export function readSpan(typed: string, habits: Habits): Read<Measured<Hours>> {
  return readLinear<Hours>(typed, habits, SPAN);
}

/** Reads back as the same span. */
export function formatSpan(estimate: Estimate<Hours>): string {
  return writeEstimate(estimate, "h");
}
