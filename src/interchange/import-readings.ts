import { setImmediate } from "node:timers/promises";
import { type Parameter, parameterNamed } from "../core/log/parameters.ts";
import type { Choice, Habits } from "../core/quantity/read.ts";
import type { NewReading } from "../records/log.ts";
import { type Cell, cellReader } from "./cell-reader.ts";
import type { Column } from "./columns.ts";
import { type DayOrder, momentReader } from "./moments.ts";
import type { Table, TableRow } from "./table.ts";

/** Rows read before others get their turn. */
const ROWS_AT_A_TIME = 2_000;

export interface BadRow {
  readonly line: number;
  readonly reason: string;
}

export interface ImportedRows {
  readonly kind: "rows";
  readonly readings: readonly NewReading[];
  readonly bad: readonly BadRow[];
}

/** A cell whose unit or scale has to be settled for its whole column. */
export interface ColumnQuestion {
  readonly kind: "ask";
  readonly heading: string;
  readonly question: string;
  readonly choices: readonly (Choice & { readonly unit: string })[];
}

/** Reads every row; a row with anything wrong in it is told by its line and left out as a whole. */
export async function importReadings(
  table: Table,
  columns: readonly Column[],
  settings: {
    readonly zone: string;
    readonly order: DayOrder;
    readonly habits: Habits;
    readonly now: number;
  },
): Promise<ImportedRows | ColumnQuestion> {
  const at = (kind: Column["kind"]): number => columns.findIndex((column) => column.kind === kind);
  const places = {
    moment: at("moment"),
    date: at("date"),
    time: at("time"),
    name: at("name"),
    value: at("value"),
    unit: at("unit"),
    instrument: at("instrument"),
  };
  const when = momentReader(settings.zone, settings.order, settings.now);
  const readers = new Map<string, (cell: string) => Cell>();
  const readerFor = (parameter: Parameter, unit: string): ((cell: string) => Cell) => {
    const key = `${parameter.id} ${unit}`;
    const reader = readers.get(key) ?? cellReader(parameter, unit, settings.habits);
    readers.set(key, reader);
    return reader;
  };
  const wide = columns.flatMap((column, index) =>
    column.kind === "parameter"
      ? [{ index, heading: table.columns[index] ?? "", reader: readerFor(column.parameter, column.unit) }]
      : [],
  );
  const readings: NewReading[] = [];
  const bad: BadRow[] = [];
  for (const [count, row] of table.rows.entries()) {
    // Others are waiting for their answers meanwhile.
    if (count % ROWS_AT_A_TIME === ROWS_AT_A_TIME - 1) await setImmediate();
    const cell = (index: number): string => (index < 0 ? "" : (row.cells[index] ?? "").trim());
    const moment = when(
      places.moment >= 0 ? cell(places.moment) : cell(places.date),
      places.moment >= 0 ? "" : cell(places.time),
    );
    if (typeof moment !== "string") {
      bad.push({ line: row.line, reason: moment.problem });
      continue;
    }
    const read =
      wide.length > 0
        ? wideCells(row, wide)
        : longCell(cell(places.name), cell(places.value), cell(places.unit), readerFor);
    const asked = read.find(({ cell: each }) => each.kind === "ask");
    if (asked?.cell.kind === "ask") return columnQuestion(asked.heading, asked.cell);
    const problem = read.find(({ cell: each }) => each.kind === "problem");
    if (problem?.cell.kind === "problem") {
      bad.push({ line: row.line, reason: `${problem.heading}: ${problem.cell.reason}` });
      continue;
    }
    if (read.length === 0) bad.push({ line: row.line, reason: "no value in it" });
    const instrument = cell(places.instrument);
    for (const { cell: each } of read)
      if (each.kind === "reading") readings.push(newReading(each.entry, moment, instrument));
  }
  return { kind: "rows", readings, bad };
}

interface ReadCell {
  readonly heading: string;
  readonly cell: Cell;
}

function wideCells(
  row: TableRow,
  wide: readonly {
    readonly index: number;
    readonly heading: string;
    readonly reader: (cell: string) => Cell;
  }[],
): readonly ReadCell[] {
  const cells: ReadCell[] = [];
  for (const { index, heading, reader } of wide) {
    const text = (row.cells[index] ?? "").trim();
    if (text !== "" && text !== "-") cells.push({ heading, cell: reader(text) });
  }
  return cells;
}

function longCell(
  name: string,
  value: string,
  unit: string,
  readerFor: (parameter: Parameter, unit: string) => (cell: string) => Cell,
): readonly ReadCell[] {
  if (value === "") return [];
  const parameter = parameterNamed(name.toLowerCase());
  return parameter === undefined
    ? [{ heading: name, cell: { kind: "problem", reason: "is nothing I keep readings of" } }]
    : [{ heading: name, cell: readerFor(parameter, unit)(value) }];
}

function columnQuestion(heading: string, cell: Extract<Cell, { kind: "ask" }>): ColumnQuestion {
  return {
    kind: "ask",
    heading,
    question: cell.question,
    choices: cell.choices.map((choice) => ({ ...choice, unit: choice.text.replace(cell.typed, "").trim() })),
  };
}

function newReading(
  entry: Extract<Cell, { kind: "reading" }>["entry"],
  at: string,
  instrument: string,
): NewReading {
  const { best, low, high } = entry.estimate;
  return {
    parameter: entry.parameter,
    best,
    low,
    high,
    ...(entry.censored === undefined ? {} : { censored: entry.censored }),
    typed: entry.typed,
    readAs: entry.readAs,
    ...(instrument === "" ? {} : { instrument }),
    at,
  };
}
