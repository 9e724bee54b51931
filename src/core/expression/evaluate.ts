import { type NoAnswer, noAnswer } from "../result.ts";
import { combined, type Dimension, isPlain, isSame, PLAIN, spell } from "./dimension.ts";
import { kindOf } from "./kinds.ts";
import {
  type Expression,
  type Operand,
  type Operator,
  PLAIN_FUNCTIONS,
  type PlainFunctionName,
} from "./sum.ts";

/** What a part of a sum comes to, in the measures of dimension.ts. */
export interface Worth {
  readonly value: number;
  readonly dimension: Dimension;
  /** How many points on the scale of temperature went in, net: 1 is a temperature, 0 a difference. */
  readonly points: number;
}

/** Why a sum has no answer. Thrown in this room only, and caught by `workOut`. */
export class Stuck extends Error {
  override readonly name = "Stuck";
  readonly because: NoAnswer;
  constructor(because: NoAnswer) {
    super(because.reason.code);
    this.because = because;
  }
}

/** Far past any figure of an aquarium, and far from where the arithmetic of the machine ends. */
const LARGEST = 1e100;
const POINT_DUST = 1e-9;

/**
 * The worth of a sum, units and all.
 * Source: definition (units multiply with their figures; only like is added to like).
 * Throws: Stuck, with the refusal.
 */
export function evaluate(
  expression: Expression,
  operands: readonly Operand[],
  values: readonly number[],
): Worth {
  const worth = (part: Expression): Worth => bounded(partWorth(part));
  function partWorth(part: Expression): Worth {
    switch (part.kind) {
      case "operand": {
        const operand = operands[part.index];
        const value = values[part.index];
        if (operand === undefined || value === undefined) throw new Stuck(noAnswer("sum-not-understood", {}));
        return { value, dimension: operand.dimension, points: operand.points };
      }
      case "negative": {
        const { value, dimension, points } = worth(part.of);
        return { value: -value, dimension, points: -points };
      }
      case "pair":
        return pairWorth(part.operator, worth(part.left), worth(part.right));
      case "call": {
        const given = part.given.map(worth);
        const [first] = given;
        if (first === undefined) throw new Stuck(noAnswer("sum-not-understood", {}));
        switch (part.name) {
          case "sqrt":
            return root(first);
          case "abs":
            return { ...scaleFree(first), value: Math.abs(first.value) };
          case "min":
          case "max":
            return extreme(part.name, first, given);
          default:
            return plainCall(part.name, first);
        }
      }
    }
  }
  return worth(expression);
}

function pairWorth(operator: Operator, left: Worth, right: Worth): Worth {
  switch (operator) {
    case "+":
    case "-": {
      const sign = operator === "+" ? 1 : -1;
      if (!isSame(left.dimension, right.dimension))
        throw new Stuck(
          noAnswer("sum-mixes-kinds", {
            doing: operator === "+" ? "add" : "take away",
            left: nounOf(left),
            right: nounOf(right),
          }),
        );
      return {
        value: left.value + sign * right.value,
        dimension: left.dimension,
        points: left.points + sign * right.points,
      };
    }
    case "*": {
      if (isPlain(right.dimension)) return scaled(left, right.value);
      if (isPlain(left.dimension)) return scaled(right, left.value);
      return product(scaleFree(left), scaleFree(right), 1);
    }
    case "/": {
      if (right.value === 0) throw new Stuck(noAnswer("sum-divides-by-nothing", {}));
      if (isPlain(right.dimension)) return scaled(left, 1 / right.value, left.value / right.value);
      return product(scaleFree(left), scaleFree(right), -1);
    }
    case "^":
      return power(scaleFree(left), right);
  }
}

function scaled({ value, dimension, points }: Worth, by: number, exact = value * by): Worth {
  // Nothing of a temperature is no difference of temperatures.
  if (by === 0 && points !== 0) throw new Stuck(noAnswer("sum-of-temperatures", {}));
  return { value: exact, dimension, points: points * by };
}

function product(left: Worth, right: Worth, sign: 1 | -1): Worth {
  const value = sign === 1 ? left.value * right.value : left.value / right.value;
  return { value, dimension: sensible(combined(left.dimension, right.dimension, sign)), points: 0 };
}

function power(base: Worth, exponent: Worth): Worth {
  plainNumber(exponent, "An exponent");
  if (base.value === 0 && exponent.value < 0) throw new Stuck(noAnswer("sum-divides-by-nothing", {}));
  const value = base.value ** exponent.value;
  if (Number.isNaN(value))
    throw new Stuck(
      noAnswer("sum-outside-function", { name: "A broken power", takes: "numbers from zero up" }),
    );
  if (isPlain(base.dimension)) return { value, dimension: PLAIN, points: 0 };
  if (!Number.isInteger(exponent.value))
    throw new Stuck(noAnswer("sum-needs-plain-number", { where: "A broken power", found: nounOf(base) }));
  return { value, dimension: sensible(combined(PLAIN, base.dimension, exponent.value)), points: 0 };
}

function root(of: Worth): Worth {
  const { value, dimension } = scaleFree(of);
  const halves: Record<string, number> = {};
  for (const [base, exponent] of Object.entries(dimension)) halves[base] = exponent / 2;
  if (value < 0 || !Object.values(halves).every(Number.isInteger))
    throw new Stuck(noAnswer("sum-has-no-root", { found: value < 0 ? "A figure below zero" : nounOf(of) }));
  return { value: Math.sqrt(value), dimension: halves, points: 0 };
}

function extreme(name: "min" | "max", first: Worth, given: readonly Worth[]): Worth {
  const other = given.find(
    ({ dimension, points }) => !isSame(dimension, first.dimension) || points !== first.points,
  );
  if (other !== undefined)
    throw new Stuck(
      noAnswer("sum-mixes-kinds", { doing: "compare", left: nounOf(first), right: nounOf(other) }),
    );
  return { ...first, value: Math[name](...given.map(({ value }) => value)) };
}

function plainCall(name: PlainFunctionName, given: Worth): Worth {
  plainNumber(given, name);
  const { apply, takes } = PLAIN_FUNCTIONS[name];
  const value = apply(given.value);
  if (Number.isNaN(value) || value === Number.NEGATIVE_INFINITY)
    throw new Stuck(noAnswer("sum-outside-function", { name, takes }));
  return { value, dimension: PLAIN, points: 0 };
}

function plainNumber(worth: Worth, where: string): void {
  if (!isPlain(worth.dimension))
    throw new Stuck(noAnswer("sum-needs-plain-number", { where, found: nounOf(worth) }));
}

/** A difference of temperatures may be multiplied and divided; a point on the scale may not. */
function scaleFree(worth: Worth): Worth {
  if (Math.abs(worth.points) > POINT_DUST) throw new Stuck(noAnswer("sum-of-temperatures", {}));
  return { ...worth, points: 0 };
}

function sensible(dimension: Dimension | undefined): Dimension {
  if (dimension === undefined) throw new Stuck(noAnswer("sum-too-large", {}));
  return dimension;
}

function bounded(worth: Worth): Worth {
  if (!(Math.abs(worth.value) <= LARGEST)) throw new Stuck(noAnswer("sum-too-large", {}));
  return worth;
}

/** "a volume", or the bare combination of units. */
export function nounOf({ dimension, points }: Worth): string {
  if (Math.abs(points - 1) < POINT_DUST) return "a temperature";
  return kindOf(dimension)?.noun ?? `something in ${spell(dimension)}`;
}

/** Whether it ends as a temperature, a difference or no temperature at all. Throws: Stuck otherwise. */
export function endsAsPoint({ points }: Worth): boolean {
  const isPoint = Math.abs(points - 1) < POINT_DUST;
  if (!isPoint && Math.abs(points) > POINT_DUST) throw new Stuck(noAnswer("sum-of-temperatures", {}));
  return isPoint;
}
