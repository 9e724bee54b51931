/** So many hours on from a moment, in milliseconds since 1970. */
export function hoursFrom(now: number, hours: number): number {
  return now + hours * 3_600_000;
}

/** Whole days in a span of hours, at least one. */
export function wholeDays(hours: number): number {
  return Math.max(1, Math.round(hours / 24));
}

/** A moment moved on by the time between two others; UTC, ISO 8601. */
export function movedBy(at: string, from: string, until: string): string {
  return new Date(Date.parse(at) + Math.max(0, Date.parse(until) - Date.parse(from))).toISOString();
}

/** The same time of day so many days of 24 hours later; UTC, ISO 8601. */
export function daysLater(at: string, days: number): string {
  return new Date(Date.parse(at) + days * 86_400_000).toISOString();
}
