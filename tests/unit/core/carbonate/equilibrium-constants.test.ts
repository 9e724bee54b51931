import { describe, expect, it } from "vitest";
import {
  alkalinityFromCarbonPH,
  pHFromAlkalinityFugacity,
} from "../../../../src/core/carbonate/carbonate-system.ts";
import * as constants from "../../../../src/core/carbonate/equilibrium-constants.ts";
import { convertPH } from "../../../../src/core/carbonate/ph-scales.ts";
import {
  as,
  type DegreesC,
  type PH,
  type PracticalSalinity,
  type Quantity,
} from "../../../../src/core/quantity/units.ts";

const s35 = as<PracticalSalinity>(35);
const t25 = as<DegreesC>(25);

// Check values at salinity 35 and 25 °C printed in Dickson, Sabine & Christian 2007, chapter 5; from memory.
it.each([
  ["K0", constants.lnK0(s35, t25), -3.5617, 4],
  ["KB", constants.lnKB(s35, t25), -19.7964, 4],
  ["KW", constants.lnKW(s35, t25), -30.434, 3],
  ["KS", constants.lnKS(s35, t25), -2.3, 2],
])("ln %s is as printed in the guide", (_name, value, printed, digits) => {
  expect(value).toBeCloseTo(printed, digits);
});

// pH of aired and stuffy sea water at 35 and 25 °C, from a separate program with the same constants
// (two digits printed); alkalinity in µmol/kg = meq/L × 1000 / 1.02334.
describe.each([
  [1.5, [7.87, 7.61, 7.45, 7.24]],
  [2.5, [8.06, 7.81, 7.65, 7.45]],
  [4.0, [8.23, 7.99, 7.84, 7.64]],
])("alkalinity %s meq/L", (meq, expected) => {
  it.each([400, 800, 1200, 2000].map((air, index) => [air, expected[index]] as const))(
    "in balance with %s µatm",
    (air, pH) => {
      const alkalinity = as<Quantity<"µmol/kg">>((meq * 1000) / 1.02334);
      const found = pHFromAlkalinityFugacity(alkalinity, as<Quantity<"µatm">>(air), s35, t25);
      expect(Math.abs(found - Number(pH))).toBeLessThanOrEqual(0.007);
    },
  );
});

describe("pH scales at salinity 35 and 25 °C", () => {
  const fromTotal = (scale: "NBS" | "free" | "seawater") =>
    convertPH(as<PH>(8), "total", scale, s35, t25) - 8;

  it("ordinary buffers read 0.137 above the total scale", () => {
    // log₁₀ of the seacarb library's printed fH of 0.7134043 is −0.1467; fluoride takes 0.01 back.
    expect(fromTotal("NBS")).toBeCloseTo(0.137, 2);
  });
  it("the free scale reads about 0.11 above, the sea-water scale about 0.01 below", () => {
    // Zeebe & Wolf-Gladrow 2001, CO2 in Seawater, section 1.1: differences of about 0.11 and 0.01; from memory.
    expect(fromTotal("free")).toBeCloseTo(0.11, 2);
    expect(fromTotal("seawater")).toBeCloseTo(-0.01, 2);
  });
});

it("counts free acid against alkalinity, with what sulphate holds", () => {
  // Water without carbon at pH (total) 5: −10 µmol/kg of hydrogen, 415.7 × 2.527e-9 / 1e-5 = 0.105 of borate,
  // and 6.07e-14 / 1e-5 = 0.006 of hydroxide (KB and KW as above).
  const alkalinity = alkalinityFromCarbonPH(as<Quantity<"µmol/kg">>(0), as<PH>(5), s35, t25);
  expect(alkalinity).toBeCloseTo(-9.889, 2);
});

it("throws where no pH can go with the figures", () => {
  expect(() =>
    pHFromAlkalinityFugacity(as<Quantity<"µmol/kg">>(-1e6), as<Quantity<"µatm">>(400), s35, t25),
  ).toThrow(RangeError);
});
