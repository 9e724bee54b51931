import type { Days, Fraction, Litres, LitresPerDay } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import { requirePositive } from "../water/domain.ts";
import type { GramsNPerDay, MgNPerL } from "./nitrogen-units.ts";

/** Nitrate nitrogen gained between two changes, mg N/L. Source: mass-balance.
 *  Throws: RangeError when the volume is not above zero. */
export function nitrateRise(production: GramsNPerDay, days: Days, volumeL: Litres): MgNPerL {
  requirePositive("volume", volumeL);
  return as<MgNPerL>((production * 1000 * days) / volumeL);
}

/** Where nitrate settles under regular changes, just before and just after each. Source: mass-balance, geometric series.
 *  Throws: RangeError when the share changed is not above zero. */
export function steadyNitrate(
  rise: MgNPerL,
  changed: Fraction,
  source: MgNPerL,
): { before: MgNPerL; after: MgNPerL } {
  requirePositive("share changed", changed);
  const before = source + rise / changed;
  return { before: as<MgNPerL>(before), after: as<MgNPerL>(before - rise) };
}

/** Nitrate just before the n-th change (1 = the first). Source: mass-balance, recurrence.
 *  Throws: RangeError when the share changed is not above zero. */
export function nitrateBeforeChange(
  n: number,
  start: MgNPerL,
  rise: MgNPerL,
  changed: Fraction,
  source: MgNPerL,
): MgNPerL {
  requirePositive("share changed", changed);
  const settled = source + rise / changed;
  return as<MgNPerL>(settled + (1 - changed) ** (n - 1) * (start + rise - settled));
}

/** Where nitrate settles under a steady trickle of new water. Source: mass-balance, c + P/q.
 *  Throws: RangeError when the exchange is not above zero. */
export function nitrateWithExchange(
  production: GramsNPerDay,
  exchange: LitresPerDay,
  source: MgNPerL,
): MgNPerL {
  requirePositive("exchange", exchange);
  return as<MgNPerL>(source + (production * 1000) / exchange);
}
