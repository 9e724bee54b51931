import { describe, expect, it } from "vitest";
import { slipsBetween, speller } from "../../../../src/core/questions/spelling.ts";
import { puttingRight } from "../../../../src/core/questions/words.ts";

describe("a speller", () => {
  // Optimal string alignment distances, worked by hand from the definition (insert, delete, change, swap).
  it.each([
    ["nitrate", "nitrate", 0],
    ["nitrate", "nitarte", 1],
    ["nitrate", "nitrite", 1],
    ["salinity", "salinty", 1],
    ["water", "watr", 1],
    ["change", "chnage", 1],
    ["", "abc", 3],
    ["kitten", "sitting", 3],
  ])("counts the slips between %s and %s: %d", (a, b, slips) => {
    expect(slipsBetween(a, b)).toBe(slips);
    expect(slipsBetween(b, a)).toBe(slips);
  });

  it("leaves a word alone that is as near to one as to another", () => {
    const spell = speller(["nitrate", "nitrite"], new Set());
    expect(spell("nitrte")).toBe("nitrte");
    expect(spell("nitrat")).toBe("nitrate");
  });

  it("leaves words alone that are right, short, or begin otherwise", () => {
    const spell = speller(["burned", "stung"], new Set(["turned"]));
    expect(["turned", "stun", "churned", "sang"].map(spell)).toEqual(["turned", "stung", "churned", "sang"]);
  });
});

describe("slips of the trade", () => {
  it.each([
    ["niterate", "nitrate"],
    ["phospate", "phosphate"],
    ["amonia", "ammonia"],
    ["salinty", "salinity"],
    ["alkalinty", "alkalinity"],
    ["magnesum", "magnesium"],
    ["tempature", "temperature"],
    ["chnage", "change"],
    ["galons", "gallons"],
    ["skimer", "skimmer"],
    ["harvst", "harvest"],
    ["febuary", "february"],
  ])("%s is %s", (typed, meant) => {
    expect(puttingRight(typed)).toBe(meant);
  });

  it.each(["nitrite", "nitrate", "stocked", "feet", "rate", "date", "late", "heater", "ration", "wander"])(
    "%s stays as it is",
    (word) => {
      expect(puttingRight(word)).toBe(word);
    },
  );
});
