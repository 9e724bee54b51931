import type { Estimate } from "../quantity/estimate.ts";
import { type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";

/** Figures that water, a vessel or a clock can have. Outside them the member is asked to look again. */
export interface Limits {
  readonly unit: string;
  readonly min: number;
  readonly max: number;
}

/** Past 100 gypsum falls out of concentrated seawater, and the density is an extrapolation long before.
 *  Source: assumption. */
export const SALINITY: Limits = { unit: "ppt", min: 0, max: 100 };
/** From where seawater freezes to where nothing lives. Source: assumption. */
export const TEMPERATURE: Limits = { unit: "°C", min: -2, max: 50 };
/** From a millilitre to a lake. Source: assumption. */
export const VOLUME: Limits = { unit: "L", min: 0.001, max: 1e7 };
/** The same where nothing at all is a sensible figure. Source: assumption. */
export const VOLUME_OR_NONE: Limits = { unit: "L", min: 0, max: 1e7 };

/** One input to look at: its name as a member knows it, its value, its limits. */
export type Checked = readonly [name: string, value: Estimate, limits: Limits];

/** The refusal for the first input that is no number or not credible; nothing when all are fine. */
export function firstNotCredible(inputs: readonly Checked[]): NoAnswer | undefined {
  for (const [quantity, value, { unit, min, max }] of inputs) {
    const isCredible =
      [value.best, value.low, value.high].every(Number.isFinite) && value.best >= min && value.best <= max;
    if (!isCredible) return noAnswer("not-credible", { quantity, value: value.best, unit, min, max });
  }
  return undefined;
}

/** The range cut to what is credible: 0.5 ppt give or take 1 starts at 0. */
export function cut<Q extends number>(estimate: Estimate<Q>, limits: Limits): Estimate<Q> {
  return {
    best: estimate.best,
    low: Math.max(estimate.low, limits.min) as Q,
    high: Math.min(estimate.high, limits.max) as Q,
  };
}

/** Ranges of several inputs add up as squares, and the sum can reach past what is possible: less water
 *  than none, more than all of it. Cuts every range at nothing, but for the `signed` figures, and the
 *  `shares` at one. */
export function keptPossible<T extends { readonly [K in keyof T]: Estimate }>(
  estimates: T,
  signed: readonly (keyof T)[] = [],
  shares: readonly (keyof T)[] = [],
): T {
  const kept = Object.entries<Estimate>(estimates).map(([key, { best, low, high }]) => {
    const name = key as keyof T;
    const lowest = signed.includes(name) ? low : Math.max(0, low);
    return [key, { best, low: lowest, high: shares.includes(name) ? Math.min(1, high) : high }];
  });
  return Object.fromEntries(kept) as T;
}

/** A caution when any part of the range lies outside where the formula was fitted. */
export function fittedRange(
  quantity: string,
  value: Estimate,
  unit: string,
  fitted: { readonly min: number; readonly max: number },
): readonly Caution[] {
  const worst = value.high > fitted.max ? value.high : value.low;
  if (worst >= fitted.min && worst <= fitted.max) return [];
  return [caution("outside-fitted-range", { quantity, value: worst, unit, ...fitted })];
}
