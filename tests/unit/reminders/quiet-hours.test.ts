import { describe, expect, it } from "vitest";
import type { MemberId } from "../../../src/records/ids.ts";
import type { Letter, LetterItem } from "../../../src/records/plan.ts";
import { letterText, quietUntil } from "../../../src/reminders/letter-text.ts";

const NIGHT = { quietFrom: 22 * 60, quietUntil: 7 * 60 };

function until(text: string, wishes = NIGHT, zone = "Europe/Lisbon"): string | undefined {
  const end = quietUntil(wishes, zone, Date.parse(text));
  return end === undefined ? undefined : new Date(end).toISOString();
}

describe("quiet hours", () => {
  it("end in the morning, whichever side of midnight it is", () => {
    expect(until("2026-03-04T22:30:00Z")).toBe("2026-03-05T07:00:00.000Z");
    expect(until("2026-03-05T03:00:00Z")).toBe("2026-03-05T07:00:00.000Z");
    expect(until("2026-03-05T07:00:00Z")).toBeUndefined();
    expect(until("2026-03-05T21:59:00Z")).toBeUndefined();
  });

  it("end by the clock on the wall in the night the clocks change", () => {
    // Lisbon springs forward on 29 March 2026 at 01:00 UTC (IANA time zone database): 07:00 is 06:00 UTC.
    expect(until("2026-03-28T23:00:00Z")).toBe("2026-03-29T06:00:00.000Z");
  });

  it("may lie within a day, and may not be at all", () => {
    const nap = { quietFrom: 13 * 60, quietUntil: 15 * 60 };
    expect(until("2026-03-05T14:00:00Z", nap)).toBe("2026-03-05T15:00:00.000Z");
    expect(until("2026-03-05T16:00:00Z", nap)).toBeUndefined();
    expect(until("2026-03-05T16:00:00Z", { quietFrom: 0, quietUntil: 0 })).toBeUndefined();
  });
});

describe("a letter", () => {
  const item = (title: string, parts: Partial<LetterItem> = {}): LetterItem => ({
    duty: {
      id: 1,
      half: "whole",
      dueAt: "2026-03-04T19:00:00.000Z",
      words: { title, lines: [], cautions: [] },
    },
    tank: "Lagoon",
    missed: [],
    ...parts,
  });
  const letter = (items: readonly LetterItem[]): Letter => ({
    id: 1,
    owner: "discord:1" as MemberId,
    wishes: { place: "dm", ...NIGHT },
    zone: "UTC",
    key: "k",
    items,
    attempts: 0,
    createdAt: "2026-03-04T19:00:00.000Z",
  });
  const at = (text: string): number => Date.parse(text);

  it("says how late it is, and only when it is", () => {
    const text = (now: string) => letterText(letter([item("feed")]), at(now)).paragraphs.join("\n");
    expect(text("2026-03-04T19:05:00Z")).toBe("Due Wed 19:00.");
    expect(text("2026-03-04T20:00:00Z")).toContain("60 minutes late");
    expect(text("2026-03-05T07:00:00Z")).toContain("12 hours late");
    expect(text("2026-03-06T19:30:00Z")).toContain("2 days late");
  });

  it("names what was missed before, and gathers several under one title", () => {
    const both = letterText(
      letter([
        item("feed", { missed: ["2026-03-02T19:00:00.000Z", "2026-03-03T19:00:00.000Z"] }),
        item("clean the glass"),
      ]),
      at("2026-03-04T19:00:00Z"),
    );
    expect(both.title).toBe("Lagoon: 2 reminders");
    expect(both.paragraphs[0]).toContain("Missed before it: Mon 19:00 and Tue 19:00.");
    expect(both.answerable).toHaveLength(2);
  });

  it("says every caution, each once", () => {
    const words = {
      title: "x",
      lines: [],
      cautions: [{ level: "danger" as const, text: "Unplug first." }],
    };
    const { cautions } = letterText(
      letter([
        item("a", { duty: { ...item("a").duty, words } }),
        item("b", { duty: { ...item("b").duty, words } }),
      ]),
      at("2026-03-04T19:00:00Z"),
    );
    expect(cautions).toEqual(["Unplug first."]);
  });
});
