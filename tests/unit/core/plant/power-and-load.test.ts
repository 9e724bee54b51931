import { describe, expect, it } from "vitest";
import { current, type ElectricInputs, electricLoad } from "../../../../src/core/plant/electric-load.ts";
import {
  type FloorLoadInputs,
  floorLoad,
  floorPressure,
  footBearing,
} from "../../../../src/core/plant/floor-load.ts";
import { secondHandContainer } from "../../../../src/core/plant/second-hand-container.ts";
import { wallPressure } from "../../../../src/core/plant/wall-pressure.ts";
import { wallThickness } from "../../../../src/core/plant/wall-thickness.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { sayRefusal } from "../../../../src/wording/index.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const exact = <Q extends number>(value: number) => exactly(value as Q);

const device = (name: string, watts: number, circuit: string, isLifeSupport = true, isMotor = true) => ({
  name,
  watts: exact<never>(watts),
  hoursPerDay: exact<number>(24),
  isMotor,
  isLifeSupport,
  circuit,
});

const inputs: ElectricInputs = {
  devices: [device("return pump", 250, "left"), device("heater", 600, "right", true, false)],
  circuits: [
    { name: "left", ratingA: as(20), hasGroundFaultProtection: true },
    { name: "right", ratingA: as(20), hasGroundFaultProtection: true },
  ],
  volts: as(120),
  pricePerKWh: exact(0.17),
};

describe("the electric load", () => {
  it("costs what its kilowatt-hours cost", () => {
    const { totalW, kWhPerDay, costPerYear, costPerMonth } = answered(electricLoad(inputs)).value;
    expect(totalW.best).toBe(850);
    expect(kWhPerDay.best).toBeCloseTo(20.4, 9);
    // 0.85 kW × 8766 h × 0.17 = 1266.69.
    expect(costPerYear.best).toBeCloseTo(1266.69, 2);
    expect(costPerMonth.best * 12).toBeCloseTo(costPerYear.best, 9);
  });
  it("lies on circuits with their limit for continuous load", () => {
    const { circuits } = answered(electricLoad(inputs)).value;
    expect(circuits[0]?.continuousLimitA).toBe(16); // nfpa-70: 80 % of 20 A
    expect(circuits[0]?.amperes.best).toBeCloseTo(250 / 120, 9);
    expect(circuits[0]?.startUpA.best).toBeCloseTo((5 * 250) / 120, 9); // five times, common practice, no source
    expect(circuits[1]?.startUpA.best).toBeCloseTo(5, 9); // a heater has no surge
    expect(circuits[1]?.lifeSupport).toEqual(["heater"]);
  });
  it("always defers to an electrician, and to drip loops", () => {
    const answer = answered(electricLoad(inputs));
    expect(answer.cautions[0]).toMatchObject({ code: "ask-an-electrician", level: "danger" });
    expect(raised(answer)).toEqual(["ask-an-electrician", "drip-loops", "american-rule"]);
  });
  it("warns of one circuit for all, too much on it, a surge, and no protection", () => {
    const devices = [device("return pump", 900, "left"), device("heater", 1200, "left", true, false)];
    const circuits = [{ name: "left", ratingA: as<never>(20), hasGroundFaultProtection: false }];
    const codes = raised(electricLoad({ ...inputs, devices, circuits }));
    expect(codes).toEqual(
      expect.arrayContaining([
        "circuit-overloaded",
        "start-up-surge",
        "life-support-on-one-circuit",
        "no-ground-fault-protection",
      ]),
    );
  });
  it("draws more current at a low power factor", () => {
    expect(current(as(600), as(120), 0.6)).toBeCloseTo(8.333, 3);
    expect(() => current(as(600), as(120), 1.2)).toThrow(RangeError);
    const dim = { ...device("light", 600, "left", false, false), powerFactor: 0.5 };
    expect(answered(electricLoad({ ...inputs, devices: [dim] })).value.circuits[0]?.amperes.best).toBe(10);
  });
  it.each<[string, Partial<ElectricInputs>, string]>([
    ["nothing plugged in", { devices: [] }, "nothing-named"],
    ["a circuit nobody described", { devices: [device("pump", 10, "attic")] }, "circuit-not-named"],
    ["two of one name", { devices: [device("a", 1, "left"), device("a", 1, "left")] }, "named-twice"],
    ["no voltage", { volts: as(0) }, "unusable-figure"],
    [
      "more than a day in a day",
      { devices: [{ ...device("a", 1, "left"), hoursPerDay: exact(25) }] },
      "unusable-figure",
    ],
    [
      "a power factor above 1",
      { devices: [{ ...device("a", 1, "left"), powerFactor: 1.4 }] },
      "unusable-figure",
    ],
    ["a negative load", { devices: [device("a", -1, "left")] }, "unusable-figure"],
  ])("refuses %s", (_, change, code) => {
    expect(refused(electricLoad({ ...inputs, ...change }))).toBe(code);
  });
});

describe("the load on a floor", () => {
  /** By hand: 1672 L × 1.0233 = 1711 kg of water, with rock, sand, shell and stand 2530 kg; over 2.60 m² 9.54 kPa. */
  const tank: FloorLoadInputs = {
    waterL: exact(1672),
    density: exact(1023.3),
    parts: [
      { name: "rock", massKg: exact(240) },
      { name: "sand", massKg: exact(175) },
      { name: "shell", massKg: exact(244) },
      { name: "stand", massKg: exact(160) },
    ],
    footprintM2: exact(2.6),
  };
  it("is the mass of all of it over its footprint", () => {
    const answer = answered(floorLoad(tank));
    const { massKg, pressureKPa, psf, timesLivingRoom, timesSleepingRoom, footMPa } = answer.value;
    expect(massKg.best).toBeCloseTo(2530, -1);
    expect(pressureKPa.best).toBeCloseTo(9.54, 1);
    expect(psf.best).toBeCloseTo(199, 0); // 9540 Pa ÷ 47.88
    expect(timesLivingRoom.best).toBeCloseTo(4.98, 1); // irc-r301-5: 40 psf
    expect(timesSleepingRoom.best).toBeCloseTo(6.65, 1); // 30 psf
    expect(footMPa).toBeUndefined();
    expect(answer.cautions[0]).toMatchObject({ code: "ask-a-structural-engineer", level: "danger" });
    expect(raised(answer)).toContain("floor-figure-is-a-flag");
  });
  it("presses hard under few feet, which never share evenly", () => {
    const answer = answered(floorLoad({ ...tank, feet: { count: 6, areaCm2: exact(79) } }));
    expect(answer.value.footMPa?.best).toBeCloseTo(0.523, 2); // 2530 × 9.80665 ÷ (6 × 0.0079 m²)
    const uneven = answer.cautions.find(({ code }) => code === "uneven-feet");
    // Half of it on two feet: 2530 × 9.80665 ÷ 2 ÷ (2 × 0.0079) = 0.785 MPa.
    expect(uneven?.figures).toEqual({ worstMPa: expect.closeTo(0.785, 2) });
  });
  it("defers to the engineer even when it is light", () => {
    const light = { ...tank, parts: [], waterL: exact<never>(40), footprintM2: exact<never>(1) };
    expect(raised(floorLoad(light))).toEqual(["ask-a-structural-engineer"]);
  });
  it("refuses no footprint and less than no rock", () => {
    expect(refused(floorLoad({ ...tank, footprintM2: exact(0) }))).toBe("unusable-figure");
    expect(refused(floorLoad({ ...tank, parts: [{ name: "rock", massKg: exact(-1) }] }))).toBe(
      "unusable-figure",
    );
    expect(() => floorPressure(as(1), as(0))).toThrow(RangeError);
    expect(() => footBearing(as(1), 0, 10)).toThrow(RangeError);
  });
});

describe("the walls of a tank", () => {
  it("are pushed by 7.0 kPa at the foot, and 6.4 kN on a long pane", () => {
    // Hydrostatics by hand: 1023.3 × 9.80665 × 0.70 = 7025 Pa; half of that × 0.70 × 2.60 = 6.39 kN.
    const answer = answered(
      wallPressure({ depthM: exact(0.7), wallLengthM: exact(2.6), density: exact(1023.3) }),
    );
    expect(answer.value.pressureKPa.best).toBeCloseTo(7.025, 3);
    expect(answer.value.forceKN.best).toBeCloseTo(6.39, 2);
    expect(raised(answer)).toEqual(["ask-a-tank-maker"]);
    expect(refused(wallPressure({ depthM: exact(0), wallLengthM: exact(1), density: exact(1023) }))).toBe(
      "unusable-figure",
    );
  });
  it("are never given a thickness, with the reasons why", () => {
    const refusal = wallThickness();
    expect(refusal.kind).toBe("no-answer");
    expect(raised(refusal)).toEqual(["ask-a-tank-maker"]);
    const said = sayRefusal(refusal.reason);
    expect(said).toContain("creeps");
    expect(said).toContain("joints");
    expect(said).not.toMatch(/\d\s?mm/);
  });
  it("second-hand, are never judged, only looked at", () => {
    const { value, cautions } = secondHandContainer();
    expect(value.judged).toBe(false);
    expect(value.advice).toContain("refuse-cracked-or-crazed");
    expect(value.advice.indexOf("look-at-every-joint")).toBeLessThan(
      value.advice.indexOf("test-fill-outside"),
    );
    expect(cautions.every(({ level }) => level === "danger")).toBe(true);
  });
});
