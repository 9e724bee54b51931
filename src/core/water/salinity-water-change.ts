import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type DegreesC, type Fraction, type Litres, type PracticalSalinity } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import {
  type ChangeSize,
  checkedSize,
  FLOW_VOLUME,
  largeChangeCautions,
  notCountable,
  shareOf,
  sizeEstimate,
} from "./change-size.ts";
import { DENSITY_FITTED } from "./density.ts";
import { leftAfterFlow } from "./dilution.ts";
import { DENSITY_EQUATION, SALT_PER_SALINITY } from "./evidence.ts";
import { figure } from "./figure.ts";
import { salinityAfterSwap } from "./salinity-balance.ts";
import { paceCautions, paceOf } from "./salinity-pace.ts";
import { type GramsPerLitre, salinityFromGramsPerLitre, saltGramsPerLitre } from "./salinity-scales.ts";
import { cut, firstNotCredible, fittedRange, keptPossible, SALINITY, TEMPERATURE, VOLUME } from "./usable.ts";

export interface SalinityChangeInput {
  readonly volume: Estimate<Litres>;
  readonly now: Estimate<PracticalSalinity>;
  /** Of the new water. */
  readonly source: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
  readonly pattern:
    | { readonly kind: "in steps"; readonly each: ChangeSize; readonly times: number }
    | { readonly kind: "continuous"; readonly litres: Estimate<Litres> };
}

export interface SalinityChange {
  readonly after: Estimate<PracticalSalinity>;
  readonly change: Estimate<PracticalSalinity>;
  readonly eachL: Estimate<Litres>;
  readonly totalL: Estimate<Litres>;
}

/** What one or several water changes do to salinity, counted by mass. */
export function salinityWaterChange(input: SalinityChangeInput): Answer<SalinityChange> | NoAnswer {
  const { volume, now, source, temperature, pattern } = input;
  const isStepped = pattern.kind === "in steps";
  const times = isStepped ? pattern.times : 1;
  const unusable =
    firstNotCredible([
      ["volume", volume, VOLUME],
      ["salinity now", now, SALINITY],
      ["salinity of the new water", source, SALINITY],
      ["temperature", temperature, TEMPERATURE],
      isStepped ? checkedSize(pattern.each) : ["water exchanged", pattern.litres, FLOW_VOLUME],
    ]) ?? notCountable(times);
  if (unusable !== undefined) return unusable;
  const amount = isStepped ? sizeEstimate(pattern.each) : pattern.litres;
  if (isStepped && pattern.each.kind === "litres" && amount.best > volume.best) {
    const figures = { what: "the water changed", litres: amount.best, volumeL: volume.best };
    return noAnswer("more-than-there-is", figures);
  }

  const { estimates, drivers } = propagate(
    {
      volume: cut(volume, VOLUME),
      "salinity now": cut(now, SALINITY),
      "salinity of the new water": cut(source, SALINITY),
      temperature: cut(temperature, TEMPERATURE),
      "water changed": cut(amount, FLOW_VOLUME),
    },
    (v) => {
      const water = { now: v["salinity now"], source: v["salinity of the new water"], t: v.temperature };
      const changed = v["water changed"];
      const share = isStepped ? shareOf(pattern.each.kind, changed, v.volume) : undefined;
      const after =
        share === undefined
          ? afterFlow(water.now, water.source, leftAfterFlow(as<Litres>(changed), v.volume), water.t)
          : afterSteps(v.volume, share, times, water.now, water.source, water.t);
      const eachL = share === undefined ? changed : share * v.volume;
      return {
        after,
        change: as<PracticalSalinity>(after - water.now),
        eachL: as<Litres>(eachL),
        totalL: as<Litres>(eachL * times),
      };
    },
  );
  // The first of several changes moves salinity most; how far apart they are is not known.
  const firstChange = isStepped
    ? afterSteps(
        volume.best,
        shareOf(pattern.each.kind, amount.best, volume.best),
        1,
        now.best,
        source.best,
        temperature.best,
      ) - now.best
    : estimates.change.best;

  return {
    kind: "answer",
    value: keptPossible(estimates, ["change"]),
    method: isStepped
      ? "Balance of salt and of mass for each exchange of equal volumes."
      : "Dilution of the salt in each litre while new water mixes in and mixed water leaves.",
    working: isStepped
      ? [
          `each change: ${figure(estimates.eachL.best)} L out of ${figure(volume.best)} L, as much new water in`,
          "salinity after = (mass left × its salinity + mass of new water × its salinity) ÷ total mass; mass = litres × density ÷ 1000",
          `${times === 1 ? "after it" : `after ${times} changes`}: ${figure(estimates.after.best)}`,
        ]
      : [
          "salt in a litre = salinity × 35.16504/35 × density ÷ 1000",
          `old water left = e to the power −(${figure(estimates.totalL.best)} ÷ ${figure(volume.best)})`,
          `salt in a litre after = new water + (now − new water) × old water left; as salinity: ${figure(estimates.after.best)}`,
        ],
    constants: isStepped ? [DENSITY_EQUATION] : [DENSITY_EQUATION, SALT_PER_SALINITY],
    sources: ["mass-balance", "millero-poisson-1981", "millero-2008", "jcgm-100-2008"],
    assumptions: [
      "tank and new water are at the temperature given",
      "the volume is the water in the system, without rock and sand",
      "nothing evaporates in the meantime",
    ],
    cautions: [
      ...paceCautions(firstChange, paceOf(firstChange, undefined)),
      ...(isStepped ? largeChangeCautions(estimates.eachL.best / volume.best) : []),
      ...(isStepped
        ? [caution("unplug-before-draining", {}, "danger")]
        : [caution("unattended-filling", {})]),
      caution("measure-again", {}, "note"),
      ...fittedRange("salinity now", now, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("salinity of the new water", source, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("temperature", temperature, "°C", DENSITY_FITTED.temperatureC),
    ],
    driver: drivers.after,
  };
}

function afterSteps(
  volume: Litres,
  share: Fraction,
  times: number,
  now: PracticalSalinity,
  source: PracticalSalinity,
  t: DegreesC,
): PracticalSalinity {
  const changed = as<Litres>(volume * share);
  let salinity = now;
  for (let done = 0; done < times; done++) salinity = salinityAfterSwap(volume, changed, salinity, source, t);
  return salinity;
}

/** At constant volume the grams of salt in a litre relax towards those of the new water. */
function afterFlow(
  now: PracticalSalinity,
  source: PracticalSalinity,
  oldWaterLeft: Fraction,
  t: DegreesC,
): PracticalSalinity {
  const nowG = saltGramsPerLitre(now, t);
  const sourceG = saltGramsPerLitre(source, t);
  return salinityFromGramsPerLitre(as<GramsPerLitre>(sourceG + (nowG - sourceG) * oldWaterLeft), t);
}
