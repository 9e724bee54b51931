import { describe, expect, it } from "vitest";
import { findFigures } from "../../../../src/core/questions/figures.ts";

const found = (text: string): string[] =>
  findFigures(text).map(({ kind, text: figure }) => `${kind} ${figure}`);

describe("figures in a question", () => {
  it.each([
    ["how much salt for 60 gal at 1.025", ["volume 60 gal", "gravity 1.025"]],
    ["mix 50 liters at 35ppt", ["volume 50 liters", "salinity 35ppt"]],
    ["no3 hits 40", ["bare 40"]],
    ["is po4 over 0.3 ppm", ["concentration 0.3 ppm"]],
    ["change 30 % of 200 l", ["share 30 %", "volume 200 l"]],
    ["25c and 78 f", ["temperature 25c", "temperature 78 f"]],
    ["53 ms/cm", ["salinity 53 ms/cm"]],
    ["500 gph in l/h", ["flow 500 gph"]],
    ["8 dkh to meq/l", ["alkalinity 8 dkh"]],
    ["alk 3 weeks ago", ["span 3 weeks"]],
    ["a stand of 2x4s", []],
    ["30 us gal", ["volume 30 us gal"]],
    ["12 cm triggerfish", ["length 12 cm"]],
    ["20-30 mg/l", ["concentration 20-30 mg/l"]],
  ])("“%s”", (text, figures) => {
    expect(found(text)).toEqual(figures);
  });

  it("are told with the place where they stand", () => {
    const text = "how much salt for 60 gal at 1.025";
    for (const { start, end, text: figure } of findFigures(text))
      expect(text.slice(start, end).trim()).toBe(figure);
  });
});
