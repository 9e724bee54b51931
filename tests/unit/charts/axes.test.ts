import { describe, expect, it } from "vitest";
import { dayTicks, tickText, valueAxis } from "../../../src/charts/axes.ts";
import { labelledEvents } from "../../../src/charts/layout.ts";
import type { ChartMark, ChartPanel } from "../../../src/kit/chart.ts";

const DAY_MS = 86_400_000;

function panelOf(marks: readonly ChartMark[], more: Partial<ChartPanel> = {}): ChartPanel {
  return { axisTitle: "pH", series: [{ name: "readings", marks }], forecasts: [], ...more };
}

const points = (...values: number[]): readonly ChartMark[] =>
  values.map((value, at) => ({ kind: "point", at, value }));

describe("the axis of days", () => {
  it("ticks at local midnights, also across the change of clocks", () => {
    // EU directive 2000/84/EC: clocks go forward on the last Sunday of March at 01:00 UTC; in 2026 the 29th.
    const from = Date.UTC(2026, 2, 27, 10);
    const ticks = dayTicks(from, from + 4 * DAY_MS, "Europe/Lisbon", 6);
    expect(ticks.map(({ at }) => new Date(at).toISOString())).toEqual([
      "2026-03-28T00:00:00.000Z",
      "2026-03-29T00:00:00.000Z",
      "2026-03-29T23:00:00.000Z",
      "2026-03-30T23:00:00.000Z",
    ]);
    expect(ticks.map(({ text }) => text)).toEqual(["28 Mar", "29 Mar", "30 Mar", "31 Mar"]);
  });

  it.each([1 / 24, 0.5, 3, 20, 90, 400, 4000, 14_600])("has few ticks over %d days, all within", (days) => {
    const ticks = dayTicks(0, days * DAY_MS, "UTC", 8);
    expect(ticks.length).toBeGreaterThan(0);
    expect(ticks.length).toBeLessThanOrEqual(10);
    for (const { at } of ticks) expect(at >= 0 && at <= days * DAY_MS).toBe(true);
  });
});

describe("the axis of levels", () => {
  it("begins at nothing for levels that come near it, and close by for those that never do", () => {
    expect(valueAxis(panelOf(points(5, 80)), 5).min).toBe(0);
    expect(valueAxis(panelOf(points(8.0, 8.3)), 5).min).toBeCloseTo(8.0, 9);
  });

  it("reaches as far as the limit, and to the near edge of a target out of reach", () => {
    expect(valueAxis(panelOf(points(5, 20), { limit: 50 }), 5).max).toBeGreaterThanOrEqual(50);
    const low = valueAxis(panelOf(points(7.0, 7.2), { target: { low: 7.8, high: 8.4 } }), 5);
    expect(low.max).toBeGreaterThanOrEqual(7.8);
    expect(low.max).toBeLessThan(8.4);
  });

  it("leaves an open top room to point", () => {
    expect(valueAxis(panelOf([{ kind: "at least", at: 0, low: 120 }, ...points(10)]), 5).max).toBeGreaterThan(
      120,
    );
  });

  it("prints as many digits as the steps need", () => {
    expect(tickText(0.30000000000000004, 0.1)).toBe("0.3");
    expect(tickText(-1e-18, 0.1)).toBe("0.0");
    expect(tickText(20, 20)).toBe("20");
    expect(tickText(0.025, 0.005)).toBe("0.025");
  });
});

describe("the words of events", () => {
  it("are left out where they would run into the next or out of the picture", () => {
    const events = [0, 1, 50, 99.5].map((at) => ({ at, label: "30 %" }));
    expect(labelledEvents(events, 0, 100, 700).map(({ at }) => at)).toEqual([1, 50]);
  });
});
