import fc from "fast-check";
import { DateTime } from "luxon";
import { describe, expect, it } from "vitest";
import { iCalendar } from "../../src/core/plans/icalendar.ts";
import { dueUntil, nextDue, type Rule } from "../../src/core/plans/recurrence.ts";
import { calendarOf } from "../../src/kit/calendar.ts";

const DAY = 86_400_000;
const ZONES = [
  "Europe/Lisbon",
  "America/New_York",
  "America/St_Johns",
  "Australia/Lord_Howe",
  "Asia/Kolkata",
  "Pacific/Auckland",
  "Africa/Casablanca",
  "UTC",
];

const zone = fc.constantFrom(...ZONES);
const minute = fc.integer({ min: 0, max: 1439 });
const rule: fc.Arbitrary<Rule> = fc.oneof(
  fc.record({
    kind: fc.constant("every" as const),
    days: fc.integer({ min: 1, max: 40 }),
    from: fc.integer({ min: 20_000, max: 21_000 }),
    minute,
  }),
  fc.record({
    kind: fc.constant("weekdays" as const),
    weekdays: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1 }),
    minute,
  }),
);

describe("due times", () => {
  it("keep the time on the wall through every change of clocks", () => {
    fc.assert(
      fc.property(rule, zone, fc.integer({ min: 20_000, max: 21_000 }), (each, where, day) => {
        const calendar = calendarOf(where);
        const dues = dueUntil(each, { notBefore: day * DAY }, Number.POSITIVE_INFINITY, 60, calendar);
        expect(dues).toHaveLength(60);
        for (const { at, day: itsDay } of dues) {
          const shown = DateTime.fromMillis(at, { zone: where });
          const wall = "minute" in each ? (each.minute ?? 0) : 0;
          const isShown = shown.hour * 60 + shown.minute === wall;
          // A time that the clocks left out that day is shown later by as much as they went forward.
          const start = DateTime.fromMillis(itsDay * DAY, { zone: "utc" }).setZone(where, {
            keepLocalTime: true,
          });
          const hoursThatDay = start.plus({ days: 1 }).diff(start, "hours").hours;
          expect(isShown || hoursThatDay < 24).toBe(true);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("come each once, in order, however the looks are spread", () => {
    fc.assert(
      fc.property(
        rule,
        zone,
        fc.array(fc.integer({ min: 1, max: 20 * DAY }), { minLength: 1, maxLength: 12 }),
        (each, where, pauses) => {
          const calendar = calendarOf(where);
          const start = 20_500 * DAY;
          const end = start + pauses.reduce((sum, pause) => sum + pause, 0);
          const atOnce = dueUntil(each, { notBefore: start }, end, 10_000, calendar);
          let now = start;
          let lastDay: number | undefined;
          const bits = pauses.flatMap((pause) => {
            now += pause;
            const progress = { notBefore: start, ...(lastDay === undefined ? {} : { lastDay }) };
            const dues = dueUntil(each, progress, now, 10_000, calendar);
            lastDay = dues.at(-1)?.day ?? lastDay;
            return dues;
          });
          expect(bits).toEqual(atOnce);
          for (const [index, due] of atOnce.entries())
            expect(due.at).toBeGreaterThan(atOnce[index - 1]?.at ?? start - 1);
        },
      ),
      { numRuns: 150 },
    );
  });

  it("never come twice on one day when the member moves to another zone", () => {
    fc.assert(
      fc.property(rule, zone, zone, (each, before, after) => {
        const first = nextDue(each, { notBefore: 20_500 * DAY }, calendarOf(before));
        if (first === undefined) throw new Error("a rule without an end gave no date");
        const next = nextDue(each, { notBefore: 20_500 * DAY, lastDay: first.day }, calendarOf(after));
        expect(next?.day).toBeGreaterThan(first.day);
      }),
    );
  });

  it("follow each event by whole days, at its own time of day", () => {
    fc.assert(
      fc.property(
        zone,
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 900 * DAY }),
        (where, days, ms) => {
          const calendar = calendarOf(where);
          const event = 20_000 * DAY + ms;
          const due = nextDue({ kind: "after", event: "water change", days }, { notBefore: 0 }, calendar, [
            event,
          ]);
          expect(due?.day).toBe(calendar.local(event).day + days);
        },
      ),
    );
  });
});

describe("a zone's clock", () => {
  it("shows what it was set to, except within a gap", () => {
    fc.assert(
      fc.property(zone, fc.integer({ min: 19_000, max: 22_000 }), minute, (where, day, of) => {
        const calendar = calendarOf(where);
        const at = calendar.instant({ day, minute: of });
        const shown = calendar.local(at);
        const isSame = shown.day === day && shown.minute === of;
        // RFC 5545, 3.3.5: within a gap the offset before it counts, so the clock shows more, by at most 2 h.
        const ahead = (shown.day - day) * 1440 + shown.minute - of;
        expect(isSame || (ahead > 0 && ahead <= 120)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it.each([
    // RFC 5545, 3.3.5, its own examples: New York, 11 March 2007 02:30 is left out and counts as 03:30 EDT;
    // 4 November 2007 01:30 comes twice, and the first (EDT) is meant.
    ["America/New_York", "2007-03-11", 150, "2007-03-11T07:30:00.000Z"],
    ["America/New_York", "2007-11-04", 90, "2007-11-04T05:30:00.000Z"],
  ])("%s on %s", (where, date, of, expected) => {
    const day = Date.parse(`${date}T00:00:00Z`) / DAY;
    expect(new Date(calendarOf(where).instant({ day, minute: of })).toISOString()).toBe(expected);
  });
});

describe("a calendar file", () => {
  const text = fc.string({ unit: "grapheme", maxLength: 200 });

  /** RFC 5545, 3.1: a break followed by a blank is taken out; 3.3.11: the marks stand for what they escape. */
  const unfolded = (file: string): readonly string[] =>
    file.replaceAll("\r\n ", "").split("\r\n").slice(0, -1);
  const textOf = (lines: readonly string[], name: string): string =>
    (lines.find((line) => line.startsWith(`${name}:`)) ?? "")
      .slice(name.length + 1)
      .replace(/\\([\\;,nN])/g, (_, mark: string) => (mark.toLowerCase() === "n" ? "\n" : mark));

  it("keeps every text within the standard's lines, and gives it back unharmed", () => {
    fc.assert(
      fc.property(text, text, fc.integer({ min: 0, max: 4e12 }), (summary, description, at) => {
        const file = iCalendar([{ uid: "plan-1-day-2@x", at, summary, description }], at);
        expect(file.endsWith("\r\n")).toBe(true);
        expect(file.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
        for (const line of file.split("\r\n")) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
        // No character is cut in two: each line is well-formed by itself.
        for (const line of file.split("\r\n")) expect(Buffer.from(line).toString()).toBe(line);
        const lines = unfolded(file);
        expect(lines[0]).toBe("BEGIN:VCALENDAR");
        expect(lines.at(-1)).toBe("END:VCALENDAR");
        // 3.6: PRODID and VERSION once each; 3.6.1: UID, DTSTAMP and DTSTART once each.
        for (const name of ["PRODID", "VERSION", "UID", "DTSTAMP", "DTSTART"])
          expect(lines.filter((line) => line.startsWith(`${name}:`))).toHaveLength(1);
        expect(textOf(lines, "DTSTART")).toMatch(/^\d{8}T\d{6}Z$/);
        const kept = (typed: string): string =>
          typed.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, "").replace(/\r\n|\r/g, "\n");
        expect(textOf(lines, "SUMMARY")).toBe(kept(summary));
        if (kept(description) !== "") expect(textOf(lines, "DESCRIPTION")).toBe(kept(description));
      }),
    );
  });

  it("escapes as the standard's own example does", () => {
    // RFC 5545, 3.3.11: "Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
    const file = iCalendar(
      [
        {
          uid: "u",
          at: 0,
          summary: "",
          description: "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.",
        },
      ],
      0,
    );
    expect(file.replaceAll("\r\n ", "")).toContain(
      "DESCRIPTION:Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.\r\n",
    );
    expect(file).toContain("DTSTART:19700101T000000Z\r\n");
  });
});
