import { describe, expect, it } from "vitest";
import { closedLoopTime, flushingTime, leftInTankRow } from "../../../../src/core/plant/mixing.ts";
import { type MixingInputs, mixingTime } from "../../../../src/core/plant/mixing-time.ts";
import {
  type PurifiedWaterInputs,
  permeatePerDay,
  purifiedWater,
} from "../../../../src/core/plant/purified-water.ts";
import { residence } from "../../../../src/core/plant/residence.ts";
import { chamberIntensity, type UvInputs, uvAtFlow } from "../../../../src/core/plant/uv-dose.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const exact = <Q extends number>(value: number) => exactly(value as Q);

describe("purified water", () => {
  const inputs: PurifiedWaterInputs = {
    litres: exact(2700),
    ratedLPerDay: exact(284),
    ratedPressureKPa: as(414),
    feedPressureKPa: exact(345),
    feedC: exact(15),
    rejectRatio: exact(2.3),
  };
  it("takes 15 days of 176 L, and 8.9 m³ of tap water", () => {
    const answer = answered(purifiedWater(inputs));
    const { perDayL, days, toDrainL, tapWaterL } = answer.value;
    // 284 × 345/414 × 1.03^−10 = 176.1 L/d: astm-d4516; 2700 × 3.3 = 8910 L: epa-watersense-ro.
    expect(perDayL.best).toBeCloseTo(176.1, 1);
    expect(days.best).toBeCloseTo(15.3, 1);
    expect(tapWaterL.best).toBeCloseTo(8910, 6);
    expect(toDrainL.best).toBeCloseTo(6210, 6);
    // Viscosity alone gives 0.78 where the rule gives 0.74 (iapws-if97): inside the range.
    expect(perDayL.high).toBeGreaterThan(284 * (345 / 414) * 0.78);
    expect(raised(answer)).toEqual(["never-unattended-filling", "ask-rating-conditions"]);
  });
  it("takes 5 to the drain per litre when nothing is known", () => {
    const { rejectRatio: _, ...unknown } = inputs;
    const { toDrainL } = answered(purifiedWater(unknown)).value;
    expect(toDrainL.best).toBe(13_500);
    expect(toDrainL.low).toBeCloseTo(2700 * 2.3, 6);
  });
  it("is less from salty tap water, and none below what the salts hold back", () => {
    const salty = answered(purifiedWater({ ...inputs, dissolvedMgPerL: exact(1000) })).value.perDayL.best;
    // 80 kPa off both pressures: (345 − 80) ÷ (414 − 80) against 345 ÷ 414.
    expect(salty / 176.1).toBeCloseTo(265 / 334 / (345 / 414), 3);
    expect(refused(purifiedWater({ ...inputs, dissolvedMgPerL: exact(5000) }))).toBe("feed-pressure-too-low");
    expect(() => permeatePerDay(as(100), as(414), as(50), as(25), as(60))).toThrow(RangeError);
  });
  it("refuses frozen feed and no water", () => {
    expect(refused(purifiedWater({ ...inputs, feedC: exact(0) }))).toBe("unusable-figure");
    expect(refused(purifiedWater({ ...inputs, litres: exact(0) }))).toBe("unusable-figure");
  });
});

describe("ultraviolet light", () => {
  const inputs: UvInputs = {
    light: { kind: "intensity", mean: exact(18) },
    contactL: exact(1.6),
    flow: exact(2000),
    systemL: exact(2300),
  };
  it("gives a dose, less for age and fouling", () => {
    const { doseMJPerCm2, passesPerDay, target } = answered(uvAtFlow(inputs)).value;
    // 18 × 1.6 × 3600 ÷ 2000 = 51.84 mJ/cm² new and clean; 0.64 of it in use (common practice, no source).
    expect(doseMJPerCm2.high).toBeCloseTo(51.84, 6);
    expect(doseMJPerCm2.best).toBeCloseTo(51.84 * 0.64, 6);
    expect(passesPerDay?.best).toBeCloseTo((2000 * 24) / 2300, 9);
    expect(target).toBeUndefined();
  });
  it("says how slow the water has to be for a parasite of fish", () => {
    const answer = answered(
      uvAtFlow({ ...inputs, target: "Cryptocaryon irritans theront, lethal in vitro" }),
    );
    // lu-2022: 288 mJ/cm². 18 × 0.64 × 1.6 × 3600 ÷ (2 × 288) = 115.2 L/h.
    expect(answer.value.target?.mostFlowLPerH.best).toBeCloseTo(115.2, 6);
    expect(answer.value.target?.isReached).toBe(false);
    expect(raised(answer)).toEqual(["uv-burns", "uv-short-circuits", "uv-is-no-cure"]);
  });
  it("warns that drinking-water doses do not carry over, and knows when one is reached", () => {
    const answer = answered(uvAtFlow({ ...inputs, target: "Giardia, 1 log" }));
    expect(answer.value.target?.isReached).toBe(true);
    expect(raised(answer)).toContain("drinking-water-dose-not-enough");
  });
  it("has the intensity of thin rings added up", () => {
    // The same chamber summed in 20 000 rings: I(r) = P/(2πrL)·T^(r − r1), averaged over the volume.
    const [output, length, r1, r2, transmittance] = [10, 40, 1.3, 4, 0.85];
    let power = 0;
    const steps = 20_000;
    for (let step = 0; step < steps; step++) {
      const r = r1 + ((r2 - r1) * (step + 0.5)) / steps;
      const intensity = ((output * 1000) / (2 * Math.PI * r * length)) * transmittance ** (r - r1);
      power += intensity * 2 * Math.PI * r * ((r2 - r1) / steps);
    }
    const mean = power / (Math.PI * (r2 ** 2 - r1 ** 2));
    expect(chamberIntensity(output, length, r1, r2, transmittance)).toBeCloseTo(mean, 6);
    expect(() => chamberIntensity(10, 40, 4, 4, 0.9)).toThrow(RangeError);
  });
  it("takes a lamp and its chamber as well", () => {
    const chamber = {
      kind: "chamber",
      lampW: exact<never>(40),
      lampCm: exact<never>(40),
      sleeveDiameterCm: exact<never>(2.6),
      chamberDiameterCm: exact<never>(8),
      transmittance: exact<never>(0.85),
    } as const;
    const { value } = answered(uvAtFlow({ ...inputs, light: chamber }));
    const intensity = chamberIntensity(40 * 0.33, 40, 1.3, 4, 0.85);
    expect(value.doseMJPerCm2.best).toBeCloseTo((intensity * 0.64 * 1.6 * 3600) / 2000, 6);
    expect(refused(uvAtFlow({ ...inputs, light: { ...chamber, chamberDiameterCm: exact(2) } }))).toBe(
      "unusable-figure",
    );
    expect(refused(uvAtFlow({ ...inputs, light: { ...chamber, transmittance: exact(1.2) } }))).toBe(
      "unusable-figure",
    );
    expect(refused(uvAtFlow({ ...inputs, flow: exact(0) }))).toBe("unusable-figure");
  });
});

describe("mixing", () => {
  // levenspiel-1999: 95 % washed out of a row of n tanks at these multiples of the residence time.
  it.each([
    [1, 3.0],
    [2, 2.37],
    [3, 2.1],
    [4, 1.94],
    [6, 1.75],
  ])("washes 95 %% out of %d tanks at %f residence times", (n, theta) => {
    expect(Math.abs(leftInTankRow(n, theta) - 0.05)).toBeLessThan(0.001);
  });
  it("throws for half a tank, and for no flow", () => {
    expect(() => leftInTankRow(1.5, 1)).toThrow(RangeError);
    expect(() => closedLoopTime(as(1), as(1), as(0), as(0.95))).toThrow(RangeError);
    expect(() => flushingTime(as(1), as(1), as(1))).toThrow(RangeError);
  });

  const inputs: MixingInputs = { displayL: exact(1700), restL: exact(600), flow: exact(6000), sideTanks: [] };
  it("of a closed loop is far quicker than the flushing rule, which stays the bound", () => {
    const { hours, boundHours, slowest } = answered(mixingTime(inputs)).value;
    expect(hours.best).toBeCloseTo(0.2214, 4); // ln 20 ÷ (6000/1700 + 6000/600)
    expect(boundHours.best).toBeCloseTo(1.148, 3); // 2.996 × 2300 ÷ 6000
    expect(slowest).toBe("the loop");
  });
  it("is bound by the slowest side tank", () => {
    const sideTanks = [{ name: "the algae tank", volumeL: exact<never>(250), flow: exact<never>(300) }];
    const { boundHours, slowest } = answered(mixingTime({ ...inputs, sideTanks })).value;
    expect(slowest).toBe("the algae tank");
    expect(boundHours.best).toBeCloseTo((2.9957 * 250) / 300, 3);
    expect(refused(mixingTime({ ...inputs, flow: exact(0) }))).toBe("unusable-figure");
  });
});

describe("containers in a row", () => {
  it("hold water for their volume over the flow, and turn it over as often", () => {
    const containers = [
      { name: "settling box", volumeL: exact<never>(150), sectionCm2: exact<number>(1500) },
      { name: "drums", volumeL: exact<never>(330) },
      { name: "algae tank", volumeL: exact<never>(250), flow: exact<never>(1600) },
    ];
    const { value } = answered(residence(containers, exact(9000)));
    expect(value.containers[0]?.minutes.best).toBeCloseTo(1, 9); // 150 L at 9000 L/h
    expect(value.containers[0]?.velocityCmPerS?.best).toBeCloseTo(1.667, 3); // 2.5 L/s through 1500 cm²
    expect(value.containers[2]?.minutes.best).toBeCloseTo(9.375, 9); // 250 L at 1600 L/h
    expect(value.totalMinutes.best).toBeCloseTo(3.2, 9); // 480 L of the whole flow
    expect(value.systemTurnoverPerHour.best).toBeCloseTo(18.75, 9);
    expect(value.containers[1]?.velocityCmPerS).toBeUndefined();
  });
  it("are refused when none, alike in name, or empty", () => {
    expect(refused(residence([], exact(9000)))).toBe("nothing-named");
    const one = { name: "a", volumeL: exact<never>(1) };
    expect(refused(residence([one, one], exact(9000)))).toBe("named-twice");
    expect(refused(residence([{ ...one, volumeL: exact(0) }], exact(9000)))).toBe("unusable-figure");
  });
});
