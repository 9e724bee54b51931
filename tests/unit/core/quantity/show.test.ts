import { describe, expect, it } from "vitest";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import {
  convertFor,
  showEstimate,
  showHours,
  showIn,
  showNumber,
  showVolume,
} from "../../../../src/core/quantity/show.ts";
import { suggestUnits } from "../../../../src/core/quantity/suggest.ts";
import { as, type Litres } from "../../../../src/core/quantity/units.ts";

describe("showNumber", () => {
  it.each([
    [3.62159, 3, "3.62"],
    [1234567, 3, "1230000"],
    [0.000123456, 3, "0.000123"],
    [100, 4, "100"],
    [2.5, 4, "2.5"],
    [0, 4, "0"],
    [-0.00001, 1, "-0.00001"],
    [99.96, 3, "100"],
    [-12.34, 3, "-12.3"],
    [1e-9, 2, "0.000000001"],
  ])("shows %d with %i figures as %s", (value, significant, shown) => {
    expect(showNumber(value, significant)).toBe(shown);
  });
});

describe("showHours", () => {
  it.each([
    [0.2, 0.2, 0.2, "12 minutes"],
    [3, 2.5, 3.5, "3.0 h (2.5–3.5)"],
    [1.5, 1, 4, "1.5 h (1.0–4.0)"],
    [120, 120, 120, "5 days"],
    [80, 60, 100, "80 h (60–100)"],
  ])("says %d h, %d to %d, as %s", (best, low, high, said) => {
    expect(showHours({ best, low, high })).toBe(said);
  });
});

describe("showEstimate", () => {
  it.each([
    [3.6, 3.4, 3.9, "kg", "3.6 kg (3.4–3.9)"],
    [3.62, 3.4, 3.9, "kg", "3.62 kg (3.40–3.90)"],
    [3612, 1000, 9000, "L", "3600 L (1000–9000)"],
    [200, 180, 220, "L", "200 L (180–220)"],
    [34.512, 34.4, 34.63, "ppt", "34.51 ppt (34.40–34.63)"],
    [-2, -3, -1, "°C", "-2 °C (-3 to -1)"],
    [0.5, 0.5, 0.5, "", "0.5"],
    [283.168, 283.168, 283.168, "L", "283.2 L"],
  ])("shows %d, %d to %d %s as %s", (best, low, high, unit, shown) => {
    expect(showEstimate({ best, low, high }, unit)).toBe(shown);
  });
});

describe("showVolume", () => {
  const hundredGallons = exactly(as<Litres>(378.5411784));
  it("shows litres and the member's own unit", () => {
    expect(showVolume(hundredGallons, "US gal")).toBe("379 L (100 US gal)");
    expect(showVolume(hundredGallons, { gallon: "US" })).toBe("379 L (100 US gal)");
    expect(showVolume(hundredGallons, { gallon: "imperial" })).toBe("379 L (83.3 imp gal)");
    expect(showVolume(hundredGallons, "L")).toBe("379 L");
    expect(showVolume(hundredGallons)).toBe("379 L");
  });

  it("shows a range in both", () => {
    const range = { best: as<Litres>(200), low: as<Litres>(180), high: as<Litres>(220) };
    expect(showVolume(range, "US gal")).toBe("200 L (180–220), which is 53 US gal (48–58)");
  });
});

describe("other units", () => {
  it("shows and converts a canonical estimate", () => {
    expect(showIn(exactly(0.45359237), "mass", "lb")).toBe("1 lb");
    expect(showIn(exactly(25), "temperature", "°F")).toBe("77 °F");
    expect(convertFor(exactly(25), "temperature", "°F")?.best).toBeCloseTo(77, 10);
    expect(convertFor(exactly(25), "temperature", "kg")).toBeUndefined();
  });
});

describe("suggestUnits", () => {
  it.each([
    ["volume", "75 g", ["75 US gal", "75 imp gal"]],
    ["volume", "2 m3", ["2 m³"]],
    ["volume", "120x50x5", ["120x50x5 cm", "120x50x5 mm", "120x50x5 m", "120x50x5 in", "120x50x5 ft"]],
    ["mass", "5 l", ["5 lb"]],
    ["mass", "5 g", ["5 g"]],
    ["temperature", "26", ["26 °C", "26 °F"]],
    ["temperature", "78 f", ["78 °F"]],
    [
      "flow",
      "500 gp",
      ["500 US gal/h", "500 US gal/min", "500 US gal/d", "500 imp gal/h", "500 imp gal/min", "500 imp gal/d"],
    ],
    ["salinity", "1.026 s", ["1.026 SG 25/25", "1.026 SG 20/20", "1.026 SG 60/60 °F", "1.026 SG 15.6/4"]],
    ["salinity", "35 p", ["35 ppt", "35 PSU"]],
    ["fraction", "30", ["30 %"]],
    ["span", "about 3 w", ["about 3 weeks"]],
    ["volume", "", []],
    ["volume", "gal", []],
    ["volume", "75 quux", []],
  ] as const)("completes a %s from “%s”", (kind, typed, texts) => {
    expect(suggestUnits(kind, typed)).toEqual(texts);
  });

  it("offers no more than a menu can hold", () => {
    expect(suggestUnits("volume", "75").length).toBeGreaterThan(10);
    expect(suggestUnits("volume", "75").length).toBeLessThanOrEqual(25);
  });
});
