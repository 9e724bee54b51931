import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Litres,
  type PracticalSalinity,
} from "../../../../src/core/quantity/units.ts";
import { adjustSalinity, type Means } from "../../../../src/core/water/adjust-salinity.ts";
import type { YieldFactor } from "../../../../src/core/water/salt-product.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const ppt = (s: number) => exactly(as<PracticalSalinity>(s));
const ask = (v: number, now: number, target: number, means: Means, t = 25, dailyCap?: number) =>
  adjustSalinity({
    volume: exactly(as<Litres>(v)),
    now: ppt(now),
    target: ppt(target),
    temperature: exactly(as<DegreesC>(t)),
    means,
    dailyCap: dailyCap === undefined ? undefined : as<PracticalSalinity>(dailyCap),
  });
const fresh: Means = { kind: "fresh water" };
const swap = (s: number): Means => ({ kind: "exchange", salinity: ppt(s) });
const brine = (s: number): Means => ({ kind: "brine", salinity: ppt(s) });
const dry = (y: number): Means => ({ kind: "dry salt", yieldFactor: exactly(as<YieldFactor>(y)) });

describe("litres to exchange or to add", () => {
  // gsw 3.6.16 densities and conservation of mass and of salt.
  it.each([
    {
      what: "lower with fresh, exchanging",
      v: 200,
      now: 38,
      target: 35,
      means: swap(0),
      t: 25,
      litres: 16.21,
    },
    { what: "lower with weaker water", v: 60, now: 36.5, target: 34, means: swap(30), t: 25, litres: 23.15 },
    {
      what: "raise with brine, exchanging",
      v: 200,
      now: 32,
      target: 35,
      means: swap(45),
      t: 25,
      litres: 45.81,
    },
    { what: "raise a little", v: 150, now: 33, target: 34, means: swap(36), t: 25, litres: 49.93 },
    { what: "lower by adding fresh", v: 250, now: 36.8, target: 35, means: fresh, t: 25, litres: 13.21 },
    { what: "lower much by adding fresh", v: 60, now: 37.5, target: 33, means: fresh, t: 24, litres: 8.413 },
    // Back along the row above: 29.2921 comes of 100 L at 35 and 20 L fresh, so 20 L fresh go into the 35.
    { what: "dilute to a known blend", v: 100, now: 35, target: 29.2921, means: fresh, t: 25, litres: 20 },
  ])("$what", ({ v, now, target, means, t, litres }) => {
    expect(answered(ask(v, now, target, means, t)).value.addL.best).toBeCloseTo(litres, 2);
  });

  it("by brine: what 100 L at 35 and 20 L of fresh make, seen from the fresh side", () => {
    // Pouring 100 L at 35 into 20 L of fresh gives 29.2921 (gsw 3.6.16).
    const { value } = answered(ask(20, 0, 29.2921, brine(35)));
    expect(value.addL.best).toBeCloseTo(100, 1);
    expect(value.resultingVolumeL.best).toBeCloseTo(120, 1);
    expect(value.removeL.best).toBe(0);
  });

  it("an exchange takes out what it puts in", () => {
    const { value } = answered(ask(200, 38, 35, swap(0)));
    expect(value.removeL).toEqual(value.addL);
  });
});

describe("dry salt", () => {
  it.each([
    { v: 200, now: 33, target: 35, y: 1, t: 25, grams: 425.6 },
    { v: 200, now: 33, target: 35, y: 0.85, t: 25, grams: 504 },
    { v: 40, now: 0, target: 5, y: 0.85, t: 20, grams: 237.4 },
  ])("$v L from $now to $target, yield $y", ({ v, now, target, y, t, grams }) => {
    const answer = answered(ask(v, now, target, dry(y), t));
    expect(answer.value.saltKg.best * 1000).toBeCloseTo(grams, 0);
    expect(raised(answer)).toContain("dissolve-before-adding");
  });

  it("of unknown yield says so and carries the range", () => {
    const answer = answered(ask(200, 33, 35, { kind: "dry salt" }));
    expect(raised(answer)).toContain("yield-unknown");
    expect(answer.value.saltKg.low).toBeLessThan(0.44);
    expect(answer.value.saltKg.high).toBeGreaterThan(0.5);
    expect(answer.driver?.input).toBe("yield factor");
  });
});

describe("pace", () => {
  it("a rise of 3 ppt takes 3 days at 1 ppt a day (common practice, no source)", () => {
    const answer = answered(ask(200, 32, 35, swap(45)));
    expect(answer.value.pace).toEqual({ days: 3, stepPerDay: 1, capPerDay: 1 });
    expect(answer.value.schedule.map((day) => day.to)).toEqual([33, 34, 35]);
    expect(raised(answer)).toContain("salinity-change-rate");
  });

  it("a fall may go at 2 ppt a day (common practice, no source)", () => {
    expect(answered(ask(200, 38, 35, fresh)).value.pace.days).toBe(2);
  });

  it("follows the member's own limit", () => {
    expect(answered(ask(200, 32, 35, swap(45), 25, 0.5)).value.pace.days).toBe(6);
    expect(raised(ask(200, 32, 35, swap(45), 25, 5))).not.toContain("salinity-change-rate");
  });

  it("three limits exactly are three days, though the binary digits say a hair more", () => {
    expect(answered(ask(200, 33, 33.6, swap(45), 25, 0.2)).value.pace.days).toBe(3);
  });

  it("adds up to the same salt, spread or not", () => {
    const { saltKg, schedule } = answered(ask(200, 32, 35, dry(0.9))).value;
    expect(schedule.reduce((sum, day) => sum + day.saltKg, 0)).toBeCloseTo(saltKg.best, 9);
  });

  it("takes a little more water when an exchange is spread", () => {
    const { addL, schedule } = answered(ask(200, 32, 35, swap(45))).value;
    expect(schedule.reduce((sum, day) => sum + day.addL, 0)).toBeGreaterThan(addL.best);
  });
});

describe("what cannot be", () => {
  it.each([
    ["salt to lower", ask(200, 35, 33, dry(0.9)), "salt-cannot-lower"],
    ["fresh water to raise", ask(200, 33, 35, fresh), "target-not-between-waters"],
    ["fresh water down to nothing", ask(200, 33, 0, fresh), "target-not-between-waters"],
    ["past the new water", ask(200, 33, 36, swap(35)), "target-not-between-waters"],
    ["brine up to its own salinity", ask(200, 33, 45, brine(45)), "target-not-between-waters"],
    ["the same water", ask(200, 33, 35, swap(33)), "target-not-between-waters"],
    ["an endless pace", ask(200, 33, 35, swap(40), 25, 0), "not-credible"],
  ] as const)("%s", (_, result, code) => expect(refused(result)).toBe(code));
});

it("is nothing to do when the tank is at its target", () => {
  for (const means of [fresh, swap(0), brine(60), dry(0.9)]) {
    const { value } = answered(ask(200, 35, 35, means));
    expect([value.addL.best, value.saltKg.best, value.pace.days, value.schedule]).toEqual([0, 0, 0, []]);
  }
});

it("warns when the change is smaller than the error of the reading", () => {
  const answer = adjustSalinity({
    volume: exactly(as<Litres>(200)),
    now: between(as<PracticalSalinity>(33.7), as<PracticalSalinity>(35.3)),
    target: ppt(35),
    temperature: exactly(as<DegreesC>(25)),
    means: swap(45),
  });
  expect(raised(answer)).toContain("change-within-error");
  expect(answered(answer).value.addL.low).toBeGreaterThanOrEqual(0);
});
