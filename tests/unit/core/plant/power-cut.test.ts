import { describe, expect, it } from "vitest";
import { batteryRuntime } from "../../../../src/core/plant/battery-runtime.ts";
import { outageActions } from "../../../../src/core/plant/outage-actions.ts";
import {
  bubbleExchange,
  hoursUntilOxygen,
  surfaceExchange,
  transferVelocity,
} from "../../../../src/core/plant/outage-oxygen.ts";
import { HOURS_FOLLOWED, type PowerCutInputs, powerCut } from "../../../../src/core/plant/power-cut.ts";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const exact = <Q extends number>(value: number) => exactly(value as Q);

describe("oxygen in one mixed volume", () => {
  // Worked apart from this project by integrating V·dC/dt = k·A·(Cs − C) − R: 2.75 g/h from 6.4 mg/L,
  // 2.60 m², saturation 6.71 mg/L; hours to one decimal.
  it.each([
    [2300, 0, 2750, 2.0, 3.7],
    [2300, 1, 2750, 2.0, 3.8],
    [1670, 0, 2750, 1.5, 2.7],
    [1670, 1, 1650, 2.5, 4.6],
  ])(
    "of %d L at %d cm/h, losing %d mg/h, lasts %f h to 4 and %f h to 2 mg/L",
    (litres, k, demand, to4, to2) => {
      const exchange = surfaceExchange(as(k), as(2.6));
      const hours = (limit: number) =>
        hoursUntilOxygen(as(litres), as(6.4), as(limit), as(demand), exchange, as(6.71));
      expect(Math.abs(hours(4) - to4)).toBeLessThan(0.06);
      expect(Math.abs(hours(2) - to2)).toBeLessThan(0.06);
    },
  );

  // Euler steps of a second, the same equation done the slow way.
  it("agrees with stepping through the seconds", () => {
    const [volume, exchange, demand, saturation] = [400, 150, 800, 6.8];
    let oxygen = 6.5;
    let seconds = 0;
    while (oxygen > 4) {
      oxygen += (exchange * (saturation - oxygen) - demand) / volume / 3600;
      seconds++;
    }
    const hours = hoursUntilOxygen(as(volume), as(6.5), as(4), as(demand), exchange, as(saturation));
    expect(hours).toBeCloseTo(seconds / 3600, 3);
  });

  it("never gets there when air keeps up, is there already when below, and waits for ever without demand", () => {
    expect(hoursUntilOxygen(as(100), as(6), as(4), as(10), 1000, as(6.8))).toBe(Number.POSITIVE_INFINITY);
    expect(hoursUntilOxygen(as(100), as(4), as(4), as(10), 0, as(6.8))).toBe(0);
    expect(hoursUntilOxygen(as(100), as(6), as(4), as(0), 0, as(6.8))).toBe(Number.POSITIVE_INFINITY);
    expect(() => hoursUntilOxygen(as(0), as(6), as(4), as(10), 0, as(6.8))).toThrow(RangeError);
  });
  it("goes over smoothly from no exchange to a little", () => {
    const none = hoursUntilOxygen(as(1000), as(6), as(4), as(500), 0, as(6.8));
    const little = hoursUntilOxygen(as(1000), as(6), as(4), as(500), 1e-9, as(6.8));
    expect(little).toBeCloseTo(none, 6);
  });

  // wanninkhof-2014: Schmidt number 445 at 25 °C, so 1.16 times the velocity at 600.
  it("takes up 1.16 times as fast at 25 °C as at Schmidt number 600", () => {
    expect(transferVelocity(as(1), as(25))).toBeCloseTo(1.16, 2);
  });
  // By hand: 5 L/min × 60 × 0.273 g × 1.5 % = 1.23 g/h into water without oxygen; over 9.09 mg/L that is 135 L/h.
  it("counts bubbles by the oxygen they give up", () => {
    expect(bubbleExchange(5, 0.015)).toBeCloseTo(135, 0);
  });
});

const inputs: PowerCutInputs = {
  displayL: exact(1670),
  surfaceM2: exact(2.6),
  waterC: exact(25.5),
  salinity: exact(35),
  oxygenMgPerL: exact(6.4),
  demand: { mgPerH: exact(2750) },
  roomC: exact(12),
  uaWPerK: exact(60),
  hasGenerator: false,
};

describe("a power cut", () => {
  it("gives the display alone about an hour and a half to alarm, and three to emergency", () => {
    const { still, saturationMgPerL } = answered(powerCut(inputs)).value;
    // benson-krause-1984: 6.71 mg/L at 25.5 °C, salinity 35.
    expect(saturationMgPerL.best).toBeCloseTo(6.71, 2);
    // No exchange at all: 1670 × 2.4 ÷ 2750 = 1.457 h, and 1670 × 4.4 ÷ 2750 = 2.672 h: the low ends.
    expect(still.toAlarmH.low).toBeCloseTo(1.457, 2);
    expect(still.toEmergencyH.low).toBeCloseTo(2.672, 2);
    expect(still.toAlarmH.best).toBeGreaterThan(1.457);
    expect(still.toAlarmH.best).toBeLessThan(1.6);
  });
  it("lasts longer stirred, and longer still with little demand and air", () => {
    const air = { airLPerMin: exact<number>(20), depthCm: exact<number>(50) };
    const { still, stirred, withAir } = answered(
      powerCut({ ...inputs, demand: { mgPerH: exact(1000) }, airPump: air }),
    ).value;
    expect(stirred.toAlarmH.best).toBeGreaterThan(still.toAlarmH.best);
    expect(withAir?.toAlarmH.best).toBe(HOURS_FOLLOWED);
    expect(withAir?.toAlarmH.low).toBeGreaterThan(still.toAlarmH.best);
  });
  it("never runs short before it began, nor later than it was followed", () => {
    const { still, stirred } = answered(
      powerCut({
        ...inputs,
        displayL: between(as(500), as(1800), as(1670)),
        oxygenMgPerL: between(as(4.05), as(4.6), as(4.2)),
        demand: { mgPerH: between(as(100), as(5000), as(2750)) },
      }),
    ).value;
    expect(still.toAlarmH.low).toBe(0);
    expect(still.toAlarmH.best).toBeGreaterThan(0);
    expect(stirred.toAlarmH.high).toBe(HOURS_FOLLOWED);
  });
  it("cools as slowly as its heat allows", () => {
    const { temperature } = answered(powerCut({ ...inputs, displayL: exact(2300) })).value;
    // First-principles: 2300 L, 60 W/K, from 25.5 °C into 12 °C: 22.25 °C after 12 h.
    expect(temperature.map(({ hours }) => hours)).toEqual([6, 12, 24]);
    expect(temperature[1]?.waterC.best).toBeCloseTo(22.25, 1);
  });
  it("adds up what fish breathe by mass and warmth", () => {
    const fish = [
      { name: "tang", count: 2, massG: exact<never>(200) },
      { name: "goby", count: 1, massG: exact<never>(50) },
    ];
    const { demandMgPerH } = answered(powerCut({ ...inputs, waterC: exact(25), demand: { fish } })).value;
    // clarke-johnston-1999 at 25 °C: 156 mg/(kg h) at 200 g, 205 at 50 g; × 1.5 active × 1.5 for all else.
    const resting = 2 * 0.2 * 156 + 0.05 * 205;
    expect(demandMgPerH.best / (resting * 2.25)).toBeCloseTo(1, 2);
    expect(demandMgPerH.low).toBeLessThan(demandMgPerH.best);
  });
  it("starts at 95 % of saturation when nothing was measured", () => {
    const { oxygenMgPerL: _, ...unmeasured } = inputs;
    const { startMgPerL, saturationMgPerL } = answered(powerCut(unmeasured)).value;
    expect(startMgPerL.best / saturationMgPerL.best).toBeCloseTo(0.95, 9);
    expect(startMgPerL.high / saturationMgPerL.best).toBeCloseTo(1, 9);
  });
  it("guesses the loss of heat from the surface when no balance was made", () => {
    const { uaWPerK: _, ...unknown } = inputs;
    const { temperature } = answered(powerCut(unknown)).value;
    expect(temperature[2]?.waterC.low).toBeLessThan(temperature[2]?.waterC.best ?? 0);
  });
  it("is at alarm already, and says what comes first", () => {
    const answer = answered(powerCut({ ...inputs, oxygenMgPerL: exact(3.5), hasGenerator: true }));
    expect(answer.value.still.toAlarmH.best).toBe(0);
    expect(answer.value.still.toEmergencyH.best).toBeGreaterThan(0);
    expect(answer.value.actions.slice(0, 2)).toEqual(["stir-the-surface", "add-aerated-water"]);
    expect(raised(answer)).toContain("oxygen-already-low");
    expect(raised(answer)).toContain("generator-outdoors-only");
    expect(raised(answer)).toContain("display-alone-in-outage");
  });
  it.each<[string, Partial<PowerCutInputs>, string]>([
    ["no fish", { demand: { fish: [] } }, "nothing-named"],
    ["a volume of nothing", { displayL: exact(0) }, "unusable-figure"],
    ["water that is frozen", { waterC: exact(-3) }, "unusable-figure"],
    ["oxygen below none", { oxygenMgPerL: exact(-1) }, "unusable-figure"],
    ["brine", { salinity: exact(80) }, "unusable-figure"],
  ])("refuses %s", (_, change, code) => {
    expect(refused(powerCut({ ...inputs, ...change }))).toBe(code);
  });
});

describe("what to do in a power cut", () => {
  const calm = {
    hasBatteryAir: false,
    hasGenerator: false,
    drift: "steady",
    isOxygenAtAlarm: false,
  } as const;
  it("brings air first, and puts filters back last", () => {
    const actions = outageActions({ ...calm, hasBatteryAir: true, hasGenerator: true, drift: "cooling" });
    expect(actions[0]).toBe("start-battery-air");
    expect(actions.at(-1)).toBe("restart-in-steps");
    expect(actions.indexOf("stir-the-surface")).toBeLessThan(actions.indexOf("wrap-the-tank"));
    expect(actions).toContain("generator-outside");
    expect(new Set(actions).size).toBe(actions.length);
  });
  it("names only what there is", () => {
    const actions = outageActions({ ...calm, drift: "warming" });
    expect(actions).not.toContain("start-battery-air");
    expect(actions).not.toContain("generator-outside");
    expect(actions).not.toContain("wrap-the-tank");
    expect(actions).toContain("shade-and-fan");
  });
});

describe("a battery", () => {
  const battery = { ampHours: exact<number>(100), volts: as<never>(12), load: exact<never>(60) };
  it("of 100 Ah lead-acid behind an inverter runs 60 W for 8.7 h when new, less when aged", () => {
    const { hours } = answered(batteryRuntime({ ...battery, kind: "lead-acid", through: "inverter" })).value;
    // 100 × 12 × 0.5 × 0.87 ÷ 60 = 8.7 h new; 85 % of that as best, 70 % at the low end (common practice, no source).
    expect(hours.best).toBeCloseTo(8.7 * 0.85, 6);
    expect(hours.low).toBeLessThan(8.7 * 0.72);
    expect(hours.high).toBeGreaterThan(8.7);
  });
  it("lasts longer of lithium and without an inverter", () => {
    const lead = answered(batteryRuntime({ ...battery, kind: "lead-acid", through: "inverter" })).value.hours
      .best;
    const lithium = answered(
      batteryRuntime({ ...battery, kind: "lithium iron phosphate", through: "direct" }),
    );
    expect(lithium.value.hours.best / lead).toBeCloseTo(0.8 / 0.5 / 0.87, 6);
    expect(raised(lithium)).toContain("battery-fades");
  });
  it("refuses no load, and mains for a battery's voltage", () => {
    const asked = { ...battery, kind: "lead-acid", through: "direct" } as const;
    expect(refused(batteryRuntime({ ...asked, load: exact(0) }))).toBe("unusable-figure");
    expect(refused(batteryRuntime({ ...asked, volts: as(230) }))).toBe("unusable-figure");
  });
});
