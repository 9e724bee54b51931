import { describe, expect, it } from "vitest";
import { howOftenAbove } from "../../../../src/core/trends/how-often-above.ts";
import type { Instrument } from "../../../../src/core/trends/readings.ts";
import { answered, refused } from "../../../support/answers.ts";

const chart: Instrument = { id: "chart", kind: "chart", steps: [0, 5, 10, 20, 40, 80, 160] };
const on = (at: number, value: number) => ({ at, value, instrument: chart });
const readings = [on(0, 10), on(7, 20), on(14, 20), on(21, 40), on(28, 80)];

describe("how often a level was passed", () => {
  it("is plain counting where the level is a colour's edge", () => {
    // 40 and 80 mean 30 or more: two of five.
    const { value } = answered(howOftenAbove(readings, 30, 0, 30));
    expect(value.atLeast).toBeCloseTo(0.4, 9);
    expect(value.atMost).toBeCloseTo(0.4, 9);
  });

  it("is a range where a colour straddles the level", () => {
    // Only 80 is above 40 for certain; 40 itself means 30 to 60.
    const { value } = answered(howOftenAbove(readings, 40, 0, 30));
    expect(value.atLeast).toBeCloseTo(0.2, 9);
    expect(value.atMost).toBeCloseTo(0.4, 9);
  });

  it("looks at the stretch asked about and no other", () => {
    expect(answered(howOftenAbove(readings, 30, 0, 15)).value).toMatchObject({ readings: 3, atMost: 0 });
    expect(refused(howOftenAbove(readings, 30, 40, 50))).toBe("trend-no-readings");
  });
});
