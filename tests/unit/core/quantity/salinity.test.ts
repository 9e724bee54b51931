import { describe, expect, it } from "vitest";
import type { Habits } from "../../../../src/core/quantity/read.ts";
import { readSalinity } from "../../../../src/core/quantity/salinity.ts";

const AT_25: Habits = { gravity: { sampleC: 25, referenceC: 25 } };
const CONVENTIONS = ["25/25", "20/20", "60/60 °F", "15.6/4"];

describe("readSalinity", () => {
  it.each([
    ["35", "35 ppt"],
    ["35 ppt", "35 ppt"],
    ["35 ‰", "35 ppt"],
    ["35‰", "35 ppt"],
    ["35 psu", "35 PSU"],
    ["35,5", "35.5 ppt"],
    ["0.5", "0.5 ppt, nearly fresh water"],
    ["0", "0 ppt, nearly fresh water"],
    ["30–34 ppt", "32 ppt (30–34)"],
    ["30-34", "32 ppt (30–34)"],
    ["24-26", "25 ppt (24–26)"],
    ["35±0.5 ppt", "35.0 ppt (34.5–35.5)"],
    ["35 +/- 0.5", "35.0 ppt (34.5–35.5)"],
    ["about 35 ppt", "about, taken as ± 1 ppt: 35 ppt (34–36)"],
    ["35 g/kg", "35 g/kg = 34.8 ppt"],
    ["36 g/L at 20 C", "36 g/L at 20 °C = 35 ppt"],
    ["36 g/L", "36 g/L at 25 °C = 35 ppt"],
    ["1.0264 (25/25)", "1.0264 SG (25/25 °C) = 35 ppt"],
    ["1.026 25/25", "1.0260 SG (25/25 °C) = 34.5 ppt"],
    ["SG 1.026 25/25", "1.0260 SG (25/25 °C) = 34.5 ppt"],
    ["1.026 sg @ 25/25", "1.0260 SG (25/25 °C) = 34.5 ppt"],
    ["1.026 SG (25 °C/25 °C)", "1.0260 SG (25/25 °C) = 34.5 ppt"],
    ["1.026 sg 60/60", "1.0260 SG (60/60 °F) = 33.9 ppt"],
    ["1.026 sg 60/60 F", "1.0260 SG (60/60 °F) = 33.9 ppt"],
    ["1,0264 SG 25/25", "1.0264 SG (25/25 °C) = 35 ppt"],
    ["1.026 ± 0.001 25/25", "1.0260 SG (1.0250–1.0270) (25/25 °C) = 34.5 ppt (33.2–35.8)"],
    [
      "about 1.026 SG 25/25",
      "about, taken as ± 0.001: 1.0260 SG (1.0250–1.0270) (25/25 °C) = 34.5 ppt (33.2–35.8)",
    ],
    ["1.000 25/25", "1.0000 SG (25/25 °C) = 0 ppt, nearly fresh water"],
    ["53 mS at 25", "53 mS/cm at 25 °C = 34.9 ppt"],
    ["53 mS/cm at 25 °C", "53 mS/cm at 25 °C = 34.9 ppt"],
    ["53 mS/cm compensated", "53 mS/cm at 25 °C = 34.9 ppt"],
    ["53 mS/cm (25 °C)", "53 mS/cm at 25 °C = 34.9 ppt"],
    ["53000 uS/cm at 25", "53000 µS/cm at 25 °C = 34.9 ppt"],
    ["53000 µS/cm at 77 F", "53000 µS/cm at 25 °C = 34.9 ppt"],
    ["48 mS at 20 C uncompensated", "48 mS/cm as measured at 20 °C = 35.1 ppt"],
    ["48 mS uncompensated at 20 C", "48 mS/cm as measured at 20 °C = 35.1 ppt"],
  ])("reads %s as %s", (text, said) => {
    expect(readSalinity(text, {})).toMatchObject({ kind: "read", readAs: said });
  });

  it.each([
    ["1.026", AT_25, "1.0260 SG (25/25 °C) = 34.5 ppt"],
    ["1.02", AT_25, "1.0200 SG (25/25 °C) = 26.6 ppt"],
    ["1.026", { ...AT_25, decimal: "comma" }, "1.0260 SG (25/25 °C) = 34.5 ppt"],
    ["1,026", { ...AT_25, decimal: "comma" }, "1.0260 SG (25/25 °C) = 34.5 ppt"],
    ["1.025-1.026", AT_25, "1.0255 SG (1.0250–1.0260) (25/25 °C) = 33.8 ppt (33.2–34.5)"],
    ["53 mS", { conductivity: "at 25 °C" }, "53 mS/cm at 25 °C = 34.9 ppt"],
    ["48 mS at 20 °C", { conductivity: "as measured" }, "48 mS/cm as measured at 20 °C = 35.1 ppt"],
  ] satisfies readonly (readonly [string, Habits, string])[])("reads %s by habit", (text, habits, said) => {
    expect(readSalinity(text, habits)).toMatchObject({ kind: "read", readAs: said });
  });

  it.each([
    ["1.026", {}, CONVENTIONS.map((convention) => `1.026 SG ${convention}`)],
    ["1.026 sg", {}, CONVENTIONS.map((convention) => `1.026 sg ${convention}`)],
    ["1026", {}, CONVENTIONS.map((convention) => `1.026 SG ${convention}`)],
    ["1026", AT_25, ["1.026 SG"]],
    ["26", AT_25, ["26 ppt", "1.026 SG"]],
    ["26", {}, ["26 ppt", ...CONVENTIONS.map((convention) => `1.026 SG ${convention}`)]],
    ["26.4", AT_25, ["26.4 ppt", "1.0264 SG"]],
    ["1,026", {}, CONVENTIONS.map((convention) => `1.026 SG ${convention}`)],
    ["1,026", { ...AT_25, decimal: "point" }, ["1.026 SG"]],
    ["53", {}, ["53 ppt", "53 mS/cm at 25 °C"]],
    [
      "53 mS",
      {},
      ["53 mS at 25 °C", ...[22, 24, 26, 28].map((celsius) => `53 mS at ${celsius} °C uncompensated`)],
    ],
    ["48 mS at 20 C", {}, ["48 mS at 25 °C", "48 mS at 20 °C uncompensated"]],
  ] satisfies readonly (readonly [string, Habits, readonly string[]])[])(
    "asks about %s",
    (text, habits, choices) => {
      const read = readSalinity(text, habits);
      expect(read).toMatchObject({ kind: "ask" });
      expect(read.kind === "ask" && read.choices.map((choice) => choice.text)).toEqual(choices);
    },
  );

  it.each([
    ["-3 ppt", "goes below zero, and a salinity cannot"],
    ["200 ppt", "is saltier than I can work with"],
    ["1.5 sg 25/25", "is no specific gravity of sea water"],
    ["0.9 sg 25/25", "is no specific gravity of sea water"],
    ["35 kg", "“kg” is not a unit of salinity I know."],
    ["35 ppt to 1.027 sg", "mixes two scales of salinity"],
    ["35 ppt 25/25", "has the temperatures of a specific gravity, but another unit"],
    ["1.026 SG at 25 C", "A specific gravity has two temperatures"],
    ["1.026 sg 200/200", "names a temperature that no sample of sea water is measured at"],
    ["48 mS uncompensated", "needs the temperature of the sample"],
    ["500 mS at 25", "conducts more than any sea water"],
    ["500", "fits no scale of salinity"],
    ["<5 ppt", "gives one end only"],
  ])("refuses %s and says why", (text, said) => {
    const read = readSalinity(text, {});
    expect(read).toMatchObject({ kind: "unreadable" });
    expect(read.kind === "unreadable" && read.message).toContain(said);
  });

  it("keeps what was typed beside the salinity", () => {
    expect(readSalinity("1.026 SG 60/60 °F", {})).toMatchObject({
      value: { scale: "SG", typed: { best: 1.026 }, gravity: { sampleC: 28 / 1.8, referenceC: 28 / 1.8 } },
    });
    expect(readSalinity("48000 µS at 68 F uncompensated", {})).toMatchObject({
      value: { scale: "conductivity", typed: { best: 48 }, compensation: "as measured", temperatureC: 20 },
    });
  });
});
