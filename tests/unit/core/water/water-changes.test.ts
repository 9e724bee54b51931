import { describe, expect, it } from "vitest";
import { between, exactly } from "../../../../src/core/quantity/estimate.ts";
import {
  as,
  type Days,
  type DegreesC,
  type Fraction,
  type Litres,
  type LitresPerDay,
  type LitresPerHour,
  type MgPerL,
  type PracticalSalinity,
} from "../../../../src/core/quantity/units.ts";
import { salinityWaterChange } from "../../../../src/core/water/salinity-water-change.ts";
import { waterChange } from "../../../../src/core/water/water-change.ts";
import { waterChangeForTarget } from "../../../../src/core/water/water-change-for-target.ts";
import { waterChangeSteadyState } from "../../../../src/core/water/water-change-steady-state.ts";
import { waterChangeSupply } from "../../../../src/core/water/water-change-supply.ts";
import { waterChangeToHold } from "../../../../src/core/water/water-change-to-hold.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const litres = (v: number) => exactly(as<Litres>(v));
const mg = (c: number) => exactly(as<MgPerL>(c));
const ppt = (s: number) => exactly(as<PracticalSalinity>(s));
const share = (f: number) => ({ kind: "fraction" as const, fraction: exactly(as<Fraction>(f)) });
const days = (d: number) => exactly(as<Days>(d));

describe("the effect of water changes", () => {
  const ask = (f: number, times: number, now = 100, source = 0) =>
    waterChange({
      volume: litres(300),
      now: mg(now),
      source: mg(source),
      unit: "mg/L",
      pattern: { kind: "in steps", each: share(f), times },
    });

  it("four changes of 15 % leave 52.2 %, not 40 %", () => {
    // 0.85⁴ = 0.52200625, by hand.
    const { value } = answered(ask(0.15, 4));
    expect(value.after.best).toBeCloseTo(52.200625, 9);
    expect(value.totalL.best).toBeCloseTo(180, 9);
    expect(value.course.map((level) => Number(level.toFixed(4)))).toEqual([85, 72.25, 61.4125, 52.2006]);
  });

  it("goes towards the new water's own value", () => {
    expect(answered(ask(0.5, 1, 40, 10)).value.after.best).toBe(25);
    expect(answered(ask(0.5, 1, 5, 10)).value.after.best).toBe(7.5);
    expect(answered(ask(1, 1, 40, 10)).value.after.best).toBe(10);
  });

  it("one volume run through leaves 1/e", () => {
    const { value } = answered(
      waterChange({
        volume: litres(300),
        now: mg(100),
        source: mg(0),
        unit: "mg/L",
        pattern: { kind: "continuous", litres: litres(300) },
      }),
    );
    expect(value.after.best).toBeCloseTo(36.7879, 4); // 1/e = 0.367879…, a mathematical constant
  });

  it("refuses more water than there is, and half a change", () => {
    const each = { kind: "litres" as const, litres: litres(301) };
    const tooMuch = waterChange({
      volume: litres(300),
      now: mg(1),
      source: mg(0),
      unit: "mg/L",
      pattern: { kind: "in steps", each, times: 1 },
    });
    expect(refused(tooMuch)).toBe("more-than-there-is");
    expect(refused(ask(0.1, 1.5))).toBe("not-credible");
    expect(refused(ask(0.1, 0))).toBe("not-credible");
  });

  it("calls more than half at once large", () => {
    expect(raised(ask(0.6, 1))).toContain("large-change");
    expect(raised(ask(0.5, 1))).not.toContain("large-change");
  });
});

describe("salinity, counted by mass", () => {
  it("40 L of 35 into 200 L at 38", () => {
    // gsw 3.6.16 densities and conservation of salt: 37.4011 (by volume it would be 37.4000).
    const { value } = answered(
      salinityWaterChange({
        volume: litres(200),
        now: ppt(38),
        source: ppt(35),
        temperature: exactly(as<DegreesC>(25)),
        pattern: {
          kind: "in steps",
          each: { kind: "litres", litres: litres(40) },
          times: 1,
        },
      }),
    );
    expect(value.after.best).toBeCloseTo(37.4011, 4);
  });
});

describe("changes for a target", () => {
  const ask = (now: number, target: number, source: number, f = 0.2) =>
    waterChangeForTarget({
      volume: litres(250),
      now: mg(now),
      source: mg(source),
      target: mg(target),
      unit: "mg/L",
      fractionEach: exactly(as<Fraction>(f)),
    });

  it("80 to 20 with clean water: three quarters at once, 7 of 20 %, 1.386 volumes run through", () => {
    // 0.8⁶ = 0.262, 0.8⁷ = 0.210: seven are needed; ln 4 = 1.386294 (by hand).
    const { value } = answered(ask(80, 20, 0));
    expect(value.singleL.best).toBeCloseTo(187.5, 9);
    expect(value.times.best).toBe(7);
    expect(value.stepsTotalL.best).toBeCloseTo(350, 9);
    expect(value.continuousL.best).toBeCloseTo(250 * 1.386294, 3);
  });

  it("counts a target reached exactly as reached", () => {
    expect(answered(ask(100, 25, 0, 0.5)).value.times.best).toBe(2);
    expect(answered(ask(100, 51.2, 0, 0.2)).value.times.best).toBe(3); // 0.8³ = 0.512
  });

  it("can raise as well", () => {
    expect(answered(ask(5, 7.5, 10)).value.singleFraction.best).toBeCloseTo(0.5, 12);
  });

  it("refuses what the new water cannot reach", () => {
    expect(refused(ask(80, 20, 25))).toBe("target-not-between-waters");
    expect(refused(ask(80, 20, 20))).toBe("target-not-between-waters");
    expect(refused(ask(20, 80, 0))).toBe("target-not-between-waters");
  });

  it("is nothing to do at the target", () => {
    const { value } = answered(ask(20, 20, 0));
    expect([value.singleL.best, value.times.best, value.continuousL.best]).toEqual([0, 0, 0]);
  });

  it("names what makes the plan vague", () => {
    const answer = answered(
      waterChangeForTarget({
        volume: litres(250),
        now: between(as<MgPerL>(60), as<MgPerL>(100)),
        source: between(as<MgPerL>(0), as<MgPerL>(1)),
        target: mg(20),
        unit: "mg/L",
        fractionEach: exactly(as<Fraction>(0.2)),
      }),
    );
    expect(answer.driver?.input).toBe("value now");
  });
});

describe("the steady state of a routine", () => {
  const ask = (f: number, risePerDay: number, now?: number) =>
    waterChangeSteadyState({
      volume: litres(2700),
      each: share(f),
      everyDays: days(10),
      source: mg(0),
      risePerDay: mg(risePerDay),
      unit: "mg/L",
      now: now === undefined ? undefined : mg(now),
    });

  // Geometric series by hand: a rise of 48.16 between changes; before = 48.16 ÷ f, after = before − 48.16.
  it.each([
    { f: 0.3, before: 160.53, after: 112.37 },
    { f: 0.15, before: 321.07, after: 272.91 },
    { f: 0.6, before: 80.27, after: 32.11 },
  ])("changing $f every ten days", ({ f, before, after }) => {
    const { value } = answered(ask(f, 4.816));
    expect(value.before.best).toBeCloseTo(before, 2);
    expect(value.after.best).toBeCloseTo(after, 2);
    expect(value.ifContinuous.best).toBeCloseTo(before, 2);
  });

  it("shows the way there: from nothing, the third change begins at 105.5", () => {
    // 48.16 → 33.71 after; 81.87 → 57.31; 105.47 before the third (by hand).
    const { course } = answered(ask(0.3, 4.816, 0)).value;
    expect(course[2]?.before).toBeCloseTo(105.47, 2);
    expect(course[2]?.day).toBe(30);
  });

  it("half the way is gone after 1.94 changes of 30 %", () => {
    expect(answered(ask(0.3, 4.816)).value.changesToHalfway.best).toBeCloseTo(1.943, 3); // ln 0.5 ÷ ln 0.7
  });

  it("refuses a tank that uses up more than changes bring", () => {
    expect(refused(ask(0.3, -1))).toBe("runs-out-between-changes");
  });
});

describe("the share that holds a ceiling", () => {
  const ask = (ceiling: number, source: number, rise = 2) =>
    waterChangeToHold({
      volume: litres(400),
      everyDays: days(7),
      source: mg(source),
      risePerDay: mg(rise),
      ceiling: mg(ceiling),
      unit: "mg/L",
    });

  it("14 mg/L a week under 40, new water at 5: 0.4 of the water", () => {
    const { value } = answered(ask(40, 5));
    expect(value.fraction.best).toBeCloseTo(0.4, 12); // 14 ÷ 35, by hand
    expect(value.litres.best).toBeCloseTo(160, 9);
    expect(value.after.best).toBeCloseTo(26, 9);
  });

  it("refuses what no change can hold", () => {
    expect(refused(ask(40, 40))).toBe("source-too-strong");
    expect(refused(ask(40, 5, 6))).toBe("no-fraction-is-enough");
  });
});

describe("time and water a change takes", () => {
  it("pumping, making and rejecting", () => {
    // 2700 L: 90 min at 1800 L/h, 15.3 days at 176 L a day, 8.9 m³ of tap water at 2.3 to 1 (by hand).
    const answer = answered(
      waterChangeSupply({
        litres: litres(2700),
        pumpFlow: exactly(as<LitresPerHour>(1800)),
        purifiedPerDay: exactly(as<LitresPerDay>(176)),
        rejectPerLitre: exactly(as(2.3)),
      }),
    );
    expect(answer.value.pumpMinutes?.best).toBeCloseTo(90, 9);
    expect(answer.value.makingDays?.best).toBeCloseTo(15.34, 2);
    expect(answer.value.tapWaterL?.best).toBeCloseTo(8910, 6);
    expect(raised(answer)).toEqual(expect.arrayContaining(["unattended-filling", "mains-near-water"]));
  });

  it("says only what was asked", () => {
    const answer = answered(waterChangeSupply({ litres: litres(20) }));
    expect(Object.keys(answer.value)).toEqual(["litres"]);
    expect(raised(answer)).toEqual([]);
  });
});

it("minds the pace of salinity by the largest single change", () => {
  const ask = (f: number, times: number) =>
    salinityWaterChange({
      volume: litres(200),
      now: ppt(38),
      source: ppt(34),
      temperature: exactly(as<DegreesC>(25)),
      pattern: { kind: "in steps", each: share(f), times },
    });
  // A fall of 4 ppt × the share: 2.8 ppt at 0.7 is more than 2 a day, 0.4 ppt ten times is not (common practice).
  expect(raised(ask(0.7, 1))).toContain("salinity-change-rate");
  expect(raised(ask(0.1, 10))).not.toContain("salinity-change-rate");
});
