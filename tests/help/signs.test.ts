import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { z } from "zod";
import { readFacts } from "../../src/core/help/read-facts.ts";
import { urgencyOf } from "../../src/core/help/urgency.ts";

/** Sentences as newcomers write them, judged by hand before the bot saw any of them. */
const SENTENCES = z
  .strictObject({ urgent: z.array(z.string()), harmless: z.array(z.string()) })
  .parse(JSON.parse(readFileSync("tests/help/signs.json", "utf8")));

function isUrgent(text: string): boolean {
  return urgencyOf(readFacts([{ field: "worry", text }], {})).level === "now";
}

it("misses none of the urgent ones", () => {
  expect(SENTENCES.urgent.length).toBeGreaterThanOrEqual(50);
  expect(SENTENCES.urgent.filter((text) => !isUrgent(text))).toEqual([]);
});

it("takes none of the harmless ones for urgent", () => {
  expect(SENTENCES.harmless.length).toBeGreaterThanOrEqual(50);
  expect(SENTENCES.harmless.filter(isUrgent)).toEqual([]);
});
