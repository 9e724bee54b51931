import { describe, expect, it } from "vitest";
import { carbonNeed } from "../../../../src/core/dosing/carbon-need.ts";
import { carbonRamp } from "../../../../src/core/dosing/carbon-ramp.ts";
import type { CarbonConditions } from "../../../../src/core/dosing/carbon-safety.ts";
import { sideStreamCarbon } from "../../../../src/core/dosing/side-stream-carbon.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";
import type { Answer, NoAnswer } from "../../../../src/core/result.ts";

const allWell: CarbonConditions = {
  arePumpsRunning: true,
  isAerationRunning: true,
  isSkimmerRunning: true,
  areFishEating: true,
  isDenatured: false,
};
const ramp = {
  route: "aerobic assimilation",
  systemVolume: exactly(as<Quantity<"L">>(1000)),
  reservoirPercent: exactly(10),
  weeks: 6,
  dosesPerDay: 8,
  conditions: allWell,
} as const;
const need = {
  route: "anoxic denitrification",
  nitrogenPerDay: exactly(as<Quantity<"g/d">>(2.94)),
  systemVolume: exactly(as<Quantity<"L">>(2700)),
  reservoirPercent: exactly(10),
  dosesPerDay: 24,
  conditions: allWell,
} as const;

function answered<T>(result: Answer<T> | NoAnswer): Answer<T> {
  if (result.kind === "no-answer") throw new Error(`refused: ${result.reason.code}`);
  return result;
}
const refusal = (result: Answer<unknown> | NoAnswer) =>
  result.kind === "no-answer" ? result.reason.code : "answered";

describe("carbonRamp", () => {
  it("steps up by the same amount each week", () => {
    const { weeks } = answered(carbonRamp(ramp)).value;
    // 0.1 mL of 40 % per 100 L is 1 mL per 1000 L, 4 mL of 10 %, by hand.
    expect(weeks.map(({ daily }) => Math.round(daily.best * 1e6) / 1000)).toEqual([4, 8, 12, 16, 20, 24]);
    expect((weeks[0]?.perDose.best ?? 0) * 1000).toBeCloseTo(0.5, 9);
  });

  it("counts the oxygen of each dose", () => {
    // One mL of 40 % is 0.658 g of oxygen demand (0.3157 g ethanol × 2.084); a third of it is burnt: 0.217 mg/L.
    const { weeks } = answered(carbonRamp({ ...ramp, weeks: 1, dosesPerDay: 1 })).value;
    expect(weeks[0]?.oxygenPerDose.best).toBeCloseTo(0.217, 3);
    expect(weeks[0]?.worstOxygenPerDose.best).toBeCloseTo(0.658, 3);
  });

  it("warns above 0.5 mg/L a dose and refuses above 1.5", () => {
    const oneDose = (weeks: number) => carbonRamp({ ...ramp, weeks, dosesPerDay: 1 });
    const codes = (weeks: number) => answered(oneDose(weeks)).cautions.map(({ code }) => code);
    expect(codes(2)).not.toContain("carbon-takes-oxygen");
    expect(codes(3)).toContain("carbon-takes-oxygen");
    const refused = oneDose(7);
    expect(refused).toMatchObject({
      kind: "no-answer",
      // 7 × 0.217 = 1.52 mg/L; four doses bring each below 0.5.
      reason: { code: "carbon-takes-too-much-oxygen", figures: { dosesNeeded: 4 } },
    });
  });

  it.each([
    ["pumps", { arePumpsRunning: false }, "carbon-needs-flow"],
    ["aeration", { isAerationRunning: false }, "carbon-needs-flow"],
    ["the skimmer", { isSkimmerRunning: false }, "carbon-needs-flow"],
    ["appetite", { areFishEating: false }, "carbon-with-fish-off-food"],
    ["pure alcohol", { isDenatured: true }, "alcohol-is-denatured"],
  ])("refuses without %s", (_what, change, code) => {
    expect(refusal(carbonRamp({ ...ramp, conditions: { ...allWell, ...change } }))).toBe(code);
  });

  it("lets a slow box run without a skimmer", () => {
    const conditions = { ...allWell, isSkimmerRunning: false };
    expect(carbonRamp({ ...ramp, route: "anoxic denitrification", conditions }).kind).toBe("answer");
  });

  it("always tells of fire, of stopping and of flow", () => {
    const codes = answered(carbonRamp(ramp)).cautions.map(({ code }) => code);
    for (const code of ["alcohol-flammable", "carbon-stop-signs", "carbon-only-with-flow"]) {
      expect(codes).toContain(code);
    }
  });
});

describe("carbonNeed", () => {
  it("asks far more of the route through bacteria than of the one through gas", () => {
    // 2.94 g N a day: 1.85–2.02 g of ethanol per g to gas, so 5.4–5.9 g;
    // 0.09–0.12 g N held per g of ethanol, so about 24–32 g; by hand.
    const gas = answered(carbonNeed(need)).value.ethanolPerDay;
    expect([gas.low, gas.high].map((value) => value.toFixed(1))).toEqual(["5.4", "5.9"]);
    const cells = answered(carbonNeed({ ...need, route: "aerobic assimilation" })).value.ethanolPerDay;
    expect(cells.low).toBeGreaterThan(24);
    expect(cells.high).toBeLessThan(33);
  });

  it("hands alkalinity back only where nitrate leaves as gas", () => {
    // 3.573 g CaCO₃ per g of nitrogen: one equivalent (50.04 g) per 14.0067 g.
    expect(answered(carbonNeed(need)).value.alkalinityBackPerDay?.best).toBeCloseTo(10.5, 1);
    expect(
      answered(carbonNeed({ ...need, route: "aerobic assimilation" })).value.alkalinityBackPerDay,
    ).toBeUndefined();
  });

  it("refuses the whole day's alcohol at once", () => {
    expect(refusal(carbonNeed({ ...need, route: "aerobic assimilation", dosesPerDay: 1 }))).toBe(
      "carbon-takes-too-much-oxygen",
    );
  });
});

describe("sideStreamCarbon", () => {
  const stream = {
    flow: exactly(as<Quantity<"L/h">>(50)),
    nitrateNRemoved: exactly(as<Quantity<"mg/L">>(10)),
    oxygenIn: exactly(as<Quantity<"mg/L">>(6)),
    reservoirPercent: exactly(10),
    conditions: allWell,
  } as const;

  it("says how much of the carbon only burns oxygen", () => {
    // 6 of 28.6 + 6 is 17 %; at 1 mg/L of nitrate-N removed 6 of 8.856, 67.75 %; by hand.
    expect(answered(sideStreamCarbon(stream)).value.wastedOnOxygen.best).toBeCloseTo(0.174, 3);
    const poor = answered(sideStreamCarbon({ ...stream, nitrateNRemoved: exactly(as<Quantity<"mg/L">>(1)) }));
    expect(poor.value.wastedOnOxygen.best).toBeCloseTo(0.6775, 3);
    expect(poor.cautions.map(({ code }) => code)).toContain("carbon-wasted-on-oxygen");
  });

  it("refuses a box without flow", () => {
    expect(refusal(sideStreamCarbon({ ...stream, flow: exactly(as<Quantity<"L/h">>(0)) }))).toBe(
      "dose-figure-not-positive",
    );
  });
});
