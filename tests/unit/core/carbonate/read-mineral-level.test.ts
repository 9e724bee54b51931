import { describe, expect, it } from "vitest";
import { readDegreesKH, readMineralLevel } from "../../../../src/core/carbonate/read-mineral-level.ts";

describe("the level of a mineral", () => {
  // Definition: 1 dKH is 10 mg/L CaO, 10/28.0387 meq/L; half a mole of CaCO₃ weighs 50.0435 g.
  it.each([
    ["8 dKH", 8],
    ["2.8532 meq/L", 8],
    ["142.78 ppm CaCO3", 8],
  ])("%s is %d dKH", (text, expected) => {
    const read = readMineralLevel(text, {});
    expect(read.kind === "read" && read.value.kind === "alkalinity" && read.value.dkh.best).toBeCloseTo(
      expected,
      2,
    );
    const alone = readDegreesKH(text, {});
    expect(alone.kind === "read" && alone.value.best).toBeCloseTo(expected, 2);
  });

  it("reads mg/L as calcium or magnesium", () => {
    const read = readMineralLevel("420 mg/L", {});
    expect(read.kind === "read" && read.value.kind === "concentration" && read.value.mgPerL.best).toBe(420);
  });

  it("asks for a missing unit with answers that read, and refuses words", () => {
    const read = readMineralLevel("8", {});
    expect(read.kind === "ask" && read.choices.map(({ text }) => readMineralLevel(text, {}).kind)).toEqual([
      "read",
      "read",
      "read",
    ]);
    expect(readMineralLevel("plenty", {}).kind).toBe("unreadable");
    expect(readMineralLevel("-8 dKH", {}).kind).toBe("unreadable");
  });
});
