import { as, type Fraction, type Litres, type Quantity } from "../quantity/units.ts";
import { requirePositive, requireWithin } from "./domain.ts";

/** How much of something dissolved there is, in whatever unit the member measures it; anything that adds
 *  up by volume. pH and temperature do not. */
export type Level = Quantity<string>;

/** Share of the old water left after `times` changes of a share of it. Source: mass-balance, (1 − f)ⁿ.
 *  Throws: RangeError when the share is not within 0–1 or the number negative. */
export function leftAfterChanges(fraction: Fraction, times: number): Fraction {
  requireWithin("fraction", fraction, 0, 1);
  requireWithin("number of changes", times, 0);
  return as<Fraction>((1 - fraction) ** times);
}

/** Share of the old water left when new water runs in and mixed water runs out. Source: mass-balance,
 *  exp(−litres ÷ volume). Throws: RangeError when the volume is not above 0 or the litres negative. */
export function leftAfterFlow(exchanged: Litres, volume: Litres): Fraction {
  requirePositive("volume", volume);
  requireWithin("exchanged", exchanged, 0);
  return as<Fraction>(Math.exp(-exchanged / volume));
}

/** Level when a share of the old water is left and the rest is new. Source: mass-balance. */
export function levelWithLeft(now: Level, source: Level, left: Fraction): Level {
  return as<Level>(source + (now - source) * left);
}

/** A regular routine: the share changed each time, the level of the new water, and what the tank itself
 *  adds (or, below zero, uses up) from one change to the next. */
export interface Routine {
  readonly fraction: Fraction;
  readonly source: Level;
  readonly risePerInterval: Level;
}

/** Level just before each change once the routine has run long enough. Source: mass-balance, source + rise ÷ f.
 *  Throws: RangeError when the share is not above 0 and at most 1. */
export function steadyBefore({ fraction, source, risePerInterval }: Routine): Level {
  requirePositive("fraction", fraction);
  requireWithin("fraction", fraction, 0, 1);
  return as<Level>(source + risePerInterval / fraction);
}

/** Level just after each change once the routine has run long enough. Source: mass-balance.
 *  Throws: as `steadyBefore`. */
export function steadyAfter(routine: Routine): Level {
  return as<Level>(steadyBefore(routine) - routine.risePerInterval);
}

/** Level just before the n-th change, starting from `start` a full interval before the first.
 *  Source: mass-balance, steady + (1 − f)ⁿ⁻¹ × (start + rise − steady). Throws: as `steadyBefore`. */
export function levelBeforeChange(n: number, start: Level, routine: Routine): Level {
  const steady = steadyBefore(routine);
  const left = leftAfterChanges(routine.fraction, n - 1);
  return as<Level>(steady + left * (start + routine.risePerInterval - steady));
}
