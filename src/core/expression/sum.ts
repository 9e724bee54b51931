import type { Estimate } from "../quantity/estimate.ts";
import type { Dimension } from "./dimension.ts";

/** One figure of a sum, in the measures of dimension.ts. */
export interface Operand {
  readonly estimate: Estimate;
  readonly dimension: Dimension;
  /** 1 for a point on the scale of temperature, 0 for everything else, a difference among it. */
  readonly points: 0 | 1;
  /** The unit it was typed in, with its size; absent for a plain number. */
  readonly unit?: { readonly id: string; readonly size: number };
  /** As it was understood: "2300 L". */
  readonly said: string;
}

/** A sum as read: nothing of what was typed is left in the formula but its shape. */
export interface Sum {
  /** Operands by number and our own signs and names only: "q0 * ( q1 + q2 )". */
  readonly formula: string;
  readonly operands: readonly Operand[];
  /** The whole sum as it was understood. */
  readonly said: string;
}

export const OPERATORS = ["+", "-", "*", "/", "^"] as const;
export type Operator = (typeof OPERATORS)[number];

/** A sum taken apart by precedence: plain data. */
export type Expression =
  | { readonly kind: "operand"; readonly index: number }
  | { readonly kind: "negative"; readonly of: Expression }
  | {
      readonly kind: "pair";
      readonly operator: Operator;
      readonly left: Expression;
      readonly right: Expression;
    }
  | { readonly kind: "call"; readonly name: FunctionName; readonly given: readonly Expression[] };

/** What a function does with plain numbers, and what it takes. */
export interface PlainFunction {
  /** Of one number. */
  readonly apply: (value: number) => number;
  /** Said of a number it has no answer for. */
  readonly takes: string;
}

/** Functions of one plain number. Angles in radians. Source: definition. */
export const PLAIN_FUNCTIONS = {
  round: { apply: Math.round, takes: "plain numbers" },
  floor: { apply: Math.floor, takes: "plain numbers" },
  ceil: { apply: Math.ceil, takes: "plain numbers" },
  ln: { apply: Math.log, takes: "numbers above zero" },
  log10: { apply: Math.log10, takes: "numbers above zero" },
  exp: { apply: Math.exp, takes: "numbers below about 700" },
  sin: { apply: Math.sin, takes: "plain numbers" },
  cos: { apply: Math.cos, takes: "plain numbers" },
  tan: { apply: Math.tan, takes: "plain numbers" },
  asin: { apply: Math.asin, takes: "numbers from −1 to 1" },
  acos: { apply: Math.acos, takes: "numbers from −1 to 1" },
  atan: { apply: Math.atan, takes: "plain numbers" },
} as const satisfies Record<string, PlainFunction>;

/** Functions that keep or halve the unit of what they are given. */
export const UNIT_FUNCTIONS = ["sqrt", "abs", "min", "max"] as const;

export type PlainFunctionName = keyof typeof PLAIN_FUNCTIONS;
export type FunctionName = PlainFunctionName | (typeof UNIT_FUNCTIONS)[number];

export const FUNCTION_NAMES: readonly FunctionName[] = [
  ...UNIT_FUNCTIONS,
  ...(Object.keys(PLAIN_FUNCTIONS) as PlainFunctionName[]),
];

export function isFunctionName(name: string): name is FunctionName {
  return (FUNCTION_NAMES as readonly string[]).includes(name);
}

export function isOperator(sign: string): sign is Operator {
  return (OPERATORS as readonly string[]).includes(sign);
}

/** Whether a function takes several figures: the others take one. */
export function takesSeveral(name: FunctionName): boolean {
  return name === "min" || name === "max";
}
