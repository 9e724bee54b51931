import Papa from "papaparse";
import { PARAMETERS, unitText } from "../core/log/parameters.ts";
import type { Reading, TankEvent } from "../records/log.ts";

export interface TankRecord {
  readonly tank: string;
  readonly readings: readonly Reading[];
  readonly events: readonly TankEvent[];
}

/** One row per reading and event, oldest first. A text that a spreadsheet would take for a formula is defused. */
export function recordAsCsv({ tank, readings, events }: TankRecord): string {
  const rows = [
    ...readings.map((reading) => ({
      at: reading.at,
      tank: defused(tank),
      kind: "reading",
      parameter: reading.parameter,
      value: reading.best,
      unit: unitOf(reading),
      low: reading.low,
      high: reading.high,
      bound: reading.censored ?? "",
      typed: defused(reading.typed),
      understood: defused(reading.readAs),
      instrument: defused(reading.instrument ?? ""),
    })),
    ...events.map((event) => ({
      at: event.at,
      tank: defused(tank),
      kind: event.event,
      parameter: "",
      value: event.amount ?? "",
      unit: event.unit ?? "",
      low: "",
      high: "",
      bound: "",
      typed: defused(event.typed),
      understood: defused(event.readAs),
      instrument: "",
    })),
  ].sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  return Papa.unparse(rows, { newline: "\r\n" });
}

/** All that is kept, as data. */
export function recordAsJson(record: TankRecord): string {
  const readings = record.readings.map((reading) => ({ ...reading, unit: unitOf(reading) }));
  return `${JSON.stringify({ ...record, readings }, undefined, 2)}\n`;
}

/** The unit a reading is kept in, as it would be typed. */
function unitOf({ parameter }: Reading): string {
  const kept = PARAMETERS.find(({ id }) => id === parameter);
  return kept === undefined ? "" : unitText(kept);
}

/** Source: the usual advice against formula injection: =, +, -, @, tab and carriage return at the start. */
function defused(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}
