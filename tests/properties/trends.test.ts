import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  daysToLimit,
  grow,
  longestInterval,
  settledPeak,
  settledTrough,
  smallestFraction,
} from "../../src/core/trends/balance.ts";
import { datedChanges } from "../../src/core/trends/change-plan.ts";
import { intervalUpdate } from "../../src/core/trends/interval-update.ts";
import { kendallS, kendallTiedUpperTail } from "../../src/core/trends/kendall.ts";
import { crossingOnPlan } from "../../src/core/trends/limit-crossing.ts";
import { logNormalCdf, normalBetween, normalCdf, normalQuantile } from "../../src/core/trends/normal.ts";
import { plainTrend } from "../../src/core/trends/plain-trend.ts";
import { productionNow } from "../../src/core/trends/production.ts";
import type { Instrument, TrendEvent, TrendReading } from "../../src/core/trends/readings.ts";
import { theilSen } from "../../src/core/trends/theil-sen.ts";
import { trendAnswer } from "../../src/core/trends/trend-answer.ts";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const STEPS = [0, 5, 10, 20, 40, 80, 160];
const chartOf = (scale: number): Instrument => ({
  id: "chart",
  kind: "chart",
  steps: STEPS.map((step) => step * scale),
});

/** Moments on a grid a computer holds exactly, so that a shifted calendar has the very same gaps. */
const moment = (from: number, to: number) => fc.integer({ min: from * 64, max: to * 64 }).map((i) => i / 64);

/** Any record a member could keep: test days, chart steps, changes and events in any order. */
const record = fc.record({
  tests: fc.array(fc.tuple(moment(0, 120), fc.integer({ min: 0, max: 6 })), { minLength: 0, maxLength: 25 }),
  changes: fc.array(fc.tuple(moment(0, 120), number(0, 1), number(0, 30)), { maxLength: 12 }),
  others: fc.array(moment(0, 120), { maxLength: 2 }),
  now: moment(100, 150),
});
type Kept = typeof record extends fc.Arbitrary<infer T> ? T : never;

function asked({ tests, changes, others, now }: Kept, scale = 1, shift = 0) {
  const instrument = chartOf(scale);
  const readings: TrendReading[] = tests.map(([at, step]) => ({
    at: at + shift,
    value: (STEPS[step] ?? 0) * scale,
    instrument,
  }));
  const events: TrendEvent[] = [
    ...changes.map(([at, fraction, newWater]) => ({
      kind: "water change" as const,
      at: at + shift,
      fraction,
      newWater: newWater * scale,
    })),
    ...others.map((at) => ({ kind: "other" as const, at: at + shift, what: "new food" })),
  ];
  return { readings, events, now: now + shift, limit: 60 * scale };
}

describe("a trend answer", () => {
  it("never throws and never answers with something that is no number", () => {
    fc.assert(
      fc.property(record, (kept) => {
        const result = trendAnswer(asked(kept));
        if (result.kind === "no-answer") return;
        const { productionPerDay, levelNow, forecast } = result.value;
        for (const band of [productionPerDay, levelNow, forecast.withoutChanges]) {
          const inOrder = [band.low95, band.low80, band.best, band.high80, band.high95];
          expect(inOrder.every(Number.isFinite)).toBe(true);
          expect([...inOrder].sort((a, b) => a - b)).toEqual(inOrder);
        }
        expect(levelNow.low95).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 60 },
    );
  });

  it("is unmoved by the order of the entries", () => {
    fc.assert(
      fc.property(record, (kept) => {
        // Two tests at one instant have no order of their own.
        fc.pre(new Set(kept.tests.map(([at]) => at)).size === kept.tests.length);
        fc.pre(new Set(kept.changes.map(([at]) => at)).size === kept.changes.length);
        const question = asked(kept);
        const turned = {
          ...question,
          readings: question.readings.toReversed(),
          events: question.events.toReversed(),
        };
        expect(trendAnswer(turned)).toEqual(trendAnswer(question));
      }),
      { numRuns: 40 },
    );
  });

  it("is unmoved by a shift of the calendar", () => {
    fc.assert(
      fc.property(record, (kept) => {
        const here = productionNow(asked(kept).readings, asked(kept).events, kept.now);
        const later = asked(kept, 1, 4096);
        const there = productionNow(later.readings, later.events, later.now);
        expect(there?.refusal?.why).toBe(here?.refusal?.why);
        if (here && there) expect(there.net.best).toBeCloseTo(here.net.best, 6);
      }),
      { numRuns: 40 },
    );
  });

  it("scales with the unit: a chart in other units gives the same days and scaled levels", () => {
    fc.assert(
      fc.property(record, (kept) => {
        const one = trendAnswer(asked(kept));
        const other = trendAnswer(asked(kept, 1 / 64));
        expect(other.kind).toBe(one.kind);
        if (one.kind === "no-answer" || other.kind === "no-answer") return;
        const rate = one.value.productionPerDay.high80;
        expect(other.value.productionPerDay.high80 * 64).toBeCloseTo(rate, 6);
        expect(other.value.levelNow.best * 64).toBeCloseTo(one.value.levelNow.best, 6);
        expect(other.value.limit?.withoutChanges.chanceWithin).toBe(
          one.value.limit?.withoutChanges.chanceWithin,
        );
      }),
      { numRuns: 40 },
    );
  });

  it("does not see what has not happened yet", () => {
    fc.assert(
      fc.property(record, (kept) => {
        const question = asked(kept);
        const instrument = chartOf(1);
        const ahead = [...question.readings, { at: kept.now + 1, value: 160, instrument }];
        const now = productionNow(question.readings, question.events, kept.now);
        expect(productionNow(ahead, question.events, kept.now)?.net).toEqual(now?.net);
      }),
      { numRuns: 30 },
    );
  });
});

describe("the mass balance", () => {
  const level = number(0, 200);
  const production = number(0, 10);
  const uptake = fc.oneof(fc.constant(0), number(1e-12, 0.3));
  const days = number(0.1, 60);

  it("does not care where a stretch is cut in two", () => {
    fc.assert(
      fc.property(level, production, uptake, days, days, (c, p, k, a, b) => {
        const whole = grow(c, p, k, a + b);
        expect(grow(grow(c, p, k, a), p, k, b)).toBeCloseTo(whole, 6);
      }),
    );
  });

  it("comes back to its settled peak after one change and one interval", () => {
    const fraction = number(0.05, 1);
    fc.assert(
      fc.property(production, uptake, days, fraction, number(0, 40), (p, k, everyDays, f, newWaterMgPerL) => {
        const plan = { everyDays, fraction: f, newWaterMgPerL };
        const peak = settledPeak(p, k, plan);
        expect(grow(settledTrough(p, k, plan), p, k, everyDays) / Math.max(peak, 1e-9)).toBeCloseTo(
          peak > 1e-9 ? 1 : peak / 1e-9,
          6,
        );
      }),
    );
  });

  it("keeps the peak at the limit with the smallest share, or the longest interval, that it names", () => {
    fc.assert(
      fc.property(number(0.1, 5), uptake, number(1, 20), number(0.05, 0.9), (p, k, everyDays, f) => {
        const smallest = smallestFraction(p, k, everyDays, 2, 50);
        if (smallest !== undefined && smallest > 0) {
          const plan = { everyDays, fraction: smallest, newWaterMgPerL: 2 };
          expect(settledPeak(p, k, plan)).toBeCloseTo(50, 5);
        }
        const longest = longestInterval(p, k, f, 2, 50);
        if (longest !== undefined && Number.isFinite(longest)) {
          expect(settledPeak(p, k, { everyDays: longest, fraction: f, newWaterMgPerL: 2 })).toBeCloseTo(
            50,
            5,
          );
        }
      }),
    );
  });

  it("is at the limit on the day it says", () => {
    fc.assert(
      fc.property(number(0, 39), number(0.01, 10), uptake, (c, p, k) => {
        const at = daysToLimit(c, p, k, 40);
        if (Number.isFinite(at)) expect(grow(c, p, k, at)).toBeCloseTo(40, 4);
        else expect(p / k).toBeLessThanOrEqual(40 * (1 + 1e-12));
      }),
    );
  });

  it("reaches a limit no sooner with larger changes, nor a higher limit sooner", () => {
    const draw = (p: number) => [
      {
        level: 20,
        production: p,
        comparison: 0,
        uptakePerDay: 0,
        feedingSpread: 0.3,
        changeSpread: 0.1,
        drift: 0,
        point: 7,
      },
    ];
    fc.assert(
      fc.property(number(0.1, 5), number(0, 0.4), number(0, 0.4), number(25, 100), (p, f, more, limit) => {
        const on = (fraction: number, x: number) => {
          const plan = { everyDays: 7, fraction, newWater: 1, nextAt: 4 };
          return crossingOnPlan(draw(p), x, 365, 0, datedChanges(plan, 0, 365)).middleDays;
        };
        expect(on(f + more, limit)).toBeGreaterThanOrEqual(on(f, limit));
        expect(on(f, limit + 10)).toBeGreaterThanOrEqual(on(f, limit));
      }),
    );
  });
});

describe("ranks", () => {
  const values = fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 2, maxLength: 30 });

  it("count pairs as the definition does, and turn sign with time turned round", () => {
    fc.assert(
      fc.property(values, (y) => {
        let s = 0;
        y.forEach((early, i) => {
          for (const late of y.slice(i + 1)) s += Math.sign(late - early);
        });
        expect(kendallS(y)).toBe(s);
        expect(kendallS(y.toReversed()) + s).toBe(0);
      }),
    );
  });

  it("give a tied record the chance that listing every order gives", () => {
    const orders = (y: readonly number[]): number[][] =>
      y.length === 0 ? [[]] : y.flatMap((v, i) => orders(y.toSpliced(i, 1)).map((rest) => [v, ...rest]));
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 2, maxLength: 6 }), (y) => {
        const s = kendallS(y);
        const all = orders(y);
        const share = all.filter((order) => kendallS(order) >= s).length / all.length;
        expect(kendallTiedUpperTail(y, s)).toBeCloseTo(share, 12);
      }),
      { numRuns: 40 },
    );
  });

  it("give a middle slope that follows the units of both axes, inside its own range", () => {
    const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 400 }), number(-50, 50)), {
      minLength: 4,
      maxLength: 25,
    });
    fc.assert(
      fc.property(points, number(0.1, 10), number(-20, 20), (raw, scale, shift) => {
        const t = [...new Set(raw.map(([at]) => at))].sort((a, b) => a - b);
        fc.pre(t.length > 3);
        const y = raw.slice(0, t.length).map(([, value]) => value);
        const one = theilSen(t, y);
        const other = theilSen(
          t,
          y.map((value) => scale * value + shift),
        );
        expect(other.slope).toBeCloseTo(scale * one.slope, 8);
        expect(one.low).toBeLessThanOrEqual(one.slope);
        expect(one.high).toBeGreaterThanOrEqual(one.slope);
      }),
    );
  });

  it("never make a plain drift throw, whatever the instrument", () => {
    const meter: Instrument = { id: "meter", kind: "meter", fixedSd: 0.1, levelSd: 0 };
    const tests = fc.array(fc.tuple(moment(0, 300), fc.integer({ min: 0, max: 6 })), { maxLength: 20 });
    fc.assert(
      fc.property(tests, fc.boolean(), (raw, isChart) => {
        const instrument = isChart ? chartOf(1) : meter;
        const readings = raw.map(([at, step]) => ({ at, value: STEPS[step] ?? 0, instrument }));
        const result = plainTrend({ readings, events: [], now: 300, target: { low: 6, high: 8 } });
        if (result.kind === "no-answer") return;
        const { slopePerDay, levelNow } = result.value;
        expect(Number.isFinite(slopePerDay.best)).toBe(true);
        expect(Number.isFinite(levelNow)).toBe(true);
        expect(slopePerDay.low80).toBeLessThanOrEqual(slopePerDay.best + 1e-9);
        expect(slopePerDay.high80).toBeGreaterThanOrEqual(slopePerDay.best - 1e-9);
      }),
    );
  });
});

describe("the normal curve", () => {
  it("adds up over neighbouring stretches and comes back from its quantile", () => {
    fc.assert(
      fc.property(number(-8, 8), number(0, 4), number(0, 4), (a, b, c) => {
        const parts = normalBetween(a, a + b) + normalBetween(a + b, a + b + c);
        expect(parts).toBeCloseTo(normalBetween(a, a + b + c), 14);
        expect(logNormalCdf(a)).toBeLessThanOrEqual(logNormalCdf(a + b));
      }),
    );
    fc.assert(
      fc.property(number(1e-12, 1 - 1e-12), (q) => {
        expect(normalCdf(normalQuantile(q)) / q).toBeCloseTo(1, 9);
      }),
    );
  });

  it("narrows a belief with every reading, and moves it towards the reading", () => {
    fc.assert(
      fc.property(
        number(-5, 5),
        number(0.1, 9),
        number(0.1, 3),
        number(-6, 6),
        number(0.2, 5),
        (m, v, s, low, width) => {
          const update = intervalUpdate(m, v, s, low, low + width);
          expect(update.variance).toBeGreaterThan(0);
          expect(update.variance).toBeLessThan(v);
          const moved = update.mean - m;
          const towards = low + width / 2 - m;
          expect(moved * towards).toBeGreaterThanOrEqual(-1e-9);
        },
      ),
    );
  });
});
