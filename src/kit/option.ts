import { z } from "zod";
import type { Read } from "../core/quantity/read.ts";
import type { ReadContext } from "./context.ts";
import { cleaned, listed, quoted } from "./text.ts";

/** Longest text an option takes. */
const LONGEST_TEXT = 2000;

/** What a front may do with an option without knowing its subject. */
export type OptionKind = "text" | "choice" | "tank" | "file";

/** Text in, typed value out. Every option is text at heart: what a member types is kept as typed. */
export interface Option<T, Needed extends boolean> {
  readonly kind: OptionKind;
  /** At most 100 characters. */
  readonly description: string;
  readonly isNeeded: Needed;
  /** A closed list, shown as such by a front that can. */
  readonly choices?: readonly string[];
  /** The gate every text passes before it is read. */
  readonly schema: z.ZodType<string, string>;
  /** A text that reads. */
  readonly example: string;
  read(text: string, context: ReadContext): Read<T>;
  /** Whole texts that would complete what has been typed so far. */
  readonly suggest?: ((typed: string, context: ReadContext) => readonly string[]) | undefined;
}

export type AnyOption = Option<unknown, boolean>;

/** What `run` receives: the read values, with those that may be left out possibly undefined. */
export type InputOf<Options> = {
  readonly [K in keyof Options]: Options[K] extends Option<infer T, infer Needed>
    ? Needed extends true
      ? T
      : T | undefined
    : never;
};

const anyText = z
  .string()
  .transform(cleaned)
  .pipe(
    z
      .string()
      .min(1, "nothing was typed")
      .max(LONGEST_TEXT, `longer than ${LONGEST_TEXT} characters; please shorten it`),
  );

/** An option whose text some reader turns into a value. */
export function reading<T>(
  description: string,
  example: string,
  read: (text: string, context: ReadContext) => Read<T>,
  suggest?: (typed: string, context: ReadContext) => readonly string[],
): Option<T, true> {
  return { kind: "text", description, isNeeded: true, schema: anyText, example, read, suggest };
}

/** The same option, but it may be left out. */
export function optional<T>(option: Option<T, true>): Option<T, false> {
  return { ...option, isNeeded: false };
}

/** Free words, kept as typed. */
export function words(description: string, example: string, longest = 200): Option<string, true> {
  return reading(description, example, (text) =>
    [...text].length > longest
      ? {
          kind: "unreadable",
          message: `${quoted(text)} is ${[...text].length} characters long. At most ${longest} fit here.`,
        }
      : { kind: "read", value: text, readAs: text },
  );
}

/** One of a closed list, by its words. */
export function choice<const C extends string>(description: string, choices: readonly C[]): Option<C, true> {
  return {
    kind: "choice",
    description,
    isNeeded: true,
    choices,
    schema: anyText,
    example: choices[0] ?? "",
    read(text) {
      const wanted = text.toLowerCase();
      const hit =
        choices.find((candidate) => candidate.toLowerCase() === wanted) ??
        onlyOne(choices.filter((candidate) => candidate.toLowerCase().startsWith(wanted)));
      return hit === undefined
        ? {
            kind: "unreadable",
            message: `${quoted(text)} is not one of the choices. Try ${listed(choices, "or")}.`,
          }
        : { kind: "read", value: hit, readAs: hit };
    },
    suggest: (typed) => choices.filter((candidate) => candidate.toLowerCase().includes(typed.toLowerCase())),
  };
}

function onlyOne<T>(items: readonly T[]): T | undefined {
  return items.length === 1 ? items[0] : undefined;
}
