import { between, type Estimate, mapEstimate, propagate } from "../quantity/estimate.ts";
import { as, type Centimetres, type Grams, type GramsPerDay } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { FISH, type Fish } from "./fish.ts";
import { allNotBelowZero } from "./not-below-zero.ts";
import { rounded } from "./rounded.ts";
import { stockingRefusal } from "./stocking-domain.ts";
import { groupMasses, stockingFigures } from "./stocking-figures.ts";
import {
  type AnimalGroup,
  type Food,
  STOCKING_DEFAULTS,
  type StockingSituation,
  stockingInputs,
  withDistinctLabels,
} from "./stocking-input.ts";
import { emptyLoad, type StockingLoad, stockingLoad } from "./stocking-load.ts";

/** The animal a member thinks of adding. */
export interface Newcomer {
  readonly animal: AnimalGroup;
  /** What it will be given; absent: the same share of its body mass as the others get. */
  readonly food?: Food;
  /** Its full size; absent: the greatest length known for the species. */
  readonly grown?: AnimalGroup["body"];
}

/** What the newcomer adds to the load, at one size. */
export interface Added {
  readonly load: StockingLoad;
  readonly massG: Estimate;
  readonly tanGPerDay: Estimate;
  readonly oxygenAfterMealGPerDay: Estimate;
  readonly areaAverageM2: Estimate;
  readonly nitratePerWeekMgPerL: Estimate;
}

export interface OneMoreAnimal {
  readonly before: StockingLoad;
  readonly now: Added;
  /** Absent when no full size is known, or it is that size already. */
  readonly grown?: Added;
}

/** Appetites differ: the newcomer's share may be this many times larger or smaller. Source: assumption. */
const APPETITE_FACTOR = 1.5;

/** What one more animal changes, at its present size and when it is grown. */
export function oneMoreAnimal(
  given: StockingSituation,
  newcomer: Newcomer,
): Answer<OneMoreAnimal> | NoAnswer {
  const kept = { ...given, animals: given.animals.filter((group) => group.count > 0) };
  const refusal = stockingRefusal({
    ...kept,
    animals: [
      ...kept.animals,
      newcomer.animal,
      ...(newcomer.grown === undefined ? [] : [{ ...newcomer.animal, body: newcomer.grown }]),
    ],
    food: newcomer.food === undefined ? kept.food : [...kept.food, newcomer.food],
  });
  if (refusal !== undefined) return noAnswer(refusal.code, refusal.figures);
  const present = fedAs(kept, newcomer);
  const isEmpty = present.animals.length === 0 && present.food.length === 0;
  const known = isEmpty ? undefined : stockingLoad(present);
  if (known?.kind === "no-answer") return known;
  const now = stockingLoad(withNewcomer(present, newcomer));
  if (now.kind === "no-answer") return now;
  const full = grownNewcomer(newcomer);
  const grown = full === undefined ? undefined : stockingLoad(withNewcomer(present, full));
  if (grown?.kind === "no-answer") return grown;
  const before = known?.value ?? emptyLoad(present);
  const cautions: Caution[] = [...now.cautions];
  const { animal } = newcomer;
  if (animal.body.kind === "length" && newcomer.grown === undefined && full?.animal.body.kind === "length") {
    const lengthCm = full.animal.body.lengthCm.best;
    cautions.push(caution("adult-size-from-memory", { animal: animal.label, lengthCm }));
  }
  if (full === undefined) cautions.push(caution("adult-size-unknown", { animal: animal.label }));
  return {
    ...now,
    value: {
      before,
      now: added(present, newcomer, now.value),
      ...(full === undefined || grown === undefined ? {} : { grown: added(present, full, grown.value) }),
    },
    method: "the stocking load with and without the animal, compared with the same doubts in both",
    working: [
      ...now.working,
      `before: ${rounded(before.tanGPerDay.best)} g ammonia nitrogen a day; with it: ${rounded(now.value.tanGPerDay.best)} g`,
      ...(grown === undefined ? [] : [`when grown: ${rounded(grown.value.tanGPerDay.best)} g`]),
    ],
    sources: [
      ...new Set([...now.sources, ...(full === undefined ? [] : (["fishbase-maximum-length"] as const))]),
    ],
    assumptions: [
      ...now.assumptions,
      ...(newcomer.food === undefined
        ? ["the newcomer eats the same share of its body mass as the others, give or take half"]
        : ["the newcomer's food stays as named when it is grown"]),
    ],
    cautions,
  };
}

/** A newcomer with food of its own must not starve the others: their usual ration is then spelt out. */
function fedAs(present: StockingSituation, newcomer: Newcomer): StockingSituation {
  if (newcomer.food === undefined || present.food.length > 0 || present.animals.length === 0) return present;
  const usual = STOCKING_DEFAULTS.ration[present.growth === "growing" ? "growing" : "adult"];
  const massG = bestMass(present, present.animals);
  const ration: Food["ration"] = {
    kind: "daily",
    gramsPerDay: mapEstimate(usual, (share) => as<GramsPerDay>(share * massG)),
    mealsPerDay: STOCKING_DEFAULTS.assumedMealsPerWeek / 7,
  };
  return {
    ...present,
    food: [{ label: "usual ration", protein: { kind: "table", feed: "fish flesh" }, ration }],
  };
}

/** The newcomer at full size, if that is known and larger than it is. */
function grownNewcomer(newcomer: Newcomer): Newcomer | undefined {
  const { animal, grown } = newcomer;
  if (grown !== undefined) return { ...newcomer, animal: { ...animal, body: grown } };
  if (animal.body.kind !== "length") return undefined;
  const fish: Fish = FISH[animal.body.fish];
  if (fish.adultLengthCm === undefined || fish.adultLengthCm <= animal.body.lengthCm.best) return undefined;
  // Greatest lengths are rarely reached: from two thirds up.
  const lengthCm = between(
    as<Centimetres>(Math.max(animal.body.lengthCm.best, (fish.adultLengthCm * 2) / 3)),
    as<Centimetres>(fish.adultLengthCm),
    as<Centimetres>(fish.adultLengthCm),
  );
  return { ...newcomer, animal: { ...animal, body: { ...animal.body, lengthCm } } };
}

function withNewcomer(present: StockingSituation, newcomer: Newcomer): StockingSituation {
  const animals = withDistinctLabels([...present.animals, newcomer.animal]);
  const food =
    newcomer.food !== undefined
      ? [newcomer.food]
      : present.food.length === 0
        ? []
        : rationFor(newcomer.animal, present);
  return { ...present, animals, food: withDistinctLabels([...present.food, ...food]) };
}

/** Best-value mass of some groups, g. */
function bestMass(situation: StockingSituation, animals: readonly AnimalGroup[]): number {
  const only = { ...situation, animals: withDistinctLabels(animals) };
  const best = Object.fromEntries(
    Object.entries(stockingInputs(only)).map(([name, figure]) => [name, figure.best]),
  );
  return groupMasses(only, best).reduce((sum, mass) => sum + mass, 0);
}

function rationFor(animal: AnimalGroup, present: StockingSituation): readonly Food[] {
  const own = bestMass(present, [animal]);
  const others = bestMass(present, present.animals);
  if (others > 0) {
    const share = own / others;
    const range = between(share / APPETITE_FACTOR, share * APPETITE_FACTOR, share);
    return present.food.map(({ label, protein, ration }) => ({
      label: `${label} for the newcomer`,
      protein,
      ration:
        ration.kind === "meals"
          ? { ...ration, gramsPerMeal: times<Grams>(ration.gramsPerMeal, range) }
          : { ...ration, gramsPerDay: times<GramsPerDay>(ration.gramsPerDay, range) },
    }));
  }
  const usual = STOCKING_DEFAULTS.ration[present.growth === "growing" ? "growing" : "adult"];
  return present.food.slice(0, 1).map(({ label, protein }) => ({
    label: `${label} for the newcomer`,
    protein,
    ration: {
      kind: "daily",
      gramsPerDay: mapEstimate(usual, (share) => as<GramsPerDay>(share * own)),
      mealsPerDay: STOCKING_DEFAULTS.assumedMealsPerWeek / 7,
    },
  }));
}

function times<Q extends Grams | GramsPerDay>(amount: Estimate<Q>, share: Estimate): Estimate<Q> {
  return {
    best: as<Q>(amount.best * share.best),
    low: as<Q>(amount.low * share.low),
    high: as<Q>(amount.high * share.high),
  };
}

const NOTHING = {
  fishMassG: 0,
  tanGPerDay: 0,
  oxygenAfterMealGPerDay: 0,
  areaAverageM2: 0,
  nitratePerWeekMgPerL: 0,
};

/** With minus without, carried through together so that shared doubts cancel. */
function added(present: StockingSituation, newcomer: Newcomer, load: StockingLoad): Added {
  const together = withNewcomer(present, newcomer);
  const without = {
    ...present,
    animals: withDistinctLabels(present.animals),
    food: withDistinctLabels(present.food),
  };
  const isEmpty = without.animals.length === 0 && without.food.length === 0;
  const { estimates } = propagate(stockingInputs(together), (values) => {
    const all = stockingFigures(together, values);
    const old = isEmpty ? NOTHING : stockingFigures(without, values);
    return {
      massG: all.fishMassG - old.fishMassG,
      tanGPerDay: all.tanGPerDay - old.tanGPerDay,
      oxygenAfterMealGPerDay: all.oxygenAfterMealGPerDay - old.oxygenAfterMealGPerDay,
      areaAverageM2: all.areaAverageM2 - old.areaAverageM2,
      nitratePerWeekMgPerL: all.nitratePerWeekMgPerL - old.nitratePerWeekMgPerL,
    };
  });
  return { load, ...allNotBelowZero(estimates) };
}
