import { describe, expect, it } from "vitest";
import { type Course, trendCourse } from "../../../../src/core/trends/course.ts";
import { type TrendQuestion, trendAnswer } from "../../../../src/core/trends/trend-answer.ts";
import { answered } from "../../../support/answers.ts";

const STEPS = [0, 5, 10, 20, 40, 80, 160];
const chart = { id: "chart", kind: "chart", steps: STEPS } as const;

/** A tank that makes 1.1 mg/L a day and loses 30 % of its water every ten days, read by colour every four. */
function question(days: number): TrendQuestion {
  const readings: TrendQuestion["readings"][number][] = [];
  const events: TrendQuestion["events"][number][] = [];
  let level = 20;
  for (let day = 0; day <= days; day += 1) {
    const step = STEPS.reduce(
      (best, each) => (Math.abs(each - level) < Math.abs(best - level) ? each : best),
      0,
    );
    if (day % 4 === 0) readings.push({ at: day, value: step, instrument: chart });
    if (day % 10 === 5) {
      events.push({ kind: "water change", at: day + 0.5, fraction: 0.3, newWater: 0 });
      level *= 0.7;
    }
    level += 1.1;
  }
  return { readings, events, now: days };
}

function courseOf(asked: TrendQuestion, fromDay: number): Course {
  const steps = trendCourse(asked, fromDay);
  for (let turns = 0; turns < 1000; turns += 1) {
    const step = steps.next();
    if (step.done !== true) continue;
    if (step.value === undefined) throw new Error("no course");
    return step.value;
  }
  throw new Error("the course never ends");
}

describe("the course of a level", () => {
  const asked = question(60);
  const course = courseOf(asked, 0);

  it("falls by the share changed, and by nothing else at once", () => {
    const sides = course.past.flatMap((point, i) => {
      const next = course.past[i + 1];
      return next?.at === point.at ? [[point.band.best, next.band.best] as const] : [];
    });
    expect(sides).toHaveLength(6);
    // C ← (1 − 0.3) · C (mass balance); the tests shift the share by a little, its logged error being 10 % of it.
    for (const [before, after] of sides) expect(after / before).toBeCloseTo(0.7, 1);
  });

  it("runs in order of time, ends where the answer stands, and holds the truth", () => {
    const times = course.past.map(({ at }) => at);
    expect([...times].sort((a, b) => a - b)).toEqual(times);
    expect(course.past.at(-1)?.band).toEqual(answered(trendAnswer(asked)).value.levelNow);
    // Made so above: 20 · … settles to 1.1 · 10 / 0.3 = 36.7 before a change (mass balance).
    const beforeLast = course.past.filter(({ at }) => at === 55.5)[0]?.band;
    expect(beforeLast?.low95).toBeLessThan(36.7);
    expect(beforeLast?.high95).toBeGreaterThan(36.7);
  });

  it("goes on with the planned change, and without", () => {
    expect(course.withoutChanges.at(-1)?.at).toBe(74);
    const [alone, planned] = [course.withoutChanges.at(-1), course.onPlan?.at(-1)];
    expect(planned?.band.best).toBeLessThan(alone?.band.best ?? 0);
    expect(course.onPlan?.filter(({ at }) => at === 65.5)).toHaveLength(2);
  });

  it("starts where it is told to, and stays drawable on long records", () => {
    expect(courseOf(asked, 30).past.every(({ at }) => at >= 30)).toBe(true);
    const long = courseOf(question(240), 0);
    expect(long.past.length).toBeLessThan(60);
    for (const { band } of long.past) {
      expect(band.low80).toBeLessThanOrEqual(band.best);
      expect(band.best).toBeLessThanOrEqual(band.high80);
      expect(band.low80).toBeGreaterThanOrEqual(0);
    }
  });

  it("is not drawn where no rate can be told", () => {
    const few = trendCourse({ ...asked, readings: asked.readings.slice(0, 2), now: 5 }, 0);
    expect(few.next()).toEqual({ done: true, value: undefined });
  });
});
