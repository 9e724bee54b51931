import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fallingRoot } from "../../../../src/core/numeric/falling-root.ts";

describe("the root of a falling function", () => {
  it.each([
    // Roots known in closed form.
    [(x: number) => 2 - x * x, 0, 10, Math.SQRT2],
    [(x: number) => Math.cos(x), 0, 3, Math.PI / 2],
    [(x: number) => 1 - Math.log(x), 0.1, 100, Math.E],
    [(x: number) => -((x - 1) ** 3), -50, 7, 1],
    [(x: number) => (x < 3 ? 1 : -1e-9), 0, 10, 3],
  ])("%s", (f, low, high, root) => {
    expect(fallingRoot(f, low, high)).toBeCloseTo(root, 9);
  });

  it("is the nearer end where the function does not cross", () => {
    expect(fallingRoot((x) => 5 - x, 0, 3)).toBe(3);
    expect(fallingRoot((x) => -1 - x, 0, 3)).toBe(0);
    expect(fallingRoot(() => Number.NaN, 0, 3)).toBe(0);
  });

  it("is found in far fewer calls than halving needs, and never in many more", () => {
    let calls = 0;
    fallingRoot(
      (x) => {
        calls += 1;
        return 10 - x ** 3;
      },
      0,
      100,
    );
    expect(calls).toBeLessThan(25);
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 999, noNaN: true }),
        fc.integer({ min: 1, max: 15 }),
        (root, power) => {
          let count = 0;
          const found = fallingRoot(
            (x) => {
              count += 1;
              return root ** power - x ** power;
            },
            0,
            1000,
          );
          expect(Math.abs(found - root)).toBeLessThan(1e-9 * root + 1e-10);
          expect(count).toBeLessThan(51);
        },
      ),
    );
  });
});
