import { describe, expect, it } from "vitest";
import { particleProduction } from "../../../../bench/simulation/particles.ts";
import type { Regime } from "../../../../bench/simulation/shapes.ts";
import { simulate } from "../../../../bench/simulation/world.ts";
import { productionNow } from "../../../../src/core/trends/production.ts";
import { isAtTop } from "../../../../src/core/trends/readings.ts";

/** Records of one colour chart, without dated events, that never leave the chart. */
function plainRecords(regime: Regime, wanted: number) {
  const found = [];
  for (let index = 0; found.length < wanted && index < 60; index += 1) {
    const record = simulate(77, regime, index);
    const kinds = new Set(record.readings.map((r) => r.instrument.id));
    const isChart = record.readings.every((r) => r.instrument.kind === "chart");
    const production = productionNow(record.readings, record.events, record.now);
    if (!production || kinds.size !== 1 || !isChart || record.events.some((e) => e.kind === "other"))
      continue;
    if (!production.refusal && !production.timeline.looks.some(isAtTop)) found.push(production);
  }
  return found;
}

describe("the engine's bell curves", () => {
  it.each(["steady", "saw-tooth", "rising"] as const)("come to what brute force comes to: %s", (regime) => {
    const records = plainRecords(regime, 4);
    expect(records.length).toBe(4);
    const misses = records.flatMap(({ net, timeline }) => {
      const brute = particleProduction(timeline, 5);
      const width = brute.high80 - brute.low80;
      return [
        Math.abs(net.low80 - brute.low80) / width,
        Math.abs(net.best - brute.best) / width,
        Math.abs(net.high80 - brute.high80) / width,
      ];
    });
    // Ends of the range lie within a fifth of its width on average, and none strays by half.
    expect(misses.reduce((sum, miss) => sum + miss, 0) / misses.length).toBeLessThan(0.2);
    expect(Math.max(...misses)).toBeLessThan(0.5);
  });
});
