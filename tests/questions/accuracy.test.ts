import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Meaning, Understood } from "../../src/core/questions/meaning.ts";
import { understand } from "../../src/core/questions/understand.ts";
import { findDates } from "../../src/kit/find-dates.ts";

/** What a sentence was meant to say by the one who wrote it, before any rule was made. */
interface Expected extends Omit<Partial<Meaning>, "intent" | "confidence"> {
  readonly intent: string;
}

interface Row {
  readonly ask: string;
  readonly expect: Expected;
}

// Sentences as members type them, written before the grammar and parted into halves by chance. The grammar
// was made with the seen half alone: of the unseen one only counts are ever shown.
const rowsOf = (half: string): readonly Row[] =>
  JSON.parse(readFileSync(`tests/questions/${half}.json`, "utf8"));

/** Noon on a Wednesday, UTC. */
const NOW = Date.UTC(2026, 2, 4, 12, 0, 0);
const around = {
  tanks: ["Lagoon", "Creek", "Frag Box"].map((name) => ({ name, aliases: [] })),
  findDates: findDates(NOW, "UTC"),
};

type Verdict = "right" | "asked" | "not understood" | "wrong";

function verdictOn({ ask, expect: expected }: Row): Verdict {
  const understood = understand(ask, around);
  if (understood.kind === "unsure") return "asked";
  if (understood.kind === "none") return expected.intent === "none" ? "right" : "not understood";
  return isSame(understood.meaning, expected) ? "right" : "wrong";
}

function isSame(meaning: Meaning, expected: Expected): boolean {
  const fields = ["intent", "parameter", "tank", "event", "since", "at", "limit", "who"] as const;
  const parts = new Set([
    ...Object.keys(meaning.quantities ?? {}),
    ...Object.keys(expected.quantities ?? {}),
  ]);
  return (
    fields.every((field) => plain(meaning[field]) === plain(expected[field])) &&
    [...parts].every((part) => plain(meaning.quantities?.[part]) === plain(expected.quantities?.[part]))
  );
}

/** Who did it and how it is spelt does not matter. */
function plain(text: string | undefined): string {
  return (text ?? "")
    .toLowerCase()
    .replace("febuary", "february")
    .replace(/^(?:in|on|at|over|the|i|we|my) /g, "")
    .replace(/\s+/g, "");
}

function counted(rows: readonly Row[]): Readonly<Record<Verdict, number>> {
  const counts: Record<Verdict, number> = { right: 0, asked: 0, "not understood": 0, wrong: 0 };
  for (const row of rows) counts[verdictOn(row)] += 1;
  return counts;
}

function said({ ask }: Row): string {
  const understood: Understood = understand(ask, around);
  return `${ask} => ${JSON.stringify(understood.kind === "meaning" ? understood.meaning : understood)}`;
}

/**
 * seen and unseen: written together before the grammar. At the first run, seen had 174 of 194 right and 4
 * wrong, unseen 184 of 193 right and 4 wrong. grown: written later in five lots by one who knew the grammar,
 * to find what it lacked; at the first run 77 of 113, 92 of 120, 89 of 117, 70 of 94 and 67 of 82 were right, and
 * 3, 3, 3, 5 and 1 wrong. All of them are counted here as the grammar stands now.
 */
describe.each(["seen", "unseen", "grown"])("questions %s", (half) => {
  const rows = rowsOf(half);

  it("are understood in at least 92 of 100, and under one in 100 wrongly", () => {
    const counts = counted(rows);
    console.log(`questions, ${half}: ${JSON.stringify(counts)} of ${rows.length}`);
    if (half !== "unseen" && process.env["SHOW_SEEN"] !== undefined)
      console.log(
        rows
          .filter((row) => verdictOn(row) !== "right")
          .map((row) => `${verdictOn(row)}: ${said(row)}`)
          .join("\n"),
      );
    expect(rows.length).toBeGreaterThanOrEqual(160);
    expect(counts.right / rows.length).toBeGreaterThanOrEqual(0.92);
    expect(counts.wrong / rows.length).toBeLessThan(0.01);
  });
});

/**
 * Two lots written by another hand. The first, of 110, was written before the grammar was read: at its first
 * run 90 were right, 10 asked, 3 not understood and 7 wrong, two of these by labels put right
 * afterwards. The second, of 60, was written in other voices once the grammar was known: 41 right, 7 asked, 11 not
 * understood and 1 wrong. Few of them were worked at since, so the floors are lower here.
 */
describe("questions of another hand", () => {
  it.each([
    ["blind-2", 0.9],
    ["blind-3", 0.65],
  ])("%s are understood in at least this share, and under 2 in 100 wrongly", (lot, share) => {
    const rows = rowsOf(lot);
    const counts = counted(rows);
    console.log(`questions, ${lot}: ${JSON.stringify(counts)} of ${rows.length}`);
    expect(rows.length).toBeGreaterThanOrEqual(60);
    expect(counts.right / rows.length).toBeGreaterThanOrEqual(share);
    expect(counts.wrong / rows.length).toBeLessThan(0.02);
  });
});
