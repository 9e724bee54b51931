import { type Parameter, parameterNamed } from "../core/log/parameters.ts";

/** What a column holds. */
export type Column =
  | { readonly kind: "moment" | "date" | "time" | "name" | "value" | "unit" | "instrument" | "ignored" }
  | { readonly kind: "parameter"; readonly parameter: Parameter; readonly unit: string };

const WORDS: readonly (readonly [Exclude<Column["kind"], "parameter">, RegExp])[] = [
  [
    "moment",
    /^(?:at|when|date ?(?:and|&|\/)? ?time|datetime|timestamp|measured(?: at)?|taken(?: at)?|created(?: at)?)$/,
  ],
  ["date", /^(?:date|day)$/],
  ["time", /^(?:time|hour|clock)$/],
  ["name", /^(?:parameter|param|test|name|what|measurement|analyte)$/],
  ["value", /^(?:value|best|result|reading|amount|level)$/],
  ["unit", /^(?:unit|units|uom)$/],
  ["instrument", /^(?:instrument|kit|meter|device|method|test kit|with)$/],
];

/** What each heading most likely means; a unit in brackets belongs to its values: "NO3 (ppm)". */
export function guessColumns(headings: readonly string[]): readonly Column[] {
  return headings.map(guess);
}

function guess(heading: string): Column {
  const [, name = heading, unit = ""] = /^(.*?)\s*[([]\s*([^)\]]*)\s*[)\]]\s*$/.exec(heading) ?? [];
  const word = name.replace(/_/g, " ").trim().toLowerCase();
  const kind = WORDS.find(([, words]) => words.test(word))?.[0];
  if (kind !== undefined) return { kind };
  const parameter = parameterNamed(word);
  if (parameter !== undefined) return { kind: "parameter", parameter, unit };
  const [, short = "", tail = ""] = /^(\S+)[ ](\S+)$/.exec(word) ?? [];
  const named = parameterNamed(short);
  return named === undefined
    ? { kind: "ignored" }
    : { kind: "parameter", parameter: named, unit: unit || tail };
}

/** Overrides in the member's words: "no3=nitrate mg/L; remarks=ignore". Undefined for one that cannot be read. */
export function settleColumns(
  headings: readonly string[],
  guessed: readonly Column[],
  overrides: string,
): readonly Column[] | { readonly problem: string } {
  const columns = [...guessed];
  for (const piece of overrides
    .split(";")
    .map((part) => part.trim())
    .filter(Boolean)) {
    const [heading = "", meaning = ""] = piece.split("=").map((part) => part.trim());
    const at = headings.findIndex((each) => each.toLowerCase() === heading.toLowerCase());
    if (at < 0)
      return { problem: `There is no column “${heading}”. The columns are: ${headings.join(", ")}.` };
    const column = /^(ignore|none|-)$/i.test(meaning) ? ({ kind: "ignored" } as const) : meant(meaning);
    if (column === undefined)
      return {
        problem: `“${meaning}” is not something a column can hold. Try “${heading}=nitrate mg/L” or “${heading}=ignore”.`,
      };
    columns[at] = column;
  }
  return columns;
}

function meant(text: string): Column | undefined {
  const [first = "", ...unit] = text.split(/\s+/);
  const parameter = parameterNamed(first.toLowerCase());
  if (parameter !== undefined) return { kind: "parameter", parameter, unit: unit.join(" ") };
  const column = guess(text);
  return column.kind === "ignored" ? undefined : column;
}

/** Whether the columns tell when and what. */
export function missingColumns(columns: readonly Column[]): string | undefined {
  const has = (kind: Column["kind"]): boolean => columns.some((column) => column.kind === kind);
  if (!has("moment") && !has("date")) return "No column says when: name one “date” or “at”.";
  if (!has("parameter") && !(has("name") && has("value")))
    return "No column holds readings: name them after what was tested (“nitrate”, “pH”, “NO3 (ppm)”), or have one for the parameter and one for the value.";
  return undefined;
}
