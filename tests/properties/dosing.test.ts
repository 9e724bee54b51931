import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { clashes, type DatedAction } from "../../src/core/dosing/clashes.ts";
import { dilute, diluteByRatio } from "../../src/core/dosing/dilution.ts";
import { oxygenTakenByDose } from "../../src/core/dosing/ethanol-denitrification.ts";
import { mixingHazard } from "../../src/core/dosing/hazards.ts";
import type { StrengthKind } from "../../src/core/dosing/strength.ts";
import { targetDose } from "../../src/core/dosing/target-dose.ts";
import { between, exactly } from "../../src/core/quantity/estimate.ts";
import { as, type Fraction, type Hours, type Litres, type MgPerL } from "../../src/core/quantity/units.ts";
import type { Answer, NoAnswer } from "../../src/core/result.ts";

function answered<T>(result: Answer<T> | NoAnswer): Answer<T> {
  if (result.kind === "no-answer") throw new Error(`refused: ${result.reason.code}`);
  return result;
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Grams per litre of one unit of each kind, by definition. */
const GRAMS_PER_L: Partial<Record<StrengthKind, number>> = {
  "% w/v": 10,
  "mg/mL": 1,
  "g/L": 1,
  "mg/L": 0.001,
};
const massKind = fc.constantFrom<StrengthKind>("% w/v", "mg/mL", "g/L", "mg/L");
const grams = (kind: StrengthKind) => GRAMS_PER_L[kind] ?? Number.NaN;

describe("dilute", () => {
  it("puts as much solute into the mix as the stock brought", () => {
    fc.assert(
      fc.property(
        massKind,
        massKind,
        number(0.1, 90),
        number(0.01, 1),
        number(0.01, 5000),
        (from, to, gramsPerL, share, volumeL) => {
          const { value } = answered(
            dilute({
              stock: { value: exactly(gramsPerL / grams(from)), kind: from },
              target: { value: exactly((gramsPerL * share * 0.999) / grams(to)), kind: to },
              finalVolume: exactly(as<Litres>(volumeL)),
            }),
          );
          const poured = value.stockVolume.best * gramsPerL;
          expect(poured).toBeCloseTo(gramsPerL * share * 0.999 * volumeL, 6);
          expect(value.stockVolume.best + value.topUpVolume.best).toBeCloseTo(volumeL, 9);
        },
      ),
    );
  });

  it("needs less of a stronger stock and more for a stronger mix", () => {
    const pour = (stock: number, target: number) =>
      answered(
        dilute({
          stock: { value: exactly(stock), kind: "% v/v" },
          target: { value: exactly(target), kind: "% v/v" },
          finalVolume: exactly(as<Litres>(1)),
        }),
      ).value.stockVolume.best;
    fc.assert(
      fc.property(number(30, 90), number(1, 9), number(1, 10), number(1, 10), (stock, target, a, b) => {
        expect(pour(stock + a, target)).toBeLessThan(pour(stock, target));
        expect(pour(stock, target + b)).toBeGreaterThan(pour(stock, target));
      }),
    );
  });

  it("holds its best value between its ends", () => {
    fc.assert(
      fc.property(
        number(20, 60),
        number(0, 9),
        number(1, 10),
        number(0, 0.9),
        (stock, slack, target, share) => {
          const { stockVolume } = answered(
            dilute({
              stock: { value: between(stock - slack, stock + slack), kind: "g/L" },
              target: { value: between(target * (1 - share), target), kind: "g/L" },
              finalVolume: exactly(as<Litres>(10)),
            }),
          ).value;
          expect(stockVolume.low).toBeLessThanOrEqual(stockVolume.best);
          expect(stockVolume.best).toBeLessThanOrEqual(stockVolume.high);
        },
      ),
    );
  });

  it("always makes 'one in' stronger than 'one to'", () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 500 }), (others) => {
        const share = (meaning: "one in five" | "one to five") =>
          answered(diluteByRatio({ parts: 1, others, meaning, finalVolume: exactly(as<Litres>(1)) })).value
            .stockShare.best;
        expect(share("one in five")).toBeGreaterThan(share("one to five"));
        expect(share("one in five")).toBeCloseTo(share("one to five") * (1 + 1 / others), 12);
      }),
    );
  });
});

describe("targetDose", () => {
  it("adds up to the whole dose and keeps every day within the cap", () => {
    fc.assert(
      fc.property(
        number(0.1, 500),
        number(10, 20_000),
        number(0, 0.3),
        number(0.1, 100),
        fc.integer({ min: 1, max: 48 }),
        (change, volumeL, doubt, cap, dosesPerDay) => {
          const low = as<Litres>(volumeL * (1 - doubt));
          const { value } = answered(
            targetDose({
              change: exactly(as<MgPerL>(change)),
              systemVolume: between(low, as<Litres>(volumeL * (1 + doubt)), as<Litres>(volumeL)),
              source: { kind: "solid", purity: exactly(as<Fraction>(1)) },
              dailyCap: as<MgPerL>(cap),
              dosesPerDay,
            }),
          );
          const perDose = value.massPerDose?.best ?? Number.NaN;
          expect((perDose * dosesPerDay * value.days * 1000) / volumeL).toBeCloseTo(change, 6);
          expect((perDose * dosesPerDay * 1000) / low).toBeLessThanOrEqual(cap * (1 + 1e-6));
        },
      ),
    );
  });
});

it("takes oxygen in proportion to the dose, and less the more is kept as cells", () => {
  const taken = (doseMl: number, yieldCod: number) =>
    oxygenTakenByDose(as<Litres>(doseMl / 1000), as<Fraction>(0.1), as<Litres>(500), as<Fraction>(yieldCod));
  fc.assert(
    fc.property(number(0.1, 100), number(1.1, 5), number(0, 0.9), (dose, times, yieldCod) => {
      expect(taken(dose * times, yieldCod)).toBeCloseTo(taken(dose, yieldCod) * times, 9);
      expect(taken(dose, yieldCod + 0.05)).toBeLessThan(taken(dose, yieldCod));
    }),
  );
});

it("judges a pair of substances alike whichever is named first", () => {
  const name = fc.constantFrom("bleach", "vinegar", "ammonia", "vodka", "formalin", "salt", "copper", "lye");
  fc.assert(
    fc.property(name, name, (a, b) => {
      const one = mixingHazard(a, b);
      const other = mixingHazard(b, a);
      const code = (answer: typeof one) => (answer.kind === "no-answer" ? answer.reason.code : answer.kind);
      expect(code(one)).toBe(code(other));
    }),
  );
});

describe("clashes", () => {
  const hour = fc.integer({ min: 0, max: 400 });
  const action: fc.Arbitrary<(at: Hours) => DatedAction> = fc.constantFrom<((at: Hours) => DatedAction)[]>(
    (at) => ({ at, kind: "dose", of: "carbon" }),
    (at) => ({ at, kind: "dose", of: "calcium" }),
    (at) => ({ at, kind: "dose", of: "carbonate" }),
    (at) => ({ at, kind: "dose", of: "ammonia binder" }),
    (at) => ({ at, kind: "equipment", item: "skimmer", state: "off" }),
    (at) => ({ at, kind: "equipment", item: "skimmer", state: "on" }),
    (at) => ({ at, kind: "water change", liftsPH: true }),
    (at) => ({ at, kind: "ammonia reading", isPresent: true }),
    (at) => ({ at, kind: "ammonia test planned", test: "total ammonia" }),
    (at) => ({ at, kind: "change", what: "new food" }),
  );
  // Hours differ, so that the order of the list cannot matter.
  const plan = fc
    .uniqueArray(fc.tuple(hour, action), { selector: ([at]) => at, maxLength: 12 })
    .map((entries) => entries.map(([at, make]) => make(as<Hours>(at))));
  const told = (actions: readonly DatedAction[]) =>
    clashes(actions)
      .map(({ caution, actions: places }) =>
        JSON.stringify([caution, places.map((place) => actions[place])], (key, value) =>
          key === "at" ? undefined : value,
        ),
      )
      .sort();

  it("are the same however the list is ordered", () => {
    fc.assert(
      fc.property(plan, (actions) => {
        expect(told([...actions].reverse())).toEqual(told(actions));
      }),
    );
  });

  it("are the same whenever the list starts", () => {
    fc.assert(
      fc.property(plan, fc.integer({ min: -1000, max: 1000 }), (actions, shift) => {
        const later = actions.map((item) => ({ ...item, at: as<Hours>(item.at + shift) }));
        expect(told(later)).toEqual(told(actions));
      }),
    );
  });
});
