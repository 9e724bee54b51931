import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { batchSurvival } from "../../src/core/breeding/batch-survival.ts";
import { settle, splitCents } from "../../src/core/breeding/cost-split.ts";
import { poissonInterval } from "../../src/core/breeding/counted-sample.ts";
import { growthForHarvest, mostHarvest } from "../../src/core/breeding/culture-growth.ts";
import { fairRota } from "../../src/core/breeding/fair-rota.ts";
import { fairShares } from "../../src/core/breeding/fair-shares.ts";
import { asNumber } from "../../src/core/breeding/fraction.ts";
import { advance, replay } from "../../src/core/breeding/ledger/advance.ts";
import type { Fact, LedgerEvent } from "../../src/core/breeding/ledger/facts.ts";
import { emptyState } from "../../src/core/breeding/ledger/state.ts";
import { batchTotals } from "../../src/core/breeding/ledger/totals.ts";
import { Kinships, pedigreeOf } from "../../src/core/breeding/pedigree.ts";
import { exactInterval, wilsonInterval } from "../../src/core/breeding/proportion.ts";
import { as, type Fraction } from "../../src/core/quantity/units.ts";

const share = fc
  .integer({ min: 1, max: 400 })
  .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

describe("intervals", () => {
  it("hold the figure they are about, and grow with their level", () => {
    fc.assert(
      fc.property(share, ([x, n]) => {
        for (const interval of [wilsonInterval, exactInterval]) {
          const [usual, wide] = [interval(x, n), interval(x, n, 0.99)];
          expect(usual.low).toBeLessThanOrEqual(x / n);
          expect(usual.high).toBeGreaterThanOrEqual(x / n);
          expect(wide.low).toBeLessThanOrEqual(usual.low + 1e-12);
          expect(wide.high).toBeGreaterThanOrEqual(usual.high - 1e-12);
        }
      }),
      { numRuns: 60 },
    );
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3000 }), (count) => {
        const { low, high } = poissonInterval(count);
        expect(low <= count && count < high).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

it("the growth a harvest asks for is the growth that allows it", () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 0.95, noNaN: true }), (harvest) => {
      expect(mostHarvest(growthForHarvest(as<Fraction>(harvest)).ratePerDay)).toBeCloseTo(harvest, 10);
    }),
  );
});

it("costs split to the cent, never more than a cent from the fair part, and settling leaves all even", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 10_000_000 }),
      fc
        .array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 9 })
        .filter((each) => each.some((w) => w > 0)),
      (cents, weights) => {
        const parts = splitCents(cents, weights);
        const whole = weights.reduce((sum, weight) => sum + weight, 0);
        expect(parts.reduce((sum, part) => sum + part, 0)).toBe(cents);
        parts.forEach((part, index) => {
          expect(Math.abs(part - (cents * (weights[index] ?? 0)) / whole)).toBeLessThan(1);
        });
        const balances = parts.map((part, index) => ({
          id: String(index),
          cents: index === 0 ? cents - part : -part,
        }));
        const after = new Map(balances.map(({ id, cents: owed }) => [id, owed]));
        for (const { from, to, cents: paid } of settle(balances)) {
          after.set(from, (after.get(from) ?? 0) + paid);
          after.set(to, (after.get(to) ?? 0) - paid);
        }
        expect([...after.values()].every((left) => left === 0)).toBe(true);
      },
    ),
  );
});

it("without absences loads differ by one at most", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 0, max: 60 }), (people, slots) => {
      const takers = Array.from({ length: people }, (_, index) => ({ id: String(index), load: 0 }));
      const rota = fairRota(
        takers,
        Array.from({ length: slots }, (_, slot) => slot),
        () => false,
      );
      const loads = takers.map(({ id }) => rota.filter((each) => each === id).length);
      expect(Math.max(...loads) - Math.min(...loads)).toBeLessThanOrEqual(1);
    }),
  );
});

it("animals are dealt out in full, and nobody gets more than they asked for", () => {
  const wants = fc.array(fc.tuple(fc.integer({ min: 1, max: 12 }), fc.boolean()), { maxLength: 8 });
  fc.assert(
    fc.property(wants, fc.integer({ min: 0, max: 60 }), (asked, available) => {
      const list = asked.map(([animals, isReady], index) => ({
        number: index + 1,
        person: index,
        species: "goby",
        animals,
        isReady,
        since: "2026-03-04",
      }));
      const dealt = fairShares(available, list, () => 0);
      const all = asked.reduce((sum, [animals]) => sum + animals, 0);
      expect(dealt.reduce((sum, { animals }) => sum + animals, 0)).toBe(Math.min(available, all));
      expect(dealt.every((each) => each.animals <= each.asked)).toBe(true);
    }),
  );
});

/** Pedigrees where every animal's parents stand before it. */
const pedigrees = fc
  .array(fc.tuple(fc.nat(), fc.nat(), fc.boolean(), fc.boolean()), { minLength: 2, maxLength: 14 })
  .map((rows) =>
    rows.map(([sire, dam, hasSire, hasDam], index) => ({
      id: String(index),
      sires: hasSire && index > 0 ? [String(sire % index)] : [],
      ...(hasDam && index > 0 ? { dam: String(dam % index) } : {}),
    })),
  );

it("kinship is even-handed, lies between 0 and 1, and does not hang on the order of the list", () => {
  fc.assert(
    fc.property(pedigrees, (list) => {
      const [straight, turned] = [pedigreeOf(list), pedigreeOf([...list].reverse())];
      if (straight === undefined || turned === undefined) throw new Error("a loop that is none");
      const [one, other] = [new Kinships(straight), new Kinships(turned)];
      for (const { id: a } of list)
        for (const { id: b } of list) {
          const kinship = asNumber(one.kinship(a, b));
          expect(kinship).toBe(asNumber(one.kinship(b, a)));
          expect(kinship).toBe(asNumber(other.kinship(a, b)));
          expect(kinship >= 0 && kinship <= 1).toBe(true);
        }
    }),
    { numRuns: 60 },
  );
});

it("an animal listed among its own ancestors is found out", () => {
  expect(
    pedigreeOf([
      { id: "a", sires: ["b"] },
      { id: "b", sires: ["c"] },
      { id: "c", sires: ["a"] },
    ]),
  ).toBeUndefined();
});

const step = fc.oneof(
  fc.record({ kind: fc.constant("died" as const), number: fc.integer({ min: 1, max: 30 }) }),
  fc.record({ kind: fc.constant("culled" as const), number: fc.integer({ min: 1, max: 5 }) }),
  fc.record({ kind: fc.constant("lost" as const), number: fc.integer({ min: 1, max: 30 }) }),
  fc.record({ kind: fc.constant("split" as const), number: fc.integer({ min: 1, max: 30 }) }),
  fc.record({ kind: fc.constant("counted" as const), number: fc.integer({ min: 0, max: 300 }) }),
  fc.record({ kind: fc.constant("merged" as const), number: fc.constant(1) }),
);

function ledgerOf(steps: readonly { kind: string; number: number }[]): readonly LedgerEvent[] {
  const exact = (best: number) => ({ best, low: best, high: best, how: "exact" as const });
  const facts: Fact[] = [
    { kind: "spawned", batch: "B1", spawn: 1, species: "goby", tank: "t" },
    { kind: "stage reached", batch: "B1", stage: "hatched", count: exact(200) },
  ];
  let splits = 1;
  for (const { kind, number } of steps) {
    if (kind === "split") {
      splits += 1;
      facts.push({ kind, batch: "B1", into: `B${splits}`, number, tank: "t" });
    } else if (kind === "counted") facts.push({ kind, batch: "B1", count: exact(number) });
    else if (kind === "merged") {
      if (splits > 1) facts.push({ kind, batch: `B${splits}`, into: "B1" });
    } else if (kind === "died" || kind === "culled" || kind === "lost")
      facts.push({ kind, batch: "B1", number });
  }
  return facts.map((fact, index) => {
    const day = new Date(Date.UTC(2026, 2, 4 + Math.floor(index / 2))).toISOString();
    return { number: index + 1, at: day, day: day.slice(0, 10), enteredAt: day, by: 1, fact };
  });
}

describe("the ledger", () => {
  it("balances whatever is written: start and joined are alive, dead, left or missing", () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        const state = replay(ledgerOf(steps));
        for (const batch of Object.values(state.batches)) {
          const { start, joined, alive, dead, leftAlive, missing } = batchTotals(batch);
          expect(start + joined).toBeCloseTo(alive + dead + leftAlive + missing, 6);
          const fared = batchSurvival(batch, "2026-04-30")?.value;
          if (fared !== undefined)
            for (const { low, best, high } of fared.points)
              expect(0 <= low && low <= best + 1e-12 && best <= high + 1e-12 && high <= 1).toBe(true);
        }
      }),
    );
  });

  it("comes to the same event by event as all at once, and leaves the state it came from alone", () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const events = ledgerOf(steps);
        let state = emptyState();
        for (const event of events) {
          const before = JSON.stringify(state);
          const after = advance(state, [event]);
          expect(JSON.stringify(state)).toBe(before);
          state = after;
        }
        expect(state).toEqual(replay(events));
      }),
      { numRuns: 50 },
    );
  });

  it("a corrected entry leaves what there would be without it", () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 20 }), fc.nat(), (steps, which) => {
        const events = ledgerOf(steps.filter(({ kind }) => kind !== "split" && kind !== "merged"));
        const gone = events[2 + (which % Math.max(1, events.length - 2))];
        if (gone === undefined) return;
        const correction: LedgerEvent = {
          ...gone,
          number: events.length + 1,
          fact: { kind: "corrected", event: gone.number },
        };
        const corrected = replay([...events, correction]);
        const without = replay(events.filter((event) => event !== gone));
        expect(corrected.batches["=b1"]?.alive).toEqual(without.batches["=b1"]?.alive);
      }),
    );
  });
});
