/** What kind of thing a unit counts. A bare number has the kind "bare", a bare 1.0xx "gravity". */
export type FigureKind =
  | "volume"
  | "mass"
  | "salinity"
  | "gravity"
  | "concentration"
  | "alkalinity"
  | "temperature"
  | "length"
  | "flow"
  | "share"
  | "span"
  | "bare";

/** A number with its unit, where it stands in the text. */
export interface FoundFigure {
  readonly kind: FigureKind;
  /** As typed. */
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

const UNITS: readonly (readonly [FigureKind, string])[] = [
  [
    "flow",
    "(?:l|lit(?:re|er)s?|gal(?:lon)?s?|ml)(?:/| per | an | a )(?:h|hr|hour|min|minute|day)\\b|gph|lph",
  ],
  ["salinity", "ppt|psu|[mu]s/cm|parts per thousand|s\\.?g\\.?|specific gravity"],
  ["alkalinity", "meq/l|meq|d?kh|dgh|mmol/l"],
  ["concentration", "mg/l|mgl|ug/l|ppm|ppb"],
  [
    "volume",
    "(?:us |u\\.s\\. |imp |imperial |uk )?gal(?:lon)?s?\\b\\.?(?: us)?|millilit(?:re|er)s?|ml|lit(?:re|er)s?|ltrs?|l|m3|cubic (?:met(?:re|er)s?|feet|foot)|quarts?|qts?|pints?|cups?|fl ?oz",
  ],
  ["mass", "kilo(?:gram)?s?|kg|grams?|g|lbs?|pounds?|ounces?|oz|mg"],
  ["length", "centimet(?:re|er)s?|cm|millimet(?:re|er)s?|mm|inch(?:es)?|feet|foot|ft|met(?:re|er)s?|m"],
  [
    "temperature",
    "deg(?:rees?)?(?: ?(?:c|f|celsius|fahrenheit|centigrade))?|celsius|fahrenheit|centigrade|c|f",
  ],
  ["share", "%|percent|per cent|pct"],
  ["span", "days?|d|hours?|hrs?|h|weeks?|wks?|months?|minutes?|mins?|years?"],
];
const NUMBER = "\\d+(?:[.,]\\d+)?";
const FIGURE = new RegExp(
  `(?<![\\p{L}\\d.,/-])(?:[<>~] ?)?(?:${NUMBER} ?- ?)?(${NUMBER})(?![\\d/]|[.,]\\d)(?: ?(?:${UNITS.map(([, unit]) => `(${unit})`).join("|")})(?![\\p{L}\\d/]))?`,
  "gu",
);

/** Every figure in a text of lower case. "no3" and "2x4" hold none. */
export function findFigures(text: string): readonly FoundFigure[] {
  return [...text.matchAll(FIGURE)].flatMap((match): FoundFigure[] => {
    const [whole, number = "", ...units] = match;
    if (/^[x*]\d/.test(text.slice(match.index + whole.length))) return [];
    const at = units.findIndex((unit) => unit !== undefined);
    const kind = at < 0 ? (/^1\.0\d{1,3}$/.test(number) ? "gravity" : "bare") : (UNITS[at]?.[0] ?? "bare");
    if (kind === "bare" && /^\p{L}/u.test(text.slice(match.index + whole.length))) return [];
    return [{ kind, text: whole.trim(), start: match.index, end: match.index + whole.length }];
  });
}
