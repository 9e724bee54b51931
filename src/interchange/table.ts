import Papa from "papaparse";

/** A table as read from a file: what stands in each cell, as text, and the line each row came from. */
export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly TableRow[];
}

export interface TableRow {
  /** As a text editor counts; in a JSON file the place in the list. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** Rows beyond this are refused rather than half read. */
const MOST_ROWS = 250_000;
const MOST_COLUMNS = 60;

/** A table, or the sentence that says why there is none in the file. */
export function readTable(name: string, content: string): Table | { readonly problem: string } {
  const text = content.replace(/^\uFEFF/, "");
  if (text.trim() === "") return { problem: "The file is empty." };
  const table = /\.json$/i.test(name) || /^\s*[[{]/.test(text) ? fromJson(text) : fromLines(text);
  if ("problem" in table) return table;
  if (table.columns.length > MOST_COLUMNS)
    return { problem: `The table has ${table.columns.length} columns; at most ${MOST_COLUMNS} are read.` };
  if (table.rows.length === 0) return { problem: "The table has a heading, but no row below it." };
  if (table.rows.length > MOST_ROWS)
    return {
      problem: `The table has ${table.rows.length} rows; at most ${MOST_ROWS} are read at once. Split it in two.`,
    };
  return table;
}

function fromLines(text: string): Table | { readonly problem: string } {
  const parsed = Papa.parse<string[]>(text, { header: false, skipEmptyLines: false });
  const [head, ...body] = parsed.data;
  if (head === undefined || head.length < 2)
    return {
      problem:
        "No columns were found: the first line should name them, with commas, semicolons or tabs between.",
    };
  const rows: TableRow[] = [];
  let line = 1 + newlinesIn(head);
  for (const cells of body) {
    line += 1;
    const isEmpty = cells.every((cell) => cell.trim() === "");
    if (!isEmpty) rows.push({ line, cells });
    line += newlinesIn(cells);
  }
  return { columns: head.map((column) => column.trim()), rows };
}

function newlinesIn(cells: readonly string[]): number {
  return cells.reduce((sum, cell) => sum + (cell.includes("\n") ? cell.split("\n").length - 1 : 0), 0);
}

/** A list of flat objects, or an object that holds such a list as "readings". */
function fromJson(text: string): Table | { readonly problem: string } {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    return {
      problem: `The file is not well-formed JSON (${error instanceof Error ? error.message.slice(0, 80) : "unreadable"}).`,
    };
  }
  const list = isRecord(data) && Array.isArray(data["readings"]) ? data["readings"] : data;
  if (!Array.isArray(list) || !list.every(isRecord))
    return {
      problem:
        "The file should hold a list of objects, one per row, or an object with such a list as “readings”.",
    };
  const columns = [...new Set(list.slice(0, 1000).flatMap((row) => Object.keys(row)))];
  return {
    columns,
    rows: list.map((row, index) => ({
      line: index + 1,
      cells: columns.map((column) => textOf(row[column])),
    })),
  };
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function textOf(value: unknown): string {
  return typeof value === "string"
    ? value
    : typeof value === "number" || typeof value === "boolean"
      ? String(value)
      : "";
}
