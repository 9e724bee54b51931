import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Litres,
  type MilliSiemensPerCm,
  type PracticalSalinity,
  type SpecificGravity,
} from "../../../../src/core/quantity/units.ts";
import { artificialSeawater } from "../../../../src/core/water/artificial-seawater.ts";
import { instrumentReading } from "../../../../src/core/water/instrument-reading.ts";
import type { Instrument } from "../../../../src/core/water/instruments.ts";
import { naturalIon } from "../../../../src/core/water/natural-ions.ts";
import { brineScaleReading, seawaterRefractiveIndex } from "../../../../src/core/water/refractometer.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const celsius = (t: number) => exactly(as<DegreesC>(t));
const ppt = (s: number) => exactly(as<PracticalSalinity>(s));
const SIXTY_F = (60 - 32) / 1.8;

describe("a hydrometer", () => {
  const read = (
    reading: number,
    sampleC: number,
    madeC: number,
    material: Extract<Instrument, { kind: "hydrometer" }>["material"] = "glass",
  ) =>
    instrumentReading({
      kind: "hydrometer",
      reading: exactly(as<SpecificGravity>(reading)),
      sample: celsius(sampleC),
      calibrationC: as<DegreesC>(madeC),
      referenceC: as<DegreesC>(madeC),
      material,
    });

  // gsw 3.6.16 densities, glass by ISO 1768:1975.
  it("made for 60 °F, 1.0230 in water of 25 °C is 32.89", () => {
    expect(answered(read(1.023, 25, SIXTY_F)).value.salinity.best).toBeCloseTo(32.89, 1);
  });
  it("made for 25 °C, 1.0260 in water of 20 °C is 32.82", () => {
    expect(answered(read(1.026, 20, 25)).value.salinity.best).toBeCloseTo(32.82, 1);
  });
  it("at its own temperature needs no correction, whatever it is made of", () => {
    for (const material of ["glass", "acrylic", "not known"] as const) {
      expect(answered(read(1.026, 25, 25, material)).value.salinity.best).toBeCloseTo(34.51, 1);
    }
  });
  it("of acrylic hardly moves: 1.02672 at 20 °C and 1.02607 at 28 °C are both 35", () => {
    expect(answered(read(1.02672, 20, 25, "acrylic")).value.salinity.best).toBeCloseTo(35, 1);
    expect(answered(read(1.02607, 28, 25, "acrylic")).value.salinity.best).toBeCloseTo(35, 1);
  });
  it("of unknown material leaves the range between the two", () => {
    const unknown = answered(read(1.026, 20, 25, "not known"));
    const glass = answered(read(1.026, 20, 25, "glass")).value.salinity.best;
    const acrylic = answered(read(1.026, 20, 25, "acrylic")).value.salinity.best;
    expect(raised(unknown)).toContain("unknown-expansion");
    expect(unknown.driver?.input).toBe("expansion of the float");
    expect([unknown.value.salinity.low, unknown.value.salinity.high]).toEqual(
      [glass, acrylic].sort((a, b) => a - b),
    );
  });
  it("refuses a reading no seawater gives", () => {
    expect(refused(read(0.99, 25, 25))).toBe("no-such-seawater");
    expect(refused(read(2, 25, 25))).toBe("not-credible");
  });
});

describe("a conductivity meter", () => {
  type Display = Extract<Instrument, { kind: "conductivity meter" }>["display"];
  const read = (c: number, sampleC: number, display: Display) =>
    instrumentReading({
      kind: "conductivity meter",
      reading: exactly(as<MilliSiemensPerCm>(c)),
      sample: celsius(sampleC),
      display,
    });

  // gsw 3.6.16, SP_from_C, the linear compensation undone first.
  it.each([
    [50, 20, { kind: "as measured" }, 36.7131],
    [53, 28, { kind: "at 25 °C" }, 34.9473],
    [53.07, 20, { kind: "at 25 °C, linear", percentPerC: 2 }, 34.8729],
    [50, 28, { kind: "at 25 °C, linear", percentPerC: 1.91 }, 32.6545],
  ] as const)("%d mS/cm at %d °C, shown %o", (c, sampleC, display, expected) => {
    expect(answered(read(c, sampleC, display)).value.salinity.best).toBeCloseTo(expected, 3);
  });

  it("in nearly fresh water says what it cannot tell", () => {
    expect(raised(read(0.5, 20, { kind: "as measured" }))).toContain("not-for-tap-water");
  });
});

describe("a refractometer", () => {
  const read = (s: number, scale: "seawater" | "table salt") =>
    instrumentReading({ kind: "refractometer", reading: ppt(s), scale });

  it("with a seawater scale is taken as it stands", () => {
    expect(answered(read(35, "seawater")).value.salinity.best).toBe(35);
  });

  it("seawater of 35 at 20 °C has the index 1.33941, fresh water 1.33300", () => {
    // Quan & Fry 1995.
    expect(seawaterRefractiveIndex(as<PracticalSalinity>(35), as<DegreesC>(20))).toBeCloseTo(1.33941, 5);
    expect(seawaterRefractiveIndex(as<PracticalSalinity>(0), as<DegreesC>(20))).toBeCloseTo(1.333, 5);
  });

  it("with a table-salt scale shows about 36.4 in seawater of 35, give or take 0.4", () => {
    // Indices of sodium chloride solutions in the CRC Handbook against Quan & Fry 1995.
    expect(Math.abs(brineScaleReading(as<PracticalSalinity>(35)) - 36.4)).toBeLessThan(0.4);
    const answer = answered(read(35, "table salt"));
    expect(Math.abs(answer.value.salinity.best - 33.7)).toBeLessThan(0.4);
    expect(answer.value.salinity.high - answer.value.salinity.low).toBeGreaterThan(0.6);
    expect(raised(answer)).toContain("brine-scale");
  });
});

describe("seawater from single salts", () => {
  it("ten litres by the litre, ASTM D1141-98: 245.3 g of sodium chloride", () => {
    const answer = answered(
      artificialSeawater("substitute ocean water", exactly(as<Litres>(10)), celsius(20)),
    );
    expect(answer.value.salts.find(({ salt }) => salt === "NaCl")?.grams).toBeCloseTo(245.3, 9);
    expect(answer.value.totalSalt.best).toBeCloseTo(0.3603, 4);
    expect(raised(answer)).toEqual(expect.arrayContaining(["weighed-chemicals", "recipe-from-memory"]));
  });

  it("ten kilograms by the kilogram, Kester et al. 1967: 413.07 g weighed, the rest water", () => {
    // Ten kilograms are 9.7719 L at 25 °C and 1023.34 kg/m³.
    const { value } = answered(artificialSeawater("Kester 1967", exactly(as<Litres>(9.77188)), celsius(25)));
    expect(value.solution.best).toBeCloseTo(10, 3);
    expect(value.totalSalt.best).toBeCloseTo(0.41307, 4);
    expect(value.salts.find(({ salt }) => salt === "MgCl2.6H2O")?.grams).toBeCloseTo(108.3, 1);
    expect(value.waterL?.best).toBeCloseTo((10 - 0.41307) / 0.99705, 2);
  });
});

describe("ions of natural seawater", () => {
  it("calcium at 35 and 25 °C: 412.1 mg/kg, 421.7 mg/L", () => {
    // Millero et al. 2008, density of 1023.34 kg/m³.
    const { value } = answered(naturalIon("Ca", ppt(35), celsius(25)));
    expect(value.perKg.best * 1000).toBeCloseTo(412.1, 1);
    expect(value.perLitre.best).toBeCloseTo(421.7, 1);
  });

  it("go with salinity", () => {
    const { value } = answered(
      naturalIon("Mg", between(as<PracticalSalinity>(33), as<PracticalSalinity>(35)), celsius(25)),
    );
    expect(value.perKg.high / value.perKg.low).toBeCloseTo(35 / 33, 9);
  });
});
