import { quote } from "./clean.ts";
import { type Grammar, Misread } from "./grammar.ts";
import { toCanonical, type Unit } from "./unit-table.ts";

/** One number of a product, with the unit typed beside it. */
export interface Factor {
  readonly value: number;
  /** Digits typed after the decimal mark. */
  readonly decimals: number;
  readonly unit: Unit | undefined;
  readonly isLength: boolean;
  /** What compounds add, in canonical units: the inches of "4 ft 6 in". */
  readonly extra: number;
}

/** Numbers multiplied; a sum is several of these. */
export type Term = readonly Factor[];

/** Stands in where a number has no unit. */
export const NO_UNIT: Unit = { id: "", factor: 1, spellings: [] };
/** A volume multiplied from lengths is said back in litres. */
const LITRES_OF_BOX: Unit = { id: "L", factor: 1, spellings: [] };
const CM3_PER_L = 1000;

/** The unit typed first, or undefined when none was. */
export function mainUnit(terms: readonly Term[]): Unit | undefined {
  const measured = terms.flat().find(({ unit }) => unit !== undefined);
  return measured?.isLength === true ? LITRES_OF_BOX : measured?.unit;
}

/** The sum in canonical units; `fallback` is the unit of a number that has none of its own. Throws: Misread. */
export function total(
  text: string,
  grammar: Grammar,
  terms: readonly Term[],
  fallback: Unit | undefined,
): number {
  const isSum = terms.length > 1;
  return terms.reduce((sum, term) => sum + product(text, grammar, term, fallback, isSum), 0);
}

/** Three lengths in cm; one with no unit takes the unit that follows it. A count may stand before them. Throws: Misread. */
export function sidesCm(text: string, grammar: Grammar, term: Term): readonly [number, number, number] {
  if (term.some(({ unit, isLength }) => unit !== undefined && !isLength)) {
    throw new Misread(`${quote(text)} multiplies lengths with ${grammar.noun}. Try ${grammar.examples}.`);
  }
  const lengths = term.length === 4 && term[0]?.unit === undefined ? term.slice(1) : term;
  let unit: Unit | undefined;
  const sides: number[] = [];
  for (const side of [...lengths].reverse()) {
    unit = side.unit ?? unit;
    if (unit === undefined) {
      throw new Misread(`In ${quote(text)} the last length has no unit. Try “120x50x55 cm”.`);
    }
    sides.unshift(toCanonical(side.value, unit) + side.extra);
  }
  const [length, width, height] = sides;
  if (length === undefined || width === undefined || height === undefined || sides.length > 3) {
    const lengthsRead = `${sides.length} ${sides.length === 1 ? "length" : "lengths"}`;
    throw new Misread(`${quote(text)} has ${lengthsRead}; ${grammar.noun} takes three. Try “120x50x55 cm”.`);
  }
  if (Math.min(length, width, height) < 0) {
    throw new Misread(`${quote(text)} has a length below zero.`);
  }
  return [length, width, height];
}

function product(
  text: string,
  grammar: Grammar,
  term: Term,
  fallback: Unit | undefined,
  isInSum: boolean,
): number {
  if (term.some(({ isLength }) => isLength)) {
    const [length, width, height] = sidesCm(text, grammar, term);
    const count = term.length === 4 ? (term[0]?.value ?? 1) : 1;
    return (count * length * width * height) / CM3_PER_L;
  }
  const [own, ...others] = term.filter(({ unit }) => unit !== undefined);
  if (others.length > 0) {
    throw new Misread(
      `${quote(text)} multiplies two units, which does not make ${grammar.noun}. Try ${grammar.examples}.`,
    );
  }
  if (own === undefined && isInSum && fallback !== undefined && fallback !== grammar.bare) {
    throw new Misread(`In ${quote(text)} one part has no unit. Give each part of a sum its own.`);
  }
  const count = term.reduce((times, factor) => (factor === own ? times : times * factor.value), 1);
  return own === undefined
    ? toCanonical(count, fallback ?? NO_UNIT)
    : count * (toCanonical(own.value, own.unit ?? NO_UNIT) + own.extra);
}
