import { readAmount } from "./amount.ts";
import { quote } from "./clean.ts";
import type { Estimate } from "./estimate.ts";
import { type Grammar, Misread } from "./grammar.ts";
import type { Habits, Read } from "./read.ts";
import { type Measured, readText, sayBack, writeEstimate } from "./reader.ts";
import type { Unit } from "./unit-table.ts";

const PIECE: Unit = {
  id: "",
  factor: 1,
  spellings: [
    "fish",
    "fishes",
    "fry",
    "egg",
    "eggs",
    "larvae",
    "animals",
    "animal",
    "pieces",
    "piece",
    "pcs",
    "times",
  ],
};
const EXAMPLES = "“12” or “20–30”";
const GRAMMAR: Grammar = {
  noun: "a count",
  examples: EXAMPLES,
  units: [PIECE],
  bare: PIECE,
  hasArithmetic: true,
  min: 0,
  max: 1e9,
};

/** How many: whole numbers, whose range is widened to whole numbers too. */
export function readCount(typed: string, habits: Habits): Read<Measured<number>> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: () => true,
    read: (text, mark) => {
      const amount = readAmount(text, GRAMMAR, mark);
      const { best, low, high } = amount.estimate;
      if (low === high && !Number.isInteger(best)) {
        throw new Misread(`${quote(text)} is not a whole number. Try ${EXAMPLES}.`);
      }
      const whole = { best: Math.round(best), low: Math.floor(low), high: Math.ceil(high) };
      return {
        kind: "read",
        value: { estimate: whole, typedUnit: PIECE.id },
        readAs: sayBack({ ...amount, estimate: whole, typed: whole }, PIECE, ""),
      };
    },
  });
}

/** Reads back as the same count. */
export function formatCount(estimate: Estimate<number>): string {
  return writeEstimate(estimate, "");
}
