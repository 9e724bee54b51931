import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Litres } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import {
  type ChangeSize,
  checkedSize,
  FLOW_VOLUME,
  LEVEL,
  largeChangeCautions,
  notCountable,
  shareOf,
  sizeEstimate,
} from "./change-size.ts";
import { type Level, leftAfterChanges, leftAfterFlow, levelWithLeft } from "./dilution.ts";
import { figure } from "./figure.ts";
import { cut, firstNotCredible, keptPossible, VOLUME } from "./usable.ts";

export interface WaterChangeInput {
  readonly volume: Estimate<Litres>;
  readonly now: Estimate<Level>;
  /** In the new water. */
  readonly source: Estimate<Level>;
  readonly unit: string;
  readonly pattern: /** So much out, as much in, and so again. */
    | { readonly kind: "in steps"; readonly each: ChangeSize; readonly times: number }
    /** New water runs in while mixed water runs out. */
    | { readonly kind: "continuous"; readonly litres: Estimate<Litres> };
}

export interface WaterChangeEffect {
  readonly after: Estimate<Level>;
  /** Share of the original water still there at the end. */
  readonly oldWaterLeft: Estimate<Fraction>;
  /** Each time; all of it when continuous. */
  readonly eachL: Estimate<Litres>;
  readonly totalL: Estimate<Litres>;
  /** After each change, best figures; the last alone when continuous. */
  readonly course: readonly Level[];
}

/** What one or several water changes do to something dissolved. */
export function waterChange(input: WaterChangeInput): Answer<WaterChangeEffect> | NoAnswer {
  const { volume, now, source, pattern, unit } = input;
  const isStepped = pattern.kind === "in steps";
  const times = isStepped ? pattern.times : 1;
  const unusable =
    firstNotCredible([
      ["volume", volume, VOLUME],
      ["value now", now, { ...LEVEL, unit }],
      ["value of the new water", source, { ...LEVEL, unit }],
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
      "value now": cut(now, LEVEL),
      "value of the new water": cut(source, LEVEL),
      "water changed": cut(amount, FLOW_VOLUME),
    },
    (v) => {
      const changed = v["water changed"];
      const fraction = isStepped ? shareOf(pattern.each.kind, changed, v.volume) : undefined;
      const oldWaterLeft =
        fraction === undefined
          ? leftAfterFlow(as<Litres>(changed), v.volume)
          : leftAfterChanges(fraction, times);
      const eachL = as<Litres>(fraction === undefined ? changed : fraction * v.volume);
      return {
        after: levelWithLeft(v["value now"], v["value of the new water"], oldWaterLeft),
        oldWaterLeft,
        eachL,
        totalL: as<Litres>(eachL * times),
      };
    },
  );
  const share = estimates.eachL.best / volume.best;
  const left = figure(estimates.oldWaterLeft.best);

  return {
    kind: "answer",
    value: {
      ...keptPossible(estimates, [], ["oldWaterLeft"]),
      course: isStepped ? courseOf(now.best, source.best, share, times) : [estimates.after.best],
    },
    method: isStepped
      ? "Dilution by volume: each change leaves the same share of the old water."
      : "Dilution by volume: new water mixes at once, and mixed water leaves.",
    working: [
      isStepped
        ? `share changed each time = ${figure(estimates.eachL.best)} L ÷ ${figure(volume.best)} L = ${figure(share)}`
        : `water exchanged ÷ volume = ${figure(estimates.totalL.best)} L ÷ ${figure(volume.best)} L = ${figure(share)}`,
      isStepped
        ? `old water left = (1 − ${figure(share)}) to the power ${times} = ${left}`
        : `old water left = e to the power −${figure(share)} = ${left}`,
      `value after = new water + (now − new water) × old water left = ${figure(source.best)} + (${figure(now.best)} − ${figure(source.best)}) × ${left} = ${figure(estimates.after.best)} ${unit}`,
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
      ...(isStepped ? largeChangeCautions(share) : []),
      ...(isStepped
        ? [caution("unplug-before-draining", {}, "danger")]
        : [caution("unattended-filling", {})]),
      caution("measure-again", {}, "note"),
    ],
    driver: drivers.after,
  };
}

function courseOf(now: Level, source: Level, share: number, times: number): readonly Level[] {
  const fraction = as<Fraction>(Math.min(1, share));
  return Array.from({ length: times }, (_, index) =>
    levelWithLeft(now, source, leftAfterChanges(fraction, index + 1)),
  );
}
