import type { GravityScale } from "../core/quantity/read.ts";
import type { MemberId } from "./ids.ts";

/** One test result as kept: the canonical value, and beside it what was typed. */
export interface Reading {
  readonly id: number;
  readonly tankId: number;
  /** Catalogue id of the parameter, e.g. "nitrate". */
  readonly parameter: string;
  /** In the parameter's canonical unit. `low` and `high` bound it; a bound may be open when censored. */
  readonly best: number;
  readonly low: number;
  readonly high: number;
  readonly censored?: "below" | "above";
  readonly typed: string;
  readonly readAs: string;
  readonly instrument?: string;
  /** UTC, ISO 8601. */
  readonly at: string;
}

/** Something done to a tank. */
export interface TankEvent {
  readonly id: number;
  readonly tankId: number;
  readonly event: string;
  /** Canonical amount and its unit, where one was given. */
  readonly amount?: number;
  readonly unit?: string;
  readonly text: string;
  readonly typed: string;
  readonly readAs: string;
  readonly at: string;
}

export type NewReading = Omit<Reading, "id" | "tankId">;
export type NewEvent = Omit<TankEvent, "id" | "tankId">;

export type LogLine =
  | { readonly kind: "reading"; readonly reading: Reading; readonly batch: number }
  | { readonly kind: "event"; readonly event: TankEvent; readonly batch: number };

export interface LogRecords {
  /** Writes one typed line as one batch; all or nothing. Returns the batch number. */
  add(entry: {
    readonly owner: MemberId;
    readonly tankId: number;
    readonly line: string;
    readonly readings: readonly NewReading[];
    readonly events: readonly NewEvent[];
    readonly now: string;
  }): number;
  /** Newest first. */
  recent(owner: MemberId, tankId: number, limit: number, parameter?: string): readonly LogLine[];
  /** The whole record, oldest first. */
  everything(
    owner: MemberId,
    tankId: number,
  ): { readonly readings: readonly Reading[]; readonly events: readonly TankEvent[] };
  /** Newest first, of one parameter. */
  readings(owner: MemberId, tankId: number, parameter: string, limit: number): readonly Reading[];
  /** Newest first. */
  events(owner: MemberId, tankId: number, limit: number): readonly TankEvent[];
  /** One reading of the member's own, by its number. */
  find(owner: MemberId, readingId: number): Reading | undefined;
  latest(owner: MemberId, tankId: number, parameter: string): Reading | undefined;
  /** Takes back the member's newest batch on that tank; undefined when there is none left. */
  undoLast(
    owner: MemberId,
    tankId: number,
    now: string,
  ): { readonly line: string; readonly count: number } | undefined;
  /** Replaces a reading by a new one; the old one is kept aside. Throws UserError when it is not theirs. */
  correct(owner: MemberId, readingId: number, to: NewReading, now: string): Reading;
}

/** A test kit or meter of the member's. */
export interface Instrument {
  readonly name: string;
  readonly parameter: string;
  /** The steps of a colour chart, in the chart's unit; empty for a meter. */
  readonly steps: readonly number[];
  /** Plus or minus, in the parameter's canonical unit. */
  readonly error?: number;
  /** For an instrument that shows specific gravity: the two temperatures of its scale. */
  readonly gravity?: GravityScale;
}

export interface InstrumentRecords {
  of(member: MemberId): readonly Instrument[];
  put(member: MemberId, instrument: Instrument): void;
  drop(member: MemberId, name: string): boolean;
}
