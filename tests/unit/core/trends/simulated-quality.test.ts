import { describe, expect, it } from "vitest";
import { coverOf, judgeAll } from "../../../../bench/simulation/evaluate.ts";

/** A small run of the simulation, so that a change that spoils the ranges is noticed at once. The bars are those
 *  of the full run (bench/simulation), widened by what so few records let chance do. */
describe("the engine on simulated tanks", () => {
  const rows = judgeAll(404, 24, false);
  const answered = rows.filter((r) => r.estimates.engine);

  it("covers the truth about as often as it says", () => {
    const cover = coverOf(rows, "engine");
    expect(answered.length).toBeGreaterThan(120);
    for (const share of [cover.net80, cover.forecast80]) {
      expect(share).toBeGreaterThan(0.72);
      expect(share).toBeLessThan(0.9);
    }
    for (const share of [cover.net95, cover.forecast95]) expect(share).toBeGreaterThan(0.9);
  });

  it("calls directions, and hardly ever the wrong one", () => {
    expect(rows.reduce((sum, r) => sum + r.called, 0)).toBeGreaterThan(80);
    expect(rows.filter((r) => r.opposite > 0).length).toBeLessThanOrEqual(2);
  });

  it("answers where there is enough, and refuses where there is not", () => {
    const enough = rows.filter((r) => r.hasEnough);
    const without = rows.filter((r) => !r.hasEnough);
    expect(enough.length).toBeGreaterThan(100);
    expect(without.length).toBeGreaterThan(20);
    expect(enough.filter((r) => !r.estimates.engine).length / enough.length).toBeLessThan(0.07);
    expect(without.filter((r) => r.estimates.engine).length / without.length).toBeLessThan(0.25);
  });
});
