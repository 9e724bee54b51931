/** Days are counted from 1 January 1970 (day 0, a Thursday), minutes from midnight by the wall clock. */
export interface LocalTime {
  readonly day: number;
  /** 0 to 1439. */
  readonly minute: number;
}

/** One time zone's clock, handed in: the core has none of its own. */
export interface Calendar {
  /**
   * Milliseconds since 1970 at which the zone's clocks show this. A time that a change of clocks leaves out
   * is counted with the offset before the gap; of one that comes twice the first is meant.
   */
  instant(time: LocalTime): number;
  local(instant: number): LocalTime;
}

/** 1 Monday to 7 Sunday. Source: definition (1 January 1970 was a Thursday). */
export function weekdayOf(day: number): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

export const WEEKDAY_NAMES = [
  "Monday",
  "Tuesday",
  "Wednesday",
  "Thursday",
  "Friday",
  "Saturday",
  "Sunday",
] as const;

/** "19:05". */
export function clockText(minute: number): string {
  return `${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}`;
}
