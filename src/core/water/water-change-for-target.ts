import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Litres } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { LEVEL, largeChangeCautions, SHARE } from "./change-size.ts";
import type { Level } from "./dilution.ts";
import { figure } from "./figure.ts";
import { cut, firstNotCredible, keptPossible, VOLUME } from "./usable.ts";

export interface WaterChangeTarget {
  readonly volume: Estimate<Litres>;
  readonly now: Estimate<Level>;
  /** In the new water. */
  readonly source: Estimate<Level>;
  readonly target: Estimate<Level>;
  readonly unit: string;
  /** Share of the water that the member is willing to change at a time. */
  readonly fractionEach: Estimate<Fraction>;
}

export interface WaterChangePlan {
  /** One change that does it all. */
  readonly singleFraction: Estimate<Fraction>;
  readonly singleL: Estimate<Litres>;
  /** Changes of `fractionEach` until the target is reached or passed. */
  readonly times: Estimate<NumberOfChanges>;
  readonly eachL: Estimate<Litres>;
  readonly stepsTotalL: Estimate<Litres>;
  /** New water running in while mixed water runs out. */
  readonly continuousL: Estimate<Litres>;
}

export type NumberOfChanges = number & { readonly unit: "changes" };

const WORTHWHILE_SHARE = { ...SHARE, min: 0.001 };

/** How large a water change, or how many, take a value to its target. */
export function waterChangeForTarget(input: WaterChangeTarget): Answer<WaterChangePlan> | NoAnswer {
  const { volume, now, source, target, unit, fractionEach } = input;
  const unusable = firstNotCredible([
    ["volume", volume, VOLUME],
    ["value now", now, { ...LEVEL, unit }],
    ["value of the new water", source, { ...LEVEL, unit }],
    ["target", target, { ...LEVEL, unit }],
    ["share changed each time", fractionEach, WORTHWHILE_SHARE],
  ]);
  if (unusable !== undefined) return unusable;
  const isThere = now.best === target.best;
  if (!isThere && (target.best - now.best) * (source.best - target.best) <= 0) {
    const figures = { now: now.best, target: target.best, added: source.best };
    return noAnswer("target-not-between-waters", figures);
  }

  const { estimates, drivers } = propagate(
    {
      volume: cut(volume, VOLUME),
      "value now": cut(now, LEVEL),
      "value of the new water": cut(source, LEVEL),
      target: cut(target, LEVEL),
      "share changed each time": cut(fractionEach, WORTHWHILE_SHARE),
    },
    (v) => {
      const left = isThere
        ? 1
        : (v.target - v["value of the new water"]) / (v["value now"] - v["value of the new water"]);
      // At an end of a range the new water may be no better than the target: no amount is enough there.
      const oldWaterLeft = left > 0 ? Math.min(1, left) : Number.NaN;
      const each = v["share changed each time"];
      const exactTimes =
        each === 1 ? Math.sign(1 - oldWaterLeft) : Math.log(oldWaterLeft) / Math.log(1 - each);
      // Three changes exactly are three, whatever the last binary digit says.
      const times = Math.max(0, Math.ceil(exactTimes - 1e-9));
      const eachL = each * v.volume;
      return {
        singleFraction: as<Fraction>(1 - oldWaterLeft),
        singleL: as<Litres>((1 - oldWaterLeft) * v.volume),
        times: as<NumberOfChanges>(times),
        eachL: as<Litres>(eachL),
        stepsTotalL: as<Litres>(times * eachL),
        continuousL: as<Litres>(-Math.log(oldWaterLeft) * v.volume + 0),
      };
    },
  );
  const left = figure(1 - estimates.singleFraction.best);

  return {
    kind: "answer",
    value: keptPossible(estimates, [], ["singleFraction"]),
    method: "Dilution by volume, solved for the size or the number of changes.",
    working: [
      `old water that may be left = (target − new water) ÷ (now − new water) = (${figure(target.best)} − ${figure(source.best)}) ÷ (${figure(now.best)} − ${figure(source.best)}) = ${left}`,
      `one change = 1 − ${left} = ${figure(estimates.singleFraction.best)} of ${figure(volume.best)} L = ${figure(estimates.singleL.best)} L`,
      `changes of ${figure(fractionEach.best)} each = ln(${left}) ÷ ln(1 − ${figure(fractionEach.best)}), rounded up = ${figure(estimates.times.best)}`,
      `continuous = −ln(${left}) × ${figure(volume.best)} L = ${figure(estimates.continuousL.best)} L`,
    ],
    constants: [],
    sources: ["mass-balance", "jcgm-100-2008"],
    assumptions: [
      "the volume is the water in the system, without rock and sand",
      "the water mixes completely between changes",
      "nothing is produced or used up in the meantime",
    ],
    cautions: [
      caution("production-goes-on", {}, "note"),
      ...largeChangeCautions(estimates.singleFraction.best),
      caution("unplug-before-draining", {}, "danger"),
      caution("measure-again", {}, "note"),
    ],
    driver: drivers.singleL,
  };
}
