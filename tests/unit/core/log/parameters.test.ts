import { describe, expect, it } from "vitest";
import {
  isPossible,
  PARAMETERS,
  parameter,
  parameterNamed,
  unitText,
} from "../../../../src/core/log/parameters.ts";

describe("the catalogue of parameters", () => {
  it("gives every spelling to one parameter only", () => {
    const spellings = PARAMETERS.flatMap((each) => each.spellings);
    expect(new Set(spellings).size).toBe(spellings.length);
    for (const each of PARAMETERS) {
      for (const spelling of each.spellings) expect(parameterNamed(spelling.toUpperCase())).toBe(each);
    }
  });

  it("keeps usual ranges within possible ones", () => {
    for (const each of PARAMETERS) {
      expect(Object.keys(each.usual)).not.toHaveLength(0);
      for (const { min, max } of Object.values(each.usual)) {
        expect(min).toBeLessThan(max);
        expect(isPossible(each, min) && isPossible(each, max)).toBe(true);
      }
    }
  });

  // Natural sea water of 35: Ca 412, Mg 1284 mg/kg, alkalinity 2.3–2.4 meq/kg, pH about 8.1 (from
  // memory: any table of the composition of sea water). A catalogue that calls it impossible is wrong.
  it.each([
    ["salinity", 35],
    ["calcium", 420],
    ["magnesium", 1310],
    ["alkalinity", 2.4],
    ["ph", 8.1],
  ] as const)("finds natural sea water possible: %s %s", (id, value) => {
    expect(isPossible(parameter(id), value)).toBe(true);
  });

  it("finds nothing possible that is no number", () => {
    expect(isPossible(parameter("nitrate"), Number.NaN)).toBe(false);
    expect(isPossible(parameter("nitrate"), Number.POSITIVE_INFINITY)).toBe(false);
  });

  it("says units with their basis", () => {
    expect(unitText(parameter("ammonia"))).toBe("mg/L as N");
    expect(unitText(parameter("ph"))).toBe("");
  });

  it("knows no parameter of another name", () => {
    for (const word of ["", "constructor", "__proto__", "no", "nitratee"]) {
      expect(parameterNamed(word)).toBeUndefined();
    }
  });
});
