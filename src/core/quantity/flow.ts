import type { Estimate } from "./estimate.ts";
import type { Habits, Read } from "./read.ts";
import { type LinearKind, type Measured, readLinear, writeEstimate } from "./reader.ts";
import { UNITS, type Unit } from "./unit-table.ts";
import type { LitresPerHour } from "./units.ts";

/** A flow in L/h, from volumes per hour, minute, second or day. A bare gallon is asked about. */
export function readFlow(typed: string, habits: Habits): Read<Measured<LitresPerHour>> {
  const gallon = habits.gallon === undefined ? undefined : habits.gallon === "US" ? "US gal/h" : "imp gal/h";
  const flow: LinearKind = {
    kind: "flow",
    grammar: {
      noun: "a flow",
      examples: "“2000 L/h”, “30 L/min” or “500 US gal/h”",
      units: flowUnits(habits),
      hasArithmetic: true,
      min: 0,
      max: 1e9,
    },
    likely: [0.001, 1e6],
    offered: ["L/h", gallon ?? "US gal/h"],
  };
  return readLinear<LitresPerHour>(typed, habits, flow);
}

/** Reads back as the same flow. */
export function formatFlow(estimate: Estimate<LitresPerHour>): string {
  return writeEstimate(estimate, "L/h");
}

/** The table with a bare gallon moved to the gallon of the habit. */
export function flowUnits({ gallon }: Habits): readonly Unit[] {
  const table: readonly Unit[] = UNITS.flow;
  if (gallon === undefined) {
    return table;
  }
  const opening = gallon === "US" ? "US " : "imp ";
  const plain = table.filter(({ asks }) => asks !== undefined);
  return table
    .filter(({ asks }) => asks === undefined)
    .map((unit) => {
      const loose = plain.find(({ id }) => unit.id === opening + id)?.spellings ?? [];
      return { ...unit, spellings: [...unit.spellings, ...loose] };
    });
}
