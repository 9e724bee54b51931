import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { readFileFrom } from "../../../src/console/read-file.ts";

const folder = mkdtempSync(join(tmpdir(), "read-file-"));
afterAll(() => rmSync(folder, { recursive: true }));

it("reads a file, and keeps its name without its folder", () => {
  const path = join(folder, "readings.csv");
  writeFileSync(path, "day,nitrate\n");
  expect(readFileFrom(path)).toEqual({ name: "readings.csv", content: "day,nitrate\n" });
});

it.each([
  ["missing.csv", "there is none of that name"],
  [".", "it is a folder"],
])("says in words why %s cannot be read", (name, reason) => {
  expect(() => readFileFrom(join(folder, name))).toThrow(`cannot be read: ${reason}. Give its path`);
});
