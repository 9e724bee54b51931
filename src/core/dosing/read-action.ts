import { quote } from "../quantity/clean.ts";
import type { Read } from "../quantity/read.ts";
import { as, type Hours } from "../quantity/units.ts";
import type { DatedAction, DoseClass, RunningItem } from "./clashes.ts";

/** What is done, without its time: as it stands in a plan or a log. */
type Undated<A> = A extends DatedAction ? Omit<A, "at"> : never;
export type Action = Undated<DatedAction>;

/** First match wins. Source: common-practice, the words keepers use. */
const DOSES: readonly (readonly [DoseClass, RegExp])[] = [
  ["ammonia binder", /\b(?:binder|hydroxymethane\w*|detoxif\w*|dechlorinator|water conditioner)\b/i],
  [
    "carbon",
    /\b(?:alcohol|ethanol|vodka|vinegar|acetic|acetate|sugar|carbon dos\w*|carbon source|(?<!activated |active )carbon)\b/i,
  ],
  [
    "carbonate",
    /\b(?:bi ?carbonate|carbonate|baking soda|washing soda|soda ash|buffer|alkalinity|alk|kh|dkh)\b/i,
  ],
  ["calcium", /\b(?:calcium|lime ?water|kalk\w*|cacl2?)\b/i],
  ["magnesium", /\b(?:magnesium|epsom|mgcl2?|mgso4)\b/i],
];

const ITEMS: readonly (readonly [RunningItem, RegExp])[] = [
  ["skimmer", /\bskimmer\b/i],
  ["main aerator", /\b(?:aerat\w*|air ?(?:pump|stone)s?|bubbler|the air)\b/i],
  [
    "main pump",
    /\b(?:(?:return|main|circulation|tank|filter) pumps?|pumps?|powerheads?|wavemaker|filter)\b/i,
  ],
];
const NOT_THE_MAIN_PUMP = /\b(?:dos(?:ing|er)|top[- ]?off|ato) ?pump\b/i;

/** Ammonia nitrogen from which some counts as present, mg/L: what kits can show. Source: common-practice. */
const SOME_AMMONIA = 0.1;
const EXAMPLES = "“dose alcohol”, “skimmer off”, “test ammonia” or “water change”";

export function doseClassOf(text: string): DoseClass {
  return DOSES.find(([, words]) => words.test(text))?.[0] ?? "other";
}

function itemOf(text: string): RunningItem | undefined {
  return NOT_THE_MAIN_PUMP.test(text) ? undefined : ITEMS.find(([, words]) => words.test(text))?.[0];
}

/** Something a member has in mind, in their own words. What cannot be told is asked about. */
export function readAction(typed: string): Read<Action> {
  const text = typed.trim().toLowerCase().replace(/\s+/g, " ").slice(0, 200);
  const read = (value: Action, readAs: string): Read<Action> => ({ kind: "read", value, readAs });
  if (/\b(?:miss(?:ed)?|forgot(?:ten)?|skip(?:ped)?)\b/.test(text)) {
    const of = doseClassOf(text);
    return read({ kind: "missed dose", of }, `a missed dose${of === "other" ? "" : ` of ${of}`}`);
  }
  if (/\b(?:test|measure|check)\b/.test(text) && /\bammonia|nh[34]|tan\b/.test(text)) {
    const test = /\b(?:free|membrane|electrode)\b/.test(text) ? "free ammonia" : "total ammonia";
    return read({ kind: "ammonia test planned", test }, `a test of ${test}`);
  }
  const item = itemOf(text);
  const off = /\b(?:off|stop\w*|unplug\w*|without|clean\w*|service)\b/.test(text);
  if (item !== undefined && (off || /\b(?:on|start\w*|restart\w*)\b/.test(text))) {
    const state = off ? "off" : "on";
    return read({ kind: "equipment", item, state }, `${item} ${state}`);
  }
  if (/\bwater[- ]?changes?\b|\bwc\b|\bchange\b.*\bwater\b/.test(text))
    return read(
      { kind: "water change", liftsPH: raisesPH(text) },
      raisesPH(text) ? "a water change that raises pH" : "a water change",
    );
  const of = doseClassOf(text);
  if (of !== "other") return read({ kind: "dose", of }, `a dose of ${of}`);
  if (/\b(?:dos\w*)\b/.test(text)) return read({ kind: "dose", of }, "a dose of something else");
  if (
    /\b(?:new|change|switch|swap|replace|add|start|more|less|first|move|remove)\b/.test(text) &&
    text.length > 5
  )
    return read(
      { kind: "change", what: typed.trim().slice(0, 60) },
      `a change: ${typed.trim().slice(0, 60)}`,
    );
  return {
    kind: "ask",
    question: `What kind of thing is ${quote(typed)}? Name it like ${EXAMPLES}.`,
    choices: [
      "dose alcohol",
      "dose ammonia binder",
      "dose calcium",
      "dose carbonate",
      "test ammonia",
      "water change",
      "skimmer off",
    ].map((each) => ({ label: each, text: each })),
  };
}

function raisesPH(text: string): boolean {
  return /\b(?:higher|raise[sd]?|raising|lift\w*|more) (?:the )?ph\b|\bph (?:up|higher)\b|\bhigh[- ]ph\b/.test(
    text,
  );
}

/** A logged event as the clash rules count it, `at` hours from now (below zero: past); undefined when it bears on none. */
export function loggedAction(
  logged:
    | { readonly kind: "event"; readonly event: string; readonly text: string; readonly at: string }
    | { readonly kind: "reading"; readonly parameter: string; readonly best: number; readonly at: string },
  nowMs: number,
): DatedAction | undefined {
  const at = as<Hours>((Date.parse(logged.at) - nowMs) / 3_600_000);
  if (logged.kind === "reading")
    return logged.parameter === "ammonia"
      ? { at, kind: "ammonia reading", isPresent: logged.best >= SOME_AMMONIA }
      : undefined;
  const { event, text } = logged;
  if (event === "dose") return { at, kind: "dose", of: doseClassOf(text) };
  if (event === "water change") return { at, kind: "water change", liftsPH: raisesPH(text.toLowerCase()) };
  if (event === "equipment on" || event === "equipment off") {
    const item = itemOf(text);
    return item === undefined
      ? undefined
      : { at, kind: "equipment", item, state: event === "equipment on" ? "on" : "off" };
  }
  if (event === "media change" || event === "livestock in")
    return { at, kind: "change", what: `${event} ${text}`.trim().slice(0, 60) };
  return undefined;
}
