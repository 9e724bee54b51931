import { readCount } from "../quantity/count.ts";
import { readFraction } from "../quantity/fraction.ts";
import { readMass } from "../quantity/mass.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { readVolume } from "../quantity/volume.ts";
import type { EventAmount, EventKind } from "./entry.ts";

/** An event found at the start of a piece of text, and how much of the text it takes. */
export interface FoundEvent {
  readonly event: EventKind;
  readonly amount?: EventAmount;
  readonly text: string;
  readonly readAs: string;
  readonly length: number;
}

/** Something within the event has to be asked about; `start` and `end` are where, in the same text. */
export interface EventQuestion {
  readonly question: Extract<Read<never>, { kind: "ask" }>;
  readonly start: number;
  readonly end: number;
}

/** What is switched on and off around a tank. */
export const EQUIPMENT =
  "(?:protein )?skimmer|uv(?: (?:lamp|light|steriliser|sterilizer))?|ozone|ozoniser|ozonizer|heaters?|chiller|(?:return |main |circulation |air )?pumps?|(?:refugium |algae )?lights?|lamps?|reactor|doser|dosing pump|filters?|fans?|wavemaker|ato|top[- ]off|powerhead|air ?stone|aeration";

type Verb = readonly [EventKind | "added", RegExp];

/** How each event begins. The first that matches wins. */
const VERBS: readonly Verb[] = [
  [
    "water change",
    /(?:partial )?water[- ]?change[ds]?\b|wcs?\b|w\/c\b|pwc\b|changed? (?:of )?(?:the )?water\b/iy,
  ],
  ["media change", /media (?:changed?|replaced|renewed|swap(?:ped)?)\b/iy],
  ["feeding", /(?:fed|feed(?:ing|s)?)\b/iy],
  ["dose", /(?:dosed?|dosing)\b/iy],
  ["harvest", /harvest(?:ed|ing)?\b/iy],
  ["death", /(?:found dead|dead|died|deaths?(?: of)?|lost)\b/iy],
  ["livestock out", /(?:removed|sold|gave away|rehomed|moved out)\b/iy],
  ["added", /(?:added|bought|stocked|introduced)\b/iy],
];
/** "changed 30 % of the water", "changed the carbon", "new filter floss". */
const CHANGED = /(?:changed?|replaced|renewed|swapped|new)\b/iy;
const MEDIA =
  /\b(?:media|carbon|resin|floss|socks?|pads?|cartridges?|sponges?|foam|granules|filter material)\b/i;
const WATER = /\bwater\b/i;
/** Where one event's words end and the next thing begins. */
const NEXT_EVENT = RegExp(
  `\\b(?:water[- ]?change[ds]?|wc|fed|dosed|added|removed|dead|died|harvest(?:ed)?|media changed?|note|(?:${EQUIPMENT}) (?:off|on|stopped|started))\\b`,
  "gi",
);
const MOST_WORDS = 6;

/**
 * The event with which `text` begins, or undefined. `text` ends where the segment does; `stops` is where
 * a reading begins in it. Words that are not understood stay with the event as its text.
 */
export function findEvent(
  text: string,
  stops: number,
  habits: Habits,
): FoundEvent | EventQuestion | undefined {
  return findSwitched(text) ?? findAfterCount(text, stops, habits) ?? findVerb(text, stops, habits);
}

/** "skimmer off", "turned on the heater". */
function findSwitched(text: string): FoundEvent | undefined {
  const after = RegExp(
    `^((?:the )?(?:${EQUIPMENT}|[\\p{L}][\\p{L}\\d#-]*(?: [\\p{L}\\d#-]+)?(?: \\d)?)) (?:is |was |back |turned |switched )?(off|on|stopped|started|failed)(?![\\p{L}\\d])`,
    "iu",
  ).exec(text);
  const before = RegExp(
    `^(?:turned|switched) (off|on) ((?:the )?(?:${EQUIPMENT}|[\\p{L}][\\p{L}\\d#-]*))(?![\\p{L}\\d])`,
    "iu",
  ).exec(text);
  const [name, state, whole] =
    before !== null
      ? [before[2], before[1], before[0]]
      : after !== null
        ? [after[1], after[2], after[0]]
        : [];
  if (name === undefined || state === undefined || whole === undefined || isVerb(name)) return undefined;
  const event = /^(?:on|started)$/i.test(state) ? "equipment on" : "equipment off";
  const device = name.replace(/^the /i, "");
  return {
    event,
    text: device,
    readAs: `${device} ${event === "equipment on" ? "on" : "off"}`,
    length: whole.length,
  };
}

/** "30 % water change", "200 L wc", "2 damsels died". */
function findAfterCount(text: string, stops: number, habits: Habits): FoundEvent | EventQuestion | undefined {
  if (!/^\d/.test(text)) return undefined;
  const change = /^(.{1,30}?) ?(?:of )?(?:partial )?(?:water[- ]?change|wc|pwc)\b/i.exec(text);
  if (change !== null && (change[1] ?? "").length < stops) {
    const amount = change[1] ?? "";
    const read = amountOf(amount, habits, ["fraction", "L"]);
    if (read?.kind === "ask") return { question: read, start: 0, end: amount.length };
    if (read?.kind === "read") return event("water change", "", read, change[0].length);
  }
  const died = /^(\d{1,4} [\p{L} '-]{1,40}?) (?:has |have )?(?:died|dead)\b/iu.exec(text);
  if (died === null || died[0].length > stops) return undefined;
  return withCount("death", died[1] ?? "", died[0].length, habits);
}

function findVerb(text: string, stops: number, habits: Habits): FoundEvent | EventQuestion | undefined {
  for (const [kind, pattern] of [...VERBS, ["media change", CHANGED] as const]) {
    pattern.lastIndex = 0;
    const verb = pattern.exec(text)?.[0];
    if (verb === undefined) continue;
    const end = eventEnd(text, verb.length, stops);
    const rest = text.slice(verb.length, end);
    if (pattern === CHANGED && !WATER.test(rest) && !MEDIA.test(rest)) continue;
    const changesWater = kind === "water change" || (pattern === CHANGED && WATER.test(rest));
    if (changesWater)
      return waterChange(withAmount("water change", rest, verb.length, end, habits, ["fraction", "L"]));
    if (kind === "death" || kind === "livestock out") return withCount(kind, rest, end, habits);
    if (kind === "media change") return event(kind, words(rest), undefined, end);
    if (kind === "added") return findAdded(text, rest, verb, end, habits);
    return withAmount(
      kind,
      rest,
      verb.length,
      end,
      habits,
      kind === "feeding" || kind === "harvest" ? ["kg", "L"] : ["L", "kg"],
    );
  }
  return undefined;
}

/** A figure that could not be read must not pass as a word about the change. */
function waterChange(found: FoundEvent | EventQuestion): FoundEvent | EventQuestion | undefined {
  if ("question" in found) return found;
  return /[\d%]/.test(found.text) ? undefined : found;
}

/** "added 1 trigger" is livestock, "added 30 ml bicarbonate" a dose; anything else is kept in words. */
function findAdded(
  text: string,
  rest: string,
  verb: string,
  end: number,
  habits: Habits,
): FoundEvent | EventQuestion {
  const measured = withAmount("dose", rest, verb.length, end, habits, ["L", "kg"]);
  if ("question" in measured) return measured;
  const isBulk = /\b(?:rocks?|sand|gravel|substrate|water|salt)\b/i.test(rest);
  if (measured.amount !== undefined && !isBulk) return measured;
  if (measured.amount === undefined && /^ ?(?:\d|an? |one |two |three |four |five |six )/i.test(rest)) {
    return withCount("livestock in", rest, end, habits);
  }
  return event("note", words(text.slice(0, end)), undefined, end);
}

function withAmount(
  kind: EventKind,
  rest: string,
  offset: number,
  end: number,
  habits: Habits,
  units: readonly EventAmount["unit"][],
): FoundEvent | EventQuestion {
  for (const start of [...rest.matchAll(/(?<![\p{L}\d.,-])(?:[~≈]|about )?\d/giu)].map(
    (found) => found.index,
  )) {
    const pieces = rest.slice(start).trimEnd().split(" ");
    for (let n = Math.min(MOST_WORDS, pieces.length); n > 0; n--) {
      const typed = pieces.slice(0, n).join(" ");
      const read = amountOf(typed, habits, units);
      if (read === undefined) continue;
      if (read.kind === "ask")
        return { question: read, start: offset + start, end: offset + start + typed.length };
      const others = words(`${rest.slice(0, start)} ${rest.slice(start + typed.length)}`);
      return event(kind, kind === "water change" ? others.replace(/^water\b ?/i, "") : others, read, end);
    }
  }
  return event(kind, words(rest), undefined, end);
}

const NUMBER_WORDS = ["one", "two", "three", "four", "five", "six"];

function withCount(kind: EventKind, rest: string, end: number, habits: Habits): FoundEvent {
  const [, count = "", what = ""] =
    /^ ?(?:(\d+|an?|one|two|three|four|five|six) )?(.*)$/i.exec(rest.trim()) ?? [];
  const number = /^an?$/i.test(count) ? 1 : NUMBER_WORDS.indexOf(count.toLowerCase()) + 1 || Number(count);
  const read = count === "" ? undefined : readCount(String(number), habits);
  if (read?.kind !== "read") return event(kind, words(rest), undefined, end);
  const amount = {
    kind: "read" as const,
    value: { estimate: read.value.estimate, unit: "" as const },
    readAs: read.readAs,
  };
  return event(kind, words(what), amount, end);
}

function event(
  kind: EventKind,
  text: string,
  amount: { readonly value: EventAmount; readonly readAs: string } | undefined,
  length: number,
): FoundEvent {
  const plain = amount?.readAs.replace(/^([\d.]+ (?:g|mL)) = [\d.]+ (?:kg|L)$/, "$1");
  const said = [plain, text].filter((part) => part !== undefined && part !== "").join(" ");
  const isUnsized = kind === "water change" && amount === undefined;
  const readAs = `${kind}${said === "" ? "" : `: ${said}`}${isUnsized ? ", how much not said" : ""}`;
  return { event: kind, ...(amount === undefined ? {} : { amount: amount.value }), text, readAs, length };
}

function amountOf(
  typed: string,
  habits: Habits,
  units: readonly EventAmount["unit"][],
): Extract<Read<EventAmount>, { kind: "read" | "ask" }> | undefined {
  for (const unit of units) {
    const read =
      unit === "fraction"
        ? shareOf(typed, habits)
        : unit === "L"
          ? readVolume(typed, habits)
          : readMass(typed, habits);
    if (read === undefined || read.kind === "unreadable") continue;
    // A bare number is no amount of anything yet; only a spelling with two meanings is asked about.
    if (read.kind === "ask" && !/\p{L}/u.test(typed)) {
      if (!units.includes("fraction")) continue;
      return read;
    }
    if (read.kind === "ask") return read;
    return { kind: "read", value: { estimate: read.value.estimate, unit }, readAs: read.readAs };
  }
  return undefined;
}

/** A bare "30" after a water change may be per cent or litres: both are offered. */
function shareOf(typed: string, habits: Habits): Read<{ estimate: EventAmount["estimate"] }> | undefined {
  if (/%|per ?cent/i.test(typed)) return readFraction(typed, habits);
  if (!/^[\d.,]+$/.test(typed)) return undefined;
  return {
    kind: "ask",
    question: `Is “${typed}” a percentage, or litres?`,
    choices: [`${typed} %`, `${typed} L`].map((text) => ({ label: text, text })),
  };
}

/** Where the next event begins, or a reading, or the segment ends; never directly after the verb. */
function eventEnd(text: string, verbEnd: number, stops: number): number {
  for (const next of text.slice(0, stops).matchAll(NEXT_EVENT)) {
    if (next.index > verbEnd && text.slice(verbEnd, next.index).trim() !== "") return next.index;
  }
  return Math.max(verbEnd, stops);
}

function isVerb(name: string): boolean {
  return [...VERBS.map(([, pattern]) => pattern), CHANGED].some((pattern) => {
    pattern.lastIndex = 0;
    return pattern.test(name);
  });
}

function words(text: string): string {
  return text
    .replace(/\s+/g, " ")
    .replace(/^[ ,.:-]+|[ ,:-]+$/g, "")
    .replace(/^(?:of|with|the|in) (?:the )?/i, "")
    .replace(/^water$/i, "");
}
