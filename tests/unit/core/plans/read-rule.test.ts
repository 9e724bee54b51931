import { describe, expect, it } from "vitest";
import { readRule } from "../../../../src/core/plans/read-rule.ts";

/** Wednesday 4 March 2026 (day 20516 from 1970: 56 years of which 14 leap, and 62 days), half past noon. */
const TODAY = { day: 20_516, minute: 750 };

function rule(text: string): unknown {
  const read = readRule(text, TODAY, 19 * 60);
  return read?.kind === "read" ? read.value : read?.kind;
}

describe("a repeating rule in words", () => {
  it.each([
    ["every 7 days 19:00", { kind: "every", days: 7, from: 20_516, minute: 1140 }],
    ["every day at 9am", { kind: "every", days: 1, from: 20_517, minute: 540 }],
    ["daily", { kind: "every", days: 1, from: 20_516, minute: 1140 }],
    ["every other day 8.30pm", { kind: "every", days: 2, from: 20_516, minute: 1230 }],
    ["every 2 weeks", { kind: "every", days: 14, from: 20_516, minute: 1140 }],
    ["every fortnight at noon", { kind: "every", days: 14, from: 20_530, minute: 720 }],
    ["mon, thu 8pm", { kind: "weekdays", weekdays: [1, 4], minute: 1200 }],
    ["mondays and Fridays", { kind: "weekdays", weekdays: [1, 5], minute: 1140 }],
    ["every sunday 12am", { kind: "weekdays", weekdays: [7], minute: 0 }],
    ["weekdays 12pm", { kind: "weekdays", weekdays: [1, 2, 3, 4, 5], minute: 720 }],
    ["2 days after each water change", { kind: "after", event: "water change", days: 2 }],
    ["two days after every wc 20:00", { kind: "after", event: "water change", days: 2, minute: 1200 }],
    ["the day after each dose", { kind: "after", event: "dose", days: 1 }],
    ["a week after each new arrival", { kind: "after", event: "livestock in", days: 7 }],
  ])("%s", (text, expected) => {
    expect(rule(text)).toEqual(expected);
  });

  it.each(["tomorrow 20:00", "monday", "2026-03-09 18:00", "in 3 hours", "whenever", ""])(
    "%s is no rule that repeats",
    (text) => {
      expect(rule(text)).toBeUndefined();
    },
  );

  it.each(["every 0 days", "every 400 days", "every day 25:00", "every day 13pm", "2 days after each party"])(
    "%s is refused in words",
    (text) => {
      expect(rule(text)).toBe("unreadable");
    },
  );
});
