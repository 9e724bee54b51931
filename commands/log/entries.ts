import type { EventEntry, LogEntry, ReadingEntry } from "../../src/core/log/entry.ts";
import type { Habits } from "../../src/core/quantity/read.ts";
import type { ReadContext } from "../../src/kit/context.ts";
import { type Context, listed, UserError } from "../../src/kit/index.ts";
import type { Instrument, NewEvent, NewReading } from "../../src/records/log.ts";

/** Habits for reading a line: those of the instrument named beside it go first. */
export function habitsWith(instrument: string | undefined, { habits, member, records }: ReadContext): Habits {
  const own = records.instruments.of(member.id);
  const named = instrument === undefined ? undefined : own.find((each) => isCalled(each, instrument));
  const meters = own.filter(({ parameter, gravity }) => parameter === "salinity" && gravity !== undefined);
  const { gravity } = named ?? (meters.length === 1 ? (meters[0] ?? {}) : {});
  return gravity === undefined ? habits : { ...habits, gravity };
}

/**
 * The instrument a reading came from: the one named, else the only one kept for that parameter.
 * Throws: UserError when a name is given that is not among the member's instruments.
 */
export function instrumentFor(
  entry: ReadingEntry,
  named: string | undefined,
  { records, member }: Context,
): string | undefined {
  const own = records.instruments.of(member.id);
  const fitting = own.filter(({ parameter }) => parameter === entry.parameter);
  if (named === undefined) return fitting.length === 1 ? fitting[0]?.name : undefined;
  const found = own.find((each) => isCalled(each, named));
  if (found === undefined)
    throw new UserError(
      "not-found",
      `You have no instrument called “${named}”. ${own.length === 0 ? "Add it with /instrument add." : `You have ${listed(own.map(({ name }) => name))}.`}`,
    );
  return found.parameter === entry.parameter ? found.name : undefined;
}

function isCalled({ name }: Instrument, word: string): boolean {
  return name.toLowerCase() === word.toLowerCase();
}

/** A reading ready to be kept; what was typed stays beside the value. */
export function newReading(entry: ReadingEntry, at: string, instrument: string | undefined): NewReading {
  const { best, low, high } = entry.estimate;
  return {
    parameter: entry.parameter,
    best,
    low,
    high,
    ...(entry.censored === undefined ? {} : { censored: entry.censored }),
    typed: entry.typed,
    readAs: entry.readAs,
    ...(instrument === undefined ? {} : { instrument }),
    at,
  };
}

export function newEvent(entry: EventEntry, at: string): NewEvent {
  return {
    event: entry.event,
    ...(entry.amount === undefined ? {} : { amount: entry.amount.estimate.best, unit: entry.amount.unit }),
    text: entry.text,
    typed: entry.typed,
    readAs: entry.readAs,
    at,
  };
}

export function isReading(entry: LogEntry): entry is ReadingEntry {
  return entry.kind === "reading";
}
