import { type Estimate, orDoubted, propagate } from "../quantity/estimate.ts";
import { as, type DegreesC, type Kilograms, type Litres, type PracticalSalinity } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { DENSITY_FITTED } from "./density.ts";
import { DENSITY_EQUATION, SALT_PER_SALINITY } from "./evidence.ts";
import { figure } from "./figure.ts";
import { massOfFreshWater, massOfSeawater } from "./mass.ts";
import { absoluteSalinity } from "./salinity-scales.ts";
import { yieldFromFinalTrial, yieldFromWaterTrial } from "./salt-balance.ts";
import { UNKNOWN_YIELD, type YieldFactor } from "./salt-product.ts";
import { cut, firstNotCredible, fittedRange, keptPossible, SALINITY, TEMPERATURE, VOLUME } from "./usable.ts";

export interface TrialBatch {
  /** "water": the fresh water put in; "final": the salt water it became. */
  readonly volume: { readonly kind: "water" | "final"; readonly litres: Estimate<Litres> };
  /** Of the product as bought. */
  readonly salt: Estimate<Kilograms>;
  /** Measured when all was dissolved. */
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
}

export interface MeasuredYield {
  readonly yieldFactor: Estimate<YieldFactor>;
  /** Salt that the batch really holds. */
  readonly deliveredKg: Estimate<Kilograms>;
}

const SALT = { unit: "kg", min: 1e-4, max: 1e6 };
/** How well a batch is measured at home, where nobody said. Source: assumption. */
const DOUBT = { volumeShare: 0.01, massShare: 0.01, salinity: 0.5 };
const MEASURED_SALINITY = { ...SALINITY, min: 0.01 };

/** How much salt a product really delivers, from one batch the member has mixed and measured. */
export function yieldFromBatch(batch: TrialBatch): Answer<MeasuredYield> | NoAnswer {
  const unusable = firstNotCredible([
    ["volume", batch.volume.litres, VOLUME],
    ["salt", batch.salt, SALT],
    ["salinity", batch.salinity, MEASURED_SALINITY],
    ["temperature", batch.temperature, TEMPERATURE],
  ]);
  if (unusable !== undefined) return unusable;

  const doubted = {
    litres: orDoubted(batch.volume.litres, batch.volume.litres.best * DOUBT.volumeShare),
    salt: orDoubted(batch.salt, batch.salt.best * DOUBT.massShare),
    salinity: orDoubted(batch.salinity, DOUBT.salinity),
  };
  const trial = batch.volume.kind === "water" ? yieldFromWaterTrial : yieldFromFinalTrial;
  const { estimates, drivers } = propagate(
    {
      volume: cut(doubted.litres, VOLUME),
      "mass of salt": cut(doubted.salt, SALT),
      "salinity measured": cut(doubted.salinity, MEASURED_SALINITY),
      temperature: cut(batch.temperature, TEMPERATURE),
    },
    (v) => {
      const yieldFactor = trial(v.volume, v["mass of salt"], v["salinity measured"], v.temperature);
      return { yieldFactor, deliveredKg: as<Kilograms>(yieldFactor * v["mass of salt"]) };
    },
  );
  const found = estimates.yieldFactor;
  if (found.low > 1) return noAnswer("yield-impossible", { yieldFactor: found.best });
  const lowest = UNKNOWN_YIELD.low;

  return {
    kind: "answer",
    value: { ...keptPossible(estimates), yieldFactor: atMostOne(found) },
    method: "Salt found in the batch, by its mass and salinity, over the product put in.",
    working: working(batch, found.best),
    constants: [DENSITY_EQUATION, SALT_PER_SALINITY],
    sources: ["mass-balance", "millero-poisson-1981", "millero-2008", "jcgm-100-2008", "assumption"],
    assumptions: [
      "all the product had dissolved",
      "the fresh water held no salt",
      "figures given without a range are good to 1 % of the volume and of the mass, and to 0.5 ppt",
      "one batch stands for the whole bag: damp settles, so mix the bag before weighing",
    ],
    cautions: [
      ...(found.best > 1 ? [caution("yield-above-one", { yieldFactor: found.best })] : []),
      ...(found.high < lowest ? [caution("yield-below-recipes", { yieldFactor: found.best, lowest })] : []),
      ...fittedRange("salinity", batch.salinity, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("temperature", batch.temperature, "°C", DENSITY_FITTED.temperatureC),
    ],
    driver: drivers.yieldFactor,
  };
}

function atMostOne(found: Estimate<YieldFactor>): Estimate<YieldFactor> {
  const one = as<YieldFactor>(1);
  return {
    best: found.best > 1 ? one : found.best,
    low: found.low < 0 ? as<YieldFactor>(0) : found.low,
    high: found.high > 1 ? one : found.high,
  };
}

function working(batch: TrialBatch, found: number): readonly string[] {
  const { litres, kind } = batch.volume;
  const t = batch.temperature.best;
  const s = batch.salinity.best;
  const saltKg = batch.salt.best;
  const batchKg =
    kind === "water" ? massOfFreshWater(litres.best, t) + saltKg : massOfSeawater(litres.best, s, t);
  return [
    kind === "water"
      ? `mass of the batch = ${figure(litres.best)} L of fresh water × its density ÷ 1000 + ${figure(saltKg)} kg of product = ${figure(batchKg)} kg`
      : `mass of the batch = ${figure(litres.best)} L × density of the salt water ÷ 1000 = ${figure(batchKg)} kg`,
    `salt per kg = ${figure(s)} × 35.16504/35 = ${figure(absoluteSalinity(s))} g/kg`,
    `salt in the batch = ${figure((batchKg * absoluteSalinity(s)) / 1000)} kg`,
    `yield factor = salt in the batch ÷ product put in = ${figure(found)}`,
  ];
}
