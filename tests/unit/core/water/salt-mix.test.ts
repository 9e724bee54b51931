import { describe, expect, it } from "vitest";
import { between, type Estimate, exactly } from "../../../../src/core/quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Litres,
  type PracticalSalinity,
} from "../../../../src/core/quantity/units.ts";
import { saltMix } from "../../../../src/core/water/salt-mix.ts";
import type { YieldFactor } from "../../../../src/core/water/salt-product.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const litres = (v: number) => exactly(as<Litres>(v));
const ppt = (s: number) => exactly(as<PracticalSalinity>(s));
const celsius = (t: number) => exactly(as<DegreesC>(t));
const yieldOf = (y: number) => exactly(as<YieldFactor>(y));
const final = (v: number) => ({ kind: "final" as const, litres: litres(v) });
const water = (v: number) => ({ kind: "water" as const, litres: litres(v) });

describe("a batch of salt water", () => {
  // TEOS-10 reference library densities (gsw 3.6.16) and conservation of mass and of salt.
  it.each([
    { volume: final(100), s: 35, t: 25, y: 1, saltKg: 3.5986, waterL: 99.03, finalL: 100 },
    { volume: final(100), s: 35, t: 25, y: 0.85, saltKg: 4.2336, waterL: 98.39, finalL: 100 },
    { volume: water(19), s: 35, t: 20, y: 0.85, saltKg: 0.8185, waterL: 19, finalL: 19.31 },
    { volume: water(19), s: 35, t: 20, y: 1, saltKg: 0.6912, waterL: 19, finalL: 19.18 },
  ])("$volume.kind $volume.litres.best L at $s, yield $y", ({ volume, s, t, y, saltKg, waterL, finalL }) => {
    const { value } = answered(
      saltMix({ volume, salinity: ppt(s), temperature: celsius(t), yieldFactor: yieldOf(y) }),
    );
    expect(value.saltKg.best).toBeCloseTo(saltKg, 3);
    expect(value.waterL.best).toBeCloseTo(waterL, 2);
    expect(value.finalVolumeL.best).toBeCloseTo(finalL, 2);
  });

  // Grams of product per litre at 25 °C, from the same balance: final volume left, water put in right.
  it.each([
    { s: 20, y: 0.9, perFinalL: 22.6, perWaterL: 22.77 },
    { s: 33, y: 0.95, perFinalL: 35.66, perWaterL: 36.06 },
    { s: 36, y: 0.85, perFinalL: 43.58, perWaterL: 44.31 },
  ])("grams per litre at $s, yield $y", ({ s, y, perFinalL, perWaterL }) => {
    const ask = (volume: ReturnType<typeof final> | ReturnType<typeof water>) =>
      answered(saltMix({ volume, salinity: ppt(s), temperature: celsius(25), yieldFactor: yieldOf(y) }));
    expect(ask(final(1)).value.saltKg.best * 1000).toBeCloseTo(perFinalL, 2);
    expect(ask(water(1)).value.saltKg.best * 1000).toBeCloseTo(perWaterL, 2);
  });

  it("carries the range of an unmeasured product, and names it as what to measure", () => {
    const answer = answered(saltMix({ volume: final(100), salinity: ppt(35), temperature: celsius(25) }));
    // 3.59859 kg of salt over yields of 0.97, 0.90 and 0.84.
    expect(answer.value.saltKg.low).toBeCloseTo(3.7099, 3);
    expect(answer.value.saltKg.best).toBeCloseTo(3.9984, 3);
    expect(answer.value.saltKg.high).toBeCloseTo(4.284, 3);
    expect(answer.driver).toEqual({ input: "yield factor", share: 1 });
    expect(raised(answer)).toEqual(
      expect.arrayContaining(["yield-unknown", "mix-apart", "mains-near-water"]),
    );
  });

  it("warns of what is heavy only when it is", () => {
    const ask = (v: number) =>
      raised(saltMix({ volume: final(v), salinity: ppt(35), temperature: celsius(25) }));
    expect(ask(20)).not.toContain("heavy-lift");
    expect(ask(30)).toContain("heavy-lift"); // 30.7 kg, above 25 (common practice, no source)
    expect(ask(60)).not.toContain("heavy-vessel");
    expect(ask(400)).toContain("heavy-vessel");
  });
});

describe("a vessel that already holds water", () => {
  const ask = (
    volume: ReturnType<typeof final> | ReturnType<typeof water>,
    heldL: number,
    heldPpt: number,
    target = 35,
  ) =>
    saltMix({
      volume,
      salinity: ppt(target),
      temperature: celsius(25),
      yieldFactor: yieldOf(1),
      held: { litres: litres(heldL), salinity: ppt(heldPpt) },
    });

  it("half full of the wanted water takes half the salt and half the water", () => {
    const { value } = answered(ask(final(100), 50, 35));
    expect(value.saltKg.best).toBeCloseTo(3.5986 / 2, 3);
    expect(value.waterL.best).toBeCloseTo(99.03 / 2, 2);
  });

  it("with fresh water in it takes all the salt", () => {
    const { value } = answered(ask(final(100), 40, 0));
    expect(value.saltKg.best).toBeCloseTo(3.5986, 3);
    expect(value.waterL.best).toBeCloseTo(99.03 - 40, 2);
  });

  it("with salt water in it, fresh water added: salt to bring the blend up", () => {
    // 100 L at 35 and 20 L fresh blend to 29.2921 (gsw 3.6.16 densities); 122.2752 kg × (35.16504 −
    // 29.43022) g/kg ÷ (1000 − 35.16504) = 0.72678 kg, by hand.
    const { value } = answered(ask(water(20), 100, 35));
    expect(value.saltKg.best).toBeCloseTo(0.7268, 3);
  });

  it("refuses what adding cannot reach", () => {
    expect(refused(ask(final(100), 120, 20))).toBe("vessel-too-full");
    expect(refused(ask(final(100), 99.5, 0))).toBe("vessel-too-full");
    expect(refused(ask(final(100), 90, 45))).toBe("vessel-too-salty");
    expect(refused(ask(water(1), 100, 40))).toBe("vessel-too-salty");
  });
});

describe("what no batch can be", () => {
  const ask = (volumeL: Estimate<Litres>, s: number, y: number) =>
    saltMix({
      volume: { kind: "final", litres: volumeL },
      salinity: ppt(s),
      temperature: celsius(25),
      yieldFactor: yieldOf(y),
    });

  it.each([
    ["no volume", ask(litres(0), 35, 0.9)],
    ["a negative salinity", ask(litres(10), -1, 0.9)],
    ["no yield", ask(litres(10), 35, 0)],
    ["a yield above one", ask(litres(10), 35, 1.2)],
    ["no number", ask(litres(Number.NaN), 35, 0.9)],
  ])("%s", (_, result) => expect(refused(result)).toBe("not-credible"));

  it("a product weaker than the water wanted", () => {
    expect(refused(ask(litres(10), 60, 0.055))).toBe("product-too-weak");
  });

  it("a vague volume widens the answer", () => {
    const vague = answered(ask(between(as<Litres>(90), as<Litres>(110)), 35, 1));
    // One ranged input: the ends are the ends of the sum, and salt goes with volume.
    expect(vague.value.saltKg.low).toBeCloseTo(0.9 * 3.5986, 3);
    expect(vague.value.saltKg.high).toBeCloseTo(1.1 * 3.5986, 3);
    expect(vague.driver?.input).toBe("volume");
  });
});
