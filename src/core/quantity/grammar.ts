import { quote } from "./clean.ts";
import type { Estimate } from "./estimate.ts";
import { type DecimalMark, type NumberText, scanNumber } from "./number-text.ts";
import { fromCanonical, toCanonical, type Unit } from "./unit-table.ts";

/** What one kind of quantity accepts. */
export interface Grammar {
  /** With its article: "a volume". */
  readonly noun: string;
  /** Texts that read, in quotes: “200 L” or “55 US gal”. */
  readonly examples: string;
  readonly units: readonly Unit[];
  /** Where three lengths multiplied make the quantity, the units of length, of factor 1 per cm. */
  readonly lengths?: readonly Unit[];
  /** The unit meant when none is typed; without it a bare number is handed back with `unit` undefined. */
  readonly bare?: Unit;
  /** Whether a unit may stand before its number: "pH 8.1", "$ 20". */
  readonly isPrefixed?: boolean;
  /** Whether sums and multiples mean anything: not for temperatures. */
  readonly hasArithmetic: boolean;
  /** Whether “<5” and “>160” are readings of this kind. */
  readonly hasBounds?: boolean;
  readonly min: number;
  /** Past this a figure is a slip of the hand, or breaks the sums. */
  readonly max: number;
  /** Said to a figure outside min and max, where there is more to say than that: "pH runs from 0 to 14". */
  readonly limits?: string;
  /** Half the range that “about” stands for, in canonical units, where ± 10 % would be nonsense. */
  readonly about?: { readonly halfWidth: (unit: Unit | undefined) => number; readonly words: string };
}

/** A figure typed with its range, before anyone says what kind it is. */
export interface Amount {
  /** Canonical, or plain numbers when `unit` is undefined. */
  readonly estimate: Estimate;
  readonly unit: Unit | undefined;
  /** In the unit typed first. */
  readonly typed: Estimate;
  /** Decimals typed in the first number. */
  readonly decimals: number;
  /** Typed as one number, so that it can be said back figure by figure. */
  readonly isPlain: boolean;
  readonly unitSpans: readonly UnitSpan[];
  /** What was made of “about”: "± 10 %". */
  readonly about?: string;
  readonly censored?: "below" | "above";
  /** The three lengths a volume was multiplied from, cm. */
  readonly sidesCm?: readonly [number, number, number];
}

export interface UnitSpan {
  readonly unit: Unit;
  readonly start: number;
  readonly end: number;
}

/** Raised inside this file and `readAmount`'s callers only, and caught by `attempt`. */
export class Misread extends Error {
  override readonly name = "Misread";
}

interface Factor {
  readonly value: number;
  readonly decimals: number;
  readonly unit: Unit | undefined;
  readonly isLength: boolean;
  /** What compounds add, in canonical units: the inches of "4 ft 6 in". */
  readonly extra: number;
}

type Term = readonly Factor[];

const ABOUT = ["approximately", "approx", "about", "around", "roughly", "circa", "some", "ca", "~", "≈"];
const BELOW = ["less than", "below", "under", "<=", "≤", "<"];
const ABOVE = ["more than", "above", "over", ">=", "≥", ">"];
const PLUS_MINUS = ["plus or minus", "plus/minus", "+/-", "+-", "±"];
const TIMES = ["×", "*", "x", "by"];

/**
 * Reads a whole cleaned text as one amount. Recursive descent over the characters, linear but for the
 * trial of each spelling in turn.
 * Throws: Misread, with the sentence to show.
 */
export function readAmount(text: string, grammar: Grammar, decimalMark: DecimalMark): Amount {
  return new Parser(text, grammar, decimalMark).parse();
}

class Parser {
  readonly #text: string;
  readonly #lower: string;
  readonly #grammar: Grammar;
  readonly #decimalMark: DecimalMark;
  readonly #unitSpans: UnitSpan[] = [];
  readonly #spellings: readonly {
    readonly spelling: string;
    readonly unit: Unit;
    readonly isLength: boolean;
  }[];
  #at = 0;

  constructor(text: string, grammar: Grammar, decimalMark: DecimalMark) {
    this.#text = text;
    this.#lower = text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
    this.#grammar = grammar;
    this.#decimalMark = decimalMark;
    const spell = (units: readonly Unit[], isLength: boolean) =>
      units.flatMap((unit) => unit.spellings.map((spelling) => ({ spelling, unit, isLength })));
    this.#spellings = [...spell(grammar.units, false), ...spell(grammar.lengths ?? [], true)].sort(
      (a, b) => b.spelling.length - a.spelling.length,
    );
  }

  parse(): Amount {
    const isAbout = this.#word(ABOUT);
    if (isAbout) {
      this.#symbol(".");
    }
    const isBelow = this.#word(BELOW);
    const censored = isBelow ? "below" : this.#word(ABOVE) ? "above" : undefined;
    if (censored !== undefined && this.#grammar.hasBounds !== true) {
      throw new Misread(
        `${quote(this.#text)} gives one end only. Give both, like “30 to 34”, with the unit; or try ${this.#grammar.examples}.`,
      );
    }
    const opensRange = this.#word(["between", "from"]);
    const left = this.#sum();
    const joined = this.#word(["and"]) ? "range" : this.#joint();
    if (opensRange && joined !== "range") {
      throw new Misread(
        `${quote(this.#text)} opens a range without its other end. Try “from 30 to 34”, with the unit.`,
      );
    }
    const amount =
      joined === "range"
        ? this.#range(left)
        : joined === "±"
          ? this.#plusMinus(left)
          : joined === "("
            ? this.#bracket(left)
            : this.#exact(left);
    this.#expectEnd();
    return this.#checked(this.#widened(amount, isAbout, censored));
  }

  #joint(): "range" | "±" | "(" | undefined {
    if (this.#word(PLUS_MINUS)) {
      return "±";
    }
    if (this.#word(["to", "-", "..."])) {
      return "range";
    }
    return this.#symbol("(") ? "(" : undefined;
  }

  #exact(terms: readonly Term[]): Amount {
    const unit = mainUnit(terms) ?? this.#grammar.bare;
    const value = this.#total(terms, unit);
    return this.#amount(terms, unit, value, value, value);
  }

  #range(left: readonly Term[]): Amount {
    const right = this.#sum();
    this.#refuseLongRange(left, right);
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
    if (this.#word(PLUS_MINUS)) {
      const amount = this.#plusMinus(left);
      this.#closeBracket();
      return amount;
    }
    const low = this.#sum();
    if (!this.#word(["to", "-"])) {
      throw new Misread(this.#leftover(this.#at));
    }
    const high = this.#sum();
    this.#closeBracket();
    const unit = mainUnit(left) ?? this.#grammar.bare;
    this.#refuseLongRange(low, high);
    const best = this.#total(left, unit);
    const ends = [
      this.#total(low, mainUnit(low) ?? mainUnit(high) ?? unit),
      this.#total(high, mainUnit(high) ?? unit),
    ];
    const [a, b] = [Math.min(...ends), Math.max(...ends)];
    if (best < a || best > b) {
      throw new Misread(`${quote(this.#text)} has its best value outside its own range.`);
    }
    return this.#amount(left, unit, best, a, b);
  }

  #closeBracket(): void {
    if (!this.#symbol(")")) {
      throw new Misread(this.#leftover(this.#at));
    }
  }

  #refuseLongRange(left: readonly Term[], right: readonly Term[]): void {
    const hasLongSide = [left, right].some((terms) => terms.length > 1 || (terms[0]?.length ?? 0) > 1);
    if (hasLongSide) {
      throw new Misread(
        `${quote(this.#text)} has a range inside a sum or a product. Work it out to one range, like “10 to 12” with the unit.`,
      );
    }
  }

  #halfWidth(left: readonly Term[]): { half: number; unit: Unit | undefined } {
    if (left.length > 1) {
      throw new Misread(`${quote(this.#text)} has a ± after a sum. Give the total with its own ±.`);
    }
    const start = this.#at;
    const number = this.#number();
    this.#space();
    const hasPercentUnit = this.#grammar.units.some(({ id }) => id === "%");
    if (!hasPercentUnit && this.#symbol("%")) {
      const unit = mainUnit(left) ?? this.#unit()?.unit ?? this.#grammar.bare;
      if (this.#grammar.about !== undefined) {
        throw new Misread(`A percentage of ${this.#grammar.noun} says little. Give the ± in its own unit.`);
      }
      return { half: (Math.abs(this.#total(left, unit)) * number.value) / 100, unit };
    }
    const own = this.#unit();
    const isVolumeInLengths = own === undefined && left[0]?.some(({ isLength }) => isLength) === true;
    if (own?.isLength === true || isVolumeInLengths) {
      throw new Misread(`After lengths, give the ± in per cent or as ${this.#grammar.noun}: “± 2 %”.`);
    }
    const unit = mainUnit(left) ?? own?.unit ?? this.#grammar.bare;
    const size = own?.unit ?? unit;
    if (!Number.isFinite(number.value)) {
      throw new Misread(`${quote(this.#text.slice(start))} is not a number I can read.`);
    }
    return { half: number.value * (size?.factor ?? 1), unit };
  }

  #sum(): readonly Term[] {
    const terms = [this.#term()];
    while (this.#grammar.hasArithmetic && !this.#peeks(PLUS_MINUS) && this.#word(["+", "plus"])) {
      terms.push(this.#term());
    }
    return terms;
  }

  #term(): Term {
    const factors = [this.#factor()];
    while (this.#grammar.hasArithmetic && this.#times()) {
      factors.push(this.#factor());
    }
    return factors;
  }

  #factor(): Factor {
    this.#space();
    const ahead = this.#grammar.isPrefixed === true ? this.#unit() : undefined;
    this.#space();
    const number = this.#number();
    const found = ahead ?? this.#unit();
    let unit = found?.unit;
    let extra = 0;
    // 4 ft 6 in, 2 h 30 min, 5 lb 4 oz: each next unit smaller than the one before.
    while (found !== undefined && ahead === undefined && unit !== undefined) {
      const before = this.#at;
      this.#space();
      const next =
        this.#at < this.#lower.length ? scanNumber(this.#lower, this.#at, this.#decimalMark) : undefined;
      if (next === undefined) {
        this.#at = before;
        break;
      }
      this.#at = next.end;
      const smaller = this.#unit();
      if (
        smaller === undefined ||
        smaller.unit.factor >= unit.factor ||
        smaller.isLength !== found.isLength
      ) {
        this.#at = before;
        break;
      }
      extra += next.value * smaller.unit.factor;
      unit = smaller.unit;
    }
    return {
      value: number.value,
      decimals: number.decimals,
      unit: found?.unit,
      isLength: found?.isLength ?? false,
      extra: number.value < 0 ? -extra : extra,
    };
  }

  #number(): NumberText {
    this.#space();
    const start = this.#at;
    const isNegative = this.#symbol("-");
    if (!isNegative) {
      this.#symbol("+");
    }
    this.#space();
    const number = scanNumber(this.#lower, this.#at, this.#decimalMark);
    if (number === undefined) {
      throw new Misread(this.#noNumber(start));
    }
    if (!Number.isFinite(number.value)) {
      const typed = quote(this.#text.slice(number.start, number.end));
      throw new Misread(
        Number.isNaN(number.value)
          ? `${typed} is not a number I can read. Try ${this.#grammar.examples}.`
          : `${typed} is larger than I can work with. Try ${this.#grammar.examples}.`,
      );
    }
    this.#at = number.end;
    return isNegative ? { ...number, value: -number.value } : number;
  }

  /** The longest spelling that begins here. */
  #unit(): { unit: Unit; isLength: boolean } | undefined {
    this.#space();
    const start = this.#at;
    for (const { spelling, unit, isLength } of this.#spellings) {
      const end = this.#matchEnd(spelling);
      if (end !== undefined) {
        this.#at = end;
        this.#unitSpans.push({ unit, start, end });
        return { unit, isLength };
      }
    }
    return undefined;
  }

  #matchEnd(spelling: string): number | undefined {
    let at = this.#at;
    for (const char of spelling) {
      if (char === " ") {
        while (this.#lower[at] === " " || this.#lower[at] === ".") {
          at += 1;
        }
      } else if (this.#lower[at] === char) {
        at += 1;
      } else {
        return undefined;
      }
    }
    const endsInLetter = /[\p{L}\d]$/u.test(spelling);
    if (endsInLetter && this.#isProductSign(at)) {
      return at;
    }
    if (endsInLetter && /^[\p{L}\p{M}/^%‰°$€£]/u.test(this.#lower.slice(at, at + 2))) {
      return undefined;
    }
    return this.#lower[at] === "." && !/\d/.test(this.#lower[at + 1] ?? "") ? at + 1 : at;
  }

  /** "50cmx55cm": an x between a unit and a digit multiplies. */
  #isProductSign(at: number): boolean {
    return this.#lower[at] === "x" && /\d/.test(this.#lower[at + 1] ?? "");
  }

  #times(): boolean {
    const before = this.#at;
    this.#space();
    for (const sign of TIMES) {
      if (this.#lower.startsWith(sign, this.#at)) {
        let at = this.#at + sign.length;
        while (this.#lower[at] === " ") {
          at += 1;
        }
        if (/[\d.,]/.test(this.#lower[at] ?? "")) {
          this.#at = at;
          return true;
        }
      }
    }
    this.#at = before;
    return false;
  }

  /** Total in canonical units, or plain when there is no unit at all. */
  #total(terms: readonly Term[], fallback: Unit | undefined): number {
    let total = 0;
    for (const term of terms) {
      total += this.#product(term, fallback, terms.length > 1);
    }
    return total;
  }

  #product(term: Term, fallback: Unit | undefined, isInSum: boolean): number {
    if (term.some(({ isLength }) => isLength)) {
      return this.#box(term);
    }
    const measured = term.filter(({ unit }) => unit !== undefined);
    if (measured.length > 1) {
      throw new Misread(
        `${quote(this.#text)} multiplies two units, which does not make ${this.#grammar.noun}. Try ${this.#grammar.examples}.`,
      );
    }
    const own = measured[0];
    if (own === undefined && isInSum && fallback !== undefined && fallback !== this.#grammar.bare) {
      throw new Misread(`In ${quote(this.#text)} one part has no unit. Give each part of a sum its own.`);
    }
    if (own !== undefined) {
      const count = term.reduce((product, factor) => (factor === own ? product : product * factor.value), 1);
      return count * (toCanonical(own.value, own.unit ?? NO_UNIT) + own.extra);
    }
    const plain = term.reduce((product, factor) => product * factor.value, 1);
    return toCanonical(plain, fallback ?? NO_UNIT);
  }

  /** Three lengths, or a count and three lengths; a length with no unit takes the one that follows it. */
  #box(term: Term): number {
    const sides = this.#sides(term);
    const count = term.length === 4 ? (term[0]?.value ?? 1) : 1;
    return (count * sides[0] * sides[1] * sides[2]) / 1000;
  }

  #sides(term: Term): readonly [number, number, number] {
    if (term.some(({ unit, isLength }) => unit !== undefined && !isLength)) {
      throw new Misread(
        `${quote(this.#text)} multiplies lengths with a volume. Try ${this.#grammar.examples}.`,
      );
    }
    const lengths = term.length === 4 && term[0]?.unit === undefined ? term.slice(1) : term;
    let unit: Unit | undefined;
    const sidesCm: number[] = [];
    for (const side of [...lengths].reverse()) {
      unit = side.unit ?? unit;
      if (unit === undefined) {
        throw new Misread(`In ${quote(this.#text)} the last length has no unit. Try “120x50x55 cm”.`);
      }
      sidesCm.unshift(toCanonical(side.value, unit) + side.extra);
    }
    const [length, width, height] = sidesCm;
    if (length === undefined || width === undefined || height === undefined || sidesCm.length > 3) {
      throw new Misread(
        `${quote(this.#text)} has ${sidesCm.length} ${sidesCm.length === 1 ? "length" : "lengths"}; ${this.#grammar.noun} takes three. Try “120x50x55 cm”.`,
      );
    }
    if (Math.min(length, width, height) < 0) {
      throw new Misread(`${quote(this.#text)} has a length below zero.`);
    }
    return [length, width, height];
  }

  #amount(terms: readonly Term[], unit: Unit | undefined, best: number, low: number, high: number): Amount {
    const shown = unit ?? NO_UNIT;
    const only = terms.length === 1 ? terms[0] : undefined;
    const isBox = only?.some(({ isLength }) => isLength) === true && only.length === 3;
    const isPlain = terms.length === 1 && only?.length === 1 && only[0]?.extra === 0 && low === high;
    const typedBest = isPlain ? (only[0]?.value ?? best) : fromCanonical(best, shown);
    return {
      estimate: { best, low, high },
      unit,
      typed: isPlain
        ? { best: typedBest, low: typedBest, high: typedBest }
        : { best: typedBest, low: fromCanonical(low, shown), high: fromCanonical(high, shown) },
      decimals: terms[0]?.[0]?.decimals ?? 0,
      isPlain,
      unitSpans: this.#unitSpans,
      ...(isBox && low === high ? { sidesCm: this.#sides(only) } : {}),
    };
  }

  #widened(amount: Amount, isAbout: boolean, censored: "below" | "above" | undefined): Amount {
    const { estimate, typed } = amount;
    if (censored !== undefined) {
      const isBelow = censored === "below";
      const half = isBelow ? 0.5 : 1;
      return {
        ...amount,
        estimate: { best: estimate.high * half, low: isBelow ? 0 : estimate.low, high: estimate.high },
        typed: { best: typed.high * half, low: isBelow ? 0 : typed.low, high: typed.high },
        censored,
      };
    }
    if (!isAbout || estimate.low !== estimate.high) {
      return amount;
    }
    const unit = amount.unit ?? NO_UNIT;
    const half = this.#grammar.about?.halfWidth(amount.unit) ?? Math.abs(estimate.best) * 0.1;
    const floor = Math.max(estimate.best - half, Math.min(this.#grammar.min, estimate.best));
    return {
      ...amount,
      estimate: { best: estimate.best, low: floor, high: estimate.best + half },
      typed: {
        best: typed.best,
        low: fromCanonical(floor, unit),
        high: fromCanonical(estimate.best + half, unit),
      },
      about: this.#grammar.about?.words ?? "± 10 %",
    };
  }

  #checked(amount: Amount): Amount {
    const { low, high } = amount.estimate;
    const { min, max, noun, examples, limits } = this.#grammar;
    const isOutside = low < min || high > max;
    if (
      isOutside &&
      limits !== undefined &&
      (amount.unit !== undefined || this.#grammar.bare !== undefined)
    ) {
      throw new Misread(`${quote(this.#text)} is out of reach: ${limits}. Try ${examples}.`);
    }
    if (!Number.isFinite(low) || !Number.isFinite(high) || high > max) {
      throw new Misread(`${quote(this.#text)} is larger than I can work with. Try ${examples}.`);
    }
    if (low < min && amount.unit === undefined && this.#grammar.bare === undefined) {
      return amount;
    }
    if (low < min) {
      throw new Misread(
        min === 0
          ? `${quote(this.#text)} goes below zero, and ${noun} cannot. Try ${examples}.`
          : `${quote(this.#text)} is lower than ${noun} can be. Try ${examples}.`,
      );
    }
    return amount;
  }

  #noNumber(start: number): string {
    const rest = this.#text.slice(start).trim();
    const { noun, examples } = this.#grammar;
    if (rest === "") {
      return start === 0 || this.#text.trim() === ""
        ? `There is nothing to read. Try ${examples}.`
        : `${quote(this.#text)} stops before its number. Try ${examples}.`;
    }
    return start === 0
      ? `I find no number in ${quote(this.#text)} to start ${noun}. Try ${examples}.`
      : `I expected a number at ${quote(rest)} in ${quote(this.#text)}. Try ${examples}.`;
  }

  #expectEnd(): void {
    this.#space();
    if (this.#at < this.#text.length) {
      throw new Misread(this.#leftover(this.#at));
    }
  }

  #leftover(at: number): string {
    const rest = this.#text.slice(at).trim();
    const before = this.#text.slice(0, at).trim();
    const { noun, examples } = this.#grammar;
    if (rest === "") {
      return `${quote(this.#text)} stops too early. Try ${examples}.`;
    }
    const word = /^[^\s\d+(),;]{1,60}/u.exec(rest)?.[0] ?? rest;
    const followsNumber = /\d$/.test(before);
    return followsNumber && /[\p{L}\p{S}\p{So}/%‰°]/u.test(word)
      ? `${quote(word)} is not a unit of ${bare(noun)} I know. Try ${examples}.`
      : `I read ${quote(before)}, but not ${quote(rest)}. Try ${examples}.`;
  }

  /** Takes one of the words if it stands here, whole. */
  #word(words: readonly string[]): boolean {
    const end = this.#wordEnd(words);
    if (end === undefined) {
      return false;
    }
    this.#at = end;
    return true;
  }

  #peeks(words: readonly string[]): boolean {
    return this.#wordEnd(words) !== undefined;
  }

  #wordEnd(words: readonly string[]): number | undefined {
    let at = this.#at;
    while (this.#lower[at] === " ") {
      at += 1;
    }
    for (const word of words) {
      const end = at + word.length;
      const isWhole = !/[a-z]$/.test(word) || !/\p{L}/u.test(this.#lower[end] ?? "");
      if (this.#lower.startsWith(word, at) && isWhole) {
        return end;
      }
    }
    return undefined;
  }

  #symbol(symbol: string): boolean {
    const before = this.#at;
    this.#space();
    if (this.#lower[this.#at] === symbol) {
      this.#at += 1;
      return true;
    }
    this.#at = before;
    return false;
  }

  #space(): void {
    while (this.#lower[this.#at] === " ") {
      this.#at += 1;
    }
  }
}

/** Stands in where a number has no unit. */
const NO_UNIT: Unit = { id: "", factor: 1, spellings: [] };

function mainUnit(terms: readonly Term[]): Unit | undefined {
  for (const term of terms) {
    for (const { unit, isLength } of term) {
      if (unit !== undefined) {
        return isLength ? LITRES_OF_BOX : unit;
      }
    }
  }
  return undefined;
}

/** A volume multiplied from lengths is said back in litres. */
const LITRES_OF_BOX: Unit = { id: "L", factor: 1, spellings: [] };

function bare(noun: string): string {
  return noun.replace(/^an? /, "");
}
