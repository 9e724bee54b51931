import { DateTime } from "luxon";

/** The feed tomorrow at this time, where the group lives. */
export function tomorrowAt(
  { hour, minute }: { readonly hour: number; readonly minute: number },
  zone: string,
  now: number,
): DateTime {
  return DateTime.fromMillis(now, { zone })
    .plus({ days: 1 })
    .set({ hour, minute, second: 0, millisecond: 0 });
}

/** "between Wed 19:00 and Thu 01:00". */
export function setUpTimes(fed: DateTime, hoursBefore: readonly [number, number], zone: string): string {
  const [least, most] = hoursBefore;
  const say = (hours: number): string =>
    fed.minus({ hours }).setZone(zone).toFormat("ccc HH:mm", { locale: "en" });
  return `between ${say(most)} and ${say(least)}`;
}
