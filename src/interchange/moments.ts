import { DateTime } from "luxon";

/** Which number comes first in dates like 03/04/2026. */
export type DayOrder = "day first" | "month first";

const ISO =
  /^(\d{4})-(\d{2})-(\d{2})(?:[T ](\d{1,2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?)?\s*(Z|[+-]\d{2}:?\d{2})?$/i;
const SLASHED = /^(\d{1,2})[/.](\d{1,2})[/.](\d{4}|\d{2})(?:,?\s+(.*))?$/;
const CLOCK = /^(\d{1,2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?\s*([ap])?\.?m?\.?$/i;
const DAY_MS = 86_400_000;

/**
 * Which order the slashed dates of a column are in: settled by a number over twelve, "unclear" when none
 * is, undefined when there are no such dates.
 */
export function dayOrderOf(texts: readonly string[]): DayOrder | "unclear" | undefined {
  let isSlashed = false;
  for (const text of texts) {
    const match = SLASHED.exec(text.trim());
    if (match === null) continue;
    isSlashed = true;
    if (Number(match[1]) > 12) return "day first";
    if (Number(match[2]) > 12) return "month first";
  }
  return isSlashed ? "unclear" : undefined;
}

/** Reads moments of one file in one time zone; remembers each day's offset, which is what costs. */
export function momentReader(
  zone: string,
  order: DayOrder,
  now: number,
): (date: string, time: string) => string | { readonly problem: string } {
  const offsets = new Map<number, number | undefined>();
  /** The zone's offset on a day, ms; undefined on days when the clock changes. */
  const offsetOn = (dayStart: number): number | undefined => {
    if (!offsets.has(dayStart)) {
      const at = (ms: number): number => DateTime.fromMillis(ms, { zone }).offset * 60_000;
      const before = at(dayStart - DAY_MS / 2);
      offsets.set(dayStart, before === at(dayStart + 1.5 * DAY_MS) ? before : undefined);
    }
    return offsets.get(dayStart);
  };
  return (date, time) => {
    const parts = partsOf(time.trim() === "" ? date.trim() : `${date.trim()} ${time.trim()}`, order);
    if (parts === undefined) return { problem: `“${date.trim().slice(0, 30)}” is not a date` };
    const { year, month, day, hour, minute, second, fixed } = parts;
    const wall = Date.UTC(year, month - 1, day, hour, minute, second);
    const check = new Date(wall);
    if (check.getUTCMonth() !== month - 1 || check.getUTCDate() !== day || hour > 23 || minute > 59)
      return { problem: `“${date.trim().slice(0, 30)}” is no day of the calendar` };
    const offset = fixed ?? offsetOn(Date.UTC(year, month - 1, day));
    const at =
      offset === undefined
        ? DateTime.fromObject({ year, month, day, hour, minute, second }, { zone }).toMillis()
        : wall - offset;
    if (at > now + DAY_MS / 24) return { problem: `“${date.trim().slice(0, 30)}” is still to come` };
    if (year < 1970) return { problem: `“${date.trim().slice(0, 30)}” is too long ago` };
    return new Date(at).toISOString();
  };
}

interface Parts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  /** Offset from UTC that the text itself gives, ms. */
  readonly fixed?: number;
}

function partsOf(text: string, order: DayOrder): Parts | undefined {
  const iso = ISO.exec(text);
  if (iso !== null) {
    const [, year, month, day, hour = "12", minute = "0", second = "0", offset] = iso;
    return {
      year: Number(year),
      month: Number(month),
      day: Number(day),
      hour: Number(hour),
      minute: Number(minute),
      second: Number(second),
      ...(offset === undefined ? {} : { fixed: offsetMs(offset) }),
    };
  }
  const slashed = SLASHED.exec(text);
  if (slashed === null) return undefined;
  const [, first = "", second = "", yearText = "", clockText] = slashed;
  const [day, month] = order === "day first" ? [first, second] : [second, first];
  const clock = clockText === undefined ? undefined : CLOCK.exec(clockText.trim());
  if (clock === null) return undefined;
  const year = yearText.length === 2 ? 2000 + Number(yearText) : Number(yearText);
  const date = { year, month: Number(month), day: Number(day) };
  if (clock === undefined) return { ...date, hour: 12, minute: 0, second: 0 };
  const [, hour = "0", minute = "0", seconds = "0", half] = clock;
  const hours =
    half === undefined ? Number(hour) : (Number(hour) % 12) + (half.toLowerCase() === "p" ? 12 : 0);
  return { ...date, hour: hours, minute: Number(minute), second: Number(seconds) };
}

function offsetMs(text: string): number {
  if (text.toUpperCase() === "Z") return 0;
  const [, sign, hours, minutes] = /^([+-])(\d{2}):?(\d{2})$/.exec(text) ?? [];
  return (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * 60_000;
}
