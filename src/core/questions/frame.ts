import type { EventKind } from "../log/entry.ts";
import { PARAMETERS, type ParameterId } from "../log/parameters.ts";
import { type FoundEvent, findEventWord } from "./events.ts";
import { type FoundFigure, findFigures } from "./figures.ts";
import { correctedText, plainText } from "./plain-text.ts";
import { puttingRight, writtenOut } from "./words.ts";

/** A tank the member may ask about. */
export interface KnownTank {
  readonly name: string;
  readonly aliases: readonly string[];
}

/** Finds days and times in a text; handed in, since reading them needs a clock. */
export type FindDates = (text: string) => readonly { readonly text: string; readonly index: number }[];

export interface Surroundings {
  readonly tanks: readonly KnownTank[];
  readonly findDates: FindDates;
}

/** A question taken apart, before anyone says what it is after. */
export interface Frame {
  /** Lower case, slips put right, the tank's name and words of courtesy taken out. */
  readonly text: string;
  /** The same with dates and figures taken out as well. */
  readonly bare: string;
  readonly tank?: string;
  readonly parameter?: ParameterId;
  readonly parameters: readonly ParameterId[];
  readonly event?: EventKind;
  readonly about?: string;
  readonly figures: readonly FoundFigure[];
  /** The first day or span of time named. */
  readonly date?: string;
  /** Ends with a question mark. */
  readonly isMarked: boolean;
  /** What stands behind "since", or behind "after" and the like. */
  readonly since?: string;
}

export function frameOf(typed: string, { tanks, findDates }: Surroundings): Frame {
  const plain = writtenOut(correctedText(plainText(typed), puttingRight))
    .replace(/^[/!]+|[?!]+(?= |$)/g, "")
    .trim();
  const { text: untanked, tank } = withoutTank(plain, tanks);
  const text = untanked
    .replace(COURTESY, "")
    .replace(/ +/g, " ")
    .replace(/ ([,.;])/g, "$1")
    .trim();
  const dates = findDates(text).map(({ text: found, index }) => widened(text, found, index));
  const masked = dates.reduce((rest, { text: found, index }) => blanked(rest, index, found.length), text);
  const figures = findFigures(masked);
  const undated = figures.reduce((rest, { start, end }) => blanked(rest, start, end - start), masked);
  const parameters = parametersIn(text, undated);
  const since = sinceIn(text);
  const event = findEventWord(since === undefined ? text : text.replace(since, ""));
  return {
    text,
    bare: undated.replace(/ +/g, " ").trim(),
    ...(tank === undefined ? {} : { tank }),
    ...(parameters[0] === undefined ? {} : { parameter: parameters[0] }),
    parameters,
    ...eventOf(event),
    figures,
    isMarked: /\?\s*$/.test(typed),
    ...(dates[0] === undefined ? {} : { date: dates[0].text }),
    ...(since === undefined ? {} : { since }),
  };
}

const COURTESY =
  /^(?:(?:hi|hey|hello|ok|okay|so|um|please|pls|excuse me|quick question|question|bot)[,:]? )+(?=\S+ \S)|,? ?(?:please|thanks|thank you|thx|cheers)[.]*$|^(?:can|could|would|will) you (?:please )?(?:tell|show|give|work out|calculate|compute)(?: me)?(?: if| whether)? |^(?:do you know|i want to know|id like to know|i would like to know|i need to know|any idea|tell me|remind me|i wonder|wondering) (?:if |whether )?/g;

/** A date phrase with the words that belong to it: "end of january", "last 3 weeks". */
function widened(
  text: string,
  found: string,
  index: number,
): { readonly text: string; readonly index: number } {
  const before =
    /(?:the )?(?:end|start|beginning|middle|early|late|mid)(?:[- ]of)?[- ]$/.exec(
      text.slice(0, index),
    )?.[0] ?? "";
  const at = index - before.length;
  return { text: text.slice(at, index + found.length).replace(/^the /, ""), index: at };
}

function blanked(text: string, at: number, length: number): string {
  return text.slice(0, at) + " ".repeat(length) + text.slice(at + length);
}

/** The tank named, longest name first, taken out with the words around it. */
function withoutTank(
  text: string,
  tanks: readonly KnownTank[],
): { readonly text: string; readonly tank?: string } {
  const names = tanks
    .flatMap((tank) => [tank.name, ...tank.aliases].map((word) => ({ word: plainText(word), tank })))
    .filter(({ word }) => word.length > 1)
    .sort((a, b) => b.word.length - a.word.length);
  for (const { word, tank } of names) {
    const name = word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&").replaceAll(" ", "[ -]?");
    const after = /^(?:on|off|at|in|now|last|help|may|log|water|salt|ph|since)$/.test(word)
      ? "(?<=in (?:the )?)"
      : "";
    const found = new RegExp(
      `(?<![\\p{L}\\d])(?:(?:in|on|for|of|to|from|at|into) )?(?:the |my |our )?${after}${name}s?(?: (?:tank|system|aquarium))?(?![\\p{L}\\d])`,
      "u",
    ).exec(text);
    if (found === null) continue;
    const rest = `${text.slice(0, found.index).trimEnd()} ${text.slice(found.index + found[0].length).trimStart()}`;
    return { text: rest.trim(), tank: tank.name };
  }
  return { text };
}

/** Units that are names of parameters too. */
const UNIT_NAMES = new Set(["t", "ppt", "psu", "do", "ca", "ec", "tan", "dkh", "gravity"]);

function parametersIn(text: string, undated: string): readonly ParameterId[] {
  const hits = SPELLINGS.flatMap(({ pattern, id }) => {
    const match = pattern.exec(undated);
    return match === null ? [] : [{ id, index: match.index, length: match[0].length }];
  });
  const named = hits
    .filter(
      (hit) =>
        !hits.some(
          (o) => o !== hit && o.index <= hit.index && o.length > hit.length && hit.index < o.index + o.length,
        ),
    )
    .sort((a, b) => a.index - b.index)
    .map(({ id }) => id);
  const byUnit: ParameterId[] =
    named.length === 0 && /\d ?(?:mg\/l|ppm) (?:do|of o2)\b/.test(text) ? ["oxygen"] : [];
  return [...new Set([...named, ...byUnit])];
}

const SPELLINGS: readonly { readonly pattern: RegExp; readonly id: ParameterId }[] = PARAMETERS.flatMap(
  ({ id, spellings }) =>
    spellings
      .filter((spelling) => !UNIT_NAMES.has(spelling))
      .map((spelling) => ({ pattern: new RegExp(`(?<![a-z\\d/-])${spelling}(?![a-z\\d/])`), id })),
);

/** "since i added the trigger", "after the water change", "over the last 3 weeks". */
function sinceIn(text: string): string | undefined {
  const match =
    /\b(?:ever )?since (?:the )?(?:last time )?(.+)$/.exec(text) ??
    /\b(?:over|in|during|for|within) (?:the )?((?:last|past) (?:\d+ |few |couple of |couple )?(?:days?|weeks?|months?|years?|hours?))\b/.exec(
      text,
    ) ??
    /\bfrom (.+?) (?:on|onwards?)$/.exec(text) ??
    /\b(?:after|when|once) ((?:i|we) .+)$/.exec(text) ??
    /\bafter (?:the |my |our )?((?:last |new )?(?:water change|wc|algae harvest|harvest|skimmer|dose|trigger|media change).*)$/.exec(
      text,
    );
  const words = match?.[1]?.replace(/^(?:the|my|our) /, "").replace(/[.,;]+$/, "");
  return words === undefined || words === "" ? undefined : words;
}

function eventOf(found: FoundEvent | undefined): Partial<Pick<Frame, "event" | "about">> {
  if (found === undefined) return {};
  return { event: found.event, ...(found.about === undefined ? {} : { about: found.about }) };
}
