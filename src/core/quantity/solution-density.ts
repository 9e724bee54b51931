import { readAmount } from "./amount.ts";
import { quote } from "./clean.ts";
import type { Estimate } from "./estimate.ts";
import { type Grammar, Misread } from "./grammar.ts";
import type { Habits, Read } from "./read.ts";
import { readText, sayBack } from "./reader.ts";
import type { Unit } from "./unit-table.ts";
import type { KgPerM3 } from "./units.ts";

/** Canonical: kg/m³. Source: nist-sp-811, B.8 (pound per gallon from its parts). */
const UNITS_OF_DENSITY: readonly Unit[] = [
  { id: "kg/m³", factor: 1, spellings: ["kg/m^3", "kg/m3", "g/l"] },
  { id: "kg/L", factor: 1000, spellings: ["kg/l", "g/ml", "g/cm^3", "g/cm3", "g/cc", "kg per l"] },
  { id: "lb/US gal", factor: 0.45359237 / 3.785411784e-3, spellings: ["lb/us gal", "lb/gal (us)"] },
];
const EXAMPLES = "“1.15 kg/L” or “1150 kg/m³”";
const GRAMMAR: Grammar = {
  noun: "a density",
  examples: EXAMPLES,
  units: UNITS_OF_DENSITY,
  hasArithmetic: false,
  min: 500,
  max: 3000,
  limits: "solutions in water weigh between 0.5 and 3 kg/L",
};

/** What a litre of a solution weighs. */
export function readSolutionDensity(typed: string, habits: Habits): Read<Estimate<KgPerM3>> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isPointDecimal: habits.decimal !== "comma",
    isLikely: ({ low, high }) => low >= GRAMMAR.min && high <= GRAMMAR.max,
    read: (text, mark) => {
      const amount = readAmount(text, GRAMMAR, mark);
      if (amount.unit === undefined) throw new Misread(`${quote(text)} has no unit. Try ${EXAMPLES}.`);
      return {
        kind: "read",
        value: amount.estimate as Estimate<KgPerM3>,
        readAs: sayBack(amount, amount.unit, "kg/m³"),
      };
    },
  });
}
