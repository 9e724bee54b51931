import { describe, expect, it } from "vitest";
import { readAmmonia, readNitrate, readNitrite } from "../../../../src/core/nitrogen/read-nitrogen.ts";

// Molar masses: N 14.0067, NH3 17.0305, NH4 18.0385, NO2 46.0055, NO3 62.0049 (IUPAC standard atomic weights).
describe("nitrogen as kits print it", () => {
  it.each<[string, number]>([
    ["1 mg/L as N", 1],
    ["1 mg/L as NH3", 14.0067 / 17.0305],
    ["1 mg/L as NH4", 14.0067 / 18.0385],
  ])("ammonia %s", (text, nitrogen) => {
    const read = readAmmonia(text, {});
    expect(read.kind === "read" && read.value.asNitrogen.best).toBeCloseTo(nitrogen, 4);
  });

  it.each<[string, number]>([
    ["20 mg/L", 20 * (14.0067 / 62.0049)],
    ["20", 20 * (14.0067 / 62.0049)],
    ["4.5 mg/L as N", 4.5],
    ["20 ppm", 20 * (14.0067 / 62.0049)],
  ])("nitrate %s", (text, nitrogen) => {
    const read = readNitrate(text, {});
    const settled = read.kind === "ask" ? readNitrate(read.choices[0]?.text ?? "", {}) : read;
    expect(settled.kind === "read" && settled.value.best).toBeCloseTo(nitrogen, 3);
  });

  it("nitrite is the ion unless it says nitrogen", () => {
    const ion = readNitrite("1 mg/L", {});
    expect(ion.kind === "read" && ion.value.best).toBeCloseTo(14.0067 / 46.0055, 4);
    const asN = readNitrite("0.15 mg/L as N", {});
    expect(asN.kind === "read" && asN.value.best).toBeCloseTo(0.15, 6);
  });

  it("a bare ammonia figure is asked about, since kits differ by up to 29 %", () => {
    const asked = readAmmonia("0.5", {});
    expect(asked.kind === "ask" && asked.choices.length).toBe(3);
  });

  it.each(["", "-1 mg/L as N", "lots", "1 cm", "NaN"])("%j is refused", (text) => {
    for (const read of [readAmmonia, readNitrate, readNitrite])
      expect(read(text, {}).kind).toBe("unreadable");
  });
});
