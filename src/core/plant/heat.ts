import {
  as,
  type DegreesC,
  type Hours,
  type Litres,
  type LitresPerHour,
  type SquareMetres,
  type Watts,
} from "../quantity/units.ts";
import type { KilowattHours, Millimetres, WattsPerKelvin } from "./plant-units.ts";

/** J per litre and kelvin of seawater: 1023.3 kg/m³ × 3999 J/(kg K). Source: gsw-heat-capacity. */
export const SEAWATER_J_PER_L_K = 1.0233 * 3999;
/** W/(m² K) between wall and water, and between wall and still room air. Source: assumption; iso-6946. */
export const INSIDE_FILM = 200;
export const OUTSIDE_FILM = 7.7;
/** W/(m K). Source: material-handbooks. */
export const CONDUCTIVITY = { acrylic: 0.19, glass: 1, plastic: 0.45 } as const;
export type WallMaterial = keyof typeof CONDUCTIVITY;
/** W of heat moved by one ton of refrigeration. Source: ashrae-ton. */
export const WATTS_PER_TON = 3516.8528;
const J_PER_KWH = 3.6e6;

/** Heat passing a wall per area and kelvin, W/(m² K). Source: iso-6946, films and wall in series.
 *  Throws: RangeError when a coefficient is not above 0. */
export function uValue(
  insideFilm: number,
  thickness: Millimetres,
  conductivity: number,
  outsideFilm: number,
): number {
  if (!(insideFilm > 0 && outsideFilm > 0 && conductivity > 0 && thickness >= 0)) {
    throw new RangeError("heat transfer coefficients have to be above 0");
  }
  return 1 / (1 / insideFilm + thickness / 1000 / conductivity + 1 / outsideFilm);
}

/** Heat lost through a wall; negative when the room is warmer. Source: first-principles. */
export function wallLoss(u: number, area: SquareMetres, water: DegreesC, room: DegreesC): Watts {
  return as<Watts>(u * area * (water - room));
}

/** Time in which a difference to the room shrinks to 37 %. Source: first-principles (lumped cooling). */
export function timeConstant(volume: Litres, ua: WattsPerKelvin): Hours {
  return as<Hours>((volume * SEAWATER_J_PER_L_K) / ua / 3600);
}

/** Water temperature after hours without heating. Source: first-principles (lumped cooling). */
export function driftingTemperature(
  volume: Litres,
  ua: WattsPerKelvin,
  start: DegreesC,
  room: DegreesC,
  hours: Hours,
): DegreesC {
  return as<DegreesC>(room + (start - room) * Math.exp(-hours / timeConstant(volume, ua)));
}

/** Heat needed to warm a volume. Source: gsw-heat-capacity. */
export function warmingEnergy(volume: Litres, deltaK: number): KilowattHours {
  return as<KilowattHours>((volume * SEAWATER_J_PER_L_K * deltaK) / J_PER_KWH);
}

/** Hours a chiller takes to bring the water down while heat keeps coming in.
 *  Source: first-principles. Throws: RangeError when the capacity does not exceed the gain. */
export function pulldownTime(volume: Litres, deltaK: number, capacity: Watts, gain: Watts): Hours {
  if (!(capacity > gain)) throw new RangeError("the chiller removes no more than comes in");
  return as<Hours>((volume * SEAWATER_J_PER_L_K * deltaK) / (capacity - gain) / 3600);
}

/** Temperature step across a device that gives or takes heat from a flow, K. Source: first-principles. */
export function temperatureStep(power: Watts, flow: LitresPerHour): number {
  return power / ((flow / 3600) * SEAWATER_J_PER_L_K);
}
