import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Estimate, exactly } from "../../src/core/quantity/estimate.ts";
import { as, type DegreesC, type Litres, type PracticalSalinity } from "../../src/core/quantity/units.ts";
import type { Answer, NoAnswer } from "../../src/core/result.ts";
import { SOURCES } from "../../src/core/sources.ts";
import { adjustSalinity, type Means } from "../../src/core/water/adjust-salinity.ts";
import { artificialSeawater } from "../../src/core/water/artificial-seawater.ts";
import { blendMatch } from "../../src/core/water/blend-match.ts";
import type { ChangeSize } from "../../src/core/water/change-size.ts";
import { conductivityFromSalinity, salinityFromConductivity } from "../../src/core/water/conductivity.ts";
import { convertSalinity } from "../../src/core/water/convert-salinity.ts";
import { seawaterDensity } from "../../src/core/water/density.ts";
import {
  GLASS_EXPANSION,
  hydrometerReading,
  salinityFromHydrometer,
} from "../../src/core/water/hydrometer.ts";
import { instrumentReading } from "../../src/core/water/instrument-reading.ts";
import { massOfFreshWater, massOfSeawater } from "../../src/core/water/mass.ts";
import { naturalIon } from "../../src/core/water/natural-ions.ts";
import { oxygenSaturation } from "../../src/core/water/oxygen-saturation.ts";
import { oxygenSolubility } from "../../src/core/water/oxygen-solubility.ts";
import { salinityAfterSwap, swapVolumeForTarget } from "../../src/core/water/salinity-balance.ts";
import { absoluteSalinity } from "../../src/core/water/salinity-scales.ts";
import { salinityWaterChange } from "../../src/core/water/salinity-water-change.ts";
import { batchForFinalVolume, batchForWaterVolume } from "../../src/core/water/salt-balance.ts";
import { saltMix } from "../../src/core/water/salt-mix.ts";
import type { YieldFactor } from "../../src/core/water/salt-product.ts";
import { salinityFromSpecificGravity, specificGravity } from "../../src/core/water/specific-gravity.ts";
import { topOff } from "../../src/core/water/top-off.ts";
import { waterChange } from "../../src/core/water/water-change.ts";
import { waterChangeForTarget } from "../../src/core/water/water-change-for-target.ts";
import { waterChangeSteadyState } from "../../src/core/water/water-change-steady-state.ts";
import { waterChangeSupply } from "../../src/core/water/water-change-supply.ts";
import { waterChangeToHold } from "../../src/core/water/water-change-to-hold.ts";
import { yieldFromBatch } from "../../src/core/water/yield-from-batch.ts";
import { sayCaution, sayRefusal } from "../../src/wording/index.ts";

/** Evenly spread, which fast-check's doubles are not: half of those lie within a hair of nothing. */
const real = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((part) => min + ((max - min) * part) / 1_000_000);
const salinity = real(0, 42).map((s) => as<PracticalSalinity>(s));
const temperature = real(0, 35).map((t) => as<DegreesC>(t));
const volume = real(1, 5000).map((v) => as<Litres>(v));
const yieldFactor = real(0.8, 1).map((y) => as<YieldFactor>(y));

describe("conservation", () => {
  it("a batch weighs what went into it, and holds the salt the product delivered", () => {
    fc.assert(
      fc.property(volume, salinity, temperature, yieldFactor, (v, s, t, y) => {
        for (const batch of [batchForFinalVolume(v, s, t, y), batchForWaterVolume(v, s, t, y)]) {
          const batchKg = massOfSeawater(batch.finalVolumeL, s, t);
          expect(batchKg).toBeCloseTo(batch.saltKg + massOfFreshWater(batch.waterL, t), 6);
          expect((batchKg * absoluteSalinity(s)) / 1000).toBeCloseTo(batch.saltKg * y, 6);
        }
      }),
    );
  });

  it("an exchange neither makes nor loses salt", () => {
    fc.assert(
      fc.property(volume, real(0, 1), salinity, salinity, temperature, (v, share, s1, s2, t) => {
        const changed = as<Litres>(v * share);
        const left = massOfSeawater(as<Litres>(v - changed), s1, t);
        const added = massOfSeawater(changed, s2, t);
        const after = salinityAfterSwap(v, changed, s1, s2, t);
        expect(after * (left + added)).toBeCloseTo(left * s1 + added * s2, 6);
      }),
    );
  });

  it("topping off with what evaporated brings salinity back", () => {
    fc.assert(
      fc.property(volume, real(1, 42), temperature, real(0.001, 0.5), (v, s, t, share) => {
        const evaporated = exactly(as<Litres>(v * share));
        const full = { volume: exactly(v), temperature: exactly(t) };
        const dried = topOff({
          ...full,
          lost: { kind: "litres", evaporated, salinityFull: exactly(as<PracticalSalinity>(s)) },
        });
        if (dried.kind === "no-answer") throw new Error("refused");
        const now = dried.value.salinityNow;
        const refill = topOff({
          ...full,
          lost: { kind: "salinity", before: exactly(as<PracticalSalinity>(s)), now },
        });
        if (refill.kind === "no-answer") throw new Error("refused");
        expect(refill.value.freshWaterL.best).toBeCloseTo(v * share, 6);
      }),
    );
  });
});

describe("rises and falls as nature does", () => {
  it("more salt in a litre makes it heavier and more conducting, and hold less oxygen", () => {
    fc.assert(
      fc.property(salinity, real(0.01, 5), temperature, (s, more, t) => {
        const saltier = as<PracticalSalinity>(s + more);
        expect(seawaterDensity(saltier, t)).toBeGreaterThan(seawaterDensity(s, t));
        expect(conductivityFromSalinity(saltier, t)).toBeGreaterThan(conductivityFromSalinity(s, t));
        expect(oxygenSaturation(saltier, t)).toBeLessThan(oxygenSaturation(s, t));
      }),
    );
  });

  it("warmer water conducts better and holds less oxygen", () => {
    fc.assert(
      fc.property(real(0.5, 42), temperature, real(0.01, 5), (s, t, more) => {
        const sp = as<PracticalSalinity>(s);
        const warmer = as<DegreesC>(t + more);
        expect(conductivityFromSalinity(sp, warmer)).toBeGreaterThan(conductivityFromSalinity(sp, t));
        expect(oxygenSaturation(sp, warmer)).toBeLessThan(oxygenSaturation(sp, t));
      }),
    );
  });

  it("a larger or saltier batch takes more product, a drier product less", () => {
    fc.assert(
      fc.property(
        volume,
        real(1, 41),
        temperature,
        real(0.8, 0.95).map((y) => as<YieldFactor>(y)),
        real(1.001, 1.05),
        (v, s, t, y, more) => {
          const sp = as<PracticalSalinity>(s);
          const { saltKg } = batchForFinalVolume(v, sp, t, y);
          expect(batchForFinalVolume(as<Litres>(v * more), sp, t, y).saltKg).toBeGreaterThan(saltKg);
          expect(batchForFinalVolume(v, as<PracticalSalinity>(s * more), t, y).saltKg).toBeGreaterThan(
            saltKg,
          );
          expect(batchForFinalVolume(v, sp, t, as<YieldFactor>(y * more)).saltKg).toBeLessThan(saltKg);
        },
      ),
    );
  });

  it("an exchange never passes the water put in, and the more is exchanged the nearer it comes", () => {
    fc.assert(
      fc.property(volume, real(0, 0.9), salinity, salinity, temperature, (v, share, s1, s2, t) => {
        const after = salinityAfterSwap(v, as<Litres>(v * share), s1, s2, t);
        const afterMore = salinityAfterSwap(v, as<Litres>(v * (share + 0.1)), s1, s2, t);
        const slack = 1e-9;
        expect(after).toBeGreaterThanOrEqual(Math.min(s1, s2) - slack);
        expect(after).toBeLessThanOrEqual(Math.max(s1, s2) + slack);
        expect(Math.abs(afterMore - s2)).toBeLessThanOrEqual(Math.abs(after - s2) + slack);
      }),
    );
  });
});

describe("there and back", () => {
  it("specific gravity, on any two temperatures", () => {
    fc.assert(
      fc.property(salinity, temperature, temperature, (s, t, ref) => {
        expect(salinityFromSpecificGravity(specificGravity(s, t, ref), t, ref)).toBeCloseTo(s, 8);
      }),
    );
  });

  it("a hydrometer reading, at any sample temperature", () => {
    fc.assert(
      fc.property(salinity, temperature, real(10, 30), (s, t, made) => {
        const scale = {
          calibrationC: as<DegreesC>(made),
          referenceC: as<DegreesC>(made),
          expansion: GLASS_EXPANSION,
        };
        expect(salinityFromHydrometer(hydrometerReading(s, t, scale), t, scale)).toBeCloseTo(s, 8);
      }),
    );
  });

  it("conductivity, the low-salinity branch included", () => {
    fc.assert(
      fc.property(
        fc.oneof(
          salinity,
          real(0, 3).map((s) => as<PracticalSalinity>(s)),
        ),
        temperature,
        (s, t) => {
          const back = salinityFromConductivity(conductivityFromSalinity(s, t), t);
          expect(Math.abs(back - s)).toBeLessThan(1.1e-5); // less is called no salt at all
        },
      ),
    );
  });

  it("exchanging the litres asked for reaches the target", () => {
    fc.assert(
      fc.property(volume, salinity, salinity, real(0, 1), temperature, (v, s1, s2, share, t) => {
        const target = as<PracticalSalinity>(s1 + (s2 - s1) * share);
        const litres = swapVolumeForTarget(v, s1, s2, target, t);
        expect(salinityAfterSwap(v, as<Litres>(Math.min(v, litres)), s1, s2, t)).toBeCloseTo(target, 6);
      }),
    );
  });

  it("the yield found from a batch is the yield it was mixed with", () => {
    fc.assert(
      fc.property(volume, real(1, 42), temperature, yieldFactor, (v, s, t, y) => {
        const sp = as<PracticalSalinity>(s);
        const mixed = batchForWaterVolume(v, sp, t, y);
        const found = yieldFromBatch({
          volume: { kind: "final", litres: exactly(mixed.finalVolumeL) },
          salt: exactly(mixed.saltKg),
          salinity: exactly(sp),
          temperature: exactly(t),
        });
        // A product that is all salt can come out a hair above 1, and is then refused.
        if (found.kind === "answer") expect(found.value.yieldFactor.best).toBeCloseTo(y, 9);
        else expect(y).toBeGreaterThan(1 - 1e-9);
      }),
    );
  });
});

describe("water changes", () => {
  it("a long routine ends at its steady state, counted change by change", () => {
    fc.assert(
      fc.property(real(0.1, 0.9), real(0, 20), real(0, 50), real(0, 200), (f, rise, source, start) => {
        const answer = waterChangeSteadyState({
          volume: exactly(as<Litres>(300)),
          each: { kind: "fraction", fraction: exactly(as(f)) },
          everyDays: exactly(as(1)),
          source: exactly(as(source)),
          risePerDay: exactly(as(rise)),
          unit: "mg/L",
          now: exactly(as(start)),
        });
        if (answer.kind === "no-answer") throw new Error("refused");
        let level = start;
        let before = start;
        for (let day = 1; day <= 400; day++) {
          before = level + rise;
          level = before * (1 - f) + source * f;
          const turn = answer.value.course[day - 1];
          if (turn !== undefined) {
            expect(turn.before).toBeCloseTo(before, 6);
            expect(turn.after).toBeCloseTo(level, 6);
          }
        }
        expect(answer.value.before.best).toBeCloseTo(before, 6);
        expect(answer.value.after.best).toBeCloseTo(level, 6);
      }),
    );
  });

  it("salinity in ever smaller steps becomes the continuous change", () => {
    const water = {
      volume: exactly(as<Litres>(300)),
      now: exactly(as<PracticalSalinity>(38)),
      source: exactly(as<PracticalSalinity>(30)),
      temperature: exactly(as<DegreesC>(25)),
    };
    const stepped = salinityWaterChange({
      ...water,
      pattern: {
        kind: "in steps",
        each: { kind: "litres", litres: exactly(as<Litres>(0.3)) },
        times: 1000,
      },
    });
    const continuous = salinityWaterChange({
      ...water,
      pattern: { kind: "continuous", litres: exactly(as<Litres>(300)) },
    });
    if (stepped.kind !== "answer" || continuous.kind !== "answer") throw new Error("refused");
    expect(stepped.value.after.best).toBeCloseTo(continuous.value.after.best, 2);
  });
});

/** Anything a member could type: sensible figures, silly ones, and no figures at all. */
const figureTyped = fc.oneof(
  { weight: 30, arbitrary: real(0, 60) },
  { weight: 10, arbitrary: real(0, 1) },
  fc.constantFrom(0, 1, 35, 100, -1, 1e-9, 1e9, 1e300, Number.NaN, Number.POSITIVE_INFINITY),
);
const estimate = fc.tuple(figureTyped, fc.oneof(fc.constant(0), real(0, 0.5), real(0, 40))).map(
  ([best, spread]): Estimate<never> => ({
    best: best as never,
    low: (best - spread) as never,
    high: (best + spread) as never,
  }),
);
const count = fc.oneof(fc.integer({ min: -2, max: 40 }), fc.constantFrom(Number.NaN, 1.5, 1e9));
const text = fc.constantFrom("mg/L", "ppm");
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const size: fc.Arbitrary<ChangeSize> = fc.oneof(
  fc.record({ kind: fc.constant("litres" as const), litres: estimate }),
  fc.record({
    kind: fc.constant("fraction" as const),
    fraction: fc.oneof(
      estimate,
      real(0, 1).map((f) => exactly(f as never)),
    ),
  }),
);
const pattern = fc.oneof(
  fc.record({ kind: fc.constant("in steps" as const), each: size, times: count }),
  fc.record({ kind: fc.constant("continuous" as const), litres: estimate }),
);
const means: fc.Arbitrary<Means> = fc.oneof(
  fc.record({ kind: fc.constant("dry salt" as const), yieldFactor: maybe(estimate) }),
  fc.record({ kind: fc.constant("brine" as const), salinity: estimate }),
  fc.record({ kind: fc.constant("exchange" as const), salinity: estimate }),
  fc.record({ kind: fc.constant("fresh water" as const) }),
);
const water = fc.record({
  volume: estimate,
  salinity: estimate,
  temperature: estimate,
  pH: maybe(figureTyped.map((v) => v as never)),
});
const whichVolume = fc.record({
  kind: fc.constantFrom("final" as const, "water" as const),
  litres: estimate,
});

const asked: Record<string, fc.Arbitrary<() => Answer<object> | NoAnswer>> = {
  saltMix: fc
    .record({
      volume: whichVolume,
      salinity: estimate,
      temperature: estimate,
      yieldFactor: maybe(estimate),
      held: maybe(fc.record({ litres: estimate, salinity: estimate })),
    })
    .map((input) => () => saltMix(input)),
  yieldFromBatch: fc
    .record({ volume: whichVolume, salt: estimate, salinity: estimate, temperature: estimate })
    .map((input) => () => yieldFromBatch(input)),
  adjustSalinity: fc
    .record({
      volume: estimate,
      now: estimate,
      target: estimate,
      temperature: estimate,
      means,
      dailyCap: maybe(figureTyped.map((v) => v as never)),
    })
    .map((input) => () => adjustSalinity(input)),
  topOff: fc
    .record({
      volume: estimate,
      temperature: estimate,
      lost: fc.oneof(
        fc.record({ kind: fc.constant("litres" as const), evaporated: estimate, salinityFull: estimate }),
        fc.record({ kind: fc.constant("salinity" as const), before: estimate, now: estimate }),
      ),
      days: maybe(estimate),
      reservoir: maybe(estimate),
    })
    .map((input) => () => topOff(input)),
  convertSalinity: fc.tuple(estimate, estimate).map(
    ([s, t]) =>
      () =>
        convertSalinity(s, t),
  ),
  waterChange: fc
    .record({ volume: estimate, now: estimate, source: estimate, unit: text, pattern })
    .map((input) => () => waterChange(input)),
  waterChangeForTarget: fc
    .record({
      volume: estimate,
      now: estimate,
      source: estimate,
      target: estimate,
      unit: text,
      fractionEach: fc.oneof(
        estimate,
        real(0, 1).map((f) => exactly(f as never)),
      ),
    })
    .map((input) => () => waterChangeForTarget(input)),
  waterChangeSteadyState: fc
    .record({
      volume: estimate,
      each: size,
      everyDays: estimate,
      source: estimate,
      risePerDay: estimate,
      unit: text,
      now: maybe(estimate),
    })
    .map((input) => () => waterChangeSteadyState(input)),
  waterChangeToHold: fc
    .record({
      volume: estimate,
      everyDays: estimate,
      source: estimate,
      risePerDay: estimate,
      ceiling: estimate,
      unit: text,
    })
    .map((input) => () => waterChangeToHold(input)),
  waterChangeSupply: fc
    .record({
      litres: estimate,
      pumpFlow: maybe(estimate),
      purifiedPerDay: maybe(estimate),
      rejectPerLitre: maybe(estimate),
    })
    .map((input) => () => waterChangeSupply(input)),
  salinityWaterChange: fc
    .record({ volume: estimate, now: estimate, source: estimate, temperature: estimate, pattern })
    .map((input) => () => salinityWaterChange(input)),
  blendMatch: fc
    .record({ tank: water, added: water, isExchange: fc.boolean() })
    .map((input) => () => blendMatch(input)),
  oxygenSolubility: fc
    .tuple(
      estimate,
      estimate,
      fc.record({
        air: maybe(
          fc.oneof(
            fc.record({ kind: fc.constant("altitude" as const), altitude: estimate }),
            fc.record({ kind: fc.constant("pressure" as const), pressure: estimate }),
          ),
        ),
        measured: maybe(estimate),
      }),
    )
    .map(
      ([s, t, conditions]) =>
        () =>
          oxygenSolubility(s, t, conditions),
    ),
};

/** Figures that may lie below nothing, and those that are shares of a whole. */
const signed = new Set([
  "change",
  "drift",
  "driftPerDay",
  "risePerInterval",
  "temperature",
  "salinityStep",
  "temperatureStep",
]);
const shares = new Set(["oldWaterLeft", "singleFraction", "fraction", "yieldFactor"]);

const hydrometer = fc.record({
  kind: fc.constant("hydrometer" as const),
  reading: fc.oneof(
    estimate,
    real(0.99, 1.06).map((sg) => exactly(sg as never)),
  ),
  sample: estimate,
  calibrationC: figureTyped.map((t) => t as never),
  referenceC: figureTyped.map((t) => t as never),
  material: fc.constantFrom("glass" as const, "acrylic" as const, "not known" as const),
});
const conductivityMeter = fc.record({
  kind: fc.constant("conductivity meter" as const),
  reading: estimate,
  sample: estimate,
  display: fc.oneof(
    fc.constantFrom({ kind: "as measured" as const }, { kind: "at 25 °C" as const }),
    fc.record({ kind: fc.constant("at 25 °C, linear" as const), percentPerC: figureTyped }),
  ),
});
const refractometer = fc.record({
  kind: fc.constant("refractometer" as const),
  reading: estimate,
  scale: fc.constantFrom("seawater" as const, "table salt" as const),
});
Object.assign(asked, {
  instrumentReading: fc
    .oneof(hydrometer, conductivityMeter, refractometer)
    .map((instrument) => () => instrumentReading(instrument)),
  artificialSeawater: fc
    .tuple(fc.constantFrom("Kester 1967" as const, "substitute ocean water" as const), estimate, estimate)
    .map(
      ([recipe, v, t]) =>
        () =>
          artificialSeawater(recipe, v, t),
    ),
  naturalIon: fc.tuple(estimate, estimate).map(
    ([s, t]) =>
      () =>
        naturalIon("Ca", s, t),
  ),
});

const isEstimate = (value: unknown): value is Estimate =>
  typeof value === "object" && value !== null && "best" in value && "low" in value && "high" in value;

describe("whatever a member types", () => {
  it.each(Object.entries(asked))("%s answers in order and in words, or says why not", (_, questions) => {
    let answers = 0;
    fc.assert(
      fc.property(questions, (ask) => {
        const result = ask();
        for (const raised of result.cautions) {
          expect(sayCaution(raised)).not.toMatch(/NaN|undefined|Infinity/);
        }
        if (result.kind === "no-answer") {
          expect(sayRefusal(result.reason).length).toBeGreaterThan(20);
          return;
        }
        answers += 1;
        for (const [name, value] of Object.entries(result.value)) {
          if (!isEstimate(value)) continue;
          expect([name, value.low <= value.best, value.best <= value.high]).toEqual([name, true, true]);
          expect([name, Number.isFinite(value.low), Number.isFinite(value.high)]).toEqual([name, true, true]);
          if (!signed.has(name)) expect([name, value.low >= 0]).toEqual([name, true]);
          if (shares.has(name)) expect([name, value.high <= 1]).toEqual([name, true]);
        }
        expect(result.working.join("\n")).not.toMatch(/NaN|undefined|Infinity/);
        for (const id of [...result.sources, ...result.constants.map((constant) => constant.source)]) {
          expect(SOURCES).toHaveProperty([id]);
        }
      }),
      { numRuns: 1000 },
    );
    expect(answers).toBeGreaterThan(10); // refusing everything proves nothing
  });
});
