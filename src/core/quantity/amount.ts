import { quote } from "./clean.ts";
import { Cursor } from "./cursor.ts";
import { type Amount, type Grammar, Misread } from "./grammar.ts";
import type { DecimalMark, NumberText } from "./number-text.ts";
import { type Factor, mainUnit, NO_UNIT, sidesCm, type Term, total } from "./terms.ts";
import { fromCanonical, type Unit } from "./unit-table.ts";

const ABOUT = ["approximately", "approx", "about", "around", "roughly", "circa", "some", "ca", "~", "≈"];
const BELOW = ["less than", "below", "under", "<=", "≤", "<"];
const ABOVE = ["more than", "above", "over", ">=", "≥", ">"];
const PLUS_MINUS = ["plus or minus", "plus/minus", "+/-", "+-", "±"];
const TIMES = ["×", "*", "x", "by"];
const ABOUT_SHARE = 0.1;

/**
 * Reads a whole cleaned text as one amount: a figure, a sum or a product, with or without a range.
 * Recursive descent, linear in the text but for the trial of each spelling in turn.
 * Throws: Misread, with the sentence to show.
 */
export function readAmount(text: string, grammar: Grammar, decimalMark: DecimalMark): Amount {
  return new AmountParser(text, grammar, decimalMark).parse();
}

class AmountParser {
  readonly #text: string;
  readonly #grammar: Grammar;
  readonly #cursor: Cursor;

  constructor(text: string, grammar: Grammar, decimalMark: DecimalMark) {
    this.#text = text;
    this.#grammar = grammar;
    this.#cursor = new Cursor(text, grammar.units, grammar.lengths ?? [], decimalMark);
  }

  parse(): Amount {
    const cursor = this.#cursor;
    const isAbout = cursor.takeWord(ABOUT);
    if (isAbout) {
      cursor.takeWord(["."]);
    }
    const censored = cursor.takeWord(BELOW) ? "below" : cursor.takeWord(ABOVE) ? "above" : undefined;
    const opensRange = cursor.takeWord(["between", "from"]);
    const left = this.#sum();
    const joint = this.#joint();
    if (opensRange && joint !== "to") {
      throw new Misread(
        `${quote(this.#text)} opens a range without its other end. Try “from 30 to 34”, with the unit.`,
      );
    }
    const amount = this.#ranged(left, joint);
    if (!cursor.isAtEnd()) {
      throw new Misread(this.#leftover());
    }
    const bounded = censored === undefined ? amount : this.#bounded(amount, censored);
    return checked(this.#text, this.#grammar, isAbout ? widened(bounded, this.#grammar) : bounded);
  }

  #joint(): "to" | "±" | "(" | undefined {
    if (this.#cursor.takeWord(PLUS_MINUS)) {
      return "±";
    }
    if (this.#cursor.takeWord(["to", "and", "-", "..."])) {
      return "to";
    }
    return this.#cursor.takeWord(["("]) ? "(" : undefined;
  }

  #ranged(left: readonly Term[], joint: "to" | "±" | "(" | undefined): Amount {
    switch (joint) {
      case "to":
        return this.#range(left);
      case "±":
        return this.#plusMinus(left);
      case "(":
        return this.#bracket(left);
      case undefined: {
        const unit = mainUnit(left) ?? this.#grammar.bare;
        const value = this.#total(left, unit);
        return this.#amount(left, unit, value, value, value);
      }
    }
  }

  #range(left: readonly Term[]): Amount {
    const right = this.#sum();
    this.#refuseLongEnds(left, right);
    const unit = mainUnit(left) ?? mainUnit(right) ?? this.#grammar.bare;
    const a = this.#total(left, unit);
    const b = this.#total(right, mainUnit(right) ?? unit);
    return this.#amount(left, unit, (a + b) / 2, Math.min(a, b), Math.max(a, b));
  }

  #plusMinus(left: readonly Term[]): Amount {
    const { half, unit } = this.#halfWidth(left);
    const best = this.#total(left, unit);
    return this.#amount(left, unit, best, best - half, best + half);
  }

  /** "3.6 kg (3.4-3.9)", as quantities are shown, or "3.6 kg (± 0.2)". */
  #bracket(left: readonly Term[]): Amount {
    if (this.#cursor.takeWord(PLUS_MINUS)) {
      const amount = this.#plusMinus(left);
      this.#expect([")"]);
      return amount;
    }
    const first = this.#sum();
    this.#expect(["to", "-"]);
    const second = this.#sum();
    this.#expect([")"]);
    this.#refuseLongEnds(first, second);
    const unit = mainUnit(left) ?? mainUnit(second) ?? this.#grammar.bare;
    const best = this.#total(left, unit);
    const ends = [
      this.#total(first, mainUnit(first) ?? mainUnit(second) ?? unit),
      this.#total(second, mainUnit(second) ?? unit),
    ];
    const [low, high] = [Math.min(...ends), Math.max(...ends)];
    if (best < low || best > high) {
      throw new Misread(`${quote(this.#text)} has its best value outside its own range.`);
    }
    return this.#amount(left, unit, best, low, high);
  }

  #halfWidth(left: readonly Term[]): { half: number; unit: Unit | undefined } {
    const cursor = this.#cursor;
    const { noun, units, about, bare } = this.#grammar;
    if (left.length > 1) {
      throw new Misread(`${quote(this.#text)} has a ± after a sum. Give the total with its own ±.`);
    }
    const { value } = this.#number();
    if (value < 0) {
      throw new Misread(`${quote(this.#text)} has a ± below zero. Write it as a plain number: “± 2”.`);
    }
    const isPercentOwn = units.some(({ id }) => id === "%");
    if (!isPercentOwn && cursor.takeWord(["%", "percent", "per cent"])) {
      if (about !== undefined) {
        throw new Misread(`A percentage of ${noun} says little. Give the ± in its own unit.`);
      }
      const unit = mainUnit(left) ?? cursor.takeUnit()?.unit ?? bare;
      return { half: (Math.abs(this.#total(left, unit)) * value) / 100, unit };
    }
    const own = cursor.takeUnit();
    const isOfBox = own === undefined && left[0]?.some(({ isLength }) => isLength) === true;
    if (own?.isLength === true || isOfBox) {
      throw new Misread(`After lengths, give the ± in per cent or as ${noun}: “± 2 %”.`);
    }
    const unit = mainUnit(left) ?? own?.unit ?? bare;
    return { half: value * ((own?.unit ?? unit)?.factor ?? 1), unit };
  }

  #sum(): readonly Term[] {
    const terms = [this.#term()];
    while (
      this.#grammar.hasArithmetic &&
      !this.#cursor.hasWord(PLUS_MINUS) &&
      this.#cursor.takeWord(["+", "plus"])
    ) {
      terms.push(this.#term());
    }
    return terms;
  }

  #term(): Term {
    const factors = [this.#factor()];
    while (this.#grammar.hasArithmetic && this.#cursor.takeTimes(TIMES)) {
      factors.push(this.#factor());
    }
    return factors;
  }

  #factor(): Factor {
    const ahead = this.#grammar.isPrefixed === true ? this.#cursor.takeUnit() : undefined;
    const { value, decimals } = this.#number();
    const found = ahead ?? this.#cursor.takeUnit();
    const extra =
      found === undefined || ahead !== undefined ? 0 : this.#smallerParts(found.unit, found.isLength);
    return {
      value,
      decimals,
      unit: found?.unit,
      isLength: found?.isLength ?? false,
      extra: value < 0 ? -extra : extra,
    };
  }

  /** The rest of "4 ft 6 in" or "2 h 30 min", in canonical units: each unit smaller than the one before. */
  #smallerParts(first: Unit, isLength: boolean): number {
    let sum = 0;
    let unit: Unit | undefined = first;
    while (unit !== undefined) {
      const larger: Unit = unit;
      const part = this.#cursor.attempt(() => {
        const number = this.#cursor.takeNumber();
        const smaller = number === undefined ? undefined : this.#cursor.takeUnit();
        const isPart = smaller?.isLength === isLength && smaller.unit.factor < larger.factor;
        return number !== undefined && isPart ? { value: number.value, unit: smaller.unit } : undefined;
      });
      sum += part === undefined ? 0 : part.value * part.unit.factor;
      unit = part?.unit;
    }
    return sum;
  }

  #number(): NumberText {
    const cursor = this.#cursor;
    const { examples } = this.#grammar;
    cursor.skipSpace();
    const start = cursor.at;
    const isNegative = cursor.takeWord(["-"]);
    if (!isNegative) {
      cursor.takeWord(["+"]);
    }
    const number = cursor.takeNumber();
    if (number === undefined) {
      throw new Misread(this.#noNumber(start));
    }
    if (!Number.isFinite(number.value)) {
      const problem = Number.isNaN(number.value)
        ? "is not a number I can read"
        : "is larger than I can work with";
      throw new Misread(`${quote(this.#text.slice(number.start, number.end))} ${problem}. Try ${examples}.`);
    }
    return isNegative ? { ...number, value: -number.value } : number;
  }

  #amount(terms: readonly Term[], unit: Unit | undefined, best: number, low: number, high: number): Amount {
    const shown = unit ?? NO_UNIT;
    const only = terms.length === 1 ? (terms[0] ?? []) : [];
    const [first] = only;
    const isExact = low === high;
    const isBox = isExact && only.length === 3 && only.some(({ isLength }) => isLength);
    const isPlain = isExact && only.length === 1 && first?.extra === 0;
    const asTyped = (value: number) => (isPlain ? (first?.value ?? value) : fromCanonical(value, shown));
    return {
      estimate: { best, low, high },
      unit,
      typed: { best: asTyped(best), low: asTyped(low), high: asTyped(high) },
      decimals: terms[0]?.[0]?.decimals ?? 0,
      isPlain,
      unitSpans: this.#cursor.unitSpans,
      ...(isBox ? { sidesCm: sidesCm(this.#text, this.#grammar, only) } : {}),
    };
  }

  /** "<5" is anything from nothing to 5; of ">160" only the lower end is known. */
  #bounded(amount: Amount, censored: "below" | "above"): Amount {
    const { hasBounds, examples } = this.#grammar;
    const { estimate, typed } = amount;
    if (hasBounds !== true || estimate.low !== estimate.high) {
      throw new Misread(
        `${quote(this.#text)} gives one end only. Give both, like “30 to 34”, with the unit; or try ${examples}.`,
      );
    }
    const isBelowNothing = estimate.high < 0;
    return censored === "above" || isBelowNothing
      ? { ...amount, censored }
      : {
          ...amount,
          estimate: { ...estimate, best: estimate.high / 2, low: 0 },
          typed: { ...typed, best: typed.high / 2, low: 0 },
          censored,
        };
  }

  #total(terms: readonly Term[], fallback: Unit | undefined): number {
    return total(this.#text, this.#grammar, terms, fallback);
  }

  #refuseLongEnds(...ends: readonly (readonly Term[])[]): void {
    if (ends.some((terms) => terms.flat().length > 1)) {
      throw new Misread(
        `${quote(this.#text)} has a range inside a sum or a product. Work it out to one range, like “10 to 12” with the unit.`,
      );
    }
  }

  #expect(words: readonly string[]): void {
    if (!this.#cursor.takeWord(words)) {
      throw new Misread(this.#leftover());
    }
  }

  #noNumber(start: number): string {
    const rest = this.#text.slice(start).trim();
    const { noun, examples } = this.#grammar;
    if (rest === "") {
      return `${quote(this.#text)} stops before its number. Try ${examples}.`;
    }
    return start === 0
      ? `I find no number in ${quote(this.#text)} to start ${noun}. Try ${examples}.`
      : `I expected a number at ${quote(rest)} in ${quote(this.#text)}. Try ${examples}.`;
  }

  #leftover(): string {
    const { at } = this.#cursor;
    const rest = this.#text.slice(at).trim();
    const before = this.#text.slice(0, at).trim();
    const { noun, examples } = this.#grammar;
    if (rest === "") {
      return `${quote(this.#text)} stops too early. Try ${examples}.`;
    }
    if (!this.#grammar.hasArithmetic && (this.#cursor.takeTimes(TIMES) || this.#cursor.takeWord(["+"]))) {
      return `${quote(this.#text)} adds up or multiplies, which ${noun} cannot be. Try ${examples}.`;
    }
    const word = /^[^\s\d+(),;]+/u.exec(rest)?.[0] ?? "";
    const isUnitPlace = /\d$/.test(before) && /[\p{L}\p{S}/%‰°]/u.test(word);
    return isUnitPlace
      ? `${quote(word)} is not a unit of ${noun.replace(/^an? /, "")} I know. Try ${examples}.`
      : `I read ${quote(before)}, but not ${quote(rest)}. Try ${examples}.`;
  }
}

/** “about” as a range, unless one was given; it never reaches below what the kind allows. */
function widened(amount: Amount, { about, min }: Grammar): Amount {
  const { best, low, high } = amount.estimate;
  if (low !== high) {
    return amount;
  }
  const unit = amount.unit ?? NO_UNIT;
  const half = about?.halfWidth(amount.unit) ?? Math.abs(best) * ABOUT_SHARE;
  const lowest = Math.max(best - half, Math.min(min, best));
  return {
    ...amount,
    estimate: { best, low: lowest, high: best + half },
    typed: {
      best: amount.typed.best,
      low: fromCanonical(lowest, unit),
      high: fromCanonical(best + half, unit),
    },
    about: about?.words ?? "± 10 %",
  };
}

/** A bare number is held to its limits only once its unit is known. */
function checked(text: string, grammar: Grammar, amount: Amount): Amount {
  const { min, max, noun, examples, limits, bare } = grammar;
  const { low, high } = amount.estimate;
  if (!Number.isFinite(low) || !Number.isFinite(high)) {
    throw new Misread(`${quote(text)} is larger than I can work with. Try ${examples}.`);
  }
  const isBare = amount.unit === undefined && bare === undefined;
  if (limits !== undefined && !isBare && (low < min || high > max)) {
    throw new Misread(`${quote(text)} is out of reach: ${limits}. Try ${examples}.`);
  }
  if (high > max) {
    throw new Misread(`${quote(text)} is larger than I can work with. Try ${examples}.`);
  }
  if (low < min && !isBare) {
    const problem = min === 0 ? `goes below zero, and ${noun} cannot` : `is lower than ${noun} can be`;
    throw new Misread(`${quote(text)} ${problem}. Try ${examples}.`);
  }
  return amount;
}
