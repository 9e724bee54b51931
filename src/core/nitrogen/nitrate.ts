import type { Days, Fraction, Litres, LitresPerDay } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import type { GramsNPerDay, MgNPerL } from "./nitrogen-units.ts";

/** Nitrate nitrogen gained between two changes, mg N/L. Source: mass-balance. */
export function nitrateRise(production: GramsNPerDay, days: Days, volumeL: Litres): MgNPerL {
  return as<MgNPerL>((production * 1000 * days) / volumeL);
}

/** Where nitrate settles under regular changes, just before and just after each. Source: mass-balance, geometric series. */
export function steadyNitrate(
  rise: MgNPerL,
  changed: Fraction,
  source: MgNPerL,
): { before: MgNPerL; after: MgNPerL } {
  const before = source + rise / changed;
  return { before: as<MgNPerL>(before), after: as<MgNPerL>(before - rise) };
}

/** Nitrate just before the n-th change (1 = the first). Source: mass-balance, recurrence. */
export function nitrateBeforeChange(
  n: number,
  start: MgNPerL,
  rise: MgNPerL,
  changed: Fraction,
  source: MgNPerL,
): MgNPerL {
  const settled = source + rise / changed;
  return as<MgNPerL>(settled + (1 - changed) ** (n - 1) * (start + rise - settled));
}

/** Where nitrate settles under a steady trickle of new water. Source: mass-balance, c + P/q. */
export function nitrateWithExchange(
  production: GramsNPerDay,
  exchange: LitresPerDay,
  source: MgNPerL,
): MgNPerL {
  return as<MgNPerL>(source + (production * 1000) / exchange);
}
