import { as, type Litres, type Quantity, type Seconds } from "../quantity/units.ts";

export type MillilitresPerMinute = Quantity<"mL/min">;

/** Below this a dosing pump's start and stop weigh more than its flow. Source: assumption. */
export const SHORT_RUN_S = 2;

/**
 * How long a dosing pump runs for each dose: (daily volume / doses) / flow.
 * Source: definition. Throws: RangeError unless doses and flow are above zero.
 */
export function pumpSecondsPerDose(
  dailyVolumeL: Litres,
  dosesPerDay: number,
  flow: MillilitresPerMinute,
): Seconds {
  if (!(dosesPerDay > 0 && flow > 0)) throw new RangeError("doses and flow have to be above zero");
  return as<Seconds>(((dailyVolumeL * 1000) / dosesPerDay / flow) * 60);
}
