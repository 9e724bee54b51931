import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Kilograms,
  type Litres,
  type PracticalSalinity,
} from "../../../../src/core/quantity/units.ts";
import { yieldFromBatch } from "../../../../src/core/water/yield-from-batch.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const ppt = (s: number, error = 0) =>
  between(as<PracticalSalinity>(s - error), as<PracticalSalinity>(s + error));
const at = exactly(as<DegreesC>(25));
const kg = (m: number) => exactly(as<Kilograms>(m));
const batch = (kind: "water" | "final", v: number, saltKg: number, s: number, error = 0) =>
  yieldFromBatch({
    volume: { kind, litres: exactly(as<Litres>(v)) },
    salt: kg(saltKg),
    salinity: ppt(s, error),
    temperature: at,
  });

describe("the yield of a product", () => {
  it("from the water put in", () => {
    // gsw 3.6.16 densities and conservation of salt.
    expect(answered(batch("water", 10, 0.4, 33.5)).value.yieldFactor.best).toBeCloseTo(0.8726, 3);
  });

  it("from the volume it became", () => {
    // 100 L at 35 and 25 °C hold 3.59859 kg of salt (same source): over 4.2336 kg that is 0.85.
    expect(answered(batch("final", 100, 4.2336, 35)).value.yieldFactor.best).toBeCloseTo(0.85, 4);
  });

  it("is as vague as the salinity reading", () => {
    const answer = answered(batch("final", 100, 4.2336, 35, 0.7));
    expect(answer.driver?.input).toBe("salinity measured");
    // 0.7 of 35 is 2 % of the salt, and a little more for the density.
    expect(answer.value.yieldFactor.low).toBeCloseTo(0.85 * 0.98, 2);
    expect(answer.value.yieldFactor.high).toBeCloseTo(0.85 * 1.02, 2);
  });

  it("refuses one that is certainly above 1, and cuts one that only may be", () => {
    expect(refused(batch("final", 100, 3.4, 35))).toBe("yield-impossible");
    const doubtful = answered(batch("final", 100, 3.55, 35, 1));
    expect(raised(doubtful)).toContain("yield-above-one");
    expect(doubtful.value.yieldFactor).toMatchObject({ best: 1, high: 1 });
    expect(doubtful.value.yieldFactor.low).toBeLessThan(1);
  });

  it("doubts one below the wettest published recipe", () => {
    expect(raised(batch("final", 100, 4.6, 35))).toContain("yield-below-recipes");
    expect(raised(batch("final", 100, 4.0, 35))).not.toContain("yield-below-recipes");
  });

  it("needs salt, water and a reading", () => {
    expect(refused(batch("water", 10, 0, 35))).toBe("not-credible");
    expect(refused(batch("water", 0, 0.4, 35))).toBe("not-credible");
    expect(refused(batch("water", 10, 0.4, 0))).toBe("not-credible");
  });
});
