import { PARAMETERS, type Parameter, type ParameterId, parameter } from "../log/parameters.ts";
import { readFigure } from "../log/read-figure.ts";
import { between, type Estimate } from "../quantity/estimate.ts";
import type { Habits } from "../quantity/read.ts";
import type { DoubtfulFigure, HelpReading } from "./facts.ts";

/** Names that are ordinary words or letters when they stand in a sentence. */
const TOO_COMMON: ReadonlySet<string> = new Set([
  "t",
  "do",
  "ca",
  "mg",
  "gravity",
  "ec",
  "ppt",
  "psu",
  "hardness",
  "sal",
]);
/** Names as newcomers write them, beside those of the log. */
const ALSO: Readonly<Record<string, ParameterId>> = {
  amonia: "ammonia",
  ammonium: "ammonia",
  nitrites: "nitrite",
  nitrates: "nitrate",
  salinty: "salinity",
  alkalinty: "alkalinity",
};
const NAMES: ReadonlyMap<string, Parameter> = new Map([
  ...PARAMETERS.flatMap((each) =>
    each.spellings.filter((name) => !TOO_COMMON.has(name)).map((name) => [name, each] as const),
  ),
  ...Object.entries(ALSO).map(([name, id]) => [name, parameter(id)] as const),
]);
const NAME = [...NAMES.keys()]
  .sort((a, b) => b.length - a.length)
  .map((name) => name.replace(/[/]/g, "\\/"))
  .join("|");
const NUMBER = "[<>~≈]?\\s?-?(?:\\d+(?:[.,]\\d+)?|[.,]\\d+)(?:\\s?(?:-|–|to)\\s?\\d+(?:[.,]\\d+)?)?";
const UNIT =
  "(?:\\s(?:sg\\s)?\\d{2}/\\d{2}(?:\\s?°\\s?[cf])?(?!\\d))?(?:\\s?(?:mg\\s?/\\s?l|ppm|ppt|psu|‰|dkh(?!\\s*[:=]?\\s*\\d)|°\\s?d?[kg]?h|dgh|meq\\s?/\\s?l|mv|ms\\s?/\\s?cm|µs\\s?/\\s?cm|us\\s?/\\s?cm|sg(?!\\s*[:=]?\\s*\\d)|°\\s?[cf]|deg(?:rees?)?\\s?[cf]?|celsius|fahrenheit|[cf])(?![\\p{L}\\d]))?(?:\\s?as\\s(?:tan|nh[34](?:-n)?|no[23](?:-n)?|po4(?:-p)?|caco3|n|p)(?![\\p{L}\\d]))?";
const FILLER =
  "(?:\\s*[:=]\\s*|\\s+(?:is|was|are|were|at|of|reads?|reading|level|levels|showing|shows|about|around|approx|over|under|still|now|test(?:ed|s)?(?: at)?|like|says|up to|near)){0,3}\\s*";
const NONE = "(?:zero|none|nil|nothing|undetectable|not detected|n/?d)";
const NAME_FIRST = new RegExp(
  `(?<![\\p{L}\\d])(${NAME})(-n|-p)?(?![\\p{L}\\d])${FILLER}(?:(between\\s+${NUMBER}\\s+(?:and|to)\\s+${NUMBER}${UNIT}|${NUMBER}${UNIT})|(${NONE})(?![\\p{L}]))`,
  "giu",
);
const GLUED = /(?<![\p{L}\d])(ph|kh|gh|sg|no2|no3|nh3|nh4|po4)(\d+(?:[.,]\d+)?)(?![\p{L}\d]|[.,]\d)/giu;
const FIGURE_FIRST = new RegExp(
  `(?<![\\p{L}\\d.,])(?:(${NUMBER}\\s?(?:mg\\s?/\\s?l|ppm|dkh|ppt)?)|(zero|no))\\s+(?:of\\s+|for\\s+)?(${NAME})(?![\\p{L}\\d])(?!${FILLER}[<>~]?\\s?\\d)`,
  "giu",
);
const FIGURE_THEN_NAME = `(?:${NUMBER}(?:\\s?(?:mg\\s?\\/\\s?l|ppm|dkh|ppt))?|zero|no)\\s+(?:of\\s+|for\\s+)?(?:${NAME})(?![\\p{L}\\d])`;
/** "0 ammonia 0 nitrite 5 nitrate": two or more in a row, each figure before its name. */
const RUN = new RegExp(
  `(?<![\\p{L}\\d.,])${FIGURE_THEN_NAME}(?:(?:\\s*[,;/&]\\s*|\\s+)(?:and\\s+)?${FIGURE_THEN_NAME})+`,
  "giu",
);
const ONE_OF_RUN = new RegExp(
  `(?<![\\p{L}\\d.,])(?:(${NUMBER}(?:\\s?(?:mg\\s?\\/\\s?l|ppm|dkh|ppt))?)|(zero|no))\\s+(?:of\\s+|for\\s+)?(${NAME})(?![\\p{L}\\d])`,
  "giu",
);
const ENDS_WITH_NAME = new RegExp(`(?<![\\p{L}\\d])(?:${NAME})(?:-n|-p)?${FILLER}$`, "iu");
const BARE_TEMPERATURE =
  /(?<![\p{L}\d.,])(-?\d{1,3}(?:[.,]\d+)?)\s?(°\s?[cf]|degrees?\s?(?:celsius|fahrenheit|[cf])|deg\s?[cf]|celsius|fahrenheit|[cf])(?![\p{L}\d])/giu;
/** In capitals it is no verb. */
const DISSOLVED_OXYGEN = /(?<![\p{L}\d])DO\s?[:=]?\s?(\d+(?:[.,]\d+)?(?:\s?mg\s?\/\s?[lL])?)/gu;
const BARE_GRAVITY = /(?<![\d.,])1[.,]0[0-4]\d{0,2}(?!\d)/g;
/** Where two readings of one figure lie further apart than this, neither is used. Source: assumption. */
const TOO_FAR_APART = 3;

export interface ReadReadings {
  readonly readings: readonly HelpReading[];
  readonly doubtful: readonly DoubtfulFigure[];
}

/**
 * Every test result in a text written in no order at all: "ammonia is like 2, ph8.2 and temp 26".
 * Nothing is asked here: a figure with several meanings covers them all and is marked unclear.
 */
export function readReadings(text: string, habits: Habits): ReadReadings {
  const readings: (HelpReading & { readonly at: number })[] = [];
  const doubtful: DoubtfulFigure[] = [];
  const taken: [number, number][] = [];
  const isFree = (start: number, end: number): boolean => taken.every(([a, b]) => end <= a || start >= b);

  function take(subject: Parameter, word: string, figure: string, at: number, length: number): void {
    if (!isFree(at, at + length)) return;
    const typed = text.slice(at, at + length).trim();
    const read = meaningOf(subject, word, figure, habits);
    if (read.kind === "none") return;
    taken.push([at, at + length]);
    if (read.kind === "doubtful") doubtful.push({ parameter: subject.id, typed, why: read.why });
    else
      readings.push({
        parameter: subject.id,
        estimate: read.estimate,
        typed,
        readAs: read.readAs,
        isUnclear: read.isUnclear,
        at,
      });
  }

  // In "ammonia 0 nitrite 5" the figures stand behind their names, although one stands before a name too.
  for (const run of text.matchAll(RUN)) {
    if (ENDS_WITH_NAME.test(text.slice(0, run.index))) continue;
    for (const each of run[0].matchAll(ONE_OF_RUN)) {
      const subject = NAMES.get((each[3] ?? "").toLowerCase());
      if (subject === undefined || (each[2] !== undefined && subject.notDetectedBelow === undefined))
        continue;
      const figure = each[2] === undefined ? (each[1] ?? "").trim() : "not detected";
      take(subject, each[3] ?? "", figure, run.index + each.index, each[0].length);
    }
  }
  for (const match of text.matchAll(NAME_FIRST)) {
    const [whole, name = "", basis = "", figure, none] = match;
    const subject = NAMES.get(name.toLowerCase());
    if (subject === undefined) continue;
    take(
      subject,
      `${name}${basis}`,
      none === undefined ? (figure ?? "").trim() : "not detected",
      match.index,
      whole.length,
    );
  }
  for (const match of text.matchAll(GLUED)) {
    const subject = NAMES.get((match[1] ?? "").toLowerCase());
    if (subject !== undefined) take(subject, match[1] ?? "", match[2] ?? "", match.index, match[0].length);
  }
  for (const match of text.matchAll(DISSOLVED_OXYGEN))
    take(parameter("oxygen"), "oxygen", match[1] ?? "", match.index, match[0].length);
  for (const match of text.matchAll(FIGURE_FIRST)) {
    const subject = NAMES.get((match[3] ?? "").toLowerCase());
    if (subject === undefined || (match[2] !== undefined && subject.notDetectedBelow === undefined)) continue;
    const figure = match[2] === undefined ? (match[1] ?? "").trim() : "not detected";
    take(subject, match[3] ?? "", figure, match.index, match[0].length);
  }
  for (const match of text.matchAll(BARE_TEMPERATURE)) {
    const unit =
      /f/i.test((match[2] ?? "").replace(/of/i, "")) && !/celsius/i.test(match[2] ?? "") ? "°F" : "°C";
    take(parameter("temperature"), "temperature", `${match[1] ?? ""} ${unit}`, match.index, match[0].length);
  }
  for (const match of text.matchAll(BARE_GRAVITY))
    take(parameter("salinity"), "sg", match[0], match.index, match[0].length);

  return { readings: readings.sort((a, b) => a.at - b.at).map(({ at: _, ...reading }) => reading), doubtful };
}

type Meaning =
  | {
      readonly kind: "reading";
      readonly estimate: Estimate;
      readonly readAs: string;
      readonly isUnclear: boolean;
    }
  | { readonly kind: "doubtful"; readonly why: string }
  | { readonly kind: "none" };

function meaningOf(subject: Parameter, word: string, figure: string, habits: Habits, depth = 0): Meaning {
  // "ppm" of ammonia and the like are mg/L; degrees without a letter are left to the reader of temperatures.
  const text = figure
    .replace(/^degrees?$/i, "")
    .replace(/\s?deg(?:rees?)?$/i, "")
    .replace(/(^|[^\d])[.,](\d)/g, "$10.$2");
  const read = readFigure(subject, word, text, habits);
  switch (read.kind) {
    case "read":
      return { kind: "reading", estimate: read.value.estimate, readAs: read.readAs, isUnclear: false };
    case "impossible":
      return { kind: "doubtful", why: read.message };
    case "unreadable":
      return /\d/.test(text) ? { kind: "doubtful", why: read.message } : { kind: "none" };
    case "ask": {
      const isSlip = /cannot be/.test(read.question);
      const meant = read.choices
        .map((choice) => (depth > 2 ? undefined : meaningOf(subject, word, choice.text, habits, depth + 1)))
        .flatMap((each) => (each?.kind === "reading" ? [each] : []));
      const [first] = meant;
      if (first === undefined || isSlip) return { kind: "doubtful", why: read.question };
      const low = Math.min(...meant.map(({ estimate }) => estimate.low));
      const high = Math.max(...meant.map(({ estimate }) => estimate.high));
      if (!(high <= Math.max(low, 0.01) * TOO_FAR_APART)) return { kind: "doubtful", why: read.question };
      return {
        kind: "reading",
        estimate: between(low, high),
        readAs: `${figure}, which may mean ${meant
          .map(({ readAs }) => readAs)
          .slice(0, 3)
          .join(" or ")}`,
        isUnclear: meant.length > 1,
      };
    }
  }
}
