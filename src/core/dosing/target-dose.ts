import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Days,
  type Fraction,
  type Grams,
  type Litres,
  type MgPerL,
  type Seconds,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { SourceId } from "../sources.ts";
import { type MillilitresPerMinute, pumpSecondsPerDose, SHORT_RUN_S } from "./dosing-pump.ts";
import { isKnownSubstance, screenForTank } from "./hazards.ts";
import { checkSolubility, type KnownSolute } from "./solubility.ts";
import { comparable, type Strength } from "./strength.ts";
import { type Figure, unusableFigure } from "./usable-figures.ts";

/** What the dose is measured out of. */
export type DoseSource =
  | { readonly kind: "solid"; readonly purity: Estimate<Fraction> }
  | {
      readonly kind: "stock";
      readonly strength: Strength;
      /** What the reservoir holds, when the member wants to know how long it lasts. */
      readonly reservoir?: Estimate<Litres>;
      readonly pump?: Estimate<MillilitresPerMinute>;
    };

export interface TargetDose {
  /** Solid to weigh out over all the days; of the stated purity. Absent when a stock is used. */
  readonly mass?: Estimate<Grams>;
  /** Stock needed over all the days. Absent when a solid is used. */
  readonly stockVolume?: Estimate<Litres>;
  readonly days: number;
  readonly dosesPerDay: number;
  readonly changePerDay: Estimate<MgPerL>;
  readonly massPerDay?: Estimate<Grams>;
  readonly stockPerDay?: Estimate<Litres>;
  readonly massPerDose?: Estimate<Grams>;
  readonly stockPerDose?: Estimate<Litres>;
  readonly pumpSecondsPerDose?: Estimate<Seconds>;
  /** How long the reservoir feeds this daily dose. */
  readonly reservoirLasts?: Estimate<Days>;
}

/** Grams of pure substance that move a volume by so many mg/L. Source: mass-balance. */
export function gramsForChange(change: MgPerL, systemVolumeL: Litres): Grams {
  return as<Grams>((change * systemVolumeL) / 1000);
}

/** A stock above this share of the system's volume is a water change of its own. Source: assumption. */
const STOCK_COUNTS_FROM = 0.01;

/** Rounding that must not cost a day: 1.1 / 0.1 is 11 days, not 12. */
const ROUNDING = 1e-9;

/**
 * Days over which a change is spread so that none passes the cap, even if the system holds as little as
 * its range allows. Source: common-practice. Throws: RangeError unless the cap is above zero.
 */
export function daysWithinCap(change: MgPerL, cap: MgPerL): number {
  if (!(cap > 0)) throw new RangeError("the cap has to be above zero");
  return Math.max(1, Math.ceil(change / cap - ROUNDING));
}

/** How much to dose to raise a system by a chosen amount, split over days and doses. */
export function targetDose(question: {
  readonly change: Estimate<MgPerL>;
  readonly systemVolume: Estimate<Litres>;
  readonly source: DoseSource;
  /** Most that one day may change. */
  readonly dailyCap?: MgPerL;
  readonly dosesPerDay?: number;
  /** Known salt, for the check against what dissolves. */
  readonly solute?: KnownSolute;
  /** The substance as the member names it; checked for hazards. */
  readonly substance?: string;
}): Answer<TargetDose> | NoAnswer {
  const { change, systemVolume, source, dailyCap, dosesPerDay = 1 } = question;
  const screened = screenForTank(question.substance);
  if ("kind" in screened) return screened;
  const figures: Figure[] = [
    { name: "change wanted", estimate: change, unit: "mg/L" },
    { name: "net volume", estimate: systemVolume, unit: "L" },
    { name: "doses per day", estimate: exactly(dosesPerDay), unit: "doses" },
  ];
  if (dailyCap !== undefined)
    figures.push({ name: "daily limit", estimate: exactly(dailyCap), unit: "mg/L" });
  if (source.kind === "solid") {
    figures.push({ name: "purity", estimate: source.purity, unit: "of one", max: 1 });
  } else {
    if (source.reservoir !== undefined) {
      figures.push({ name: "stock in the reservoir", estimate: source.reservoir, unit: "L" });
    }
    if (source.pump !== undefined) figures.push({ name: "pump flow", estimate: source.pump, unit: "mL/min" });
  }
  const unusable = unusableFigure(figures);
  if (unusable !== undefined) return unusable;

  const worstChange = as<MgPerL>((change.high * systemVolume.best) / systemVolume.low);
  const days = dailyCap === undefined ? 1 : daysWithinCap(worstChange, dailyCap);
  const cautions: Caution[] = [...screened];
  if (question.substance === undefined && question.solute === undefined) {
    cautions.push(caution("substance-not-named", {}, "warning"));
  } else if (question.substance !== undefined && !isKnownSubstance(question.substance)) {
    cautions.push(caution("substance-not-known", { substance: question.substance }, "warning"));
  }
  if (dailyCap === undefined) cautions.push(caution("no-daily-limit-given", {}, "note"));
  else if (days > 1)
    cautions.push(caution("split-over-days", { days, cap: dailyCap, unit: "mg/L" }, "warning"));
  if (days > 1 || dosesPerDay > 1) cautions.push(caution("missed-dose-stays-missed", {}, "warning"));
  const shared = {
    kind: "answer",
    method: "The mass that moves the whole system by the change wanted, shared out evenly",
    constants: [],
    sources: [
      "mass-balance",
      ...(dailyCap === undefined ? [] : (["common-practice"] as const)),
    ] as SourceId[],
    assumptions: [
      "the system is well mixed and loses nothing of the dose meanwhile",
      ...(systemVolume.low < systemVolume.high && dailyCap !== undefined
        ? ["the days are counted for the smallest volume the system may hold"]
        : []),
    ],
  } as const;

  if (source.kind === "solid") {
    const { estimates, drivers } = propagate(
      { "change wanted": change, "net volume": systemVolume, purity: source.purity },
      (v) => {
        const mass = gramsForChange(v["change wanted"], v["net volume"]) / v.purity;
        return {
          mass: as<Grams>(mass),
          changePerDay: as<MgPerL>(v["change wanted"] / days),
          massPerDay: as<Grams>(mass / days),
          massPerDose: as<Grams>(mass / days / dosesPerDay),
        };
      },
    );
    return {
      ...shared,
      value: { ...estimates, days, dosesPerDay },
      working: [
        "pure mass = change × net volume",
        "mass to weigh = pure mass / purity",
        "each dose = mass to weigh / days / doses per day",
      ],
      cautions,
      driver: drivers.mass,
    };
  }

  const stock = comparable(source.strength, "stock");
  if ("kind" in stock) return stock;
  if (stock.family !== "mass in volume") {
    return noAnswer("strengths-do-not-compare", { stock: source.strength.kind, target: "mg/L" });
  }
  const dissolves = checkSolubility(question.solute, stock.amount.best);
  if ("kind" in dissolves) return dissolves;
  cautions.push(...dissolves);
  const { estimates, drivers } = propagate(
    { "change wanted": change, "net volume": systemVolume, "stock strength": stock.amount },
    (v) => {
      const volume = gramsForChange(v["change wanted"], v["net volume"]) / v["stock strength"];
      return {
        stockVolume: as<Litres>(volume),
        changePerDay: as<MgPerL>(v["change wanted"] / days),
        stockPerDay: as<Litres>(volume / days),
        stockPerDose: as<Litres>(volume / days / dosesPerDay),
      };
    },
  );
  const share = estimates.stockVolume.best / systemVolume.best;
  if (share > STOCK_COUNTS_FROM) cautions.push(caution("stock-volume-counts", { percent: share * 100 }));
  const run =
    source.pump === undefined ? undefined : pumpRun(estimates.stockPerDay, dosesPerDay, source.pump);
  if (run !== undefined) {
    if (run.best * dosesPerDay > SECONDS_PER_DAY) {
      return noAnswer("doses-do-not-fit-the-day", { seconds: run.best, dosesPerDay });
    }
    cautions.push(caution("calibrate-the-pump", {}, "note"));
    if (run.best < SHORT_RUN_S) cautions.push(caution("pump-run-very-short", { seconds: run.best }));
  }
  const lasts =
    source.reservoir === undefined
      ? undefined
      : propagate({ reservoir: source.reservoir, daily: estimates.stockPerDay }, (v) => ({
          days: as<Days>(v.reservoir / v.daily),
        })).estimates.days;
  return {
    ...shared,
    value: {
      ...estimates,
      days,
      dosesPerDay,
      ...(run === undefined ? {} : { pumpSecondsPerDose: run }),
      ...(lasts === undefined ? {} : { reservoirLasts: lasts }),
    },
    working: [
      "mass = change × net volume",
      "stock = mass / stock strength",
      "each dose = stock / days / doses per day",
      ...(run === undefined ? [] : ["pump run = each dose / pump flow"]),
      ...(lasts === undefined ? [] : ["reservoir lasts = stock in it / stock per day"]),
    ],
    cautions,
    driver: drivers.stockVolume,
  };
}

const SECONDS_PER_DAY = 86_400;

function pumpRun(
  daily: Estimate<Litres>,
  dosesPerDay: number,
  flow: Estimate<MillilitresPerMinute>,
): Estimate<Seconds> {
  return propagate({ daily, flow }, (v) => ({
    seconds: pumpSecondsPerDose(v.daily, dosesPerDay, v.flow),
  })).estimates.seconds;
}
