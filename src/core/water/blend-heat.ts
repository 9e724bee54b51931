import {
  as,
  type DegreesC,
  type Kilograms,
  type PracticalSalinity,
  type Quantity,
} from "../quantity/units.ts";
import { requirePositive, requireWithin } from "./domain.ts";

export type KiloJoulesPerKgK = Quantity<"kJ/(kg K)">;

/** Near 25 °C. Source: fresh-water-heat (from memory). */
export const FRESH_HEAT_CAPACITY = as<KiloJoulesPerKgK>(4.18);
/** Seawater of salinity 35 at 25 °C. Source: gsw-3-6-16. */
export const SEAWATER_HEAT_CAPACITY = as<KiloJoulesPerKgK>(3.999);

/**
 * Heat that a kilogram of seawater takes up per degree; a straight line through fresh water and
 * salinity 35. Its change with temperature (under 1 % from 0 to 40 °C) is left out.
 * Source: gsw-3-6-16 at 35, fresh-water-heat at 0. Range: 0–42.
 * Throws: RangeError when salinity is not within 0–100.
 */
export function seawaterHeatCapacity(s: PracticalSalinity): KiloJoulesPerKgK {
  requireWithin("salinity", s, 0, 100);
  return as<KiloJoulesPerKgK>(
    FRESH_HEAT_CAPACITY + ((SEAWATER_HEAT_CAPACITY - FRESH_HEAT_CAPACITY) * s) / 35,
  );
}

/** A mass of water with its salinity and temperature. */
export interface Parcel {
  readonly massKg: Kilograms;
  readonly salinity: PracticalSalinity;
  readonly temperatureC: DegreesC;
}

/**
 * Temperature of two waters poured together, no heat lost; the small heat of mixing is left out.
 * Source: conservation of energy: mean temperature, each water counted by mass × heat capacity.
 * Throws: RangeError when there is no water.
 */
export function temperatureOfBlend(first: Parcel, second: Parcel): DegreesC {
  const firstHeat = first.massKg * seawaterHeatCapacity(first.salinity);
  const secondHeat = second.massKg * seawaterHeatCapacity(second.salinity);
  requirePositive("water", firstHeat + secondHeat);
  return as<DegreesC>(
    (firstHeat * first.temperatureC + secondHeat * second.temperatureC) / (firstHeat + secondHeat),
  );
}
