/** One date of a plan, as a calendar program takes it. */
export interface CalendarDate {
  /** Stays the same however often it is exported, so that a program replaces instead of adding. */
  readonly uid: string;
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly summary: string;
  readonly description: string;
}

/** Longest content line in octets, its break left out. Source: rfc-5545, 3.1. */
const LONGEST_LINE = 75;

/**
 * Dates as an iCalendar stream. Each stands by itself in UTC: no program has to know our time zones, and a
 * change of clocks cannot move it. Source: rfc-5545, 3.1 (lines), 3.3.5 (times), 3.3.11 (texts), 3.6.1 (events).
 */
export function iCalendar(dates: readonly CalendarDate[], writtenAt: number): string {
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Standpipe//Plans//EN",
    "CALSCALE:GREGORIAN",
    ...dates.flatMap(({ uid, at, summary, description }) => [
      "BEGIN:VEVENT",
      `UID:${escaped(uid)}`,
      `DTSTAMP:${utc(writtenAt)}`,
      `DTSTART:${utc(at)}`,
      "DURATION:PT15M",
      `SUMMARY:${escaped(summary)}`,
      ...(description === "" ? [] : [`DESCRIPTION:${escaped(description)}`]),
      "TRANSP:TRANSPARENT",
      "END:VEVENT",
    ]),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

/** Source: rfc-5545, 3.3.5, form 2. */
function utc(milliseconds: number): string {
  return new Date(milliseconds).toISOString().replace(/[-:]|\.\d{3}/g, "");
}

/** Source: rfc-5545, 3.3.11. Other control characters than a line break and a tab have no place in a text. */
function escaped(text: string): string {
  return text
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, "")
    .replace(/[\\;,]/g, (mark) => `\\${mark}`)
    .replace(/\r\n|\r|\n/g, "\\n");
}

/** Breaks a long line between characters, never within one. Source: rfc-5545, 3.1. */
function folded(line: string): string {
  let out = "";
  let octets = 0;
  for (const letter of line) {
    const size = octetsOf(letter);
    if (octets + size > LONGEST_LINE) {
      out += "\r\n ";
      octets = 1;
    }
    out += letter;
    octets += size;
  }
  return out;
}

/** Octets of one character in UTF-8. Source: definition. */
function octetsOf(letter: string): number {
  const point = letter.codePointAt(0) ?? 0;
  return point < 0x80 ? 1 : point < 0x800 ? 2 : point < 0x10000 ? 3 : 4;
}
