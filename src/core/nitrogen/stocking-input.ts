import { between, type Estimate } from "../quantity/estimate.ts";
import {
  as,
  type Centimetres,
  type Days,
  type DegreesC,
  type Fraction,
  type Grams,
  type GramsPerDay,
  type Hours,
  type Litres,
  type LitresPerHour,
  type PracticalSalinity,
} from "../quantity/units.ts";
import type { FeedKind } from "./feeds.ts";
import { FEEDS } from "./feeds.ts";
import type { FishKey, Habit } from "./fish.ts";
import { MASS_SPREAD_FACTOR } from "./fish-body.ts";
import { MEDIA, type MediumKind, USABLE_FRACTION } from "./media.ts";
import type { MgNPerL } from "./nitrogen-units.ts";

/** One or more like animals: a fish by its length, or any animal by its mass. */
export interface AnimalGroup {
  /** As the member calls it; used in the answer. */
  readonly label: string;
  readonly count: number;
  readonly body:
    | { readonly kind: "length"; readonly fish: FishKey; readonly lengthCm: Estimate<Centimetres> }
    | { readonly kind: "mass"; readonly massG: Estimate<Grams>; readonly habit: Habit };
}

/** What is known of a food's protein. */
export type ProteinSaid =
  | { readonly kind: "table"; readonly feed: FeedKind }
  | {
      readonly kind: "own";
      readonly protein: Estimate<Fraction>;
      readonly basis: "as fed" | "dry matter" | "not said";
      /** Share of water, needed to bring a dry-matter figure to the food as fed. */
      readonly water?: Estimate<Fraction>;
    };

export type Ration =
  | { readonly kind: "meals"; readonly gramsPerMeal: Estimate<Grams>; readonly mealsPerWeek: number }
  | { readonly kind: "daily"; readonly gramsPerDay: Estimate<GramsPerDay>; readonly mealsPerDay: number };

export interface Food {
  readonly label: string;
  readonly protein: ProteinSaid;
  readonly ration: Ration;
}

export interface InstalledMedia {
  readonly kind: MediumKind;
  readonly litres: Estimate<Litres>;
}

export interface RegularChange {
  readonly changed: Estimate<Fraction>;
  readonly everyDays: Days;
  /** Nitrate nitrogen of the new water. */
  readonly sourceNitrate: Estimate<MgNPerL>;
}

/** Adults keep what they weigh and excrete most of the nitrogen; growing fish build some in. */
export type Growth = "adult" | "growing" | "not said";

/** Everything the stocking load is worked out from. */
export interface StockingSituation {
  readonly volumeL: Estimate<Litres>;
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperatureC: Estimate<DegreesC>;
  readonly animals: readonly AnimalGroup[];
  readonly food: readonly Food[];
  /** Share of the nitrogen eaten that comes out as ammonia depends on it. */
  readonly growth: Growth;
  /** Absent: nothing is known about the filter. */
  readonly media?: readonly InstalledMedia[];
  /** Share of the beds that works, after channelling and clogging. */
  readonly usableFraction?: Estimate<Fraction>;
  /** What really passes the filter. */
  readonly netFlowLPerH?: Estimate<LitresPerHour>;
  readonly waterChange?: RegularChange;
  /** Ammonia nitrogen accepted on average and after a meal. */
  readonly acceptedTan?: MgNPerL;
  readonly acceptedPeakTan?: MgNPerL;
  /** Nitrate nitrogen accepted before a change. */
  readonly acceptedNitrate?: MgNPerL;
  /** Hours from a meal to its fastest ammonia output. */
  readonly mealPeakAfterH?: Estimate<Hours>;
}

/** Defaults a member may overrule, each with where it comes from. */
export const STOCKING_DEFAULTS = {
  /** Source: assumption, a safe middle at pH 8.2 and 26 °C in sea water. */
  acceptedTan: as<MgNPerL>(0.2),
  /** Source: computed from khoo-1977: 0.035 mg/L NH₃ at pH 8.2, 26 °C, salinity 34. */
  acceptedPeakTan: as<MgNPerL>(0.4),
  /** 100 mg/L as NO₃. Source: common-practice for tanks of fish only. */
  acceptedNitrate: as<MgNPerL>(22.6),
  /** Source: assumption. */
  mealPeakAfterH: between(as<Hours>(3), as<Hours>(16), as<Hours>(8)),
  /** Share of food nitrogen that leaves in growth, solids and skimmate. Source: assumption. */
  removedShare: between(as<Fraction>(0.05), as<Fraction>(0.3), as<Fraction>(0.15)),
  /** Share of body mass per day. Source: common-practice. */
  ration: {
    adult: between(as<Fraction>(0.005), as<Fraction>(0.01)),
    growing: between(as<Fraction>(0.02), as<Fraction>(0.04)),
  },
  /** Source: common-practice for adult predators. */
  assumedMealsPerWeek: 3,
} as const;

/** Share of food nitrogen given off as ammonia. Source: timmons-ebeling (growing); assumption (adult). */
export const EXCRETED_SHARE: Record<Growth, Estimate<Fraction>> = {
  adult: between(as<Fraction>(0.7), as<Fraction>(0.8), as<Fraction>(0.75)),
  growing: between(as<Fraction>(0.5), as<Fraction>(0.65), as<Fraction>(0.575)),
  "not said": between(as<Fraction>(0.575), as<Fraction>(0.8), as<Fraction>(0.72)),
};

/** The ranged inputs of one situation, by the names a member reads. */
export type Inputs = Readonly<Record<string, Estimate<number>>>;

/** Names of the inputs that belong to one animal group, food or bed. */
export const inputName = {
  length: (group: AnimalGroup) => `length of ${group.label}`,
  build: (group: AnimalGroup) => `build of ${group.label}`,
  mass: (group: AnimalGroup) => `mass of ${group.label}`,
  grams: (food: Food) => `grams of ${food.label}`,
  protein: (food: Food) => `protein of ${food.label}`,
  water: (food: Food) => `water in ${food.label}`,
  bed: (index: number, bed: InstalledMedia) => `volume of ${MEDIA[bed.kind].name}, bed ${index + 1}`,
  surface: (bed: InstalledMedia) => `surface of ${MEDIA[bed.kind].name}`,
} as const;

/** Entries that share a label would share their inputs; the later ones are numbered. */
export function withDistinctLabels<T extends { readonly label: string }>(
  entries: readonly T[],
): readonly T[] {
  const seen = new Map<string, number>();
  return entries.map((entry) => {
    const count = (seen.get(entry.label) ?? 0) + 1;
    seen.set(entry.label, count);
    return count === 1 ? entry : { ...entry, label: `${entry.label} (${count})` };
  });
}

/** All ranged inputs of a situation. Optional ones are present only when the sum needs them. */
export function stockingInputs(situation: StockingSituation): Inputs {
  const inputs: Record<string, Estimate<number>> = {
    "net volume": situation.volumeL,
    salinity: situation.salinity,
    temperature: situation.temperatureC,
    "share of food nitrogen given off as ammonia": EXCRETED_SHARE[situation.growth],
    "hours from meal to ammonia peak": situation.mealPeakAfterH ?? STOCKING_DEFAULTS.mealPeakAfterH,
    "share of nitrogen taken out with solids": STOCKING_DEFAULTS.removedShare,
    "speed of the filter film": FILM_SPEED,
    "oxygen for leftovers": LEFTOVER_SHARE,
    "share of the bed that works": situation.usableFraction ?? USABLE_FRACTION,
  };
  situation.animals.forEach((group) => {
    if (group.body.kind === "length") {
      inputs[inputName.length(group)] = group.body.lengthCm;
      inputs[inputName.build(group)] = between(1 / MASS_SPREAD_FACTOR, MASS_SPREAD_FACTOR, 1);
    } else inputs[inputName.mass(group)] = group.body.massG;
  });
  if (situation.animals.length > 0) {
    inputs["oxygen use at rest"] = between(0, 1, 0.5);
    inputs["oxygen use after a meal"] = AFTER_MEAL;
  }
  if (situation.food.length === 0) {
    const ration = STOCKING_DEFAULTS.ration[situation.growth === "growing" ? "growing" : "adult"];
    inputs["ration, share of body mass a day"] = ration;
    inputs["protein of the assumed food"] = FEEDS["fish flesh"].protein;
    inputs["water in the assumed food"] = FEEDS["fish flesh"].water;
  }
  situation.food.forEach((food) => {
    const { ration, protein } = food;
    inputs[inputName.grams(food)] = ration.kind === "meals" ? ration.gramsPerMeal : ration.gramsPerDay;
    const table = protein.kind === "table" ? FEEDS[protein.feed] : undefined;
    inputs[inputName.protein(food)] = protein.kind === "own" ? protein.protein : FEEDS[protein.feed].protein;
    inputs[inputName.water(food)] =
      table?.water ?? (protein.kind === "own" ? protein.water : undefined) ?? WATER_NOT_SAID;
  });
  situation.media?.forEach((bed, index) => {
    inputs[inputName.bed(index, bed)] = bed.litres;
    inputs[inputName.surface(bed)] = MEDIA[bed.kind].surface;
  });
  if (situation.waterChange !== undefined) {
    inputs["share of water changed"] = situation.waterChange.changed;
    inputs["nitrate in the new water"] = situation.waterChange.sourceNitrate;
  }
  return inputs;
}

/** First-order uptake of the film against the default. Source: assumption; the fresh-water figure is 2.4 times it. */
const FILM_SPEED = between(0.5, 2.4, 1);
/** Share of the food's oxygen demand met outside the fish. Source: assumption. */
const LEFTOVER_SHARE = between(0.15, 0.35, 0.25);
/** Oxygen use after a meal against rest. Source: meal-metabolism. */
const AFTER_MEAL = between(2, 3);
/** Water in a food of which only the protein is known; used for leftovers only. Source: assumption. */
const WATER_NOT_SAID = between(0.1, 0.8, 0.6);
