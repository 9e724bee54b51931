import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { commands } from "../../commands/index.ts";
import { parseLine } from "../../src/console/parse-line.ts";
import { peopleFirst } from "../../src/core/questions/people-first.ts";
import { allCommands } from "../../src/kit/command.ts";

interface Row {
  readonly text: string;
  readonly isPeople: boolean;
}

// Phrasings written as members would type them, before any rule was; the halves were parted by chance.
// The rules were made with the seen half alone, so the unseen one is counted, never listed.
const rowsOf = (half: string): readonly Row[] =>
  JSON.parse(readFileSync(`tests/questions/people-${half}.json`, "utf8"));

const isCertain = (text: string): boolean => peopleFirst(text)?.certainty === "certain";

describe("somebody hurt", () => {
  // blind-2: written by another hand before reading any rule; at the first run 14 of 91 were missed (3 of
  // them asked about) and 2 of 60 mistaken.
  // blind-3: by the same hand afterwards, in harder voices; at the first run 24 of 45 were missed (9 of them
  // asked about) and 3 of 30 mistaken.
  // grown: three later lots by one who knew the rules; at the first run 11 of 40, 11 of 40 and 8 of 30 were
  // missed, and 5 of 54, 2 of 67 and 1 of 20 mistaken.
  it.each(["seen", "grown", "blind-2", "blind-3"])(
    "is recognised in every phrasing %s, and nothing else is taken for it",
    (half) => {
      const rows = rowsOf(half);
      const wrong = rows.filter(({ text, isPeople }) => isCertain(text) !== isPeople).map(({ text }) => text);
      expect(rows.filter(({ isPeople }) => isPeople).length).toBeGreaterThanOrEqual(20);
      expect(wrong).toEqual([]);
    },
  );

  it("is missed in no phrasing unseen, and at most one of the rest is taken for it", () => {
    const rows = rowsOf("unseen");
    const hurt = rows.filter(({ isPeople }) => isPeople);
    const others = rows.filter(({ isPeople }) => !isPeople);
    const missed = hurt.filter(({ text }) => !isCertain(text)).length;
    const taken = others.filter(({ text }) => isCertain(text)).length;
    console.log(`people, unseen: ${missed} of ${hurt.length} missed, ${taken} of ${others.length} mistaken`);
    expect(missed).toBe(0);
    expect(taken).toBeLessThanOrEqual(1);
  });

  it("is read out of no example and no description of any command", () => {
    const texts = allCommands(commands).flatMap(({ command }) => [
      ...Object.values(command.options).flatMap(({ example, description }) => [example, description]),
      ...command.examples.flatMap((line) => Object.values(parseLine(line, commands).options)),
    ]);
    expect(texts.length).toBeGreaterThan(500);
    expect(texts.filter((text) => isCertain(text))).toEqual([]);
  });
});
