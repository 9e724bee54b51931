import { readFileSync } from "node:fs";

/** One row of a table of published values: inputs, what must come out, how closely, and whose word it is. */
export interface CheckRow {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  /** A number, a word, or REJECT where the inputs make no sense. */
  readonly expected: string;
  readonly unit: string;
  /** "abs 0.01", "rel 0.001", or empty. */
  readonly tolerance: string;
  readonly provenance: string;
}

/** The rows of `data/reference/<name>`, which must not be empty. */
export function checkRows(name: string): readonly CheckRow[] {
  const [header = [], ...lines] = parseCsv(
    readFileSync(new URL(`../../data/reference/${name}`, import.meta.url), "utf8"),
  );
  const rows = lines.map((cells) => {
    const cell = (column: string): string => {
      const value = cells[header.indexOf(column)];
      if (value === undefined) throw new Error(`${name}: no column ${column} in ${cells.join(" | ")}`);
      return value;
    };
    return {
      id: cell("id"),
      quantity: cell("quantity"),
      inputs: JSON.parse(cell("inputs")) as Record<string, unknown>,
      expected: cell("expected"),
      unit: cell("unit"),
      tolerance: cell("tolerance"),
      provenance: cell("provenance"),
    };
  });
  if (rows.length === 0) throw new Error(`${name} has no rows`);
  return rows;
}

/** How far from the expected value a row lets the result be, in the row's unit. */
export function allowedError(row: CheckRow): number {
  const read = /^(abs|rel) ([0-9.e+-]+)$/.exec(row.tolerance);
  if (read === null) throw new Error(`${row.id}: tolerance "${row.tolerance}" is not understood`);
  const size = Number(read[2]);
  return read[1] === "abs" ? size : size * Math.abs(Number(row.expected));
}

/** Comma-separated cells; a quoted cell may hold commas, line breaks and doubled quotes. */
function parseCsv(text: string): string[][] {
  const rows: string[][] = [];
  let cells: string[] = [];
  let start = 0;
  while (start < text.length) {
    const quoted = text[start] === '"';
    const pattern = quoted ? /"((?:[^"]|"")*)"(,|\r?\n|$)/y : /([^,\r\n]*)(,|\r?\n|$)/y;
    pattern.lastIndex = start;
    const match = pattern.exec(text);
    if (match === null) throw new Error(`a cell that does not end at character ${start}`);
    cells.push((match[1] ?? "").replaceAll('""', '"'));
    start = pattern.lastIndex;
    if (match[2] !== ",") {
      rows.push(cells);
      cells = [];
    } else if (start === text.length) cells.push("");
  }
  return rows;
}
