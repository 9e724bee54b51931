import { describe, expect, it } from "vitest";
import { algaeHarvest, harvestNitrogenPerDay } from "../../../../src/core/dosing/algae-harvest.ts";
import { carbonDoseCheck } from "../../../../src/core/dosing/carbon-dose-check.ts";
import { carbonNeedByRoute } from "../../../../src/core/dosing/carbon-need-by-route.ts";
import { nitrogenToRemove } from "../../../../src/core/dosing/nitrogen-to-remove.ts";
import { asNitrogen } from "../../../../src/core/nitrogen/nitrogen-units.ts";
import { between, exactly, mapEstimate } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";

const q = <Q extends Quantity<string>>(value: number): Q => as<Q>(value);
const fine = {
  arePumpsRunning: true,
  isAerationRunning: true,
  isSkimmerRunning: true,
  areFishEating: true,
  isDenatured: false,
};
const dose = (millilitres: number, dosesPerDay: number, conditions = fine) =>
  carbonDoseCheck({
    route: "aerobic assimilation",
    daily: exactly(q(millilitres / 1000)),
    dosesPerDay,
    percentByVolume: exactly(40),
    systemVolume: exactly(q(2700)),
    conditions,
  });

describe("a carbon dose somebody has in mind", () => {
  it("takes 2.4123 mg/L of oxygen for 30 mL of 40 % in 2700 L (electron balance, yield 0.67), a fifth in five", () => {
    expect(dose(30, 1)).toMatchObject({
      kind: "no-answer",
      reason: { code: "carbon-takes-too-much-oxygen" },
    });
    const split = dose(30, 5);
    expect(split.kind === "answer" && split.value.oxygenPerDose.best).toBeCloseTo(2.4123 / 5, 3);
    // With no yield all of it burns: ÷ (1 − 0.67).
    expect(split.kind === "answer" && split.value.worstOxygenPerDose.best).toBeCloseTo(2.4123 / 5 / 0.33, 3);
    expect(split.kind === "answer" && split.value.dosesForComfort).toBe(5);
  });

  it("is refused whenever something is off, whatever its size", () => {
    for (const off of ["arePumpsRunning", "isAerationRunning", "isSkimmerRunning", "areFishEating"] as const)
      expect(dose(0.1, 4, { ...fine, [off]: false }).kind).toBe("no-answer");
    expect(dose(0.1, 4, { ...fine, isDenatured: true }).kind).toBe("no-answer");
  });

  it("is judged by the smaller system when the volume is in doubt", () => {
    const doubtful = carbonDoseCheck({
      route: "aerobic assimilation",
      daily: exactly(q(0.018)),
      dosesPerDay: 1,
      percentByVolume: exactly(40),
      systemVolume: between(q(1800), q(3600), q(2700)),
      conditions: fine,
    });
    // 18 mL: 1.447 mg/L in 2700 L passes, but 2.17 in 1800 L does not.
    expect(doubtful.kind).toBe("no-answer");
  });
});

it("nitrogen to remove: 44.268 mg/L of nitrate a week in 700 L is 7 g, 1 g a day", () => {
  const nitrate = exactly(asNitrogen(44.268, "NO3"));
  const { perWeek, perDay } = nitrogenToRemove(nitrate, exactly(q(700)));
  expect(perWeek.best).toBeCloseTo(7, 3);
  expect(perDay.best).toBeCloseTo(1, 3);
});

describe("carbon by both routes", () => {
  const need = (conditions: typeof fine) =>
    carbonNeedByRoute({
      nitrogenPerDay: exactly(q(1)),
      systemVolume: exactly(q(5000)),
      reservoirPercent: exactly(10),
      dosesPerDay: 24,
      conditions,
    });

  it("takes 1.85 to 2.02 g of ethanol per gram of nitrogen as gas, four to six times that as cells", () => {
    const answer = need(fine);
    const [cells, gas] = answer.kind === "answer" ? answer.value.routes : [];
    // Christensson 1994 and McCarty 1969, worked by hand: 1.8476 and 2.0162 g.
    expect(gas?.ethanolPerDay.low).toBeCloseTo(1.8476, 3);
    expect(gas?.ethanolPerDay.high).toBeCloseTo(2.0162, 3);
    // ASM1 and ASM2d: 1 / 0.1201 and 1 / 0.0912.
    expect(cells?.ethanolPerDay.low).toBeCloseTo(8.33, 1);
    expect(cells?.ethanolPerDay.high).toBeCloseTo(10.97, 1);
  });

  it("says each caution once, and leaves out the route that the day forbids", () => {
    const answer = need(fine);
    const codes = answer.cautions.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
    const noSkimmer = need({ ...fine, isSkimmerRunning: false });
    expect(noSkimmer.kind === "answer" && noSkimmer.value.routes.map(({ route }) => route)).toEqual([
      "anoxic denitrification",
    ]);
    expect(need({ ...fine, arePumpsRunning: false }).kind).toBe("no-answer");
  });
});

describe("an algae harvest", () => {
  it("of 1 kg at 10 % dry and 3 % nitrogen carries 3 g, 4.9187 mg/L of nitrate in 2700 L", () => {
    // Definition, and standard atomic weights.
    const answer = algaeHarvest({
      wet: exactly(q(1000)),
      systemVolume: exactly(q(2700)),
      dryShare: exactly(q(0.1)),
      nitrogenOfDry: exactly(q(0.03)),
    });
    expect(answer.kind === "answer" && answer.value.nitrogen.best).toBeCloseTo(3, 9);
    expect(answer.kind === "answer" && answer.value.nitrate.best).toBeCloseTo(4.9187, 3);
  });

  it("of 700 g a week carries 0.3 g a day, with the algae's own spread", () => {
    const perDay = harvestNitrogenPerDay(mapEstimate(exactly(0.7), (kg) => q(kg * 1000)));
    expect(perDay.best).toBeCloseTo(0.3, 9);
    expect(perDay.low).toBeLessThan(0.2);
    expect(perDay.high).toBeGreaterThan(0.4);
  });
});
