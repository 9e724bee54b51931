import { describe, expect, it } from "vitest";
import { ago } from "../../../src/kit/tank-figures.ts";
import { readWhen, sayWhen } from "../../../src/kit/when-option.ts";
import type { Member } from "../../../src/records/member.ts";
import { memberId, START } from "../../support/club.ts";

const at = (zone: string): Member => ({ id: memberId("ines"), habits: {}, zone });

/** Noon on Wednesday 4 March 2026, UTC. Zones and their changes by the IANA time zone database. */
const read = (text: string, zone = "UTC", now = START): string => {
  const when = readWhen(text, at(zone), now);
  return when.kind === "read" ? when.value : when.kind;
};

describe("a moment in words", () => {
  it.each([
    ["now", "2026-03-04T12:00:00.000Z"],
    ["yesterday", "2026-03-03T12:00:00.000Z"],
    ["yesterday 9pm", "2026-03-03T21:00:00.000Z"],
    ["2 days ago", "2026-03-02T12:00:00.000Z"],
    ["3 hours ago", "2026-03-04T09:00:00.000Z"],
    ["today 8:30", "2026-03-04T08:30:00.000Z"],
    ["2026-03-01 20:30", "2026-03-01T20:30:00.000Z"],
    ["1 Feb", "2026-02-01T12:00:00.000Z"],
    ["30 December", "2025-12-30T12:00:00.000Z"],
    ["25/2", "2026-02-25T12:00:00.000Z"],
    ["25/2/2025 8pm", "2025-02-25T20:00:00.000Z"],
    ["25.12.", "2025-12-25T12:00:00.000Z"],
    ["4/4/25", "2025-04-04T12:00:00.000Z"],
    ["29/2/2024", "2024-02-29T12:00:00.000Z"],
  ])("%s", (text, expected) => {
    expect(read(text)).toBe(expected);
  });

  it("is the member's own clock, daylight saving included", () => {
    expect(read("yesterday 9pm", "America/Chicago")).toBe("2026-03-04T03:00:00.000Z");
    expect(read("yesterday 9pm", "Asia/Kolkata")).toBe("2026-03-03T15:30:00.000Z");
    // Chicago changed its clocks on 8 March 2026: before it UTC−6, after it UTC−5.
    const after = Date.UTC(2026, 2, 10, 12);
    expect(read("2026-03-07 12:00", "America/Chicago", after)).toBe("2026-03-07T18:00:00.000Z");
    expect(read("2026-03-09 12:00", "America/Chicago", after)).toBe("2026-03-09T17:00:00.000Z");
  });

  it.each([
    "tomorrow",
    "in 2 hours",
    "2027-01-01",
    "31/2",
    "31/02/2026",
    "99/99",
    "29/2/2025",
    "1800-01-01",
    "wibble",
    "",
    "monday to friday",
  ])("%j cannot be", (text) => {
    expect(read(text)).toBe("unreadable");
  });

  it("of two meanings is asked about, and each choice reads", () => {
    const asked = readWhen("3/2 8pm", at("UTC"), START);
    expect(asked.kind === "ask" && asked.choices.map(({ text }) => read(text))).toEqual([
      "2026-02-03T20:00:00.000Z",
      "2026-03-02T20:00:00.000Z",
    ]);
  });
});

it("is said back by the member's clock", () => {
  expect(sayWhen("2026-03-04T03:00:00.000Z", at("America/Chicago"), START)).toBe("Tue 3 Mar 2026, 21:00");
  expect(sayWhen("2026-03-04T11:58:00.000Z", at("UTC"), START)).toBe("just now");
  expect(ago("2026-03-01T12:00:00.000Z", START)).toBe("3 days ago");
});
