/** Level after `days` of steady production p with first-order uptake k, no change of water between.
 *  Physical meaning: dC/dt = p − kC. mg/L, mg/L/day, per day.
 *  Source: mass-balance. */
export function grow(levelMgPerL: number, perDay: number, uptakePerDay: number, days: number): number {
  return levelMgPerL * Math.exp(-uptakePerDay * days) + perDay * gainDays(uptakePerDay, days);
}

/** Days' worth of production still in the water after `days`, when uptake takes some of it out again. */
export function gainDays(uptakePerDay: number, days: number): number {
  const spent = uptakePerDay * days;
  return spent < 1e-8 ? days : -Math.expm1(-spent) / uptakePerDay;
}

/** Level after a share of the water is replaced by new water of its own level.
 *  Source: mass-balance. */
export function waterChange(levelMgPerL: number, fraction: number, newWaterMgPerL: number): number {
  return (1 - fraction) * levelMgPerL + fraction * newWaterMgPerL;
}

/** What happens between readings, for the straight recursion. */
export type BalanceStep =
  | { readonly kind: "grow"; readonly days: number }
  | { readonly kind: "change"; readonly fraction: number; readonly newWaterMgPerL: number };

/** The level as start·(level at the start) + perDay·(production) + offset: for a given uptake the whole
 *  path is straight in both unknowns. */
export interface StraightPath {
  readonly start: number;
  readonly perDay: number;
  readonly offset: number;
}

export const PATH_START: StraightPath = { start: 1, perDay: 0, offset: 0 };

/** Carries the path through one step. Source: mass-balance. */
export function alongPath(path: StraightPath, step: BalanceStep, uptakePerDay: number): StraightPath {
  if (step.kind === "grow") {
    const kept = Math.exp(-uptakePerDay * step.days);
    return {
      start: path.start * kept,
      perDay: path.perDay * kept + gainDays(uptakePerDay, step.days),
      offset: path.offset * kept,
    };
  }
  const kept = 1 - step.fraction;
  return {
    start: path.start * kept,
    perDay: path.perDay * kept,
    offset: path.offset * kept + step.fraction * step.newWaterMgPerL,
  };
}

/** A steady plan: every `everyDays` days the same share of water is replaced. */
export interface ChangePlan {
  readonly everyDays: number;
  readonly fraction: number;
  readonly newWaterMgPerL: number;
}

/** Level just before a change once the saw-tooth repeats itself.
 *  Source: mass-balance. Range: fraction or uptake above zero. */
export function settledPeak(perDay: number, uptakePerDay: number, plan: ChangePlan): number {
  const kept = Math.exp(-uptakePerDay * plan.everyDays);
  const made = perDay * gainDays(uptakePerDay, plan.everyDays);
  return (made + kept * plan.fraction * plan.newWaterMgPerL) / (1 - (1 - plan.fraction) * kept);
}

/** Level just after a change once the saw-tooth repeats itself. Source: mass-balance. */
export function settledTrough(perDay: number, uptakePerDay: number, plan: ChangePlan): number {
  return waterChange(settledPeak(perDay, uptakePerDay, plan), plan.fraction, plan.newWaterMgPerL);
}

/** Smallest share to replace every `everyDays` so that the peak settles no higher than the limit.
 *  Undefined when no share does it: the new water is at the limit, or one interval makes more than that.
 *  Source: mass-balance, the settled peak turned round. */
export function smallestFraction(
  perDay: number,
  uptakePerDay: number,
  everyDays: number,
  newWaterMgPerL: number,
  limitMgPerL: number,
): number | undefined {
  const kept = Math.exp(-uptakePerDay * everyDays);
  const made = perDay * gainDays(uptakePerDay, everyDays);
  const needed = made - limitMgPerL * (1 - kept);
  if (needed <= 0) return 0;
  if (limitMgPerL <= newWaterMgPerL) return undefined;
  const fraction = needed / (kept * (limitMgPerL - newWaterMgPerL));
  return fraction > 1 ? undefined : fraction;
}

/** Longest time between changes of one size so that the peak settles no higher than the limit.
 *  Infinity when uptake alone keeps it there; undefined when no interval does.
 *  Source: mass-balance, the settled peak turned round. */
export function longestInterval(
  perDay: number,
  uptakePerDay: number,
  fraction: number,
  newWaterMgPerL: number,
  limitMgPerL: number,
): number | undefined {
  if (perDay <= uptakePerDay * limitMgPerL) return Number.POSITIVE_INFINITY;
  const afterChange = waterChange(limitMgPerL, fraction, newWaterMgPerL);
  if (afterChange >= limitMgPerL) return undefined;
  return daysToLimit(afterChange, perDay, uptakePerDay, limitMgPerL);
}

/** Days until the level reaches the limit with no change of water; Infinity for never.
 *  Source: mass-balance. */
export function daysToLimit(
  levelMgPerL: number,
  perDay: number,
  uptakePerDay: number,
  limitMgPerL: number,
): number {
  if (levelMgPerL >= limitMgPerL) return 0;
  if (perDay <= uptakePerDay * limitMgPerL) return Number.POSITIVE_INFINITY;
  const rise = limitMgPerL - levelMgPerL;
  if (uptakePerDay * rise < 1e-9 * perDay) return rise / (perDay - uptakePerDay * levelMgPerL);
  return Math.log1p((uptakePerDay * rise) / (perDay - uptakePerDay * limitMgPerL)) / uptakePerDay;
}

/** Equal changes one after the other to bring a level down to a target, production left out.
 *  Undefined when the new water is not below the target. Source: mass-balance. */
export function changesToReach(
  levelMgPerL: number,
  targetMgPerL: number,
  fraction: number,
  newWaterMgPerL: number,
): number | undefined {
  if (levelMgPerL <= targetMgPerL) return 0;
  if (targetMgPerL <= newWaterMgPerL || fraction <= 0) return undefined;
  if (fraction >= 1) return 1;
  const ratio = (targetMgPerL - newWaterMgPerL) / (levelMgPerL - newWaterMgPerL);
  return Math.ceil(Math.log(ratio) / Math.log1p(-fraction) - 1e-9);
}
