import { quote } from "../quantity/clean.ts";
import type { Estimate } from "../quantity/estimate.ts";
import { readFlow } from "../quantity/flow.ts";
import { readLength } from "../quantity/length.ts";
import { readPlainNumber } from "../quantity/plain-number.ts";
import type { Habits, Read } from "../quantity/read.ts";
import type { LitresPerHour, Metres } from "../quantity/units.ts";
import type { Millimetres } from "./plant-units.ts";

const LONGEST_PART = 400;

/** Carries an outcome out of the depth of one part; caught in `readPart` alone. */
class Unclear extends Error {
  override readonly name = "Unclear";
  readonly read: Read<never>;
  constructor(read: Read<never>) {
    super("reading stops here");
    this.read = read;
  }
}

/**
 * One thing described in a line: a name, then facts parted by commas.
 * "return nozzle: 150 mm below, break 20 mm, inspected". The name ends at a colon, at “=” or before the first figure.
 */
export class DescribedPart {
  readonly text: string;
  readonly name: string;
  readonly habits: Habits;
  readonly #example: string;
  #left: string[];

  constructor(text: string, example: string, habits: Habits) {
    this.text = text;
    this.habits = habits;
    this.#example = example;
    const [, named, rest = ""] =
      /^\s*([^:=,]*?)\s*[:=]\s*(.*)$/s.exec(text) ??
      /^\s*([^\d,]*?)[\s,]*((?:(?<![\p{L}])[-−~≈<>]?\d.*|,.*)?)$/su.exec(text) ??
      [];
    this.name = (named ?? "").trim();
    this.#left = rest
      .split(/,(?!\d)/)
      .map((fact) => fact.trim())
      .filter((fact) => fact !== "");
  }

  /** The first fact that is wholly these words, taken out of what is left. */
  take(words: RegExp): RegExpExecArray | undefined {
    const whole = new RegExp(`^(?:${words.source})$`, "iu");
    for (const [index, fact] of this.#left.entries()) {
      const match = whole.exec(fact);
      if (match !== null) {
        this.#left = this.#left.filter((_, other) => other !== index);
        return match;
      }
    }
    return undefined;
  }

  has(words: RegExp): boolean {
    return this.take(words) !== undefined;
  }

  /** A figure within the part; what is asked about it is put in terms of the whole part. */
  settled<T>(read: Read<T>, piece: string): T {
    if (read.kind === "read") return read.value;
    if (read.kind === "unreadable") return this.refuse(read.message);
    throw new Unclear({
      kind: "ask",
      question: `In ${quote(this.text)}: ${read.question}`,
      choices: read.choices.map((choice) => ({
        ...choice,
        text: this.text.replace(piece, () => choice.text),
      })),
    });
  }

  mm(piece: string): Estimate<Millimetres> {
    return scaled(this.settled(readLength(piece, this.habits), piece).estimate, 10);
  }

  metres(piece: string): Estimate<Metres> {
    return scaled(this.settled(readLength(piece, this.habits), piece).estimate, 0.01);
  }

  flow(piece: string): Estimate<LitresPerHour> {
    return this.settled(readFlow(piece, this.habits), piece).estimate;
  }

  number(piece: string): Estimate {
    return this.settled(readPlainNumber(piece, this.habits), piece).estimate;
  }

  /** What no rule has taken is named, with what would read. */
  finish(): void {
    const [fact] = this.#left;
    if (fact !== undefined) this.refuse(`I cannot read ${quote(fact)}. Try ${this.#example}.`);
  }

  refuse(message: string): never {
    throw new Unclear({ kind: "unreadable", message: `In ${quote(this.text)}: ${message}` });
  }
}

/** Reads one part; never throws for anything typed. */
export function readPart<T>(
  text: string,
  example: string,
  habits: Habits,
  build: (part: DescribedPart) => { readonly value: T; readonly readAs: string },
): Read<T> {
  if (text.length > LONGEST_PART)
    return {
      kind: "unreadable",
      message: `${quote(text)} is too long for one thing. Part several with “;”.`,
    };
  try {
    const part = new DescribedPart(text, example, habits);
    const built = build(part);
    part.finish();
    return { kind: "read", ...built };
  } catch (error) {
    if (error instanceof Unclear) return error.read;
    throw error;
  }
}

const MOST_PARTS = 40;

/** Reads things parted by semicolons or lines, since commas part the facts of one thing. */
export function readParts<T>(
  typed: string,
  example: string,
  readOne: (text: string) => Read<T>,
): Read<readonly T[]> {
  const parts = typed
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  if (parts.length === 0) return { kind: "unreadable", message: `There is nothing in that. Try ${example}.` };
  if (parts.length > MOST_PARTS)
    return {
      kind: "unreadable",
      message: `That list has ${parts.length} entries; at most ${MOST_PARTS} fit.`,
    };
  const values: T[] = [];
  const said: string[] = [];
  for (const [index, part] of parts.entries()) {
    const read = readOne(part);
    if (read.kind === "unreadable") return read;
    if (read.kind === "ask")
      return {
        ...read,
        choices: read.choices.map((choice) => ({
          ...choice,
          text: parts.with(index, choice.text).join("; "),
        })),
      };
    values.push(read.value);
    said.push(read.readAs);
  }
  return { kind: "read", value: values, readAs: said.join("; ") };
}

function scaled<Q extends number>(estimate: Estimate, factor: number): Estimate<Q> {
  const by = (value: number) => Number((value * factor).toPrecision(12)) as Q;
  return { best: by(estimate.best), low: by(estimate.low), high: by(estimate.high) };
}

/** A count in front of what it counts: "3 x elbow", "3 elbows"; one when none stands there. */
export function countOf(text: string | undefined): number {
  return text === undefined ? 1 : Number(text);
}
