import { readAmount } from "./amount.ts";
import { clean, quote } from "./clean.ts";
import { type Estimate, exactly } from "./estimate.ts";
import { type Amount, type Grammar, Misread } from "./grammar.ts";
import { type DecimalMark, doubtfulNumbers, settleMarks, writeNumber } from "./number-text.ts";
import type { Choice, Habits, Read } from "./read.ts";
import { showEstimate } from "./show.ts";
import { CANONICAL_UNIT, type Unit, type UnitKind } from "./unit-table.ts";
import type { Quantity } from "./units.ts";

/** A quantity as typed, in the canonical unit of its kind. */
export interface Measured<Q extends number> {
  readonly estimate: Estimate<Q>;
  /** The unit it was typed in; one of the ids of UNITS. */
  readonly typedUnit: string;
  /** Set on "<5" and ">160": the true value lies beyond what the instrument could show. */
  readonly censored?: "below" | "above";
}

/** How to read one kind, from cleaned text to value. `read` may throw Misread. */
export interface Reading<T> {
  readonly examples: string;
  readonly read: (text: string, decimalMark: DecimalMark) => Read<T>;
  /** Whether a value is one a member could mean; settles “1,200” when only one of its two readings is. */
  readonly isLikely: (value: T) => boolean;
  /** Whether a point always starts the decimals here, as it does in 1.026. */
  readonly isPointDecimal?: boolean;
  /** Characters worth reading, where it is more than one quantity. */
  readonly longest?: number;
}

/** Cleans the text, settles or asks about its group marks, and reads it. Never throws. */
export function readText<T>(typed: string, habits: Habits, reading: Reading<T>): Read<T> {
  const cleaned = clean(typed, reading.examples, reading.longest);
  if ("complaint" in cleaned) {
    return { kind: "unreadable", message: cleaned.complaint };
  }
  const { text } = cleaned;
  const preferred = habits.decimal === "comma" ? "," : ".";
  const marks = doubtfulNumbers(text).map(({ doubtfulMark }) => doubtfulMark);
  const isSettled =
    (habits.decimal !== undefined && marks.every((mark) => mark === preferred)) ||
    (reading.isPointDecimal === true && marks.every((mark) => mark === "."));
  if (isSettled || marks.length === 0) {
    return attempt(() => reading.read(text, marks[0] ?? preferred));
  }
  return readBothWays(text, reading);
}

/** Turns a Misread into the sentence it carries; anything else is a defect and passes on. */
export function attempt<T>(read: () => Read<T>): Read<T> {
  try {
    return read();
  } catch (error) {
    if (error instanceof Misread) {
      return { kind: "unreadable", message: error.message };
    }
    throw error;
  }
}

/** A question whose choices are texts; those that would not read are left out. `habitOf` says what taking
 *  a choice tells of the member, from its value and its place among the texts. */
export function ask<T>(
  question: string,
  texts: readonly string[],
  readAgain: (text: string) => Read<T>,
  habitOf: (value: T, index: number) => Habits | undefined = () => undefined,
): Read<T> {
  const choices: Choice[] = [];
  let refusal: Read<T> | undefined;
  for (const [index, text] of texts.entries()) {
    const read = readAgain(text);
    if (read.kind === "read") {
      const remember = habitOf(read.value, index);
      choices.push({ label: read.readAs, text, ...(remember === undefined ? {} : { remember }) });
    } else {
      refusal ??= read;
    }
  }
  return choices.length === 0 && refusal !== undefined ? refusal : { kind: "ask", question, choices };
}

/** The text with every spelling of one unit replaced by another. */
export function respell(text: string, amount: Amount, from: Unit, to: string): string {
  let respelled = "";
  let at = 0;
  for (const { unit, start, end } of amount.unitSpans) {
    if (unit === from && start >= at) {
      const needsSpace = /\d$/.test(text.slice(0, start));
      respelled += `${text.slice(at, start)}${needsSpace ? " " : ""}${to}`;
      at = end;
    }
  }
  return respelled + text.slice(at);
}

export interface LinearKind {
  readonly kind: UnitKind;
  readonly grammar: Grammar;
  /** Canonical values between which a text with a doubtful mark is believed. */
  readonly likely: readonly [number, number];
  /** Units offered when a number stands alone. */
  readonly offered: readonly string[];
  /** Whether a bare number asks for its unit rather than being refused. */
  readonly asksForUnit?: boolean;
}

/** Reads a kind whose units differ by factors alone. */
export function readLinear<Q extends Quantity<string>>(
  typed: string,
  habits: Habits,
  linear: LinearKind,
): Read<Measured<Q>> {
  return readText(typed, habits, {
    examples: linear.grammar.examples,
    isLikely: ({ estimate }) => estimate.low >= linear.likely[0] && estimate.high <= linear.likely[1],
    read: (text, mark) => {
      const amount = readAmount(text, linear.grammar, mark);
      const again = (next: string) => readLinear<Q>(next, habits, linear);
      const { unit } = amount;
      if (unit === undefined) {
        return bareNumber(text, amount, linear, again);
      }
      if (unit.asks !== undefined || amount.unitSpans.some((span) => span.unit.asks !== undefined)) {
        return askWhich(text, amount, again);
      }
      return {
        kind: "read",
        value: {
          estimate: amount.estimate as Estimate<Q>,
          typedUnit: unit.id,
          ...(amount.censored === undefined ? {} : { censored: amount.censored }),
        },
        readAs: sayBack(amount, unit, CANONICAL_UNIT[linear.kind]),
      };
    },
  });
}

/** What a member means by “gal”, once they have said so. */
function gallonHabit(unit: string | undefined): Habits | undefined {
  if (unit?.startsWith("US gal")) return { gallon: "US" };
  return unit?.startsWith("imp gal") ? { gallon: "imperial" } : undefined;
}

/** A spelling that names two units is put to the member. */
export function askWhich<T>(text: string, amount: Amount, again: (text: string) => Read<T>): Read<T> {
  const doubtful = amount.unitSpans.find(({ unit }) => unit.asks !== undefined)?.unit;
  const names = doubtful?.asks ?? [];
  const texts = doubtful === undefined ? [] : names.map((name) => respell(text, amount, doubtful, name));
  return ask(
    `Which do you mean by ${quote(doubtful?.id ?? text)}: ${names.join(" or ")}?`,
    texts,
    again,
    (_, at) => gallonHabit(names[at]),
  );
}

/** “26” has no unit: asked about, or refused with what would work. */
export function bareNumber<T>(
  text: string,
  amount: Amount,
  { grammar, offered, asksForUnit }: Pick<LinearKind, "grammar" | "offered" | "asksForUnit">,
  again: (text: string) => Read<T>,
): Read<T> {
  const texts = offered.map((unit) => `${text} ${unit}`);
  if (amount.estimate.low < grammar.min) {
    throw new Misread(`${quote(text)} goes below zero, and ${grammar.noun} cannot. Try ${grammar.examples}.`);
  }
  if (asksForUnit === true) {
    return ask(`${quote(text)} has no unit. Which do you mean?`, texts, again);
  }
  throw new Misread(`${quote(text)} has no unit. Try ${listOr(texts.map(quote))}.`);
}

/** How an amount was understood: "100 US gal = 379 L", "about 200 L, taken as ± 10 %: 200 L (180–220)". */
export function sayBack(amount: Amount, unit: Unit, canonical: string): string {
  const typed = boundSign(amount) + showTyped(amount, unit.id);
  const figure = amount.censored === undefined ? amount.estimate : exactly(amount.estimate.high);
  const spoken =
    unit.id === canonical ? typed : `${typed} = ${boundSign(amount)}${showEstimate(figure, canonical)}`;
  return amount.about === undefined ? spoken : `about, taken as ${amount.about}: ${spoken}`;
}

/** The figures as typed: an exact one keeps all its figures. */
export function showTyped(
  { typed, censored, isPlain }: Pick<Amount, "typed" | "censored" | "isPlain">,
  unit: string,
): string {
  const suffix = unit === "" ? "" : ` ${unit}`;
  if (censored !== undefined) {
    return `${showNumberFully(typed.high)}${suffix}`;
  }
  if (typed.low !== typed.high) {
    return showEstimate(typed, unit);
  }
  return isPlain ? `${showNumberFully(typed.best)}${suffix}` : showEstimate(typed, unit, { significant: 6 });
}

/** A text that reads back as the very same estimate: "200 L", or "200 L (180–220)". */
export function writeEstimate({ best, low, high }: Estimate, unit: string): string {
  const suffix = unit === "" ? "" : ` ${unit}`;
  const figure = `${writeNumber(best)}${suffix}`;
  return low === high ? figure : `${figure} (${writeNumber(low)} to ${writeNumber(high)})`;
}

/** "a, b or c". */
export function listOr(items: readonly string[]): string {
  const last = items.at(-1) ?? "";
  return items.length < 2 ? last : `${items.slice(0, -1).join(", ")} or ${last}`;
}

export function boundSign({ censored }: Pick<Amount, "censored">): string {
  return censored === "below" ? "below " : censored === "above" ? "above " : "";
}

function readBothWays<T>(text: string, reading: Reading<T>): Read<T> {
  const candidates = ([".", ","] as const).map((mark) => {
    const settled = settleMarks(text, mark);
    return { settled, read: attempt(() => reading.read(settled, ".")) };
  });
  const possible = candidates.filter(({ read }) => read.kind !== "unreadable");
  const likely = possible.filter(
    ({ read }) => read.kind === "ask" || (read.kind === "read" && reading.isLikely(read.value)),
  );
  const kept = likely.length > 0 ? likely : possible;
  const [only, ...others] = kept;
  if (only === undefined) {
    return candidates[0]?.read ?? { kind: "unreadable", message: `I cannot read ${quote(text)}.` };
  }
  if (others.length === 0) {
    return only.read;
  }
  const choices = new Map<string, Choice>();
  for (const { settled, read } of kept) {
    const offered =
      read.kind === "ask"
        ? read.choices
        : [{ label: read.kind === "read" ? read.readAs : "", text: settled }];
    for (const choice of offered) {
      choices.set(choice.label, choices.get(choice.label) ?? choice);
    }
  }
  return {
    kind: "ask",
    question: `Does ${quote(text)} mean ${kept
      .map(({ settled }) => settled)
      .map(quote)
      .join(" or ")}?`,
    choices: [...choices.values()],
  };
}

/** Up to ten figures, so that what was typed is said back as typed, without the dust of the last bit. */
function showNumberFully(value: number): string {
  return String(Number(value.toPrecision(10))).replace("e+", "e");
}
