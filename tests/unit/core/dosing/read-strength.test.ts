import { describe, expect, it } from "vitest";
import { readStrength } from "../../../../src/core/dosing/read-strength.ts";
import type { Habits } from "../../../../src/core/quantity/read.ts";

const read = (text: string, habits: Habits = {}) => {
  const strength = readStrength(text, habits);
  if (strength.kind !== "read") throw new Error(`${text}: ${JSON.stringify(strength)}`);
  return strength.value;
};

describe("a strength that is said in full", () => {
  // By definition: 1 % w/v is 1 g in 100 mL, 1 g/L is 1 mg/mL; US gallon 3.785411784 L (NIST SP 811).
  it.each<[string, string, number]>([
    ["40 % v/v", "% v/v", 40],
    ["40% ABV", "% v/v", 40],
    ["96 % vol", "% v/v", 96],
    ["10 % w/v", "% w/v", 10],
    ["30 % by weight", "% w/w", 30],
    ["10 mg/mL", "mg/mL", 10],
    ["10 mg per ml", "g/L", 10],
    ["5 g/L", "g/L", 5],
    ["500 ppm", "mg/L", 500],
    ["50 g in 1 L", "g/L", 50],
    ["50 g in 500 mL", "g/L", 100],
    ["25 g per L", "g/L", 25],
    ["50 g made up to 1 L", "g/L", 50],
    ["378.5411784 g in 1 US gal", "g/L", 100],
    ["1 part in 5", "parts", 0.2],
    ["1 part to 4", "parts", 0.2],
    ["1 in 5", "parts", 0.2],
    ["2 parts to 3", "parts", 0.4],
  ])("%s", (text, kind, value) => {
    const strength = read(text);
    expect(strength.kind).toBe(kind);
    expect(strength.value.best).toBeCloseTo(value, 6);
  });

  it("may be a range", () => {
    expect(read("10-12 % v/v").value).toEqual({ best: 11, low: 10, high: 12 });
    const dissolved = read("48-52 g in 1 L").value;
    expect([dissolved.low, dissolved.high]).toEqual([expect.closeTo(48, 9), expect.closeTo(52, 9)]);
  });

  it.each([
    ["30 % w/w 1.15 kg/L", 1150],
    ["30 % w/w at 1.15 g/mL", 1150],
    ["30 % w/w, density 1150 kg/m³", 1150],
  ])("by weight may name what the liquid weighs: %s", (text, kgPerM3) => {
    expect(read(text).density?.best).toBeCloseTo(kgPerM3, 6);
  });
});

describe("a strength that could mean two things", () => {
  it.each<[string, Habits, readonly string[]]>([
    ["1:5", {}, ["1 part in 5", "1 part to 5"]],
    ["5:1", {}, ["5 part to 1"]],
    ["40 %", {}, ["40 % v/v", "40 % w/v", "40 % w/w"]],
    ["1,200 mg/mL", {}, ["1200 mg/mL", "1.2 mg/mL"]],
    ["50 g in 1 gal", {}, ["50 g in 1 US gal", "50 g in 1 imp gal"]],
  ])("%s is asked about, and each choice reads", (text, habits, choices) => {
    const asked = readStrength(text, habits);
    expect(asked.kind === "ask" && asked.choices.map((choice) => choice.text)).toEqual(choices);
    for (const choice of choices) expect(readStrength(choice, habits).kind, choice).toBe("read");
  });

  it("is asked once: the gallon it reveals goes along", () => {
    const asked = readStrength("50 g in 1 gal", {});
    expect(asked.kind === "ask" && asked.choices.map(({ remember }) => remember)).toEqual([
      { gallon: "US" },
      { gallon: "imperial" },
    ]);
    expect(read("50 g in 1 gal", { gallon: "imperial" }).value.best).toBeCloseTo(50 / 4.54609, 6);
  });
});

describe("what is no strength", () => {
  it.each([
    "",
    "strong",
    "6 in 5",
    "0:5",
    "140 % v/v",
    "-5 % v/v",
    "-5 mg/mL",
    "10 % proof",
    "50 g in 0 L",
    "50 g in -1 L",
    "50 L in 1 g",
    "10 mg/h",
    "NaN mg/mL",
    "1e999 mg/mL",
    "30 % v/v 1.15 kg/L",
    "%".repeat(200),
  ])("%j is refused with what would work", (text) => {
    const refused = readStrength(text, {});
    expect(refused.kind).toBe("unreadable");
    expect(refused.kind === "unreadable" && refused.message).toContain("Try");
  });
});
