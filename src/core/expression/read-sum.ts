import { quote } from "../quantity/clean.ts";
import { type Estimate, exactly } from "../quantity/estimate.ts";
import { Misread } from "../quantity/grammar.ts";
import type { DecimalMark } from "../quantity/number-text.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { ask, readText } from "../quantity/reader.ts";
import { showEstimate, showNumber } from "../quantity/show.ts";
import { isSame, PLAIN } from "./dimension.ts";
import { type OperandUnit, operandUnits } from "./operand-units.ts";
import { Scanner } from "./scanner.ts";
import {
  FUNCTION_NAMES,
  type FunctionName,
  isFunctionName,
  type Operand,
  type Sum,
  takesSeveral,
} from "./sum.ts";
import { separated, strayIn, withoutFractions } from "./sum-text.ts";

export const LONGEST_SUM = 500;
const DEEPEST = 50;
const ABOUT_SHARE = 0.1;
const ABOUT_DEGREES = 1;
const EXAMPLES = "“0.3 * 2300 L” or “180 US gal + 2 x 20 US gal”";

const PER_CENT = ["%", "percent", "per cent"];
const SIGNS: readonly (readonly [sign: string, words: readonly string[]])[] = [
  ["^", ["**", "^"]],
  ["*", ["*", "×", "·", "∙", "⋅", "times", "of", "x"]],
  ["/", ["÷", "/", "per", "divided by"]],
  ["+", ["+", "plus"]],
  ["-", ["-", "minus"]],
];

/**
 * A sum in a member's words, as operands and a formula that holds nothing of the text itself. What has two
 * meanings is asked about: a bare gallon, “1,200”, “log”. Never throws.
 */
export function readSum(typed: string, habits: Habits): Read<Sum> {
  const stray = strayIn(typed);
  if (typed.length <= LONGEST_SUM && stray !== undefined) {
    return {
      kind: "unreadable",
      message: `${quote(stray)} has no place in a sum: it takes figures with units, + − * / ^, brackets ( ) and a few functions. Try ${EXAMPLES}.`,
    };
  }
  const text = separated(typed.replaceAll("π", "pi").replace(/(\d)\s*,\s*$/, "$1"), habits);
  return readText(text, habits, {
    examples: EXAMPLES,
    longest: LONGEST_SUM,
    isLikely: () => true,
    isPointDecimal: habits.decimal !== "comma",
    read: (cleaned, mark) => new SumReader(cleaned, mark, habits).read(),
  });
}

class SumReader {
  readonly #text: string;
  readonly #habits: Habits;
  readonly #scanner: Scanner;
  readonly #formula: string[] = [];
  readonly #said: string[] = [];
  readonly #operands: Operand[] = [];
  /** For each open bracket, where it stands in the formula and the function it belongs to. */
  readonly #open: { readonly at: number; readonly name: FunctionName | undefined }[] = [];
  /** Where the part that was closed last begins, for a unit behind its bracket. */
  #closedAt: number | undefined;
  #signs = 0;
  #isNegative = false;

  constructor(text: string, mark: DecimalMark, habits: Habits) {
    this.#text = text;
    this.#habits = habits;
    this.#scanner = new Scanner(withoutFractions(text), operandUnits(habits), mark);
  }

  read(): Read<Sum> {
    for (let wantsFigure = true; ; ) {
      const scanner = this.#scanner;
      if (scanner.isAtEnd()) return this.#finished(wantsFigure);
      const doubt = wantsFigure ? this.#logarithm() : undefined;
      if (doubt !== undefined) return doubt;
      const step: boolean | Read<Sum> = wantsFigure ? this.#figure() : this.#sign();
      if (typeof step === "object") return step;
      wantsFigure = step;
    }
  }

  /** Takes what may stand where a figure is due; true when one is still due after it. */
  #figure(): boolean | Read<Sum> {
    const scanner = this.#scanner;
    if (scanner.take(["("]) !== undefined) return this.#opened(undefined);
    if (scanner.take(["-", "+"]) !== undefined) return this.#signed(scanner.text[scanner.at - 1] === "-");
    const isAbout =
      scanner.take(["about", "approximately", "approx", "around", "roughly", "~", "≈"]) !== undefined;
    const number = scanner.takeNumber();
    if (number !== undefined) return this.#quantity(number.value, isAbout);
    const name = scanner.name();
    if (name === "pi" && !isAbout) {
      scanner.take(["pi"]);
      return this.#operand({ estimate: exactly(Math.PI), dimension: PLAIN, points: 0, said: "π" });
    }
    if (name !== undefined && isFunctionName(name) && !isAbout && this.#startsCall(name)) {
      scanner.take([name]);
      scanner.take(["("]);
      return this.#opened(name);
    }
    const isPer = this.#formula.at(-1) === "/" && !isAbout;
    const alone = isPer ? scanner.takeUnit() : undefined;
    if (alone !== undefined) return this.#measured(1, alone.unit, false, true);
    throw new Misread(this.#noFigure(name));
  }

  /** Takes what may stand behind a figure; true when a figure is due after it. */
  #sign(): boolean | Read<Sum> {
    const scanner = this.#scanner;
    if (scanner.take([")"]) !== undefined) return this.#closed();
    if (this.#closedAt !== undefined) {
      const begins = this.#closedAt;
      if (scanner.take(PER_CENT) !== undefined)
        return this.#timesUnit(begins, { estimate: exactly(0.01), dimension: PLAIN, points: 0, said: "%" });
      const found = scanner.takeUnit();
      if (found !== undefined) {
        const doubt = this.#gallon(found.unit);
        if (doubt !== undefined) return doubt;
        const { unit } = found;
        if (unit.isPoint === true)
          throw new Misread(
            `${quote(this.#text)} puts ${unit.id} behind a bracket, where it could be a temperature or a difference. Put the unit to each figure.`,
          );
        return this.#timesUnit(begins, unitOperand(1, unit, unit.id));
      }
    }
    if (scanner.take([";"]) !== undefined) return this.#separator();
    for (const [sign, words] of SIGNS) {
      if (scanner.take(words) !== undefined) {
        this.#closedAt = undefined;
        this.#formula.push(sign);
        this.#said.push(` ${SHOWN_SIGNS[sign] ?? sign} `);
        return true;
      }
    }
    throw new Misread(this.#noSign());
  }

  #opened(name: FunctionName | undefined): boolean {
    this.#placeSign();
    this.#open.push({ at: this.#formula.length, name });
    if (this.#open.length > DEEPEST)
      throw new Misread(`The brackets go more than ${DEEPEST} deep. Work it out in two steps.`);
    if (name !== undefined) this.#formula.push(name);
    this.#formula.push("(");
    this.#said.push(`${name ?? ""}(`);
    return true;
  }

  #closed(): boolean {
    const open = this.#open.pop();
    if (open === undefined) throw new Misread(`${quote(this.#text)} closes a bracket that was never opened.`);
    this.#formula.push(")");
    this.#said.push(")");
    this.#closedAt = open.at;
    return false;
  }

  #separator(): boolean {
    const open = this.#open.at(-1);
    if (open?.name === undefined || !takesSeveral(open.name))
      throw new Misread(
        open?.name === undefined
          ? `${quote(this.#text)} has a comma or semicolon outside min( ) and max( ). Write one sum at a time.`
          : `${open.name} takes one figure. Try “${open.name}(2)”.`,
      );
    this.#closedAt = undefined;
    this.#formula.push(",");
    this.#said.push("; ");
    return true;
  }

  #signed(isNegative: boolean): boolean {
    this.#signs += 1;
    if (this.#signs > 3) throw new Misread(`${quote(this.#text)} has too many signs in a row.`);
    this.#isNegative = this.#isNegative !== isNegative;
    return true;
  }

  #placeSign(): void {
    if (this.#isNegative) {
      this.#formula.push("-");
      this.#said.push("−");
    }
    this.#isNegative = false;
    this.#signs = 0;
  }

  #quantity(value: number, isAbout: boolean): boolean | Read<Sum> {
    if (!Number.isFinite(value))
      throw new Misread(
        Number.isNaN(value)
          ? `${quote(this.#text)} has a number I cannot read. Try ${EXAMPLES}.`
          : `${quote(this.#text)} has a figure larger than I can work with.`,
      );
    const scanner = this.#scanner;
    const half = this.#halfWidth(value);
    if (half === undefined && scanner.take(PER_CENT) !== undefined) {
      const about = isAbout ? Math.abs(value) * ABOUT_SHARE : 0;
      return this.#operand({
        estimate: spread(value / 100, about / 100),
        dimension: PLAIN,
        points: 0,
        said: `${showTyped(value, about)} %`,
      });
    }
    const found = scanner.takeUnit();
    if (found !== undefined) return this.#measured(value, found.unit, isAbout, false, half);
    const width = half ?? (isAbout ? Math.abs(value) * ABOUT_SHARE : 0);
    return this.#operand({
      estimate: spread(value, width),
      dimension: PLAIN,
      points: 0,
      said: showTyped(value, width),
    });
  }

  /** "± 10" or "± 5 %" behind a number or its unit; in the unit of the number. */
  #halfWidth(value: number): number | undefined {
    const scanner = this.#scanner;
    if (scanner.take(["±", "+/-", "+-"]) === undefined) return undefined;
    const number = scanner.takeNumber();
    if (number === undefined || !Number.isFinite(number.value))
      throw new Misread(`${quote(this.#text)} has a ± without its number. Try “200 ± 10 L”.`);
    return scanner.take(PER_CENT) === undefined ? number.value : (Math.abs(value) * number.value) / 100;
  }

  #measured(
    value: number,
    unit: OperandUnit,
    isAbout: boolean,
    isAlone: boolean,
    typedWidth?: number,
  ): boolean | Read<Sum> {
    const doubt = this.#gallon(unit);
    if (doubt !== undefined) return doubt;
    const size = unit.factor;
    const { extra, said } = this.#smallerParts(unit);
    const later = typedWidth === undefined ? this.#laterWidth(value, unit) : typedWidth;
    const about = unit.isPoint === true ? ABOUT_DEGREES / size : Math.abs(value) * ABOUT_SHARE;
    const width = later ?? (isAbout ? about : 0);
    // The minus of "−5 °C" belongs to the point on the scale.
    const signed = unit.isPoint === true && this.#isNegative ? -value : value;
    if (unit.isPoint === true) this.#isNegative = false;
    const best = (signed - (unit.zero ?? 0)) * size + extra;
    return this.#operand({
      estimate: spread(best, width * size),
      dimension: unit.dimension,
      points: unit.isPoint === true ? 1 : 0,
      unit: { id: unit.id, size },
      said: isAlone ? unit.id : `${showTyped(signed, width)} ${unit.id}${said}`,
    });
  }

  /** "200 L ± 10 L", "200 L ± 5 %"; in the unit of the figure. */
  #laterWidth(value: number, unit: OperandUnit): number | undefined {
    const scanner = this.#scanner;
    const half = this.#halfWidth(value);
    if (half === undefined) return undefined;
    const own = scanner.takeUnit();
    if (own !== undefined && !isSame(own.unit.dimension, unit.dimension))
      throw new Misread(`${quote(this.#text)} gives a ± in another kind of unit. Try “200 L ± 10 L”.`);
    return own === undefined ? half : (half * own.unit.factor) / unit.factor;
  }

  /** The rest of "2 h 30 min" or "4 ft 6 in", in the measures of the sum. */
  #smallerParts(first: OperandUnit): { readonly extra: number; readonly said: string } {
    const scanner = this.#scanner;
    let extra = 0;
    let said = "";
    let unit = first;
    for (;;) {
      const back = scanner.at;
      const number = scanner.takeNumber();
      const part = number === undefined ? undefined : scanner.takeUnit();
      const isPart =
        part !== undefined &&
        part.unit.isPoint !== true &&
        isSame(part.unit.dimension, unit.dimension) &&
        part.unit.factor < unit.factor;
      if (number === undefined || !isPart) {
        scanner.at = back;
        return { extra, said };
      }
      extra += number.value * part.unit.factor;
      said += ` ${showNumber(number.value, 10)} ${part.unit.id}`;
      unit = part.unit;
    }
  }

  #operand(operand: Operand): boolean {
    this.#placeSign();
    this.#closedAt = undefined;
    this.#formula.push(`q${this.#operands.length}`);
    this.#operands.push(operand);
    this.#said.push(operand.said);
    return false;
  }

  /** A unit or per cent sign behind a bracket multiplies the whole bracket. */
  #timesUnit(begins: number, operand: Operand): boolean {
    this.#formula.splice(begins, 0, "(");
    this.#formula.push("*", `q${this.#operands.length}`, ")");
    this.#operands.push(operand);
    this.#said.push(` ${operand.said}`);
    this.#closedAt = undefined;
    return false;
  }

  #startsCall(name: string): boolean {
    return this.#scanner.rest().slice(name.length).trimStart().startsWith("(");
  }

  /** “log” is the natural logarithm to a chemist's program and the common one on a calculator. */
  #logarithm(): Read<Sum> | undefined {
    if (this.#scanner.name() !== "log" || !this.#startsCall("log")) return undefined;
    return ask(
      "Is “log” the logarithm to the base 10, or the natural one?",
      ["log10", "ln"].map((name) => this.#text.replace(/\blog\b/gi, name)),
      (text) => readSum(text, this.#habits),
    );
  }

  #gallon(unit: OperandUnit): Read<Sum> | undefined {
    const names = unit.asks;
    if (names === undefined) return undefined;
    return ask(
      `Which gallon do you mean: ${["US gal", "imp gal"].join(" or ")}?`,
      ["US", "imp"].map((gallon) =>
        this.#text.replace(
          /(?<!\b(?:us|imp|uk|imperial)\.? )\b(gal(?:s|lons?)?|gp[hmd])\b/gi,
          `${gallon} $1`,
        ),
      ),
      (text) => readSum(text, this.#habits),
      (_, at) => ({ gallon: at === 0 ? "US" : "imperial" }),
    );
  }

  #finished(wantsFigure: boolean): Read<Sum> {
    if (wantsFigure) throw new Misread(`${quote(this.#text)} stops before its next figure. Try ${EXAMPLES}.`);
    if (this.#open.length > 0)
      throw new Misread(
        `${quote(this.#text)} leaves ${this.#open.length === 1 ? "a bracket" : `${this.#open.length} brackets`} open.`,
      );
    const said = this.#said.join("");
    return {
      kind: "read",
      value: { formula: this.#formula.join(" "), operands: this.#operands, said },
      readAs: said,
    };
  }

  #noFigure(name: string | undefined): string {
    const rest = this.#scanner.text.slice(this.#scanner.at).trim();
    if (name !== undefined && isFunctionName(name)) return `${name} needs brackets: “${name}(4)”.`;
    if (name !== undefined)
      return `${quote(name)} is no figure, unit or function I know here. The functions are ${FUNCTION_NAMES.join(", ")}; and pi. Try ${EXAMPLES}.`;
    return `I expected a figure at ${quote(rest)}. Try ${EXAMPLES}.`;
  }

  #noSign(): string {
    const rest = this.#scanner.text.slice(this.#scanner.at).trim();
    const word = /^[\p{L}°%‰'"][^\s\d+*()^]*/u.exec(rest)?.[0];
    return word === undefined
      ? `I expected + − * / or ^ before ${quote(rest)}. Try ${EXAMPLES}.`
      : `${quote(word)} is not a unit I know in a sum${UNLIKELY.test(word) ? ": specific gravity, conductivity and pH do not add up; turn them into ppt with /convert first" : ""}. Try ${EXAMPLES}.`;
  }
}

const UNLIKELY = /^(sg|ms|µs|μs|us|ph)\b/i;
const SHOWN_SIGNS: Readonly<Record<string, string>> = { "*": "×", "-": "−", "/": "÷" };

function unitOperand(value: number, unit: OperandUnit, said: string): Operand {
  return {
    estimate: exactly(value * unit.factor),
    dimension: unit.dimension,
    points: 0,
    unit: { id: unit.id, size: unit.factor },
    said,
  };
}

function spread(best: number, half: number): Estimate {
  return { best, low: best - half, high: best + half };
}

function showTyped(value: number, half: number): string {
  return half === 0
    ? String(Number(value.toPrecision(10))).replace("e+", "e")
    : showEstimate(spread(value, half), "");
}
