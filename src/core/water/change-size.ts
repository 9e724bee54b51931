import type { Estimate } from "../quantity/estimate.ts";
import { as, type Fraction, type Litres } from "../quantity/units.ts";
import { type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { type Checked, type Limits, VOLUME_OR_NONE } from "./usable.ts";

/** How much is changed each time. */
export type ChangeSize =
  | { readonly kind: "fraction"; readonly fraction: Estimate<Fraction> }
  | { readonly kind: "litres"; readonly litres: Estimate<Litres> };

/** More than this at once is much for animals. Source: common-practice. */
export const LARGE_CHANGE = 0.5;

export const SHARE: Limits = { unit: "of the water", min: 0, max: 1 };
/** What runs through a tank in a long continuous change. Source: assumption. */
export const FLOW_VOLUME: Limits = { unit: "L", min: 0, max: 1e8 };
/** A level in any unit. Source: assumption, wide enough for all of them. */
export const LEVEL: Limits = { unit: "", min: 0, max: 1e6 };

/** The size as an input to look at. */
export function checkedSize(size: ChangeSize): Checked {
  return size.kind === "fraction"
    ? ["share changed", size.fraction, SHARE]
    : ["water changed", size.litres, VOLUME_OR_NONE];
}

/** As many changes as anybody makes. Source: assumption. */
const TIMES = { unit: "whole changes", min: 1, max: 1000 };

/** The refusal for a number of changes that is no whole number, or not credible. */
export function notCountable(times: number): NoAnswer | undefined {
  const isCountable = Number.isInteger(times) && times >= TIMES.min && times <= TIMES.max;
  return isCountable ? undefined : noAnswer("not-credible", { quantity: "number", value: times, ...TIMES });
}

/** A size as the sum takes it: a share, or litres. */
export function sizeEstimate(size: ChangeSize): Estimate {
  return size.kind === "fraction" ? size.fraction : size.litres;
}

/** Share of the volume that a size is; a range that reaches past all of the water counts as all. */
export function shareOf(kind: ChangeSize["kind"], amount: number, volume: Litres): Fraction {
  return as<Fraction>(Math.min(1, Math.max(0, kind === "fraction" ? amount : amount / volume)));
}

/** What to mind when a large share of the water is changed at once. */
export function largeChangeCautions(fraction: number): readonly Caution[] {
  return fraction > LARGE_CHANGE ? [caution("large-change", { percent: 100 * fraction })] : [];
}
