import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { SOURCES } from "../../src/core/sources.ts";

const coreText = readdirSync("src/core", { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ts") && !name.endsWith("sources.ts"))
  .map((name) => readFileSync(join("src/core", name), "utf8"))
  .join("\n");

describe("the bibliography", () => {
  it("cites every work with enough to find it", () => {
    for (const [id, { citation, standing }] of Object.entries(SOURCES)) {
      expect(id).toMatch(/^[a-z0-9-]+$/);
      expect(citation.length).toBeGreaterThan(10);
      expect(standing.length).toBeGreaterThan(3);
    }
  });

  it("holds no work that nothing is taken from", () => {
    const unused = Object.keys(SOURCES).filter((id) => !coreText.includes(id));
    expect(unused).toEqual([]);
  });
});
