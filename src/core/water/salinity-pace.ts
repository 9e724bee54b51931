import { as, type PracticalSalinity } from "../quantity/units.ts";
import { type Caution, caution } from "../result.ts";

/** How far salinity may move in a day with animals in the water. Rising is harder on them than falling.
 *  Source: common-practice. */
export const USUAL_DAILY_RISE = as<PracticalSalinity>(1);
export const USUAL_DAILY_FALL = as<PracticalSalinity>(2);

/** A change spread over days. */
export interface Pace {
  readonly days: number;
  readonly stepPerDay: PracticalSalinity;
  readonly capPerDay: PracticalSalinity;
}

/** The fewest whole days over which a change stays within the daily cap, and the equal step of each. */
export function paceOf(change: number, dailyCap: PracticalSalinity | undefined): Pace {
  const capPerDay = dailyCap ?? (change >= 0 ? USUAL_DAILY_RISE : USUAL_DAILY_FALL);
  // A change of exactly three caps takes three days, whatever the last binary digit says.
  const days = Math.max(0, Math.ceil(Math.abs(change) / capPerDay - 1e-9));
  return { days, stepPerDay: as<PracticalSalinity>(days === 0 ? 0 : change / days), capPerDay };
}

/** The caution when a change is too much for one day. */
export function paceCautions(change: number, pace: Pace): readonly Caution[] {
  if (pace.days <= 1) return [];
  const { capPerDay, days, stepPerDay } = pace;
  return [
    caution("salinity-change-rate", {
      change: Math.abs(change),
      capPerDay,
      days,
      stepPerDay: Math.abs(stepPerDay),
    }),
  ];
}
