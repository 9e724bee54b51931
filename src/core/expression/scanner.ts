import { type DecimalMark, type NumberText, scanNumber } from "../quantity/number-text.ts";
import type { OperandUnit } from "./operand-units.ts";

/** A place in the cleaned text of a sum, and the ways to move on from it. */
export class Scanner {
  readonly text: string;
  readonly #lower: string;
  readonly #decimalMark: DecimalMark;
  /** By their first letter, the longest first. */
  readonly #spellings = new Map<string, { readonly spelling: string; readonly unit: OperandUnit }[]>();
  at = 0;

  constructor(text: string, units: readonly OperandUnit[], decimalMark: DecimalMark) {
    this.text = text;
    this.#lower = text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
    this.#decimalMark = decimalMark;
    for (const unit of units) {
      for (const spelling of unit.spellings) {
        const first = spelling.slice(0, 1);
        const beside = this.#spellings.get(first);
        if (beside === undefined) this.#spellings.set(first, [{ spelling, unit }]);
        else beside.push({ spelling, unit });
      }
    }
    for (const group of this.#spellings.values()) group.sort((a, b) => b.spelling.length - a.spelling.length);
  }

  skipSpace(): void {
    while (this.#lower[this.at] === " ") this.at += 1;
  }

  isAtEnd(): boolean {
    this.skipSpace();
    return this.at >= this.text.length;
  }

  /** What is left, in lower case. */
  rest(): string {
    this.skipSpace();
    return this.#lower.slice(this.at);
  }

  /** Takes the first of the words that stands here; one that ends in a letter must end there. */
  take(words: readonly string[]): string | undefined {
    const rest = this.rest();
    const word = words.find(
      (each) => rest.startsWith(each) && !(/[a-z]$/.test(each) && /^[\p{L}_]/u.test(rest.slice(each.length))),
    );
    this.at += word?.length ?? 0;
    return word;
  }

  /** A run of letters and digits that begins with a letter, as a name; nothing is taken. */
  name(): string | undefined {
    return /^[\p{L}_][\p{L}\d_]*/u.exec(this.rest())?.[0];
  }

  takeNumber(): NumberText | undefined {
    this.skipSpace();
    const number = scanNumber(this.#lower, this.at, this.#decimalMark);
    this.at = number?.end ?? this.at;
    return number;
  }

  /** The longest unit spelling that begins here. */
  takeUnit(): { readonly unit: OperandUnit; readonly start: number; readonly end: number } | undefined {
    this.skipSpace();
    const start = this.at;
    for (const { spelling, unit } of this.#spellings.get(this.#lower[start] ?? "") ?? []) {
      const end = this.#spellingEnd(spelling);
      if (end !== undefined) {
        this.at = end;
        return { unit, start, end };
      }
    }
    return undefined;
  }

  #spellingEnd(spelling: string): number | undefined {
    let at = this.at;
    for (const char of spelling) {
      if (char === " ") while (this.#lower[at] === " " || this.#lower[at] === ".") at += 1;
      else if (this.#lower[at] === char) at += 1;
      else return undefined;
    }
    const rest = this.#lower.slice(at, at + 2);
    // In "50cmx55cm" the x multiplies; any other letter makes it another word.
    const isPartOfWord =
      /[\p{L}\d]$/u.test(spelling) && !/^x\d/.test(rest) && /^[\p{L}\p{M}\d_‰°$€£]/u.test(rest);
    return isPartOfWord ? undefined : at;
  }
}
