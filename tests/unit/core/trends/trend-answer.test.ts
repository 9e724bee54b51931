import { describe, expect, it } from "vitest";
import type { Instrument, TrendReading } from "../../../../src/core/trends/readings.ts";
import { eventAnswer, type TrendQuestion, trendAnswer } from "../../../../src/core/trends/trend-answer.ts";
import { sayCaution, sayRefusal } from "../../../../src/wording/index.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const STEPS = [0, 5, 10, 20, 40, 80, 160];
const chart = { id: "chart", kind: "chart", steps: STEPS } as const;
const meter: Instrument = { id: "meter", kind: "meter", fixedSd: 0.5, levelSd: 0.03 };

const on = (at: number, value: number, instrument: Instrument = chart): TrendReading => ({
  at,
  value,
  instrument,
});
const change = (at: number, fraction: number, newWater = 0) =>
  ({ kind: "water change", at, fraction, newWater }) as const;

/** Meter readings every `gap` days of a tank that makes `rate(day)` a day and follows its log exactly. */
function kept(
  days: number,
  gap: number,
  rate: (day: number) => number,
  changes: readonly { at: number; fraction: number }[],
  start = 20,
): TrendReading[] {
  const readings: TrendReading[] = [];
  let level = start;
  for (let day = 0; day <= days; day += 1) {
    if (day % gap === 0) readings.push(on(day, Math.round(level * 2) / 2, meter));
    for (const made of changes) if (made.at === day + 0.5) level *= 1 - made.fraction;
    level += rate(day);
  }
  return readings;
}

const weekly = (days: number, fraction: number) =>
  Array.from({ length: Math.floor(days / 7) }, (_, i) => ({ at: i * 7 + 3.5, fraction }));
const logged = (changes: readonly { at: number; fraction: number }[]) =>
  changes.map((made) => change(made.at, made.fraction));

describe("refusing", () => {
  const cases: { what: string; question: Omit<TrendQuestion, "events">; code: string; words: RegExp }[] = [
    {
      what: "no test",
      question: { readings: [], now: 5 },
      code: "trend-no-readings",
      words: /log one today/,
    },
    {
      what: "two tests",
      question: { readings: [on(0, 10), on(9, 20)], now: 10 },
      code: "trend-too-few",
      words: /2 tests over 9 days.*log two more/,
    },
    {
      what: "three tests in two days",
      question: { readings: [on(0, 10), on(1, 10), on(2, 20)], now: 2 },
      code: "trend-too-few",
      words: /log two more/,
    },
    {
      what: "all at the top",
      question: { readings: [0, 7, 14, 21].map((d) => on(d, 160)), now: 22 },
      code: "trend-at-top",
      words: /at least 120/,
    },
    {
      what: "all in the lowest colour",
      question: { readings: [0, 7, 14, 21].map((d) => on(d, 0)), now: 22 },
      code: "trend-at-bottom",
      words: /below 2.5/,
    },
    {
      what: "old tests",
      question: { readings: [on(0, 5), on(7, 10), on(14, 20)], now: 90 },
      code: "trend-too-old",
      words: /76 days old/,
    },
  ];
  it.each(cases)("says why, and what to do, for $what", ({ question, code, words }) => {
    const result = trendAnswer({ ...question, events: [] });
    expect(refused(result)).toBe(code);
    if (result.kind === "no-answer") expect(sayRefusal(result.reason)).toMatch(words);
  });

  it("says so when the tests contradict each other", () => {
    const days: readonly (readonly [number, number])[] = [
      [0, 40],
      [0.1, 0],
      [0.2, 40],
      [0.3, 0],
      [24, 0],
      [25, 40],
      [32, 20],
      [60, 0],
      [64, 0],
    ];
    const events = [12, 43].map((at) => ({ kind: "other", at, what: "new food" }) as const);
    const result = trendAnswer({ readings: days.map(([at, v]) => on(at, v)), events, now: 70 });
    expect(refused(result)).toBe("trend-contradictory");
  });

  it("calls a wide-open record too vague rather than guess", () => {
    // Off the top, then back in range after changes of about half, twice: the rise between is anyone's guess.
    const readings = [on(0, 160), on(6, 80), on(7, 160), on(13, 40), on(14, 80)];
    const events = [change(5.5, 0.5, 10), change(12.5, 0.6, 10)];
    const result = trendAnswer({ readings, events, now: 15 });
    expect(refused(result)).toBe("trend-too-vague");
    if (result.kind === "no-answer") expect(sayRefusal(result.reason)).toMatch(/just before and just after/);
  });
});

describe("answering", () => {
  it("does not refuse three tests that climb 5, 20, 40 with nothing between", () => {
    const { value } = answered(
      trendAnswer({ readings: [on(0, 5), on(12, 20), on(24, 40)], events: [], now: 24 }),
    );
    // 40 ends 24 days after 5: between (30 − 7.5)/24 and (60 − 2.5)/24 a day by the cells alone.
    expect(value.productionPerDay.best).toBeGreaterThan(0.9);
    expect(value.productionPerDay.best).toBeLessThan(2.4);
    expect(value.leftAlone).toMatchObject({ way: "rising", firmness: "is" });
  });

  it("finds the production under a saw-tooth whose level goes nowhere", () => {
    // 2 a day for 7 days is 14; 40 % of 35 is 14: the saw-tooth is level from the start.
    const changes = weekly(98, 0.4);
    const readings = kept(98, 4, () => 2, changes, 21);
    const { value } = answered(trendAnswer({ readings, events: logged(changes), now: 98 }));
    expect(value.productionPerDay.low80).toBeLessThan(2);
    expect(value.productionPerDay.high80).toBeGreaterThan(2);
    expect(value.productionPerDay.low95).toBeGreaterThan(1);
    expect(value.level.way === "rising" && value.level.firmness === "is").toBe(false);
    expect(value.plan).toMatchObject({ everyDays: 7, fraction: 0.4 });
  });

  it("tells a limit both ways: soon if left alone, not on a plan that holds it", () => {
    const changes = weekly(98, 0.4);
    const readings = kept(98, 4, () => 2, changes, 21);
    const result = answered(trendAnswer({ readings, events: logged(changes), now: 98, limit: 60 }));
    const { limit } = result.value;
    expect(limit?.withoutChanges.chanceWithin).toBe(1);
    expect(limit?.withoutChanges.earlyDays).toBeLessThan(limit?.withoutChanges.middleDays ?? 0);
    // From 21–35 at 2 a day, 60 is 12 to 20 days off.
    expect(limit?.withoutChanges.middleDays).toBeGreaterThan(9);
    expect(limit?.withoutChanges.middleDays).toBeLessThan(24);
    expect(limit?.onPlan?.chanceWithin).toBeLessThan(0.1);
    expect(raised(result)).toContain("trend-plan-assumed");
  });

  it("says that no plan helps when the new water is above the limit", () => {
    const changes = weekly(98, 0.4);
    const readings = kept(98, 4, () => 2, changes, 21);
    const plan = { everyDays: 7, fraction: 0.4, newWater: 30, nextAt: 100 };
    const result = answered(trendAnswer({ readings, events: logged(changes), now: 98, limit: 25, plan }));
    expect(raised(result)).toContain("trend-new-water-above-limit");
    expect(result.value.limit?.needed?.fraction).toBeUndefined();
    expect(raised(result)).not.toContain("trend-plan-assumed");
  });

  it("names a test that fits nothing around it, and hardly moves for it", () => {
    const clean = [0, 5, 10, 15, 20, 25, 30, 35, 40].map((day) => on(day, 5 + day, meter));
    const slipped = clean.map((r) => (r.at === 25 ? { ...r, value: 90 } : r));
    const before = answered(trendAnswer({ readings: clean, events: [], now: 40 }));
    const after = answered(trendAnswer({ readings: slipped, events: [], now: 40 }));
    expect(raised(before)).not.toContain("trend-readings-doubted");
    const doubted = after.cautions.find((c) => c.code === "trend-readings-doubted");
    expect(doubted && sayCaution(doubted)).toMatch(/90 \(15 days ago\)/);
    expect(after.value.productionPerDay.best).toBeGreaterThan(before.value.productionPerDay.low80);
    expect(after.value.productionPerDay.best).toBeLessThan(before.value.productionPerDay.high80);
  });

  it("asks about a fall the log does not explain, and is silent once it is logged", () => {
    const changes = [{ at: 30.5, fraction: 0.6 }];
    const readings = kept(60, 3, () => 1, changes, 20);
    const silent = answered(trendAnswer({ readings, events: logged(changes), now: 60 }));
    const asking = answered(trendAnswer({ readings, events: [], now: 60 }));
    expect(raised(silent)).not.toContain("trend-unlogged-change");
    const question = asking.cautions.find((c) => c.code === "trend-unlogged-change");
    expect(question && sayCaution(question)).toMatch(/Between 27 and 30 days ago.*Did you change water/);
  });

  it("keeps two kits apart: one that reads a fifth more is noticed, not taken for a rise", () => {
    const level = (day: number) => 20 + 0.2 * day;
    const other: Instrument = { ...meter, id: "other meter" };
    const readings = Array.from({ length: 24 }, (_, i) => {
      const day = i * 3;
      return i % 2 === 0 ? on(day, level(day), meter) : on(day, level(day) * 1.2, other);
    });
    const result = answered(trendAnswer({ readings, events: [], now: 70 }));
    const kit = result.value.kits[0];
    expect(kit?.instrument).toBe("meter");
    expect(kit?.ratio.low80).toBeGreaterThan(0.75);
    expect(kit?.ratio.high80).toBeLessThan(0.95);
    expect(raised(result)).toContain("trend-kits-differ");
  });

  it("asks about units when two instruments differ by the factor between N and NO3", () => {
    const other: Instrument = { ...meter, id: "other meter" };
    const readings = Array.from({ length: 20 }, (_, i) =>
      i % 2 === 0 ? on(i * 3, 40, meter) : on(i * 3, 40 / 4.4268, other),
    );
    const result = trendAnswer({ readings, events: [], now: 60 });
    const slip = result.cautions.find((c) => c.code === "trend-unit-slip");
    expect(slip && sayCaution(slip)).toMatch(/^meter reads about 4.4 times other meter/);
  });

  it("counts ten looks on one morning as one test", () => {
    const many = Array.from({ length: 10 }, (_, i) => on(14 + i / 240, 40));
    const result = answered(
      trendAnswer({ readings: [on(0, 5), on(7, 20), ...many, on(21, 40)], events: [], now: 21 }),
    );
    expect(result.value.basis.readings).toBe(4);
  });

  it("shows its evidence", () => {
    const result = answered(
      trendAnswer({ readings: [on(0, 5), on(12, 20), on(24, 40)], events: [], now: 24 }),
    );
    expect(result.sources).toContain("mass-balance");
    expect(result.working.length).toBeGreaterThan(2);
    expect(result.constants.every((c) => c.source === "assumption")).toBe(true);
  });
});

describe("whether a dated thing mattered", () => {
  const changes = weekly(120, 0.3);
  const less = { kind: "other", at: 60.2, what: "half the food" } as const;
  const filter = { kind: "other", at: 63, what: "new filter media" } as const;

  it("finds a production cut to a third, and names what else changed that week", () => {
    const readings = kept(120, 4, (day) => (day < 60 ? 3 : 1), changes, 40);
    const events = [...logged(changes), less, filter];
    const effect = answered(eventAnswer({ readings, events, now: 120 }, less)).value;
    if (effect.kind !== "event") throw new Error("not weighed as an event");
    expect(effect.verdict).toBe("lowered");
    expect(effect.ratio.low95).toBeLessThan(1 / 3);
    expect(effect.ratio.high95).toBeGreaterThan(1 / 3);
    expect(effect.ratio.high80).toBeLessThan(0.8);
    // Changes fall on days 59.5 and 66.5, the events on 60.2 and 63.
    expect(effect.alsoThatWeek).toEqual(["a 30 % water change", "new filter media", "a 30 % water change"]);
  });

  it("does not find what was not there", () => {
    const readings = kept(120, 4, () => 2, changes, 30);
    const events = [...logged(changes), less];
    const effect = answered(eventAnswer({ readings, events, now: 120 }, less)).value;
    expect(effect).toMatchObject({ kind: "event", verdict: "not shown" });
  });

  it("refuses with too little on one side", () => {
    const late = { kind: "other", at: 115, what: "two more fish" } as const;
    const readings = kept(120, 4, () => 2, changes, 30);
    const result = eventAnswer({ readings, events: [...logged(changes), late], now: 120 }, late);
    expect(refused(result)).toBe("trend-event-too-little");
  });

  it("sets a change of water beside what it had to do", () => {
    const made = { at: 31.5, fraction: 0.5 };
    const readings = kept(60, 3, () => 1, [made], 20);
    const event = change(31.5, 0.5);
    const effect = answered(eventAnswer({ readings, events: [event], now: 60 }, event)).value;
    if (effect.kind !== "water change") throw new Error("not weighed as a change");
    // 20 + 31 or 32 days at one a day, then half of it.
    expect(effect.before.low95).toBeLessThan(51.5);
    expect(effect.before.high95).toBeGreaterThan(51.5);
    expect(effect.after.best).toBeGreaterThan(23);
    expect(effect.after.best).toBeLessThan(29);
    expect(effect.canBeSeen).toBe(true);
  });
});
