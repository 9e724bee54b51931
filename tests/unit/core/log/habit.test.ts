import { describe, expect, it } from "vitest";
import { habitOf } from "../../../../src/core/log/habit.ts";
import { placeInRange } from "../../../../src/core/log/place-in-range.ts";
import { spark } from "../../../../src/kit/spark.ts";

describe("a habit", () => {
  const weekly = [0, 7, 14, 21, 28];

  it("is the middle gap, and overdue half a gap late", () => {
    expect(habitOf(weekly, 30)).toEqual({ everyDays: 7, sinceDays: 2, isOverdue: false });
    expect(habitOf(weekly, 38)?.isOverdue).toBe(false);
    expect(habitOf(weekly, 39)?.isOverdue).toBe(true);
    expect(habitOf([21, 0, 14, 28, 7], 39)).toEqual(habitOf(weekly, 39));
  });

  it("is not moved by one long gap, by doings within one visit, or by what is still to come", () => {
    expect(habitOf([0, 7, 14, 60, 67, 74], 75)?.everyDays).toBe(7);
    expect(habitOf([0, 0.01, 7, 7.02, 14, 21, 28], 30)?.everyDays).toBe(7);
    expect(habitOf([...weekly, 90], 30)?.sinceDays).toBe(2);
  });

  it("gives a daily doing a day's grace", () => {
    expect(habitOf([0, 1, 2, 3, 4], 5.9)?.isOverdue).toBe(false);
    expect(habitOf([0, 1, 2, 3, 4], 6.1)?.isOverdue).toBe(true);
  });

  it("is not seen in three doings, and not in one given up", () => {
    expect(habitOf([0, 7, 14], 15)).toBeUndefined();
    expect(habitOf(weekly, 100)).toBeUndefined();
    expect(habitOf([], 0)).toBeUndefined();
  });
});

describe("a reading against a range", () => {
  it.each([
    [{ low: 5, high: 5 }, { high: 20 }, "inside"],
    [{ low: 20, high: 20 }, { high: 20 }, "inside"],
    [{ low: 15, high: 30 }, { high: 20 }, "cannot tell"],
    [{ low: 30, high: 60 }, { high: 20 }, "above"],
    [{ low: 7.5, high: 7.5 }, { low: 7.8, high: 8.4 }, "below"],
    [{ low: 120, high: Number.POSITIVE_INFINITY }, { high: 50 }, "above"],
    [{ low: 0, high: 5 }, { low: 2 }, "cannot tell"],
    [{ low: 3, high: 4 }, {}, "inside"],
  ] as const)("%j in %j is %s", (value, range, place) => {
    expect(placeInRange(value, range)).toBe(place);
  });
});

describe("a row of blocks", () => {
  it("has the lowest and the highest block at the lowest and the highest value", () => {
    expect(spark([1, 2, 8])).toBe("▁▂█");
    expect(spark([5, 5])).toBe("▄▄");
    expect(spark([])).toBe("");
    const long = spark(Array.from({ length: 100 }, (_, i) => i));
    expect([...long]).toHaveLength(12);
    expect(long).toMatch(/^▁.*█$/);
  });
});
