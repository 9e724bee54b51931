import { readAmount } from "./amount.ts";
import { quote } from "./clean.ts";
import type { Estimate } from "./estimate.ts";
import { type Grammar, Misread } from "./grammar.ts";
import { writeNumber } from "./number-text.ts";
import type { Habits, Read } from "./read.ts";
import { ask, type Measured, readText, sayBack, showTyped, writeEstimate } from "./reader.ts";
import type { Unit } from "./unit-table.ts";
import type { Fraction } from "./units.ts";

const PERCENT: Unit = { id: "%", factor: 0.01, spellings: ["%", "percent", "per cent", "pct"] };
const EXAMPLES = "“30 %” or “0.3”";
const GRAMMAR: Grammar = {
  noun: "a share",
  examples: EXAMPLES,
  units: [PERCENT],
  hasArithmetic: false,
  min: 0,
  max: 1,
  limits: "a share runs from 0 to 100 %",
};
/** Before a bare number has been asked about, it may be a percentage. */
const BARE_GRAMMAR: Grammar = { ...GRAMMAR, max: 1e6 };

/** A share of one. A bare number of one or more may be meant in per cent, and is asked about. */
export function readFraction(typed: string, habits: Habits): Read<Measured<Fraction>> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: () => true,
    read: (text, mark) => {
      const loose = readAmount(text, BARE_GRAMMAR, mark);
      if (loose.unit !== undefined) {
        const amount = readAmount(text, GRAMMAR, mark);
        return {
          kind: "read",
          value: { estimate: amount.estimate as Estimate<Fraction>, typedUnit: PERCENT.id },
          readAs: sayBack(amount, PERCENT, "%"),
        };
      }
      const { best, low, high } = loose.estimate;
      if (low < 0) {
        throw new Misread(`${quote(text)} goes below zero, and a share cannot. Try ${EXAMPLES}.`);
      }
      if (high > 1 || low === 1) {
        const texts = [`${text} %`, ...(low === high && high <= 1 ? [`${writeNumber(best * 100)} %`] : [])];
        return ask(`Is ${quote(text)} a percentage?`, texts, (next) => readFraction(next, habits));
      }
      const percent = { best: best * 100, low: low * 100, high: high * 100 };
      const about = loose.about === undefined ? "" : `about, taken as ${loose.about}: `;
      return {
        kind: "read",
        value: { estimate: loose.estimate as Estimate<Fraction>, typedUnit: "" },
        readAs: about + showTyped({ ...loose, typed: percent }, "%"),
      };
    },
  });
}

/** Reads back as the same share. */
export function formatFraction(estimate: Estimate<Fraction>): string {
  return estimate.low === 1 ? "100 %" : writeEstimate(estimate, "");
}
