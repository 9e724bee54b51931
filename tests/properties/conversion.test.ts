import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convertQuantity } from "../../src/core/quantity/convert-quantity.ts";
import {
  CONVERTIBLE_KINDS,
  type FactorKind,
  readConvertible,
  unitsOf,
} from "../../src/core/quantity/convertible.ts";
import { UNITS } from "../../src/core/quantity/unit-table.ts";

const HABITS = { decimal: "point" } as const;
const KINDS = CONVERTIBLE_KINDS.filter(
  (kind): kind is FactorKind => kind in UNITS && kind !== "concentration",
);

describe("a conversion", () => {
  it("there and back gives what was typed, whatever the units", () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...KINDS).chain((kind) =>
          fc.record({
            kind: fc.constant(kind),
            from: fc.constantFrom(...unitsOf(kind)),
            to: fc.constantFrom(...unitsOf(kind)),
            tenths: fc.integer({ min: 1, max: 900 }),
          }),
        ),
        ({ kind, from, to, tenths }) => {
          const figure = tenths / 10;
          const there = wanted(kind, figure, from, to);
          const back = wanted(kind, there, to, from);
          expect(Math.abs(back - figure)).toBeLessThanOrEqual(1e-6 * figure + 1e-9);
        },
      ),
    ));

  it("never throws, whatever is typed", () =>
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 40 }), fc.string({ maxLength: 12 }), (text, to) => {
        const read = readConvertible(text, {}, {});
        if (read.kind !== "read" || read.value.is !== "one") return;
        const { quantity } = read.value;
        expect(["answer", "no-answer"]).toContain(convertQuantity({ quantity, to, habits: {} }).kind);
      }),
    ));
});

/** The figure in the wanted unit, by way of the quantity itself rather than its text. */
function wanted(kind: FactorKind, figure: number, from: string, to: string): number {
  const text = `${figure.toFixed(12)} ${from}`;
  const read = readConvertible(text, HABITS, { kind });
  if (read.kind !== "read" || read.value.is !== "one") throw new Error(`${text} as ${kind} was not read`);
  const answer = convertQuantity({ quantity: read.value.quantity, to, habits: HABITS });
  return answer.kind === "answer" ? (answer.value.wanted?.estimate.best ?? Number.NaN) : Number.NaN;
}
