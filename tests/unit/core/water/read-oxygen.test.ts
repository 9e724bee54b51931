import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type DegreesC, type PracticalSalinity } from "../../../../src/core/quantity/units.ts";
import { oxygenReading } from "../../../../src/core/water/oxygen-reading.ts";
import type { PercentSaturation } from "../../../../src/core/water/oxygen-saturation.ts";
import { readAir } from "../../../../src/core/water/read-air.ts";
import { readOxygen } from "../../../../src/core/water/read-oxygen.ts";

describe("the air a tank stands in", () => {
  // Units by definition (SI brochure, NIST SP 811): 1 ft = 0.3048 m, 1 atm = 101.325 kPa = 760 mmHg, 1 bar = 100 kPa.
  it.each([
    ["650 m", "altitude", 650],
    ["1,5 km", "altitude", 1500],
    ["1000 ft", "altitude", 304.8],
    ["95 kPa", "pressure", 95],
    ["950 hPa", "pressure", 95],
    ["950 mbar", "pressure", 95],
    ["1 atm", "pressure", 101.325],
    ["760 mmHg", "pressure", 101.325],
  ])("%s is an %s of %d", (text, kind, expected) => {
    const read = readAir(text, {});
    const value = read.kind === "read" ? read.value : undefined;
    expect(value?.kind).toBe(kind);
    expect(value?.kind === "altitude" ? value.altitude.best : value?.pressure.best).toBeCloseTo(expected, 3);
  });

  it("asks for a unit that is missing, and refuses one that is none", () => {
    const read = readAir("1013", {});
    expect(read.kind === "ask" && read.choices.map(({ text }) => readAir(text, {}).kind)).toEqual(
      Array.from({ length: 4 }, () => "read"),
    );
    expect(readAir("3 cats", {}).kind).toBe("unreadable");
    expect(readAir("high up", {}).kind).toBe("unreadable");
  });
});

describe("an oxygen reading", () => {
  it.each([
    ["6.2 mg/L", "content", 6.2],
    ["6.2 ppm", "content", 6.2],
    ["92 %", "share", 92],
    ["112 % saturation", "share", 112],
    ["92 percent", "share", 92],
  ])("%s is a %s of %d", (text, kind, expected) => {
    const read = readOxygen(text, {});
    const value = read.kind === "read" ? read.value : undefined;
    expect(value?.kind).toBe(kind);
    expect(value?.kind === "content" ? value.mgPerL.best : value?.percent.best).toBeCloseTo(expected, 9);
  });

  it("asks for a bare number's unit, refuses a negative share", () => {
    expect(readOxygen("7", {}).kind).toBe("ask");
    expect(readOxygen("-7 %", {}).kind).toBe("unreadable");
  });

  it("carries the range of a share to the content", () => {
    const answer = oxygenReading(
      { kind: "share", percent: between(as<PercentSaturation>(90), as<PercentSaturation>(100)) },
      exactly(as<PracticalSalinity>(35)),
      exactly(as<DegreesC>(25)),
      undefined,
    );
    // Benson & Krause 1984: 6.7721 mg/L at saturation.
    expect(answer.kind === "answer" && answer.value.mgPerL.low).toBeCloseTo(0.9 * 6.7721, 3);
    expect(answer.kind === "answer" && answer.value.mgPerL.high).toBeCloseTo(6.7721, 3);
  });
});
