import {
  as,
  type DegreesC,
  type Hours,
  type Litres,
  type MgPerL,
  type SquareMetres,
} from "../quantity/units.ts";
import { polynomial } from "../water/polynomial.ts";
import type { CentimetresPerHour, MilligramsPerHour } from "./plant-units.ts";

/** Schmidt number of oxygen in seawater, powers of °C. Source: wanninkhof-2014. Range: −2 to 40 °C. */
const SCHMIDT = [1920.4, -135.6, 5.2122, -0.10939, 0.00093777];
const SCHMIDT_OF_K600 = 600;
/** A lake's surface, cm/h at Schmidt 600: 0.168 in dead air, 1.0 constant in light winds. Source: crusius-wanninkhof-2003. */
export const STILL_K600 = { deadAir: 0.168, lightAir: 1 } as const;
/** mg of oxygen in a litre of air at 25 °C. Source: aeration-practice (density 1.18 g/L, 23.1 % oxygen by mass). */
const OXYGEN_PER_L_AIR = 273;
/** mg/L in fresh water at 20 °C. Source: benson-krause-1984. */
const TEST_SATURATION = 9.09;

/** Gas transfer velocity of oxygen at a temperature, from that at Schmidt number 600. Source: wanninkhof-2014. */
export function transferVelocity(k600: CentimetresPerHour, t: DegreesC): CentimetresPerHour {
  return as<CentimetresPerHour>(k600 * (polynomial(SCHMIDT, t) / SCHMIDT_OF_K600) ** -0.5);
}

/** Litres of water per hour brought to saturation by a surface: 1 cm/h over 1 m² is 10 L/h. Source: definition. */
export function surfaceExchange(k: CentimetresPerHour, area: SquareMetres): number {
  return k * area * 10;
}

/**
 * The same for bubbles, which give up a share of their oxygen to water that holds none. Such shares are
 * measured in fresh water at 20 °C, so its saturation turns them into an exchange.
 * Source: aeration-practice.
 */
export function bubbleExchange(airLPerMin: number, givenUp: number): number {
  return (airLPerMin * 60 * OXYGEN_PER_L_AIR * givenUp) / TEST_SATURATION;
}

/**
 * Hours until oxygen has fallen from `start` to `limit`, Infinity when supply holds it above:
 * V·dC/dt = exchange·(Cs − C) − demand, in one well-mixed volume. 0 when it is there already.
 * Source: first-principles, solved exactly.
 * Throws: RangeError when volume or saturation is not above 0, or exchange or demand below 0.
 */
export function hoursUntilOxygen(
  volume: Litres,
  start: MgPerL,
  limit: MgPerL,
  demand: MilligramsPerHour,
  exchangeLPerH: number,
  saturation: MgPerL,
): Hours {
  if (!(volume > 0 && saturation > 0 && demand >= 0 && exchangeLPerH >= 0)) {
    throw new RangeError("volume and saturation must be above 0, demand and exchange not below");
  }
  if (start <= limit) return as<Hours>(0);
  if (exchangeLPerH * (saturation - limit) >= demand) return as<Hours>(Number.POSITIVE_INFINITY);
  // Falling at this rate at first, mg/h; above nothing, since supply does not hold even the limit.
  const net = demand - exchangeLPerH * (saturation - start);
  const bend = (-exchangeLPerH * (start - limit)) / net;
  const slowing = bend === 0 ? 1 : Math.log1p(bend) / bend;
  return as<Hours>(((volume * (start - limit)) / net) * slowing);
}
