import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type AlkalinityUnit, convertAlkalinity } from "../../src/core/carbonate/alkalinity-units.ts";
import * as system from "../../src/core/carbonate/carbonate-system.ts";
import { MINERAL_SALTS, type MineralSalt, saltPerUnit } from "../../src/core/carbonate/mineral-salts.ts";
import { convertPH, type PHScale } from "../../src/core/carbonate/ph-scales.ts";
import {
  as,
  type DegreesC,
  type MicromolPerKg,
  type PH,
  type PracticalSalinity,
} from "../../src/core/quantity/units.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const salinity = number(19, 43).map((value) => as<PracticalSalinity>(value));
const temperature = number(2, 35).map((value) => as<DegreesC>(value));
const alkalinity = number(1000, 5000).map((value) => as<MicromolPerKg>(value));
const pH = number(7, 8.4).map((value) => as<PH>(value));

describe("the carbonate system", () => {
  it("comes back to the pH it started from, by carbon and by fugacity", () => {
    fc.assert(
      fc.property(alkalinity, pH, salinity, temperature, (ta, start, s, t) => {
        const carbon = system.carbonFromAlkalinityPH(ta, start, s, t);
        expect(system.pHFromAlkalinityCarbon(ta, carbon, s, t)).toBeCloseTo(start, 8);
        const fugacity = system.fugacityFromAlkalinityPH(ta, start, s, t);
        expect(system.pHFromAlkalinityFugacity(ta, fugacity, s, t)).toBeCloseTo(start, 8);
        expect(system.alkalinityFromCarbonPH(carbon, start, s, t)).toBeCloseTo(ta, 6);
      }),
    );
  });

  it("has less carbon dioxide at a higher pH, and a higher pH with more alkalinity", () => {
    fc.assert(
      fc.property(alkalinity, pH, salinity, temperature, (ta, start, s, t) => {
        const fugacity = (at: number) => system.fugacityFromAlkalinityPH(ta, as<PH>(at), s, t);
        expect(fugacity(start + 0.1)).toBeLessThan(fugacity(start));
        const air = as<system.Microatm>(420);
        const more = as<MicromolPerKg>(ta + 100);
        expect(system.pHFromAlkalinityFugacity(more, air, s, t)).toBeGreaterThan(
          system.pHFromAlkalinityFugacity(ta, air, s, t),
        );
      }),
    );
  });

  it("keeps its alkalinity, and loses pH, when carbon dioxide is added", () => {
    fc.assert(
      fc.property(alkalinity, salinity, temperature, number(200, 2000), (ta, s, t, air) => {
        const aired = system.pHFromAlkalinityFugacity(ta, as<system.Microatm>(air), s, t);
        const stuffy = system.pHFromAlkalinityFugacity(ta, as<system.Microatm>(air * 2), s, t);
        expect(stuffy).toBeLessThan(aired);
        const carbon = system.carbonFromAlkalinityPH(ta, stuffy, s, t);
        expect(system.alkalinityFromCarbonPH(carbon, stuffy, s, t)).toBeCloseTo(ta, 6);
      }),
    );
  });
});

it("converts pH scales there and back, and keeps them in order", () => {
  const scale = fc.constantFrom<PHScale>("NBS", "total", "seawater", "free");
  fc.assert(
    fc.property(pH, scale, scale, salinity, temperature, (start, from, to, s, t) => {
      const there = convertPH(start, from, to, s, t);
      expect(convertPH(there, to, from, s, t)).toBeCloseTo(start, 12);
      // More of the hydrogen counted means a lower figure.
      expect(convertPH(start, "total", "seawater", s, t)).toBeLessThan(start);
      expect(convertPH(start, "total", "free", s, t)).toBeGreaterThan(start);
    }),
  );
});

it("converts alkalinity there and back", () => {
  const unit = fc.constantFrom<AlkalinityUnit>("dKH", "meq/L", "ppm CaCO3");
  fc.assert(
    fc.property(number(0.1, 400), unit, unit, (value, from, to) => {
      expect(convertAlkalinity(convertAlkalinity(value, from, to), to, from)).toBeCloseTo(value, 9);
    }),
  );
});

it("needs more of a hydrate than of the dry salt, by the water it holds", () => {
  // Molar masses: standard atomic weights; water 18.0153 g/mol.
  const pairs: readonly (readonly [MineralSalt, MineralSalt, number])[] = [
    ["CaCl2.2H2O", "CaCl2", 2],
    ["MgCl2.6H2O", "MgCl2", 6],
    ["MgSO4.7H2O", "MgSO4", 7],
    ["Na2CO3.10H2O", "Na2CO3", 10],
  ];
  for (const [hydrate, dry, waters] of pairs) {
    const extra = saltPerUnit(hydrate) / saltPerUnit(dry) - 1;
    expect(extra).toBeCloseTo((waters * 18.0153) / MINERAL_SALTS[dry].molarMass, 3);
  }
});
