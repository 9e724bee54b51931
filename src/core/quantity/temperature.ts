import { readAmount } from "./amount.ts";
import { quote } from "./clean.ts";
import type { Estimate } from "./estimate.ts";
import type { Grammar } from "./grammar.ts";
import { Misread } from "./grammar.ts";
import type { Habits, Read } from "./read.ts";
import { type LinearKind, type Measured, readLinear, readText, sayBack, writeEstimate } from "./reader.ts";
import { UNITS } from "./unit-table.ts";
import type { DegreesC, DegreesCApart } from "./units.ts";

const ABSOLUTE_ZERO_C = -273.15;
/** Colder or warmer than this in °C, a bare number was meant in °F. */
const WARMEST_TANK_C = 45;
const EXAMPLES = "“26 °C” or “79 °F”";

const GRAMMAR: Grammar = {
  noun: "a temperature",
  examples: EXAMPLES,
  units: UNITS.temperature,
  hasArithmetic: false,
  min: ABSOLUTE_ZERO_C,
  max: 10_000,
  about: { halfWidth: () => 1, words: "± 1 °C" },
};

/** A temperature in °C. A bare number is refused, since 26 and 79 can be the same water. */
export function readTemperature(typed: string, habits: Habits): Read<Measured<DegreesC>> {
  return readText(typed, habits, {
    examples: EXAMPLES,
    isLikely: ({ estimate }) => estimate.low >= -5 && estimate.high <= 110,
    read: (text, mark) => {
      const amount = readAmount(text, GRAMMAR, mark);
      if (amount.unit === undefined) {
        throw new Misread(`${quote(text)} has no unit. Try ${bareTemperature(amount.estimate.best)}.`);
      }
      return {
        kind: "read",
        value: { estimate: amount.estimate as Estimate<DegreesC>, typedUnit: amount.unit.id },
        readAs: sayBack(amount, amount.unit, "°C"),
      };
    },
  });
}

/** Reads back as the same temperature. */
export function formatTemperature(estimate: Estimate<DegreesC>): string {
  return writeEstimate(estimate, "°C");
}

const DIFFERENCE: LinearKind = {
  kind: "temperature difference",
  grammar: {
    noun: "a temperature difference",
    examples: "“2 °C” or “4 °F”",
    units: UNITS["temperature difference"],
    hasArithmetic: false,
    min: -1000,
    max: 1000,
  },
  likely: [-50, 50],
  offered: ["°C", "°F"],
};

/** How far two temperatures lie apart, in °C; 1 °F is 5/9 °C. */
export function readTemperatureDifference(typed: string, habits: Habits): Read<Measured<DegreesCApart>> {
  return readLinear<DegreesCApart>(typed, habits, DIFFERENCE);
}

/** Reads back as the same difference. */
export function formatTemperatureDifference(estimate: Estimate<DegreesCApart>): string {
  return writeEstimate(estimate, "°C");
}

/** The same water in both scales: “26 °C” or “79 °F”. */
function bareTemperature(value: number): string {
  const isCelsius = value <= WARMEST_TANK_C;
  const celsius = isCelsius ? value : Math.round((value - 32) / 1.8);
  const fahrenheit = isCelsius ? Math.round(value * 1.8 + 32) : value;
  return `“${celsius} °C” or “${fahrenheit} °F”`;
}
