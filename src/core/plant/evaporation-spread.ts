import { between } from "../quantity/estimate.ts";
import type { DegreesC, Fraction, PracticalSalinity, SquareMetres } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import { ACTIVITY, ashraeEvaporation, shahEvaporation, smithEvaporation } from "./evaporation.ts";
import type { KilogramsPerDay } from "./plant-units.ts";

/** Where between the formulas the truth lies: −1 the lowest, 0 the middle one, 1 the highest. */
export const EVAPORATION_FORMULA = between(-1, 1, 0);

export interface EvaporationConditions {
  readonly areaM2: SquareMetres;
  readonly waterC: DegreesC;
  readonly roomC: DegreesC;
  readonly humidity: Fraction;
  readonly salinity: PracticalSalinity;
  /** Jets, falls, fans or bubbles at the surface. */
  readonly isDisturbed: boolean;
}

/**
 * Evaporation at a place between three published formulas for a still surface, or, for a disturbed
 * one, between the largest of those and the pool formula at full activity.
 * Source: shah-2014, ashrae-hvac-applications, smith-lof-jones-1998.
 */
export function evaporationAt(formula: number, at: EvaporationConditions): KilogramsPerDay {
  const { areaM2, waterC, roomC, humidity, salinity } = at;
  const pool = ashraeEvaporation(areaM2, waterC, roomC, humidity, ACTIVITY.still, salinity);
  const buoyancy = shahEvaporation(areaM2, waterC, roomC, humidity, salinity);
  const measured = smithEvaporation(areaM2, waterC, roomC, humidity, salinity);
  const least = Math.min(pool, buoyancy, measured);
  const most = Math.max(pool, buoyancy, measured);
  const inBetween = pool + buoyancy + measured - least - most;
  const busiest = Math.max(
    most,
    ashraeEvaporation(areaM2, waterC, roomC, humidity, ACTIVITY.disturbed, salinity),
  );
  const [low, middle, high] = at.isDisturbed
    ? [inBetween, (inBetween + busiest) / 2, busiest]
    : [least, inBetween, most];
  const place = formula < 0 ? middle + formula * (middle - low) : middle + formula * (high - middle);
  return as<KilogramsPerDay>(place);
}
