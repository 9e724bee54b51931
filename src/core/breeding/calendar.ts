/** A day of the calendar where the group lives: "2026-03-09". */
export type Day = string;

const DAY_MS = 86_400_000;

function msOf(day: Day): number {
  const ms = Date.parse(`${day}T00:00:00Z`);
  if (!Number.isFinite(ms)) throw new RangeError(`${day} is no day`);
  return ms;
}

/** The day so many days later (or earlier). Throws: RangeError for what is no day. */
export function dayAfter(day: Day, days: number): Day {
  return new Date(msOf(day) + Math.round(days) * DAY_MS).toISOString().slice(0, 10);
}

/** Whole days from one day to another; the hatch day is day 0 of the young. */
export function daysBetween(from: Day, to: Day): number {
  return Math.round((msOf(to) - msOf(from)) / DAY_MS);
}

/** Days a quarantine lasts unless the group says otherwise. Source: common-practice. */
export const QUARANTINE_DAYS = 30;

/** The first day a quarantine is over: the clock starts anew with every arrival or sign of disease that
 *  falls before its end. Source: common-practice. */
export function quarantineUntil(start: Day, days: number, restarts: readonly Day[]): Day {
  let end = dayAfter(start, days);
  for (const restart of [...restarts].sort())
    if (restart >= start && restart < end) end = dayAfter(restart, days);
  return end;
}
