import { readAmount } from "./amount.ts";
import type { Estimate } from "./estimate.ts";
import type { Grammar } from "./grammar.ts";
import type { Habits, Read } from "./read.ts";
import { type Measured, readText, showTyped, writeEstimate } from "./reader.ts";
import type { Unit } from "./unit-table.ts";
import type { PH } from "./units.ts";

const PH_UNIT: Unit = { id: "pH", factor: 1, spellings: ["ph"] };
const EXAMPLES = "“8.1” or “pH 8.1”";
const GRAMMAR: Grammar = {
  noun: "a pH",
  examples: EXAMPLES,
  units: [PH_UNIT],
  bare: PH_UNIT,
  isPrefixed: true,
  hasArithmetic: false,
  min: 0,
  max: 14,
  limits: "pH runs from 0 to 14",
  about: { halfWidth: () => 0.1, words: "± 0.1" },
};

/** A pH, with or without its name. */
export function readPH(typed: string, habits: Habits): Read<Measured<PH>> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: ({ estimate }) => estimate.low >= 2 && estimate.high <= 13,
    read: (text, mark) => {
      const amount = readAmount(text, GRAMMAR, mark);
      const about = amount.about === undefined ? "" : `about, taken as ${amount.about}: `;
      return {
        kind: "read",
        value: { estimate: amount.estimate as Estimate<PH>, typedUnit: PH_UNIT.id },
        readAs: `${about}pH ${showTyped(amount, "")}`,
      };
    },
  });
}

/** Reads back as the same pH. */
export function formatPH(estimate: Estimate<PH>): string {
  return writeEstimate(estimate, "");
}
