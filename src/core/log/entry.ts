import type { Estimate } from "../quantity/estimate.ts";
import type { ParameterId } from "./parameters.ts";

export type EventKind =
  | "water change"
  | "dose"
  | "feeding"
  | "harvest"
  | "media change"
  | "livestock in"
  | "livestock out"
  | "death"
  | "equipment on"
  | "equipment off"
  | "note";

export interface ReadingEntry {
  readonly kind: "reading";
  readonly parameter: ParameterId;
  /** In `unit`. When censored, only the bound is known: `low` to `high` is where the value may lie. */
  readonly estimate: Estimate;
  /** The parameter's canonical unit. */
  readonly unit: string;
  readonly basis: string;
  readonly censored?: "below" | "above";
  readonly typed: string;
  readonly readAs: string;
}

export interface EventAmount {
  readonly estimate: Estimate;
  /** "fraction" for a share; "" for a count. */
  readonly unit: "L" | "kg" | "fraction" | "";
}

export interface EventEntry {
  readonly kind: "event";
  readonly event: EventKind;
  readonly amount?: EventAmount;
  /** What it was done with or to: "prawn", "skimmer". Empty when nothing was said. */
  readonly text: string;
  readonly typed: string;
  readonly readAs: string;
}

export type LogEntry = ReadingEntry | EventEntry;
