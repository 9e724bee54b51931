import type { MgNPerL } from "../nitrogen/nitrogen-units.ts";
import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Grams, type GramsPerDay, type Litres } from "../quantity/units.ts";

/** Nitrogen that a weekly fall of nitrate stands for in a whole system: per week and per day. Source: mass-balance. */
export function nitrogenToRemove(
  nitratePerWeek: Estimate<MgNPerL>,
  systemVolume: Estimate<Litres>,
): { readonly perWeek: Estimate<Grams>; readonly perDay: Estimate<GramsPerDay> } {
  return propagate({ "nitrate a week": nitratePerWeek, "net volume": systemVolume }, (v) => {
    const grams = (v["nitrate a week"] * v["net volume"]) / 1000;
    return { perWeek: as<Grams>(grams), perDay: as<GramsPerDay>(grams / 7) };
  }).estimates;
}
