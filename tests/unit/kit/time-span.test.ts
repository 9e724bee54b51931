import { describe, expect, it } from "vitest";
import { findDates } from "../../../src/kit/find-dates.ts";
import { readTimeSpan } from "../../../src/kit/time-span.ts";
import type { MemberId } from "../../../src/records/ids.ts";

/** Noon on Wednesday, 4 March 2026, UTC. Weeks begin on Monday (ISO 8601). */
const NOW = Date.UTC(2026, 2, 4, 12);
const member = { id: "test:ines" as MemberId, habits: {}, zone: "UTC" };

describe("a span of time in words", () => {
  // Worked with a calendar.
  it.each([
    ["june", "1 Jun 2025 to 30 Jun 2025"],
    ["february", "1 Feb 2026 to 28 Feb 2026"],
    ["march", "1 Mar 2026 to 4 Mar 2026"],
    ["last week", "23 Feb 2026 to 1 Mar 2026"],
    ["this week", "2 Mar 2026 to 4 Mar 2026"],
    ["last month", "1 Feb 2026 to 28 Feb 2026"],
    ["last year", "1 Jan 2025 to 31 Dec 2025"],
    ["last 3 weeks", "11 Feb 2026 to 4 Mar 2026"],
    ["yesterday", "3 Mar 2026"],
    ["2026-02-14", "14 Feb 2026"],
    ["3 february", "3 Feb 2026"],
    ["3 december", "3 Dec 2025"],
    ["2 weeks ago", "18 Feb 2026"],
    ["monday", "2 Mar 2026"],
    ["end of january", "21 Jan 2026 to 31 Jan 2026"],
    ["start of february", "1 Feb 2026 to 10 Feb 2026"],
    ["2024", "1 Jan 2024 to 31 Dec 2024"],
  ])("“%s” is %s", (text, days) => {
    const read = readTimeSpan(text, member, NOW);
    expect(read.kind === "read" ? read.readAs : read).toBe(days);
  });

  it("runs by the member's own clock", () => {
    const read = readTimeSpan("yesterday", { ...member, zone: "Pacific/Auckland" }, NOW);
    // 01:00 on 5 March in Auckland (UTC+13 in summer), so yesterday is the 4th, from 3 March 11:00 UTC on.
    expect(read.kind === "read" ? new Date(read.value.from).toISOString() : read).toBe(
      "2026-03-03T11:00:00.000Z",
    );
  });

  it.each(["the moon landing", "", "2031-01-01"])("“%s” is none", (text) => {
    expect(readTimeSpan(text, member, NOW).kind).toBe("unreadable");
  });
});

describe("days named in a sentence", () => {
  const find = findDates(NOW, "UTC");

  it.each([
    ["what was alk in june", ["june"]],
    ["nitrate 20 today", ["today"]],
    ["how much salt for 60 gal at 1.025", []],
    ["is 0.5 ammonia at ph 8 bad", []],
    ["may i add a fish", []],
    ["what was alk in may", ["may"]],
  ])("“%s”", (text, dates) => {
    expect(find(text).map(({ text: found }) => found)).toEqual(dates);
  });
});
