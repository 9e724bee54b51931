import { describe, expect, it } from "vitest";
import { displacement } from "../../../../src/core/plant/displacement.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { answered, refused } from "../../../support/answers.ts";

const kg = (value: number) => exactly(as<never>(value));

describe("what rock and sand push aside", () => {
  // Archimedes: 240 kg ÷ 2800 kg/m³ = 85.7 L; the ends of the range are calcite (2710) and aragonite (2930).
  it("counts the solid of rock only, with the range of its minerals", () => {
    const { value } = answered(displacement({ rock: { mass: kg(240), weighed: "dry" } }));
    expect(value.rockL.best).toBeCloseTo(85.71, 2);
    expect(value.rockL.low).toBeCloseTo(240 / 2.93, 2);
    expect(value.rockL.high).toBeCloseTo(240 / 2.71, 2);
    expect(value.totalL).toEqual(value.rockL);
  });

  it("takes less for the same mass weighed wet, and is less sure of it", () => {
    const dry = answered(displacement({ rock: { mass: kg(100), weighed: "dry" } })).value.rockL;
    const wet = answered(displacement({ rock: { mass: kg(100), weighed: "wet and drained" } })).value.rockL;
    expect(wet.best).toBeLessThan(dry.best);
    expect(wet.high - wet.low).toBeGreaterThan(dry.high - dry.low);
  });

  // 2.60 m² × 40 mm = 104 L of bed; at porosity 0.40 that is 62.4 L of grains and 41.6 L of water.
  it("parts a sand bed into grains and water", () => {
    const { value } = answered(
      displacement({ sand: { areaM2: exactly(as(2.6)), depthMm: exactly(as(40)) } }),
    );
    expect(value.sandL.best).toBeCloseTo(62.4, 6);
    expect(value.sandPoreWaterL.best).toBeCloseTo(41.6, 6);
  });

  it("adds sand known by its mass, and says nothing of its pore water", () => {
    const { value } = answered(
      displacement({ rock: { mass: kg(28), weighed: "dry" }, sand: { dryMass: kg(56) } }),
    );
    expect(value.totalL.best).toBeCloseTo(30, 6); // 28 ÷ 2.8 + 56 ÷ 2.8
    expect(value.sandPoreWaterL.best).toBe(0);
  });

  it("names what makes the range wide", () => {
    const mass = between(as<never>(10), as<never>(30));
    expect(answered(displacement({ rock: { mass, weighed: "dry" } })).driver?.input).toBe("rock mass");
  });

  it("refuses nothing at all, and figures that cannot be", () => {
    expect(refused(displacement({}))).toBe("nothing-named");
    expect(refused(displacement({ rock: { mass: kg(-1), weighed: "dry" } }))).toBe("unusable-figure");
    expect(refused(displacement({ rock: { mass: kg(Number.NaN), weighed: "dry" } }))).toBe("unusable-figure");
  });
});
