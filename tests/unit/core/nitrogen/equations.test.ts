import { describe, expect, it } from "vitest";
import {
  flowForLowOxygen,
  oxygenOutFixedDemand,
  oxygenOutMonod,
} from "../../../../src/core/nitrogen/chamber-oxygen.ts";
import { FISH } from "../../../../src/core/nitrogen/fish.ts";
import { fishMass } from "../../../../src/core/nitrogen/fish-body.ts";
import { mealAmmoniaPeak, mealAmmoniaSoFar } from "../../../../src/core/nitrogen/meal-pulse.ts";
import { mediaVolume, sphereBedSurface } from "../../../../src/core/nitrogen/media.ts";
import {
  nitrateBeforeChange,
  nitrateRise,
  nitrateWithExchange,
  steadyNitrate,
} from "../../../../src/core/nitrogen/nitrate.ts";
import {
  alkalinityBeforeChange,
  alkalinityDrop,
  filmArea,
  filmUptake,
  firstOrderConstant,
  nitrificationTemperatureFactor,
  oxygenPenetration,
  saltSlowdown,
  tanWithSinglePass,
} from "../../../../src/core/nitrogen/nitrification.ts";
import { convertNitrogen } from "../../../../src/core/nitrogen/nitrogen-units.ts";
import { boxOut } from "../../../../src/core/nitrogen/train-box.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";

const q = <Q extends Quantity<string>>(value: number): Q => as<Q>(value);

describe("forms of nitrogen", () => {
  // Source: standard atomic weights, four printed digits each way.
  it.each([
    ["NO3-N", "NO3", 4.4268],
    ["NO2-N", "NO2", 3.2845],
    ["NH4-N", "NH4", 1.2878],
    ["NH3-N", "NH3", 1.2159],
    ["NO3", "NO3-N", 0.2259],
  ] as const)("1 mg/L %s is so much %s", (from, to, factor) => {
    expect(convertNitrogen(1, from, to)).toBeCloseTo(factor, 4);
  });
});

describe("a nitrifying film", () => {
  it("slows in sea water to 0.28/0.69 of fresh water (nijhof-bovendeur-1990), to a constant of 0.09 m a day", () => {
    expect(saltSlowdown(q(0))).toBe(1);
    expect(saltSlowdown(q(35))).toBeCloseTo(0.28 / 0.69, 9);
    expect(firstOrderConstant(q(34))).toBeCloseTo(0.09, 2);
  });

  it("never takes up more than its ceiling", () => {
    expect(filmUptake(q(10), q(0.09), q(0.28))).toBe(0.28);
    expect(filmUptake(q(0.5), q(0.09), q(0.28))).toBeCloseTo(0.045, 9);
  });

  it("gains 4.3 % a degree between 15 and 30 °C (zhu-chen-2002) and no more outside", () => {
    expect(nitrificationTemperatureFactor(q(24))).toBe(1);
    expect(nitrificationTemperatureFactor(q(26))).toBeCloseTo(1.086, 9);
    expect(nitrificationTemperatureFactor(q(35))).toBe(nitrificationTemperatureFactor(q(30)));
    expect(nitrificationTemperatureFactor(q(5))).toBe(nitrificationTemperatureFactor(q(15)));
  });

  it("needs 58 m² at 0.5 mg/L and 144 m² at 0.2 mg/L for 2.59 g a day at 0.09 m a day", () => {
    // Source: load ÷ (k · C) by hand.
    expect(filmArea(q(2.59), filmUptake(q(0.5), q(0.09), q(0.28)))).toBeCloseTo(57.6, 1);
    expect(filmArea(q(2.59), filmUptake(q(0.2), q(0.09), q(0.28)))).toBeCloseTo(143.9, 1);
  });
});

describe("lengths in millimetres and centimetres", () => {
  it("gives the 30 cm lionfish its 416 g: 2.89e-5 · 300^2.89 (barbour-2011)", () => {
    expect(fishMass(FISH.lionfish, q(30))).toBeCloseTo(2.89e-5 * 300 ** 2.89, 6);
    expect(fishMass(FISH.lionfish, q(30))).toBeGreaterThan(400);
    expect(fishMass(FISH.lionfish, q(30))).toBeLessThan(430);
  });
});

describe("equations used where they mean nothing", () => {
  const film = { firstOrder: q<Quantity<"m/d">>(0.09), ceiling: q<Quantity<"g N/m²/d">>(0.28) };
  it.each<[string, () => number | object]>([
    ["no volume", () => nitrateRise(q(1), q(7), q(0))],
    ["nothing changed", () => steadyNitrate(q(1), q(0), q(0))],
    ["nothing changed, n times", () => nitrateBeforeChange(3, q(0), q(1), q(0), q(0))],
    ["no exchange", () => nitrateWithExchange(q(1), q(0), q(0))],
    ["no volume for alkalinity", () => alkalinityDrop(q(1), q(0), "food")],
    ["no change for alkalinity", () => alkalinityBeforeChange(q(8), q(1), q(0))],
    ["no uptake", () => filmArea(q(1), q(0))],
    ["no flow past a filter", () => tanWithSinglePass(q(1), q(0), q(0.3))],
    ["no removal in a pass", () => tanWithSinglePass(q(1), q(100), q(0))],
    ["no oxygen use", () => oxygenPenetration(1.6e-9, 6.5, 0)],
    ["a peak at once", () => mealAmmoniaPeak(q(1), q(0))],
    ["a pulse at once", () => mealAmmoniaSoFar(q(1), q(0), q(3))],
    ["spheres of no size", () => sphereBedSurface(q(0), q(0.4))],
    ["a medium without surface", () => mediaVolume(q(1), q(0), q(0.6))],
    ["a fish of no length", () => fishMass(FISH.lionfish, q(0))],
    ["a chamber without flow", () => oxygenOutFixedDemand(q(0), q(6), q(1), q(0))],
    ["a target above what comes in", () => flowForLowOxygen(q(1), q(5), q(6))],
    [
      "neither flow nor air",
      () => oxygenOutMonod(q(0), q(6), q(1), q(0.5), { capacityM3PerDay: 0, saturation: q(6.7) }),
    ],
    [
      "a box without flow",
      () =>
        boxOut(
          { flow: q(0), area: q(1), wasteDemand: 0, aeration: 0 },
          { tan: q(1), oxygen: q(6) },
          film,
          q(6.7),
        ),
    ],
  ])("throw a RangeError: %s", (_name, use) => {
    expect(use).toThrow(RangeError);
  });
});
