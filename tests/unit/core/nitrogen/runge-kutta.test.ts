import { describe, expect, it } from "vitest";
import { stepper } from "../../../../src/core/nitrogen/runge-kutta.ts";

const fine = { relative: 1e-9, absolute: Float64Array.of(1e-12, 1e-12) };

describe("the stepper", () => {
  it("follows decay: e^(−3)", () => {
    const state = Float64Array.of(1, 0);
    const advance = stepper(
      2,
      (y, rates) => {
        rates[0] = -(y[0] ?? 0);
        rates[1] = y[0] ?? 0;
      },
      fine,
    );
    advance(state, 3);
    expect(state[0]).toBeCloseTo(Math.exp(-3), 8);
    expect((state[0] ?? 0) + (state[1] ?? 0)).toBeCloseTo(1, 13);
  });

  it("comes back after one turn of a circle", () => {
    const state = Float64Array.of(1, 0);
    const advance = stepper(
      2,
      (y, rates) => {
        rates[0] = -(y[1] ?? 0);
        rates[1] = y[0] ?? 0;
      },
      fine,
    );
    for (let part = 0; part < 8; part += 1) advance(state, Math.PI / 4);
    expect(state[0]).toBeCloseTo(1, 7);
    expect(state[1]).toBeCloseTo(0, 7);
  });

  it("survives a stretch far stiffer than its first step", () => {
    const state = Float64Array.of(1, 0);
    const advance = stepper(
      2,
      (y, rates) => {
        rates[0] = -500 * (y[0] ?? 0);
        rates[1] = 1;
      },
      { relative: 1e-4, absolute: Float64Array.of(1e-6, 1e-6) },
    );
    advance(state, 10);
    expect(Math.abs(state[0] ?? 1)).toBeLessThan(1e-4);
    expect(state[1]).toBeCloseTo(10, 9);
  });
});
