import { readAmount } from "./amount.ts";
import type { Estimate } from "./estimate.ts";
import type { Grammar } from "./grammar.ts";
import type { Habits, Read } from "./read.ts";
import { type Measured, readText, sayBack, writeEstimate } from "./reader.ts";
import type { Unit } from "./unit-table.ts";

const NUMBER: Unit = { id: "", factor: 1, spellings: [] };
const EXAMPLES = "“12” or “0.5”";
const GRAMMAR: Grammar = {
  noun: "a number",
  examples: EXAMPLES,
  units: [],
  bare: NUMBER,
  hasArithmetic: true,
  min: -1e15,
  max: 1e15,
};

/** A number without a unit. */
export function readPlainNumber(typed: string, habits: Habits): Read<Measured<number>> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: () => true,
    read: (text, mark) => {
      const amount = readAmount(text, GRAMMAR, mark);
      return {
        kind: "read",
        value: { estimate: amount.estimate, typedUnit: NUMBER.id },
        readAs: sayBack(amount, NUMBER, ""),
      };
    },
  });
}

/** Reads back as the same number. */
export function formatPlainNumber(estimate: Estimate<number>): string {
  return writeEstimate(estimate, "");
}
