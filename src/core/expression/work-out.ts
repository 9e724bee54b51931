import { type Estimate, isExact, mapEstimate, propagate } from "../quantity/estimate.ts";
import { showEstimate } from "../quantity/show.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { isPlain, isSame, spell } from "./dimension.ts";
import { endsAsPoint, evaluate, Stuck, type Worth } from "./evaluate.ts";
import { kindOf, type ResultKind, type ResultUnit } from "./kinds.ts";
import type { Expression, Operand, Sum } from "./sum.ts";

/** A result in one unit. */
export interface InUnit {
  readonly unit: string;
  readonly estimate: Estimate;
}

export interface WorkedOut {
  /** "a volume". */
  readonly noun: string;
  /** In the unit that was typed, or the handiest. */
  readonly result: InUnit;
  /** The same in other units of its kind. */
  readonly others: readonly InUnit[];
}

const MOST_OTHERS = 4;
const HANDY = { min: 0.1, max: 10_000 } as const;

/** What a sum comes to. Range: figures up to 1e100, powers of a unit up to the twelfth. */
export function workOut(sum: Sum, expression: Expression): Answer<WorkedOut> | NoAnswer {
  try {
    return worked(sum, expression);
  } catch (error) {
    if (error instanceof Stuck) return error.because;
    throw error;
  }
}

function worked({ operands, said }: Sum, expression: Expression): Answer<WorkedOut> | NoAnswer {
  const names = operands.map((operand, index) => nameOf(operand, index, operands));
  const inputs = Object.fromEntries(operands.map(({ estimate }, index) => [names[index] ?? "", estimate]));
  const valuesOf = (given: Readonly<Record<string, number>>) =>
    names.map((name) => given[name] ?? Number.NaN);
  const best = evaluate(expression, operands, valuesOf(bestOf(inputs)));
  const isPoint = endsAsPoint(best);
  const kind = kindOf(best.dimension);
  if (kind === undefined) return noAnswer("sum-makes-no-quantity", { units: spell(best.dimension) });
  const { estimates, drivers } = propagate(inputs, (given) => ({
    worth: evaluate(expression, operands, valuesOf(given)).value,
  }));
  const shown = isPoint
    ? asTemperature(estimates.worth, operands)
    : inUnits(estimates.worth, best, kind, operands);
  const [result, ...others] = shown;
  if (result === undefined) return noAnswer("sum-not-understood", {});
  const hasPpm = operands.some(({ unit }) => unit?.id === "ppm" || unit?.id === "ppb");
  const hasAngle = hasCallOf(expression, ["sin", "cos", "tan", "asin", "acos", "atan"]);
  return {
    kind: "answer",
    value: { noun: isPoint ? "a temperature" : kind.noun, result, others: others.slice(0, MOST_OTHERS) },
    method: "Worked out as written, with the units carried along",
    working: [
      `read as: ${said}`,
      "brackets first, then powers, then × and ÷ from left to right, then + and −",
      `it comes to ${isPoint ? "a temperature" : kind.noun}: ${showEstimate(result.estimate, result.unit, { significant: 8 })}`,
    ],
    constants: [],
    sources: operands.some(({ unit }) => unit !== undefined) ? ["nist-sp-811"] : ["definition"],
    assumptions: [
      ...(Object.values(inputs).every(isExact) ? ["every figure is taken as exact"] : []),
      ...(hasAngle ? ["angles are in radians"] : []),
    ],
    cautions: hasPpm ? [caution("ppm-taken-as-mg-per-litre", {}, "note")] : [],
    driver: drivers.worth,
  };
}

function bestOf(inputs: Readonly<Record<string, Estimate>>): Readonly<Record<string, number>> {
  return Object.fromEntries(Object.entries(inputs).map(([name, { best }]) => [name, best]));
}

/** What a figure is called when it widens the range: itself, with its place where it stands twice. */
function nameOf({ said }: Operand, index: number, all: readonly Operand[]): string {
  const isTwice = all.some((other, at) => at !== index && other.said === said);
  // A name of digits alone would be sorted before the others.
  return isTwice ? `${said} (figure ${index + 1})` : said.replace(/^(\d+)$/, "the $1");
}

/** In the scale that was typed first, and in the other. */
function asTemperature(celsius: Estimate, operands: readonly Operand[]): readonly InUnit[] {
  const scales = [
    { unit: "°C", estimate: celsius },
    { unit: "°F", estimate: mapEstimate(celsius, (value) => value * 1.8 + 32) },
  ];
  const typed = operands.find(({ points }) => points === 1)?.unit?.id;
  return typed === "°F" ? scales.reverse() : scales;
}

/** First in the unit that was typed for a quantity of this kind, else in the handiest. */
function inUnits(
  worth: Estimate,
  { dimension }: Worth,
  { units }: ResultKind,
  operands: readonly Operand[],
): readonly InUnit[] {
  const typed = operands.find(
    (operand) => operand.unit !== undefined && isSame(operand.dimension, dimension),
  )?.unit;
  const own: readonly ResultUnit[] =
    typed === undefined ? [] : [{ id: typed.id === "K" ? "°C" : typed.id, size: typed.size }];
  const isHandy = ({ size }: ResultUnit) => {
    const figure = Math.abs(worth.best / size);
    return figure === 0 || (figure >= HANDY.min && figure < HANDY.max);
  };
  const usual = [...units.filter(isHandy), ...units.filter((unit) => !isHandy(unit))];
  const first = own[0] ?? usual[0];
  if (first === undefined) return [];
  if (isPlain(dimension) && Math.abs(worth.best) > 0 && Math.abs(worth.best) < 1) usual.push(PER_CENT);
  const rest = usual.filter((unit) => unit.id !== first.id && isHandy(unit));
  return [first, ...rest].map(({ id, size }) => ({
    unit: id,
    estimate: mapEstimate(worth, (value) => value / size),
  }));
}

/** A share is as often wanted in per cent. */
const PER_CENT: ResultUnit = { id: "%", size: 0.01 };

function hasCallOf(expression: Expression, names: readonly string[]): boolean {
  switch (expression.kind) {
    case "operand":
      return false;
    case "negative":
      return hasCallOf(expression.of, names);
    case "pair":
      return hasCallOf(expression.left, names) || hasCallOf(expression.right, names);
    case "call":
      return names.includes(expression.name) || expression.given.some((each) => hasCallOf(each, names));
  }
}
