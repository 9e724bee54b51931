import { describe, expect, it } from "vitest";
import { convertQuantity } from "../../src/core/quantity/convert-quantity.ts";
import { readConvertible } from "../../src/core/quantity/convertible.ts";
import { exactly } from "../../src/core/quantity/estimate.ts";
import type { Habits } from "../../src/core/quantity/read.ts";
import { as, type DegreesC, type PracticalSalinity } from "../../src/core/quantity/units.ts";
import { answered } from "../support/answers.ts";

const HABITS: Habits = { decimal: "point", conductivity: "at 25 °C" };

function converted(
  text: string,
  to: string,
  water?: { readonly salinity: number; readonly temperatureC: number },
): number {
  const read = readConvertible(text, HABITS, { kind: undefined });
  if (read.kind !== "read" || read.value.is !== "one")
    throw new Error(`${text} was not read as one quantity`);
  const answer = convertQuantity({
    quantity: read.value.quantity,
    to,
    habits: HABITS,
    salinity: water === undefined ? undefined : exactly(as<PracticalSalinity>(water.salinity)),
    temperature: exactly(as<DegreesC>(water?.temperatureC ?? 25)),
  });
  return answered(answer).value.wanted?.estimate.best ?? Number.NaN;
}

describe("conversions with published factors", () => {
  /** Tolerance: half of the last printed figure. SP 811 as printed, from memory where not exact by definition. */
  it.each([
    ["1 US gal", "L", 3.785411784, 1e-9, "NIST SP 811 (2008), B.8: gallon (U.S.), exact from 231 in³"],
    ["1 imp gal", "L", 4.54609, 1e-9, "NIST SP 811, B.8: gallon [Canadian and U.K. (Imperial)], exact"],
    ["1 ft³", "L", 28.31685, 5e-6, "NIST SP 811, B.8: cubic foot"],
    ["1 US fl oz", "mL", 29.57353, 5e-6, "NIST SP 811, B.8: fluid ounce (U.S.)"],
    ["1 lb", "g", 453.59237, 1e-9, "NIST SP 811, B.8: pound (avoirdupois), exact"],
    ["1 hp", "W", 745.6999, 5e-5, "NIST SP 811, B.8: horsepower (550 ft·lbf/s)"],
    ["1 US gal/min", "L/s", 0.0630902, 5e-9, "NIST SP 811, B.8: gallon (U.S.) per minute"],
    ["98.6 °F", "°C", 37, 1e-9, "NIST SP 811, B.8: t/°C = (t/°F − 32)/1.8"],
    ["-40 °C", "°F", -40, 1e-9, "the scales meet at −40: t/°F = 1.8 t/°C + 32"],
    ["9 °F apart", "°C", 5, 1e-9, "NIST SP 811, B.8: 1 °F is 5/9 K"],
    ["1 meq/L", "dKH", 2.8039, 5e-5, "10 mg CaO per litre to the degree; CaO 56.0774 g/mol"],
    ["1 meq/L", "mg/L CaCO3", 50.043, 5e-4, "CaCO₃ 100.0869 g/mol, two equivalents"],
    [
      "nitrate 50 mg/L",
      "mg/L as N",
      11.295,
      5e-4,
      "drinking-water limit 50 mg/L NO₃ = 11.3 mg/L N; 14.0067/62.0049",
    ],
    ["PO4-P 1 mg/L", "mg/L as PO4", 3.0662, 5e-5, "94.9714/30.9738"],
    ["NO3-N 1 mg/L", "µmol/L", 71.394, 5e-4, "1000/14.0067"],
    ["400.78 mg/L Ca", "mmol/L", 10, 1e-9, "Ca 40.078 g/mol"],
    ["35 ppt", "g/kg", 35.16504, 5e-6, "Millero et al. 2008: reference salinity of S 35"],
    ["35 ppt", "chlorinity", 19.374, 5e-4, "Wooster, Lee & Dietrich 1969: S = 1.80655 Cl"],
    ["35 ppt", "mS/cm", 53.071, 0.002, "reference library GSW 3.6, C_from_SP(35, 25, 0)"],
    ["1.026 SG 25/25", "ppt", 34.51, 0.006, "EOS-80 (Millero & Poisson 1981), tabulated to 0.01"],
    ["20 % w/v", "g/L", 200, 1e-9, "definition: g in 100 mL"],
    ["40 % v/v", "mL/L", 400, 1e-9, "definition: mL in 100 mL"],
  ])("%s in %s is %d", (text, to, expected, tolerance) => {
    expect(Math.abs(converted(text, to) - expected)).toBeLessThanOrEqual(tolerance);
  });

  /** UNESCO technical paper 44 (Fofonoff & Millard 1983), EOS-80 at one atmosphere: 1023.343 kg/m³ at 35 and 25 °C. */
  it.each([
    ["1023.343 mg/L", "mg/kg", 1000, 0.005],
    ["1000 mg/kg", "mg/L", 1023.343, 0.005],
    ["2.353689 meq/L", "µmol/kg", 2300, 0.02],
    ["NO3 62.0049 mg/kg", "µmol/L", 1023.343, 0.02],
  ])("%s in %s of sea water is %d", (text, to, expected, tolerance) => {
    const value = converted(text, to, { salinity: 35, temperatureC: 25 });
    expect(Math.abs(value - expected)).toBeLessThanOrEqual(tolerance);
  });
});
