import { DateTime } from "luxon";
import type { Calendar, LocalTime } from "../core/plans/calendar.ts";

const DAY_MS = 86_400_000;
const MINUTE_MS = 60_000;

/** The clock of an IANA time zone, e.g. "Europe/Lisbon". */
export function calendarOf(zone: string): Calendar {
  const offsetAt = (instant: number): number => DateTime.fromMillis(instant, { zone }).offset * MINUTE_MS;
  return {
    /** Source: RFC 5545, 3.3.5: the first of two, and the offset before a gap. */
    instant({ day, minute }: LocalTime): number {
      const wall = day * DAY_MS + minute * MINUTE_MS;
      const before = wall - offsetAt(wall - DAY_MS);
      const after = wall - offsetAt(wall + DAY_MS);
      const isShown = (instant: number): boolean => instant + offsetAt(instant) === wall;
      const shown = [before, after].filter(isShown);
      return shown.length === 0 ? before : Math.min(...shown);
    },
    local(instant: number): LocalTime {
      const wall = instant + offsetAt(instant);
      const day = Math.floor(wall / DAY_MS);
      return { day, minute: Math.floor((wall - day * DAY_MS) / MINUTE_MS) };
    },
  };
}

/** "Tue 20:10" within six days of `now`, else "Tue 3 Mar, 20:10", by the member's own clock. */
export function sayMoment(at: number, zone: string, now: number): string {
  const then = DateTime.fromMillis(at, { zone });
  const isNear = Math.abs(at - now) < 6 * DAY_MS;
  const isThisYear = then.year === DateTime.fromMillis(now, { zone }).year;
  return then.toFormat(isNear ? "ccc HH:mm" : isThisYear ? "ccc d MMM, HH:mm" : "ccc d MMM yyyy, HH:mm", {
    locale: "en",
  });
}

/** "Tue 3 Mar" of a day counted from 1970. */
export function sayDay(day: number): string {
  return DateTime.fromMillis(day * DAY_MS, { zone: "utc" }).toFormat("ccc d MMM", { locale: "en" });
}
