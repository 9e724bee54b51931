import { type Driver, type Estimate, type Propagated, propagate } from "../quantity/estimate.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import { MEDIA } from "./media.ts";
import { OXYGEN_PER_N } from "./nitrification.ts";
import { allNotBelowZero } from "./not-below-zero.ts";
import { rounded } from "./rounded.ts";
import { stockingRefusal } from "./stocking-domain.ts";
import { type StockingFigures, stockingFigures } from "./stocking-figures.ts";
import {
  EXCRETED_SHARE,
  type Inputs,
  STOCKING_DEFAULTS,
  type StockingSituation,
  stockingInputs,
  withDistinctLabels,
} from "./stocking-input.ts";
import { assumptionsOf, cautionsOf, sourcesOf } from "./stocking-remarks.ts";

/** What a system can run short of first. */
export type LimitingFactor =
  | "nitrifying area, on average"
  | "nitrifying area after a meal"
  | "oxygen"
  | "nitrate export"
  | "nothing known about the filter";

/** How much of one capacity the load takes: 1 is all of it. */
export interface CapacityUse {
  readonly factor: Exclude<LimitingFactor, "nothing known about the filter">;
  readonly used: Estimate;
  readonly driver: Driver | undefined;
}

/** The load that food and animals put on a system. Masses g, areas m², TAN as nitrogen, nitrate as NO₃. */
export interface StockingLoad {
  readonly fishMassG?: Estimate;
  readonly feedGPerDay: Estimate;
  readonly rationShare?: Estimate;
  readonly feedNGPerDay: Estimate;
  readonly tanGPerDay: Estimate;
  /** Rise of ammonia nitrogen in a day, and from one round of meals, if nothing took it out. */
  readonly dailyRiseMgPerL: Estimate;
  readonly mealRiseMgPerL: Estimate;
  readonly peakGPerDay: Estimate;
  readonly peakTimesAverage: Estimate;
  readonly oxygen: {
    readonly fishRestGPerDay?: Estimate;
    readonly fishAfterMealGPerDay?: Estimate;
    readonly nitrificationGPerDay: Estimate;
    readonly leftoversGPerDay: Estimate;
    readonly totalRestGPerDay: Estimate;
    readonly totalAfterMealGPerDay: Estimate;
    /** Hours from saturated water down to 4 mg/L after a meal, with pumps and air off. */
    readonly reserveH: Estimate;
  };
  readonly area: {
    readonly averageM2: Estimate;
    readonly afterMealM2: Estimate;
    readonly installedM2?: Estimate;
    /** Litres of the first medium installed (else of plastic moving-bed pieces) for the larger area. */
    readonly neededL: Estimate;
    readonly neededOf: string;
  };
  readonly nitratePerWeekMgPerL: Estimate;
  readonly weeksToAcceptedNitrate: Estimate;
  /** Just before each change, once settled; absent without regular changes. */
  readonly steadyNitrateMgPerL?: Estimate;
  readonly alkalinityDkhPerWeek: Estimate;
  /** Most used first. */
  readonly uses: readonly CapacityUse[];
  readonly limiting: LimitingFactor;
}

type Result = Propagated<Inputs, StockingFigures>;

/**
 * What the animals and their food ask of the system, and what gives out first.
 * Food decides: animals without food are given a usual ration, and the answer says so.
 */
export function stockingLoad(given: StockingSituation): Answer<StockingLoad> | NoAnswer {
  const situation = {
    ...given,
    animals: withDistinctLabels(given.animals.filter((group) => group.count > 0)),
    food: withDistinctLabels(given.food),
  };
  const refusal = stockingRefusal(situation);
  if (refusal !== undefined) return noAnswer(refusal.code, refusal.figures);
  const result: Result = propagate(stockingInputs(situation), (values) => stockingFigures(situation, values));
  const value = loadFrom(situation, result);
  const main = value.uses[0]?.driver ?? result.drivers.tanGPerDay;
  return {
    kind: "answer",
    value,
    method: "nitrogen and oxygen balance of the food given and the animals kept",
    working: working(situation, value),
    constants: [
      { name: "nitrogen in protein", value: "1 g in 6.25 g", source: "definition" },
      {
        name: "share of food nitrogen given off as ammonia",
        value: percentRange(EXCRETED_SHARE[situation.growth]),
        source: situation.growth === "growing" ? "timmons-ebeling" : "assumption",
      },
      { name: "oxygen for nitrification", value: `${OXYGEN_PER_N} g per g N`, source: "zhu-chen-2002" },
      {
        name: "highest uptake of a film, sea water / fresh water, 24 °C",
        value: "0.28 / 0.69 g N per m² and day",
        source: "nijhof-bovendeur-1990",
      },
      {
        name: "uptake at low ammonia, fresh water",
        value: "0.22 m per day, slowed in salt water in the same proportion",
        source: "kinyage-pedersen",
      },
      {
        name: "change of uptake with temperature",
        value: "4.3 % per °C from 24 °C",
        source: "zhu-chen-2002",
      },
      {
        name: "alkalinity used by food turned to nitrate",
        value: "1 eq per mol N",
        source: "wolf-gladrow-2007",
      },
      {
        name: "nitrogen leaving in growth, solids and skimmate",
        value: percentRange(STOCKING_DEFAULTS.removedShare),
        source: "assumption",
      },
    ],
    sources: sourcesOf(situation),
    assumptions: assumptionsOf(situation),
    cautions: cautionsOf(situation, value),
    driver: main,
  };
}

/** The load of a system with neither animals nor food: nothing of anything, and nothing limits it. */
export function emptyLoad(situation: StockingSituation): StockingLoad {
  const empty = { ...situation, animals: [], food: [] };
  const result = propagate(stockingInputs(empty), (values) => stockingFigures(empty, values));
  return { ...loadFrom(empty, result), uses: [], limiting: "nothing known about the filter" };
}

function loadFrom(situation: StockingSituation, { estimates, drivers }: Result): StockingLoad {
  const e = allNotBelowZero(estimates);
  const hasAnimals = situation.animals.length > 0;
  const hasMedia = situation.media !== undefined && situation.media.length > 0;
  const hasChange = situation.waterChange !== undefined;
  const uses: CapacityUse[] = [
    { factor: "oxygen", used: e.oxygenUse, driver: drivers.oxygenUse },
    ...(hasMedia
      ? [
          { factor: "nitrifying area, on average", used: e.averageUse, driver: drivers.averageUse } as const,
          {
            factor: "nitrifying area after a meal",
            used: e.afterMealUse,
            driver: drivers.afterMealUse,
          } as const,
        ]
      : []),
    ...(hasChange
      ? [{ factor: "nitrate export", used: e.nitrateUse, driver: drivers.nitrateUse } as const]
      : []),
  ];
  uses.sort((a, b) => b.used.best - a.used.best);
  const first = uses[0];
  return {
    ...(hasAnimals ? { fishMassG: e.fishMassG, rationShare: e.rationShare } : {}),
    feedGPerDay: e.feedGPerDay,
    feedNGPerDay: e.feedNGPerDay,
    tanGPerDay: e.tanGPerDay,
    dailyRiseMgPerL: e.dailyRiseMgPerL,
    mealRiseMgPerL: e.mealRiseMgPerL,
    peakGPerDay: e.peakGPerDay,
    peakTimesAverage: e.peakTimesAverage,
    oxygen: {
      ...(hasAnimals
        ? { fishRestGPerDay: e.oxygenFishRestGPerDay, fishAfterMealGPerDay: e.oxygenFishAfterMealGPerDay }
        : {}),
      nitrificationGPerDay: {
        ...e.oxygenNitrificationGPerDay,
        low: e.oxygenNitrificationLowGPerDay.low,
      },
      leftoversGPerDay: e.oxygenLeftoversGPerDay,
      totalRestGPerDay: e.oxygenRestGPerDay,
      totalAfterMealGPerDay: e.oxygenAfterMealGPerDay,
      reserveH: e.oxygenReserveH,
    },
    area: {
      averageM2: e.areaAverageM2,
      afterMealM2: e.areaAfterMealM2,
      ...(hasMedia ? { installedM2: e.installedM2 } : {}),
      neededL: e.mediaNeededL,
      neededOf: MEDIA[situation.media?.[0]?.kind ?? "moving bed"].name,
    },
    nitratePerWeekMgPerL: e.nitratePerWeekMgPerL,
    weeksToAcceptedNitrate: e.weeksToAcceptedNitrate,
    ...(hasChange ? { steadyNitrateMgPerL: e.steadyNitrateMgPerL } : {}),
    alkalinityDkhPerWeek: e.alkalinityDkhPerWeek,
    uses,
    limiting:
      !hasMedia && !(first !== undefined && first.used.best > 1)
        ? "nothing known about the filter"
        : (first?.factor ?? "nothing known about the filter"),
  };
}

function percentRange(share: Estimate): string {
  return `${rounded(share.low * 100)}–${rounded(share.high * 100)} %`;
}

function working(situation: StockingSituation, load: StockingLoad): string[] {
  const tanShare = load.tanGPerDay.best / load.feedNGPerDay.best;
  return [
    ...(load.fishMassG === undefined
      ? []
      : [
          `fish: ${rounded(load.fishMassG.best)} g together, mass = a × length^b where only a length is known`,
        ]),
    `food: ${rounded(load.feedGPerDay.best)} g a day on average`,
    `nitrogen in it = food × protein ÷ 6.25 = ${rounded(load.feedNGPerDay.best)} g a day`,
    `ammonia nitrogen = ${rounded(tanShare * 100)} % of that = ${rounded(load.tanGPerDay.best)} g a day`,
    `after a meal the output rises and falls as t·e^(−t/τ): ${rounded(load.peakTimesAverage.best)} times the average at its peak`,
    `film needed on average = ammonia ÷ uptake at ${rounded(situation.acceptedTan ?? STOCKING_DEFAULTS.acceptedTan)} mg/L = ${rounded(load.area.averageM2.best)} m²`,
    `film needed after a meal = what keeps the standing ammonia under ${rounded(situation.acceptedPeakTan ?? STOCKING_DEFAULTS.acceptedPeakTan)} mg/L = ${rounded(load.area.afterMealM2.best)} m²`,
    `oxygen after a meal = fish + ${OXYGEN_PER_N} × ammonia nitrogen + leftovers = ${rounded(load.oxygen.totalAfterMealGPerDay.best)} g a day`,
    `nitrate = (nitrogen in food − what leaves) × 4.43 ÷ volume = ${rounded(load.nitratePerWeekMgPerL.best)} mg/L a week`,
    `alkalinity = 1 equivalent per mole of nitrogen turned to nitrate = ${rounded(load.alkalinityDkhPerWeek.best)} dKH a week`,
  ];
}
