import { describe, expect, it } from "vitest";
import { readConcentration } from "../../../../src/core/quantity/concentration.ts";
import type { Basis, Substance } from "../../../../src/core/quantity/substances.ts";

describe("readConcentration", () => {
  const rows: readonly (readonly [text: string, best: number, basis: Basis, substance?: Substance])[] = [
    ["20 ppm", 20, "ion"],
    ["20 mg/L", 20, "ion"],
    ["20 mg/l", 20, "ion"],
    ["20 mg per litre", 20, "ion"],
    ["30 ppb", 0.03, "ion"],
    ["30 µg/L", 0.03, "ion"],
    ["30 ug/l", 0.03, "ion"],
    ["1.5 g/L", 1500, "ion"],
    ["4.5 as N", 4.5, "N"],
    ["4.5 mg/L as N", 4.5, "N"],
    ["4.5 mg/L N", 4.5, "N"],
    ["4.5 mg N/L", 4.5, "N"],
    ["nitrate-N 4.5", 4.5, "N", "nitrate"],
    ["NO3-N 4.5 ppm", 4.5, "N", "nitrate"],
    ["4.5 ppm NO3-N", 4.5, "N", "nitrate"],
    ["4.5 mg NO3-N/L", 4.5, "N", "nitrate"],
    ["nitrate 20", 20, "ion", "nitrate"],
    ["nitrate: 20 ppm", 20, "ion", "nitrate"],
    ["NO3 20 mg/L", 20, "ion", "nitrate"],
    ["NO₃⁻ 20 mg/L", 20, "ion", "nitrate"],
    ["20 mg/L as NO3", 20, "ion", "nitrate"],
    ["nitrate 4.5 ppm as N", 4.5, "N", "nitrate"],
    ["nitrite 0.1 mg/L (N)", 0.1, "N", "nitrite"],
    ["NO2 0.1 ppm", 0.1, "ion", "nitrite"],
    ["TAN 0.5", 0.5, "N", "ammonia"],
    ["0.5 ppm NH3", 0.5, "NH3", "ammonia"],
    ["NH4 0.5 ppm", 0.5, "NH4", "ammonia"],
    ["NH3-N 0.5 ppm", 0.5, "N", "ammonia"],
    ["PO4 0.03 ppm", 0.03, "ion", "phosphate"],
    ["phosphorus 30 ppb", 0.03, "P", "phosphate"],
    ["0.03 mg/L PO4-P", 0.03, "P", "phosphate"],
    ["Ca 420 ppm", 420, "ion", "calcium"],
    ["420 ppm calcium", 420, "ion", "calcium"],
    ["Mg 1300 ppm", 1300, "ion", "magnesium"],
    ["1300 ppm Mg", 1300, "ion", "magnesium"],
    ["oxygen 7.2 mg/L", 7.2, "ion", "oxygen"],
    ["7.2 mg/L DO", 7.2, "ion", "oxygen"],
  ];
  it.each(rows.map(([text, best, basis, substance]) => ({ text, best, basis, substance })))(
    "reads $text as $best mg/L, basis $basis",
    ({ text, best, basis, substance }) => {
      const read = readConcentration(text, {});
      expect(read).toMatchObject({ kind: "read", value: { basis } });
      if (read.kind === "read") {
        expect(read.value.estimate.best).toBeCloseTo(best, 9);
        expect(read.value.substance).toBe(substance);
        expect(read.value.censored).toBeUndefined();
      }
    },
  );

  it.each([
    ["between 10 and 20 ppm", 15, 10, 20],
    ["10-20 ppm", 15, 10, 20],
    ["20 ppm ± 10 %", 20, 18, 22],
    ["about 20 ppm", 20, 18, 22],
    ["ca. 20 ppm", 20, 18, 22],
    ["ca 20 ppm", 20, 18, 22],
  ])("reads the range of %s", (text, best, low, high) => {
    expect(readConcentration(text, {})).toMatchObject({ value: { estimate: { best, low, high } } });
  });

  it("keeps an open end", () => {
    expect(readConcentration("<5 ppm", {})).toMatchObject({
      value: { estimate: { best: 2.5, low: 0, high: 5 }, censored: "below" },
      readAs: "below 5 ppm",
    });
    expect(readConcentration("nitrate > 160 ppm", {})).toMatchObject({
      value: { estimate: { best: 160, low: 160, high: 160 }, censored: "above", substance: "nitrate" },
      readAs: "above 160 ppm as NO3",
    });
  });

  const asked: readonly (readonly [
    text: string,
    substance: Substance | undefined,
    choices: readonly string[],
  ])[] = [
    ["ammonia 0.5 ppm", undefined, ["0.5 ppm as TAN", "0.5 ppm as NH3", "0.5 ppm as NH4"]],
    ["0.5 ppm", "ammonia", ["0.5 ppm as TAN", "0.5 ppm as NH3", "0.5 ppm as NH4"]],
    ["30 ppb", "phosphate", ["30 ppb as PO4-P", "30 ppb as PO4"]],
    ["20", "nitrate", ["20 mg/L", "20 µg/L"]],
    ["phosphorus 30", undefined, ["phosphorus 30 mg/L", "phosphorus 30 µg/L"]],
    ["1,300 ppm", undefined, ["1300 ppm", "1.3 ppm"]],
  ];
  it.each(asked)("asks about %s of %s", (text, substance, choices) => {
    const read = readConcentration(text, {}, substance === undefined ? {} : { substance });
    expect(read).toMatchObject({ kind: "ask" });
    expect(read.kind === "ask" && read.choices.map((choice) => choice.text)).toEqual(choices);
  });

  it.each([
    ["1,300 ppm", "magnesium", 1300],
    ["ca 420 ppm", "calcium", 420],
    ["0.5 ppm as N", "ammonia", 0.5],
    ["20 ppm", "nitrate", 20],
  ] as const)("reads %s where %s was asked for", (text, substance, best) => {
    expect(readConcentration(text, {}, { substance })).toMatchObject({
      value: { substance, estimate: { best } },
    });
  });

  it.each([
    ["20", "“20” has no unit. Try “20 mg/L” or “20 µg/L”."],
    ["1300 mg", "“mg” is not a unit of concentration I know."],
    ["20 µmol/L", "counts moles, and I need to know of what"],
    ["nitrate 5 ppm as P", "nitrate is not given as P"],
    ["nitrate 5 ppm nitrite", "names both nitrate and nitrite"],
    ["-5 ppm", "goes below zero"],
    ["nitrate", "I find no number in “nitrate”"],
  ])("refuses %s and says why", (text, said) => {
    const read = readConcentration(text, {});
    expect(read.kind === "unreadable" && read.message).toContain(said);
  });

  it("refuses another substance than the one asked for", () => {
    const read = readConcentration("nitrite 0.1 ppm", {}, { substance: "nitrate" });
    expect(read.kind === "unreadable" && read.message).toContain("names nitrite, and I asked for nitrate");
  });
});
