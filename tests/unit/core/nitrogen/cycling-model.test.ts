import { describe, expect, it } from "vitest";
import { type CyclingParameters, cyclingState, PLACE } from "../../../../src/core/nitrogen/cycling-model.ts";
import { type CyclingPlan, firstBelow, runCycle } from "../../../../src/core/nitrogen/cycling-run.ts";

const fresh: CyclingParameters = {
  temperatureC: 25,
  oxygenMgPerL: 6.5,
  saltFactor: 1,
  ammoniaGrowthScale: 1,
  nitriteGrowthScale: 1,
  halfFoodScale: 1,
  mineralisationPerDay: 0,
  loadMgNPerLDay: 0,
  loadAlkalinity: 1,
  isAlkalinityLimited: false,
};

const once: CyclingPlan = {
  days: 20,
  pointsPerDay: 1,
  againBelow: 0.5,
  waitsAboveNitrite: 5,
  handUntilDay: -1,
  loggedDoses: [],
  waterChanges: [],
  sourceAlkalinity: 3,
  proof: 2,
  passBelow: 0.1,
};

describe("the cycling model", () => {
  it("uses 7.05–7.14 g of CaCO₃ per g of ammonium nitrogen", () => {
    // Sources: zhu-chen-2002 and the stoichiometry (7.14, without cells); ebeling-2006 (7.05, with cells).
    const run = runCycle(fresh, cyclingState(2, 1e-3, 1e-3, 3), once);
    const used = 3 - (run.state[PLACE.alkalinity] ?? 0);
    const perGram = (used * 50.043) / 2;
    expect(perGram).toBeGreaterThan(6.95);
    expect(perGram).toBeLessThan(7.2);
  });

  it("uses half of that on nitrogen that came as food", () => {
    // Source: wolf-gladrow-2007: +1 eq on becoming ammonia, −2 on becoming nitrate.
    const fed = { ...fresh, loadMgNPerLDay: 1 };
    const run = runCycle(fed, cyclingState(0, 5, 5, 30), { ...once, days: 30 });
    const used = 30 - (run.state[PLACE.alkalinity] ?? 0);
    const nitrate = run.state[PLACE.nitrate] ?? 0;
    expect(((used / nitrate) * 14.0067) / 1).toBeGreaterThan(0.93);
    expect(((used / nitrate) * 14.0067) / 1).toBeLessThan(1.07);
  });

  it("thins everything dissolved by a water change, and leaves the cells on their surfaces", () => {
    const still = { ...fresh, ammoniaGrowthScale: 0, nitriteGrowthScale: 0 };
    const changed = { ...once, days: 1, waterChanges: [{ day: 0, changed: 0.5 }] };
    const run = runCycle(still, cyclingState(2, 0.1, 0.1, 3), changed);
    expect(run.state[PLACE.ammonium]).toBeCloseTo(1, 9);
    expect(run.removed).toBeCloseTo(1, 9);
    expect(run.state[PLACE.ammoniaCells]).toBeGreaterThan(0.09);
  });

  it("keeps to the reference course at the accuracy the ensemble runs at", () => {
    // Source: the reference run of the check rows: day 23.98 and day 35.37 at salt factor 0.4.
    const quick = { relative: 1e-3, mgPerL: 1e-4 };
    const plan = { ...once, days: 45, pointsPerDay: 10 };
    const run = runCycle({ ...fresh, saltFactor: 0.4 }, cyclingState(2, 1e-3, 1e-3, 3), plan, quick);
    expect(Math.abs(firstBelow(run.tan, 0.1, 10) - 23.98)).toBeLessThan(0.15);
    const peak = run.nitrite.indexOf(Math.max(...run.nitrite));
    expect(Math.abs(firstBelow(run.nitrite, 0.1, 10, peak) - 35.37)).toBeLessThan(0.15);
  });

  it("needs two days in a row to be called ready", () => {
    const ripe = runCycle(fresh, cyclingState(0, 20, 20, 30), { ...once, doseTo: 2 });
    expect(ripe.readyDay).toBe(2);
    const bare = runCycle(fresh, cyclingState(2, 1e-3, 1e-3, 30), once);
    expect(bare.readyDay).toBe(Number.POSITIVE_INFINITY);
  });
});
