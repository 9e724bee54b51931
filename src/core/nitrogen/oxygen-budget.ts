import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import type {
  DegreesC,
  GramsPerDay,
  KiloPascals,
  Litres,
  MgPerL,
  PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { oxygenSaturation, SEA_LEVEL_KPA } from "../water/oxygen-saturation.ts";
import { allNotBelowZero } from "./not-below-zero.ts";
import { rounded } from "./rounded.ts";
import { figureRefusal } from "./stocking-domain.ts";
import { LOWEST_OXYGEN_MG_PER_L, RESERVE_WANTED_H } from "./stocking-figures.ts";

export interface OxygenSituation {
  readonly volumeL: Estimate<Litres>;
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperatureC: Estimate<DegreesC>;
  /** True air pressure; default sea level. */
  readonly pressureKPa?: Estimate<KiloPascals>;
  /** Everything that breathes: animals, filter, leftovers. */
  readonly restGPerDay: Estimate<GramsPerDay>;
  readonly afterMealGPerDay: Estimate<GramsPerDay>;
  /** Oxygen measured between meals with everything running: tells how strong the aeration is. */
  readonly measuredMgPerL?: Estimate<MgPerL>;
}

/** What the water holds, what is drawn from it, and how long it lasts. */
export interface OxygenBudget {
  readonly saturationMgPerL: Estimate;
  readonly heldG: Estimate;
  readonly restGPerHour: Estimate;
  readonly afterMealGPerHour: Estimate;
  /** Hours from the present (or saturated) water down to 4 mg/L, pumps and air off. */
  readonly hoursAtRest: Estimate;
  readonly hoursAfterMeal: Estimate;
  /** Exchange with air needed to keep 4 mg/L after a meal: volumes of water brought to saturation per hour. */
  readonly exchangeNeededPerH: Estimate;
  /** The same as the measurement shows it at rest; absent without one, or when it is at saturation. */
  readonly exchangeNowPerH?: Estimate;
  /** Where oxygen settles after a meal with the present exchange. */
  readonly afterMealMgPerL?: Estimate;
}

/** Oxygen held and used by a tank, and what happens after a meal or when the pumps stop. */
export function oxygenBudget(given: OxygenSituation): Answer<OxygenBudget> | NoAnswer {
  const refusal = figureRefusal([
    ["volume", given.volumeL, "L", 1, 10_000_000],
    ["salinity", given.salinity, "", 0, 45],
    ["temperature", given.temperatureC, "°C", 0, 40],
    ["air pressure", given.pressureKPa, "kPa", 50, 110],
    ["oxygen use at rest", given.restGPerDay, "g/day", 1e-6, 1e7],
    ["oxygen use after a meal", given.afterMealGPerDay, "g/day", 1e-6, 1e7],
    ["measured oxygen", given.measuredMgPerL, "mg/L", 0, 30],
  ]);
  if (refusal !== undefined) return noAnswer(refusal.code, refusal.figures);
  const { measuredMgPerL: measured } = given;
  const inputs = {
    "net volume": given.volumeL,
    salinity: given.salinity,
    temperature: given.temperatureC,
    "air pressure": given.pressureKPa ?? exactly(SEA_LEVEL_KPA),
    "oxygen use at rest": given.restGPerDay,
    "oxygen use after a meal": given.afterMealGPerDay,
    "measured oxygen": measured ?? exactly<number>(0),
  };
  const { estimates, drivers } = propagate(inputs, (v) => {
    const saturation = oxygenSaturation(v.salinity, v.temperature, v["air pressure"]);
    const start = measured === undefined ? saturation : v["measured oxygen"];
    const spareG = (Math.max(0, start - LOWEST_OXYGEN_MG_PER_L) * v["net volume"]) / 1000;
    const restPerH = v["oxygen use at rest"] / 24;
    const mealPerH = v["oxygen use after a meal"] / 24;
    const litreRest = (restPerH * 1000) / v["net volume"];
    const litreMeal = (mealPerH * 1000) / v["net volume"];
    return {
      saturation: saturation as number,
      held: (start * v["net volume"]) / 1000,
      restPerH,
      mealPerH,
      hoursRest: spareG / restPerH,
      hoursMeal: spareG / mealPerH,
      needed: litreMeal / Math.max(0.1, saturation - LOWEST_OXYGEN_MG_PER_L),
      exchange: litreRest / Math.max(LEAST_GAP_MG_PER_L, saturation - v["measured oxygen"]),
      settled: Math.max(
        0,
        saturation -
          (litreMeal / litreRest) * Math.max(LEAST_GAP_MG_PER_L, saturation - v["measured oxygen"]),
      ),
    };
  });
  const e = allNotBelowZero(estimates);
  const showsExchange = measured !== undefined && measured.best < e.saturation.best - LEAST_GAP_MG_PER_L;
  const value: OxygenBudget = {
    saturationMgPerL: e.saturation,
    heldG: e.held,
    restGPerHour: e.restPerH,
    afterMealGPerHour: e.mealPerH,
    hoursAtRest: e.hoursRest,
    hoursAfterMeal: e.hoursMeal,
    exchangeNeededPerH: e.needed,
    ...(showsExchange ? { exchangeNowPerH: e.exchange, afterMealMgPerL: e.settled } : {}),
  };
  return {
    kind: "answer",
    value,
    method: "oxygen held by the water against oxygen used",
    working: [
      `saturation at this salinity, temperature and pressure = ${rounded(e.saturation.best)} mg/L`,
      `use after a meal = ${rounded(e.mealPerH.best)} g an hour`,
      `hours = (oxygen now − ${LOWEST_OXYGEN_MG_PER_L} mg/L) × volume ÷ use = ${rounded(e.hoursMeal.best)} h after a meal`,
      `exchange needed = use per litre ÷ (saturation − ${LOWEST_OXYGEN_MG_PER_L} mg/L) = ${rounded(e.needed.best)} per hour`,
      ...(showsExchange
        ? [
            `exchange now = use at rest per litre ÷ (saturation − measured) = ${rounded(e.exchange.best)} per hour`,
          ]
        : []),
    ],
    constants: [
      { name: "oxygen fish need", value: `${LOWEST_OXYGEN_MG_PER_L} mg/L`, source: "common-practice" },
      { name: "reserve wanted", value: `${RESERVE_WANTED_H} h`, source: "assumption" },
    ],
    sources: ["benson-krause-1984", "mass-balance", "common-practice", "assumption"],
    assumptions: [
      "use stays the same as oxygen falls; in truth it slackens, so the hours are on the short side",
      ...(measured === undefined ? ["the water starts fully aerated"] : []),
      ...(showsExchange ? ["the measurement was taken between meals, with oxygen steady"] : []),
    ],
    cautions: cautionsOf(measured, value),
    driver: drivers.hoursMeal,
  };
}

/** A measurement closer to saturation than this says nothing about the exchange with air. Source: assumption. */
const LEAST_GAP_MG_PER_L = 0.1;

function cautionsOf(measured: Estimate<MgPerL> | undefined, value: OxygenBudget): Caution[] {
  const cautions: Caution[] = [];
  if (measured !== undefined && measured.low < LOWEST_OXYGEN_MG_PER_L) {
    cautions.push(
      caution("oxygen-low-now", { mgPerL: rounded(measured.best), limit: LOWEST_OXYGEN_MG_PER_L }, "danger"),
    );
  }
  if (measured !== undefined && measured.low > value.saturationMgPerL.high * 1.05) {
    cautions.push(
      caution("oxygen-above-saturation", {
        mgPerL: rounded(measured.best),
        saturation: rounded(value.saturationMgPerL.best),
      }),
    );
  }
  const settled = value.afterMealMgPerL;
  if (settled !== undefined && settled.best < LOWEST_OXYGEN_MG_PER_L) {
    cautions.push(
      caution("oxygen-cannot-hold", { mgPerL: rounded(settled.best), limit: LOWEST_OXYGEN_MG_PER_L }),
    );
  }
  if (value.hoursAfterMeal.low < RESERVE_WANTED_H) {
    cautions.push(caution("oxygen-reserve-short", { hours: rounded(value.hoursAfterMeal.low, 2) }));
  }
  return cautions;
}
