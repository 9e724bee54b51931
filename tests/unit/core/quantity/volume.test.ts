import { describe, expect, it } from "vitest";
import type { Habits } from "../../../../src/core/quantity/read.ts";
import { readVolume } from "../../../../src/core/quantity/volume.ts";

/** Expected litres follow from the definitions of the units, worked by hand beside each row. */
const reads: readonly (readonly [text: string, litres: number, habits?: Habits])[] = [
  ["200 L", 200],
  ["200 l", 200],
  ["200L", 200],
  ["200 litres", 200],
  ["200 Liter", 200],
  ["1 litre", 1],
  ["250 mL", 0.25],
  ["250ml.", 0.25],
  ["1e3 L", 1000],
  ["1.5e2 L", 150],
  [".5 L", 0.5],
  ["0,5 L", 0.5],
  ["1200,5 L", 1200.5],
  ["1 200 L", 1200],
  ["1\u202f200 L", 1200],
  ["12 345,5 L", 12345.5],
  ["1'200 L", 1200],
  ["1’200 L", 1200],
  ["1,234.5 L", 1234.5],
  ["1.234,5 L", 1234.5],
  ["1,234,567 L", 1234567],
  ["0.125 L", 0.125],
  ["1.200 L", 1.2, { decimal: "point" }],
  ["1,200 L", 1.2, { decimal: "comma" }],
  ["1,5 L", 1.5, { decimal: "point" }],
  ["½ L", 0.5],
  ["1½ L", 1.5],
  ["1/2 L", 0.5],
  ["2 3/4 L", 2.75],
  ["٢٠٠ L", 200],
  ["۲۰۰ l", 200],
  ["２００Ｌ", 200],
  ["\u200f200\u200b L", 200],
  ["200 ℓ", 200],
  ["1 m³", 1000],
  ["1 m^3", 1000],
  ["1 m3", 1000],
  ["2 cubic metres", 2000],
  ["500 cm³", 0.5],
  ["1 ft³", 28.316846592],
  ["1 cu ft", 28.316846592],
  ["1 cu. ft.", 28.316846592],
  ["1 in³", 0.016387064],
  ["1 cu in", 0.016387064],
  ["100 US gal", 378.5411784],
  ["100 gal US", 378.5411784],
  ["100 gal (US)", 378.5411784],
  ["100 usgal", 378.5411784],
  ["100 U.S. gallons", 378.5411784],
  ["100 US Gallons", 378.5411784],
  ["100 imp gal", 454.609],
  ["100 imp. gal.", 454.609],
  ["100 UK gallons", 454.609],
  ["100 gal uk", 454.609],
  ["100 gal", 378.5411784, { gallon: "US" }],
  ["100 gal", 454.609, { gallon: "imperial" }],
  ["100 US gal", 378.5411784, { gallon: "imperial" }],
  ["4 qt", 3.785411784],
  ["8 pt", 3.785411784],
  ["128 fl oz", 3.785411784],
  ["128 fl. oz.", 3.785411784],
  ["16 cups", 3.785411784],
  ["256 tbsp", 3.785411784],
  ["768 tsp", 3.785411784],
  ["1 1/2 tsp", (1.5 * 3.785411784) / 768],
  ["1/2 cup", 3.785411784 / 32],
  ["4 imp qt", 4.54609],
  ["8 imp pt", 4.54609],
  ["160 imp fl oz", 4.54609],
  ["8 pt", 4.54609, { gallon: "imperial" }],
  ["160 fl oz", 4.54609, { gallon: "imperial" }],
  ["16 cups", 4.54609, { gallon: "imperial" }],
  ["128 us fl oz", 3.785411784, { gallon: "imperial" }],
  ["180 L + 2 x 20 L", 220],
  ["180 L plus 2 × 20 L", 220],
  ["180 US gal + 2 x 20 US gal", 832.79059248],
  ["2×20L", 40],
  ["100 L + 1 m3", 1100],
  ["120x50x55 cm", 330],
  ["120 x 50 x 55 cm", 330],
  ["120 × 50 × 55cm", 330],
  ["120 by 50 by 55 cm", 330],
  ["1.2 m x 50 cm x 55 cm", 330],
  ["1200x500x550 mm", 330],
  ["50cmx50cmx50cm", 125],
  ["2 x 120x50x55 cm", 660],
  ["120x50x55 cm + 20 L", 350],
  ["48 x 18 x 20 in", 283.168466],
  ['48" x 18" x 20"', 283.168466],
  ["4 ft x 18 in x 20 in", 283.168466],
  ["4 ft x 1.5 ft x 20 in", 283.168466],
];

const ranges: readonly (readonly [text: string, best: number, low: number, high: number])[] = [
  ["about 200 L", 200, 180, 220],
  ["~200 L", 200, 180, 220],
  ["≈ 200 L", 200, 180, 220],
  ["ca. 200 L", 200, 180, 220],
  ["approx. 200 L", 200, 180, 220],
  ["approximately 200 L", 200, 180, 220],
  ["roughly 200 L", 200, 180, 220],
  ["about 180 L + 20 L", 200, 180, 220],
  ["30-34 L", 32, 30, 34],
  ["30–34 L", 32, 30, 34],
  ["30 — 34 L", 32, 30, 34],
  ["34-30 L", 32, 30, 34],
  ["30 to 34 L", 32, 30, 34],
  ["30 L to 34 L", 32, 30, 34],
  ["500 mL to 1 L", 0.75, 0.5, 1],
  ["between 30 and 34 L", 32, 30, 34],
  ["from 30 to 34 L", 32, 30, 34],
  ["200 L ± 10 %", 200, 180, 220],
  ["200 ± 10% L", 200, 180, 220],
  ["200±5 L", 200, 195, 205],
  ["200 L +/- 5 L", 200, 195, 205],
  ["200 L +/- 500 mL", 200, 199.5, 200.5],
  ["200 L (180–220)", 200, 180, 220],
  ["200 L (190 to 240)", 200, 190, 240],
  ["200 L (± 5)", 200, 195, 205],
  ["120x50x55 cm ± 10 %", 330, 297, 363],
  ["120x50x55 cm ± 5 L", 330, 325, 335],
];

const refused: readonly (readonly [text: string, said: string])[] = [
  ["100 psi", "“psi” is not a unit of volume I know. Try “200 L”, “55 US gal” or “120x50x55 cm”."],
  ["100 kg", "“kg” is not a unit of volume I know."],
  ["-5 L", "“-5 L” goes below zero, and a volume cannot."],
  ["", "There is nothing to read."],
  ["   ", "There is nothing to read."],
  ["gal", "I find no number in “gal”"],
  ["NaN L", "I find no number in “NaN L”"],
  ["Infinity L", "I find no number in “Infinity L”"],
  ["1e309 L", "“1e309” is larger than I can work with."],
  ["1e300 L", "“1e300 L” is larger than I can work with."],
  ["1.2.3 L", "“1.2.3” is not a number I can read."],
  ["1/0 L", "“1/0” is not a number I can read."],
  ["200 л", "“л” is not a Latin letter"],
  ["200 Λ", "“Λ” is not a Latin letter"],
  ["200 升", "“升” is not a Latin letter"],
  ["200 L please", "I read “200 L”, but not “please”."],
  ["<5 L", "“<5 L” gives one end only."],
  ["120x50 cm", "“120x50 cm” has 2 lengths; a volume takes three."],
  ["0x50x50 cm", "A length of zero holds no water."],
  ["120x50x55 cm ± 1 cm", "After lengths, give the ± in per cent"],
  ["20 + 30 US gal", "In “20 + 30 US gal” one part has no unit."],
  ["20 L + 30-34 L", "has a range inside a sum or a product"],
  ["200 L (300-400)", "has its best value outside its own range"],
  ["between 30 L", "opens a range without its other end"],
  ["2 L x 3 L", "multiplies two units"],
  ["200 L +", "stops before its number"],
  ["200 L 300", "I read “200 L”, but not “300”."],
  ["🐟 L", "I find no number in “🐟 L”"],
  ["9".repeat(201), "That is 201 characters long, and I read up to 200."],
];

describe("readVolume", () => {
  it.each(reads.map(([text, litres, habits = {}]) => ({ text, litres, habits })))(
    "reads $text as $litres L",
    ({ text, litres, habits }) => {
      const read = readVolume(text, habits);
      expect(read).toMatchObject({ kind: "read" });
      if (read.kind === "read") {
        expect(read.value.estimate.best).toBeCloseTo(litres, 6);
        expect(read.value.estimate.low).toBe(read.value.estimate.best);
        expect(read.value.estimate.high).toBe(read.value.estimate.best);
      }
    },
  );

  it.each(ranges)("reads %s as %f L, from %f to %f", (text, best, low, high) => {
    const read = readVolume(text, {});
    expect(read).toMatchObject({ kind: "read" });
    if (read.kind === "read") {
      expect(read.value.estimate.best).toBeCloseTo(best, 9);
      expect(read.value.estimate.low).toBeCloseTo(low, 9);
      expect(read.value.estimate.high).toBeCloseTo(high, 9);
    }
  });

  it.each(refused)("refuses %s and says why", (text, said) => {
    const read = readVolume(text, {});
    expect(read).toMatchObject({ kind: "unreadable" });
    expect(read.kind === "unreadable" && read.message).toContain(said);
  });

  const asked: readonly (readonly [text: string, habits: Habits, choices: readonly string[]])[] = [
    ["100 gal", {}, ["100 US gal", "100 imp gal"]],
    ["100 gal", { decimal: "comma" }, ["100 US gal", "100 imp gal"]],
    ["180 gal + 2 x 20 gal", {}, ["180 US gal + 2 x 20 US gal", "180 imp gal + 2 x 20 imp gal"]],
    ["100gal", {}, ["100 US gal", "100 imp gal"]],
    ["75", {}, ["75 L", "75 US gal", "75 imp gal"]],
    ["75", { gallon: "US" }, ["75 L", "75 US gal"]],
    ["30-34", {}, ["30-34 L", "30-34 US gal", "30-34 imp gal"]],
    ["1,200 L", {}, ["1200 L", "1.2 L"]],
    ["1,200 L", { decimal: "point" }, ["1200 L", "1.2 L"]],
    ["1.200 L", {}, ["1.2 L", "1200 L"]],
    ["1.200 L", { decimal: "comma" }, ["1.2 L", "1200 L"]],
    ["1,234 L", {}, ["1234 L", "1.2340 L"]],
    ["1,200 gal", {}, ["1200 US gal", "1200 imp gal", "1.2 US gal", "1.2 imp gal"]],
  ];
  it.each(asked)("asks about %s with %o", (text, habits, choices) => {
    const read = readVolume(text, habits);
    expect(read).toMatchObject({ kind: "ask" });
    if (read.kind === "ask") {
      expect(read.choices.map((choice) => choice.text)).toEqual(choices);
      for (const choice of read.choices) {
        expect(readVolume(choice.text, habits)).toMatchObject({ kind: "read", readAs: choice.label });
      }
    }
  });

  it("keeps the unit and the lengths that were typed", () => {
    expect(readVolume("2 cups", {})).toMatchObject({
      value: { typedUnit: "US cup" },
      readAs: "2 US cup = 0.4732 L",
    });
    expect(readVolume("120x50x55 cm", {})).toMatchObject({
      value: { sidesCm: [120, 50, 55] },
      readAs: "120 × 50 × 55 cm = 330 L",
    });
  });

  it("says what it made of “about”", () => {
    expect(readVolume("about 200 L", {})).toMatchObject({
      readAs: "about, taken as ± 10 %: 200 L (180–220)",
    });
  });

  it("quotes no more than forty characters, on one line", () => {
    const read = readVolume(`200 L ${"please ".repeat(20)}`, {});
    const quoted =
      read.kind === "unreadable"
        ? [...read.message.matchAll(/“([^”]*)”/g)].map((match) => match[1] ?? "")
        : [];
    expect(quoted.length).toBeGreaterThan(0);
    expect(Math.max(...quoted.map((text) => text.length))).toBeLessThanOrEqual(40);
  });
});
