import { type DecimalMark, type NumberText, scanNumber } from "./number-text.ts";
import type { Unit } from "./unit-table.ts";

/** A spelling found in the text. */
export interface FoundUnit {
  readonly unit: Unit;
  readonly isLength: boolean;
}

export interface UnitSpan {
  readonly unit: Unit;
  readonly start: number;
  readonly end: number;
}

interface Spelling extends FoundUnit {
  readonly spelling: string;
}

/** A place in a cleaned text, and the ways to move on from it. Nothing here goes back by itself. */
export class Cursor {
  readonly text: string;
  /** In lower case, letter for letter as long as the text. */
  readonly #lower: string;
  readonly #spellings: readonly Spelling[];
  readonly #decimalMark: DecimalMark;
  #at = 0;
  #spans: readonly UnitSpan[] = [];

  constructor(text: string, units: readonly Unit[], lengths: readonly Unit[], decimalMark: DecimalMark) {
    this.text = text;
    this.#lower = text.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
    this.#decimalMark = decimalMark;
    const spell = (table: readonly Unit[], isLength: boolean) =>
      table.flatMap((unit) => unit.spellings.map((spelling) => ({ spelling, unit, isLength })));
    this.#spellings = [...spell(units, false), ...spell(lengths, true)].sort(
      (a, b) => b.spelling.length - a.spelling.length,
    );
  }

  get at(): number {
    return this.#at;
  }

  get unitSpans(): readonly UnitSpan[] {
    return this.#spans;
  }

  /** Tries a reading, and undoes it when it gives nothing. */
  attempt<T>(read: () => T | undefined): T | undefined {
    const at = this.#at;
    const spans = this.#spans;
    const result = read();
    if (result === undefined) {
      this.#at = at;
      this.#spans = spans;
    }
    return result;
  }

  skipSpace(): void {
    while (this.#lower[this.#at] === " ") {
      this.#at += 1;
    }
  }

  isAtEnd(): boolean {
    this.skipSpace();
    return this.#at >= this.text.length;
  }

  /** Takes one of the words if it stands here, whole. */
  takeWord(words: readonly string[]): boolean {
    const end = this.#wordEnd(words);
    this.#at = end ?? this.#at;
    return end !== undefined;
  }

  hasWord(words: readonly string[]): boolean {
    return this.#wordEnd(words) !== undefined;
  }

  /** Takes a sign that multiplies, if a number follows it: the x of "2 x 20". */
  takeTimes(signs: readonly string[]): boolean {
    const end = this.#wordEnd(signs, /^ *[\d.,]/);
    this.#at = end ?? this.#at;
    return end !== undefined;
  }

  takeNumber(): NumberText | undefined {
    this.skipSpace();
    const number = scanNumber(this.#lower, this.#at, this.#decimalMark);
    this.#at = number?.end ?? this.#at;
    return number;
  }

  /** The longest spelling that begins here. */
  takeUnit(): FoundUnit | undefined {
    this.skipSpace();
    const start = this.#at;
    for (const { spelling, unit, isLength } of this.#spellings) {
      const end = this.#spellingEnd(spelling);
      if (end !== undefined) {
        this.#at = end;
        this.#spans = [...this.#spans, { unit, start, end }];
        return { unit, isLength };
      }
    }
    return undefined;
  }

  /** With `before`, only a word followed by that; otherwise one that no letter continues. */
  #wordEnd(words: readonly string[], before?: RegExp): number | undefined {
    let at = this.#at;
    while (this.#lower[at] === " ") {
      at += 1;
    }
    for (const word of words) {
      const end = at + word.length;
      const rest = this.#lower.slice(end);
      const isWhole = before?.test(rest) ?? (!/[a-z]$/.test(word) || !/^\p{L}/u.test(rest));
      if (isWhole && this.#lower.startsWith(word, at)) {
        return end;
      }
    }
    return undefined;
  }

  #spellingEnd(spelling: string): number | undefined {
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
    const rest = this.#lower.slice(at, at + 2);
    const endsInLetter = /[\p{L}\d]$/u.test(spelling);
    // In "50cmx55cm" the x multiplies; any other letter makes it another word.
    if (endsInLetter && !/^x\d/.test(rest) && /^[\p{L}\p{M}/^%‰°$€£]/u.test(rest)) {
      return undefined;
    }
    return /^\.(?!\d)/.test(rest) ? at + 1 : at;
  }
}
