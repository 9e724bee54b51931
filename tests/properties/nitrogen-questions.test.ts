import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cycling } from "../../src/core/nitrogen/cycling.ts";
import { FEEDS, type FeedKind } from "../../src/core/nitrogen/feeds.ts";
import { filterTrain } from "../../src/core/nitrogen/filter-train.ts";
import type { TrainBox } from "../../src/core/nitrogen/filter-train-sum.ts";
import { FISH, type FishKey } from "../../src/core/nitrogen/fish.ts";
import { MEDIA, type MediumKind } from "../../src/core/nitrogen/media.ts";
import { nitrogenBalance } from "../../src/core/nitrogen/nitrogen-balance.ts";
import { oneMoreAnimal } from "../../src/core/nitrogen/one-more-animal.ts";
import { oxygenBudget } from "../../src/core/nitrogen/oxygen-budget.ts";
import type { AnimalGroup, Food, StockingSituation } from "../../src/core/nitrogen/stocking-input.ts";
import { stockingLoad } from "../../src/core/nitrogen/stocking-load.ts";
import { unionisedAmmonia } from "../../src/core/nitrogen/unionised-ammonia.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../src/core/quantity/units.ts";
import type { Answer, NoAnswer } from "../../src/core/result.ts";
import { sayCaution, sayRefusal } from "../../src/wording/index.ts";

/** Mostly a figure that makes sense, now and then anything at all. */
const figure = (min: number, max: number) =>
  fc.oneof(
    { weight: 12, arbitrary: fc.double({ min, max, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(min, max, 0, -1) },
    { weight: 1, arbitrary: fc.double() },
  );

/** An estimate whose three figures stand in order, where order means something. */
function estimate<Q extends Quantity<string>>(min: number, max: number): fc.Arbitrary<Estimate<Q>> {
  return fc.tuple(figure(min, max), figure(min, max), figure(min, max)).map((three) => {
    const [low = 0, best = 0, high = 0] = [...three].sort((a, b) => a - b);
    return { low: as<Q>(low), best: as<Q>(best), high: as<Q>(high) };
  });
}

const quantity = <Q extends Quantity<string>>(min: number, max: number) =>
  figure(min, max).map((x) => as<Q>(x));

/** Every number in a value, however deep. */
function numbersIn(value: unknown): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.values(value).flatMap(numbersIn);
}

/** Every range in a value, however deep. */
function rangesIn(value: unknown): Estimate[] {
  if (typeof value !== "object" || value === null) return [];
  if ("low" in value && "best" in value && "high" in value) return [value as Estimate];
  return Object.values(value).flatMap(rangesIn);
}

/** A question answers or refuses; it never throws, and an answer holds no nonsense. */
function holds(result: Answer<unknown> | NoAnswer): void {
  if (result.kind === "no-answer") {
    const { code, figures } = result.reason;
    expect(sayRefusal({ code, figures } as NoAnswer["reason"])).toMatch(/[.?]$/);
    return;
  }
  for (const number of numbersIn(result.value)) expect(number).not.toBeNaN();
  for (const range of rangesIn(result.value)) {
    expect(range.low).toBeLessThanOrEqual(range.best);
    expect(range.best).toBeLessThanOrEqual(range.high);
  }
  for (const each of result.cautions) expect(sayCaution(each)).not.toMatch(/undefined|NaN|Infinity/);
  expect(result.working.join(" ")).not.toMatch(/undefined|NaN/);
  expect(result.sources.length).toBeGreaterThan(0);
}

const keys = <K extends string>(table: Record<K, unknown>) => fc.constantFrom(...(Object.keys(table) as K[]));

const animal: fc.Arbitrary<AnimalGroup> = fc.record({
  label: fc.constantFrom("grouper", "tang", "moray"),
  count: fc.oneof(fc.integer({ min: 0, max: 20 }), figure(0, 5)),
  body: fc.oneof(
    fc.record({
      kind: fc.constant("length" as const),
      fish: keys<FishKey>(FISH),
      lengthCm: estimate<Quantity<"cm">>(1, 200),
    }),
    fc.record({
      kind: fc.constant("mass" as const),
      massG: estimate<Quantity<"g">>(1, 20_000),
      habit: fc.constantFrom("sits and waits" as const, "swims" as const, "not said" as const),
    }),
  ),
});

const food: fc.Arbitrary<Food> = fc.record({
  label: fc.constantFrom("squid", "pellet"),
  protein: fc.oneof(
    fc.record({ kind: fc.constant("table" as const), feed: keys<FeedKind>(FEEDS) }),
    fc.record(
      {
        kind: fc.constant("own" as const),
        protein: estimate<Quantity<"fraction">>(0.05, 0.9),
        basis: fc.constantFrom("as fed" as const, "dry matter" as const, "not said" as const),
        water: estimate<Quantity<"fraction">>(0, 0.95),
      },
      { requiredKeys: ["kind", "protein", "basis"] },
    ),
  ),
  ration: fc.oneof(
    fc.record({
      kind: fc.constant("meals" as const),
      gramsPerMeal: estimate<Quantity<"g">>(0.1, 500),
      mealsPerWeek: figure(0.5, 30),
    }),
    fc.record({
      kind: fc.constant("daily" as const),
      gramsPerDay: estimate<Quantity<"g/d">>(0.1, 500),
      mealsPerDay: figure(0.2, 24),
    }),
  ),
});

const situation: fc.Arbitrary<StockingSituation> = fc.record(
  {
    volumeL: estimate<Quantity<"L">>(20, 10_000),
    salinity: estimate<Quantity<"PSS-78">>(0, 40),
    temperatureC: estimate<Quantity<"°C">>(5, 35),
    animals: fc.array(animal, { maxLength: 3 }),
    food: fc.array(food, { maxLength: 2 }),
    growth: fc.constantFrom("adult" as const, "growing" as const, "not said" as const),
    media: fc.array(fc.record({ kind: keys<MediumKind>(MEDIA), litres: estimate<Quantity<"L">>(1, 500) }), {
      maxLength: 2,
    }),
    netFlowLPerH: estimate<Quantity<"L/h">>(1, 20_000),
    waterChange: fc.record({
      changed: estimate<Quantity<"fraction">>(0.05, 0.9),
      everyDays: quantity<Quantity<"d">>(1, 60),
      sourceNitrate: estimate<Quantity<"mg N/L">>(0, 10),
    }),
  },
  { requiredKeys: ["volumeL", "salinity", "temperatureC", "animals", "food", "growth"] },
);

const box: fc.Arbitrary<TrainBox> = fc.record(
  {
    label: fc.constantFrom("drum", "tower"),
    purpose: fc.constantFrom(
      "solids" as const,
      "nitrifying" as const,
      "low oxygen" as const,
      "skimmer" as const,
    ),
    waterL: estimate<Quantity<"L">>(1, 500),
    isAerated: fc.boolean(),
    media: fc.record({ kind: keys<MediumKind>(MEDIA), litres: estimate<Quantity<"L">>(0, 400) }),
    crossSectionM2: estimate<Quantity<"m²">>(0.01, 2),
    wasteDemand: estimate<Quantity<"g/d">>(0, 60),
    path: fc.oneof(
      fc.record({ kind: fc.constant("main" as const), bypass: estimate<Quantity<"fraction">>(0, 0.9) }),
      fc.record({ kind: fc.constant("side stream" as const), flow: estimate<Quantity<"L/h">>(1, 500) }),
    ),
  },
  { requiredKeys: ["label", "purpose", "waterL", "isAerated", "path"] },
);

describe("the questions of the nitrogen room never throw, whatever is typed", () => {
  it("stocking load", () => {
    fc.assert(
      fc.property(situation, (given) => holds(stockingLoad(given))),
      { numRuns: 300 },
    );
  });

  it("one more animal", () => {
    fc.assert(
      fc.property(situation, animal, fc.option(food, { nil: undefined }), (given, newcomer, own) =>
        holds(oneMoreAnimal(given, { animal: newcomer, ...(own === undefined ? {} : { food: own }) })),
      ),
      { numRuns: 150 },
    );
  });

  it("un-ionised ammonia", () => {
    fc.assert(
      fc.property(
        estimate(0, 5),
        fc.constantFrom("TAN" as const, "NH3" as const, "NH4" as const, "not said" as const),
        estimate<Quantity<"pH">>(7, 9),
        fc.constantFrom("buffers" as const, "total" as const),
        estimate<Quantity<"°C">>(5, 35),
        estimate<Quantity<"PSS-78">>(0, 40),
        fc.option(
          fc.record({ tan: estimate<Quantity<"mg N/L">>(0, 3), pH: estimate<Quantity<"pH">>(7, 9) }),
          { nil: undefined },
        ),
        (reading, form, pH, scale, temperatureC, salinity, source) =>
          holds(
            unionisedAmmonia({
              reading,
              form,
              pH,
              scale,
              temperatureC,
              salinity,
              ...(source === undefined ? {} : { source }),
            }),
          ),
      ),
      { numRuns: 200 },
    );
  });

  it("oxygen budget", () => {
    fc.assert(
      fc.property(
        estimate<Quantity<"L">>(20, 10_000),
        estimate<Quantity<"PSS-78">>(0, 40),
        estimate<Quantity<"°C">>(5, 35),
        estimate<Quantity<"g/d">>(0.1, 500),
        estimate<Quantity<"g/d">>(0.1, 900),
        fc.option(estimate<Quantity<"mg/L">>(0, 12), { nil: undefined }),
        (volumeL, salinity, temperatureC, restGPerDay, afterMealGPerDay, measured) =>
          holds(
            oxygenBudget({
              volumeL,
              salinity,
              temperatureC,
              restGPerDay,
              afterMealGPerDay,
              ...(measured === undefined ? {} : { measuredMgPerL: measured }),
            }),
          ),
      ),
      { numRuns: 200 },
    );
  });

  it("filter train", () => {
    fc.assert(
      fc.property(
        estimate<Quantity<"L/h">>(10, 20_000),
        estimate<Quantity<"PSS-78">>(0, 40),
        estimate<Quantity<"°C">>(5, 35),
        fc.oneof(
          fc.record({ kind: fc.constant("load" as const), gPerDay: estimate<Quantity<"g N/d">>(0, 30) }),
          fc.record({ kind: fc.constant("measured" as const), tan: estimate<Quantity<"mg N/L">>(0, 5) }),
        ),
        fc.array(box, { maxLength: 3 }),
        (flow, salinity, temperatureC, ammonia, boxes) =>
          holds(filterTrain({ flow, salinity, temperatureC, ammonia, boxes })),
      ),
      { numRuns: 150 },
    );
  });

  it("nitrogen balance", () => {
    fc.assert(
      fc.property(
        estimate<Quantity<"L">>(20, 10_000),
        estimate<Quantity<"g N/d">>(0, 50),
        estimate<Quantity<"mg N/L">>(0, 100),
        fc.option(
          fc.record({
            kind: fc.constantFrom("porous media" as const, "dosed box" as const),
            litres: estimate<Quantity<"L">>(0, 500),
          }),
          { nil: undefined },
        ),
        (volumeL, feedN, nitrate, gas) =>
          holds(
            nitrogenBalance({
              volumeL,
              feedN,
              nitrate,
              ...(gas === undefined ? {} : { denitrification: gas }),
            }),
          ),
      ),
      { numRuns: 200 },
    );
  });

  it("cycling", () => {
    const reading = fc.record({
      day: figure(0, 40),
      kind: fc.constantFrom("ammonia" as const, "nitrite" as const),
      value: estimate<Quantity<"mg N/L">>(0, 5),
    });
    fc.assert(
      fc.property(
        estimate<Quantity<"L">>(20, 10_000),
        estimate<Quantity<"°C">>(15, 30),
        estimate<Quantity<"PSS-78">>(0, 40),
        fc.array(reading, { maxLength: 4 }),
        fc.integer(),
        (volumeL, temperatureC, salinity, readings, seed) => {
          let state = seed >>> 0;
          const random = () => {
            state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
            return state / 4294967296;
          };
          const ammonia = {
            kind: "dosed",
            to: {
              low: as<Quantity<"mg N/L">>(1),
              best: as<Quantity<"mg N/L">>(2),
              high: as<Quantity<"mg N/L">>(3),
            },
            isRepeated: true,
          } as const;
          holds(
            cycling(
              { volumeL, temperatureC, salinity, seed: { kind: "culture" }, ammonia, readings, days: 45 },
              random,
            ),
          );
        },
      ),
      { numRuns: 25 },
    );
  });
});
