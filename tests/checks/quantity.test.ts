import { describe, expect, it } from "vitest";
import { readConcentration } from "../../src/core/quantity/concentration.ts";
import { readSalinity } from "../../src/core/quantity/salinity.ts";
import { onBasis } from "../../src/core/quantity/substances.ts";
import { convert, UNITS, type Unit } from "../../src/core/quantity/unit-table.ts";

/** NIST Special Publication 811 (2008), B.8, factors as printed there with seven figures or exact (from memory);
 *  imperial measures: UK Units of Measurement Regulations 1995 (SI 1995/1804), gallon 4.54609 dm³ exact,
 *  quart a fourth, pint an eighth and fluid ounce a 160th of it. Tolerance: half of the last printed figure. */
const factors: readonly (readonly [
  one: string,
  unit: string,
  factor: number,
  tolerance: number,
  source: string,
])[] = [
  ["US gal", "L", 3.785411784, 1e-9, "NIST SP 811, B.8: gallon (U.S.), 231 in³ exact"],
  ["imp gal", "L", 4.54609, 1e-9, "SI 1995/1804; NIST SP 811, B.8: gallon [Canadian and U.K. (Imperial)]"],
  ["US qt", "L", 0.9463529, 5e-8, "NIST SP 811, B.8: quart (U.S. liquid)"],
  ["US pt", "L", 0.4731765, 5e-8, "NIST SP 811, B.8: pint (U.S. liquid)"],
  ["US cup", "mL", 236.5882, 5e-5, "NIST SP 811, B.8: cup (U.S.)"],
  ["US fl oz", "mL", 29.57353, 5e-6, "NIST SP 811, B.8: fluid ounce (U.S.)"],
  ["US tbsp", "mL", 14.78676, 5e-6, "NIST SP 811, B.8: tablespoon"],
  ["US tsp", "mL", 4.928922, 5e-7, "NIST SP 811, B.8: teaspoon"],
  ["imp qt", "L", 1.1365225, 1e-9, "SI 1995/1804: quart"],
  ["imp pt", "L", 0.56826125, 1e-9, "SI 1995/1804: pint"],
  ["imp fl oz", "mL", 28.41306, 5e-6, "NIST SP 811, B.8: ounce [Canadian and U.K. fluid (Imperial)]"],
  ["imp cup", "mL", 284.130625, 1e-6, "ten imperial fluid ounces: common practice, no source"],
  ["m³", "L", 1000, 1e-9, "definition"],
  ["cm³", "mL", 1, 1e-12, "definition"],
  ["ft³", "L", 28.31685, 5e-6, "NIST SP 811, B.8: cubic foot"],
  ["in³", "mL", 16.38706, 5e-6, "NIST SP 811, B.8: cubic inch"],
  ["mL", "L", 0.001, 1e-15, "definition"],
  ["lb", "g", 453.59237, 1e-9, "NIST SP 811, B.8: pound (avoirdupois), exact"],
  ["oz", "g", 28.34952, 5e-6, "NIST SP 811, B.8: ounce (avoirdupois)"],
  ["t", "kg", 1000, 1e-9, "NIST SP 811, B.8: tonne"],
  ["mg", "g", 0.001, 1e-15, "definition"],
  ["g", "kg", 0.001, 1e-15, "definition"],
  ["in", "cm", 2.54, 1e-12, "NIST SP 811, B.8: inch, exact"],
  ["ft", "cm", 30.48, 1e-12, "NIST SP 811, B.8: foot, exact"],
  ["mm", "cm", 0.1, 1e-15, "definition"],
  ["m", "cm", 100, 1e-12, "definition"],
  ["US gal/min", "L/s", 0.0630902, 5e-9, "NIST SP 811, B.8: gallon (U.S.) per minute, 6.309 020 E-05 m³/s"],
  ["US gal/d", "L/s", 4.381264e-5, 5e-12, "NIST SP 811, B.8: gallon (U.S.) per day, 4.381 264 E-08 m³/s"],
  ["US gal/h", "L/h", 3.785411784, 1e-9, "NIST SP 811, B.8: gallon (U.S.)"],
  ["imp gal/h", "L/h", 4.54609, 1e-9, "SI 1995/1804"],
  ["imp gal/min", "L/min", 4.54609, 1e-9, "SI 1995/1804"],
  ["imp gal/d", "L/d", 4.54609, 1e-9, "SI 1995/1804"],
  ["L/min", "L/h", 60, 1e-9, "definition"],
  ["L/s", "L/h", 3600, 1e-9, "definition"],
  ["mL/min", "L/h", 0.06, 1e-12, "definition"],
  ["m³/h", "L/h", 1000, 1e-9, "definition"],
  ["L/d", "mL/d", 1000, 1e-9, "definition"],
  ["mL/d", "L/h", 1 / 24000, 1e-15, "definition"],
  ["hp", "W", 745.6999, 5e-5, "NIST SP 811, B.8: horsepower (550 ft·lbf/s)"],
  ["kW", "W", 1000, 1e-9, "definition"],
  ["d", "h", 24, 1e-12, "definition"],
  ["weeks", "d", 7, 1e-12, "definition"],
  ["h", "min", 60, 1e-12, "definition"],
  ["min", "s", 60, 1e-9, "definition"],
  ["g/L", "mg/L", 1000, 1e-9, "definition"],
  ["µg/L", "mg/L", 0.001, 1e-15, "definition"],
  ["ppb", "ppm", 0.001, 1e-15, "definition, in water of 1 kg/L"],
  ["meq/L", "dKH", 2.8039, 5e-5, "1 °dH is 10 mg CaO per litre, CaO 56.0774 g/mol: 56.0774 / 2 / 10"],
  ["meq/L", "ppm CaCO3", 50.043, 5e-4, "CaCO₃ 100.0869 g/mol: half of it"],
  ["dKH", "mg/L CaCO3", 17.848, 5e-4, "10 mg CaO × 100.0869 / 56.0774"],
  ["mmol/L", "meq/L", 1, 1e-12, "definition, for bicarbonate"],
];

describe("conversion factors", () => {
  it.each(factors)("one %s in %s is %d", (from, to, factor, tolerance) => {
    const converted = convert(1, from, to) ?? Number.NaN;
    expect(Math.abs(converted - factor)).toBeLessThanOrEqual(tolerance);
  });

  /** Fixed points of the scales. Source: NIST SP 811, B.8: t/°C = (t/°F − 32)/1.8, exact. */
  it.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [98.6, 37],
    [77, 25],
  ])("%d °F is %d °C", (fahrenheit, celsius) => {
    expect(convert(fahrenheit, "°F", "°C")).toBeCloseTo(celsius, 10);
    expect(convert(celsius, "°C", "°F")).toBeCloseTo(fahrenheit, 10);
  });

  it("refuses a gallon that does not say which, and units of different kinds", () => {
    expect(convert(1, "gal", "L")).toBeUndefined();
    expect(convert(1, "kg", "L")).toBeUndefined();
    expect(convert(1, "furlong", "m")).toBeUndefined();
  });

  it("has a row for every unit", () => {
    const checked = new Set<string>([
      ...factors.map((row) => row[0]),
      ...factors.map((row) => row[1]),
      "°C",
      "°F",
    ]);
    const all = Object.values(UNITS).flatMap((units: readonly Unit[]) => units);
    const missing = all.filter(({ id, asks }) => asks === undefined && !checked.has(id));
    expect(all.length).toBeGreaterThan(50);
    expect(missing.map(({ id }) => id)).toEqual([]);
  });
});

describe("nitrogen and phosphorus", () => {
  /** Ratios of molar masses with the IUPAC standard atomic weights N 14.0067, O 15.9994, H 1.00794 (from memory),
   *  four decimals, worked by hand; phosphate 94.971 / 30.974 is the 3.066 of common use. */
  it.each([
    ["nitrate", "N", "ion", 4.4268],
    ["nitrite", "N", "ion", 3.2845],
    ["ammonia", "N", "NH4", 1.2878],
    ["ammonia", "N", "NH3", 1.2159],
    ["phosphate", "P", "ion", 3.0662],
  ] as const)("one mg/L of %s as %s is %s × %d", (substance, from, to, factor) => {
    expect(onBasis(1, substance, from, to)).toBeCloseTo(factor, 4);
  });

  /** Molar masses printed on bottles (from memory): NO₃ 62.005, O₂ 31.999, Ca 40.078 g/mol. */
  it.each([
    ["1 mmol/L NO3", 62.005, 0.001],
    ["1 mmol/L oxygen", 31.999, 0.001],
    ["10 mmol/L calcium", 400.78, 0.01],
    ["100 µmol/L NO3-N", 1.4007, 0.0001],
  ])("%s is %d mg/L", (text, mgPerL, tolerance) => {
    const read = readConcentration(text, {});
    const best = read.kind === "read" ? read.value.estimate.best : Number.NaN;
    expect(Math.abs(best - mgPerL)).toBeLessThanOrEqual(tolerance);
  });
});

describe("salinity from every scale", () => {
  /** Conductivity and g/L: reference library GSW 3.6 (TEOS-10), functions SP_from_C and rho_t_exact.
   *  g/kg: Millero et al. 2008, 35.16504 g/kg at practical salinity 35.
   *  Specific gravity: EOS-80 (Millero & Poisson 1981), tabulated to 0.01; GSW agrees within 1e-5 of gravity. */
  const rows: readonly (readonly [text: string, salinity: number, tolerance: number])[] = [
    ["53.071 mS/cm at 25 °C", 35, 0.002],
    ["50 mS/cm at 25", 32.733, 0.001],
    ["56 mS at 25 °C", 37.184, 0.001],
    ["50.0 mS/cm at 20 C uncompensated", 36.7131, 0.01],
    ["20 mS/cm at 22 °C as measured", 12.7404, 0.01],
    ["50000 µS/cm at 20 °C uncompensated", 36.7131, 0.01],
    ["5 S/m at 20 °C uncompensated", 36.7131, 0.01],
    ["35.16504 g/kg", 35, 1e-6],
    ["36.036 g/L at 20 °C", 35, 0.002],
    ["35.986 g/L", 35, 0.002],
    ["30.731 g/L at 77 °F", 30, 0.002],
    ["1.026 SG 25/25", 34.51, 0.006],
    ["1.026 SG 20/20", 34.21, 0.006],
    ["1.026 SG 60/60 °F", 33.89, 0.006],
    ["1.026 SG 15.6/4", 35.18, 0.006],
    ["1.026 SG 20/4", 36.59, 0.006],
    ["1.020 (25/25)", 26.57, 0.006],
    ["1.0264 (25/25)", 35.04, 0.01],
    ["35 ppt", 35, 0],
    ["35 psu", 35, 0],
  ];
  it.each(rows)("%s is practical salinity %d", (text, salinity, tolerance) => {
    const read = readSalinity(text, { decimal: "point" });
    const best = read.kind === "read" ? read.value.salinity.best : Number.NaN;
    expect(Math.abs(best - salinity)).toBeLessThanOrEqual(tolerance);
  });
});
