import {
  as,
  type DegreesC,
  type Litres,
  type LitresPerHour,
  type Metres,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { seawaterDensity } from "../water/density.ts";
import {
  type M2PerSecond,
  type MetresPerSecond,
  type Millimetres,
  m3PerSecond,
  STANDARD_GRAVITY,
} from "./plant-units.ts";

/** Hazen–Williams in metres and m³/s. Source: illinois-77-906, its C and its table of losses. */
const HAZEN = { factor: 10.67, flow: 1.852, bore: 4.8704 } as const;
/** Smooth plastic pipe. Source: illinois-77-906. */
export const HAZEN_C = 150;
/** Smooth plastic. Source: crane-tp-410. */
export const ROUGHNESS_MM = as<Millimetres>(0.0015);
/** Below this Reynolds number the flow is laminar; from `TURBULENT` on it is turbulent. Source: crane-tp-410. */
const LAMINAR = 2300;
const TURBULENT = 4000;

/**
 * Kinematic viscosity of seawater.
 * Source: sharqawy-2010, dynamic viscosity of pure water and its rise with salt; density from the water room.
 * Range: 0–180 °C, salinity 0–150 g/kg.
 */
export function seawaterViscosity(s: PracticalSalinity, t: DegreesC): M2PerSecond {
  const pure = 4.2844e-5 + 1 / (0.157 * (t + 64.993) ** 2 - 91.296);
  const salt = (s * 1.00472) / 1000;
  const a = 1.541 + 1.998e-2 * t - 9.52e-5 * t ** 2;
  const b = 7.974 - 7.561e-2 * t + 4.724e-4 * t ** 2;
  return as<M2PerSecond>((pure * (1 + a * salt + b * salt ** 2)) / seawaterDensity(s, t));
}

function boreAreaM2(boreMm: Millimetres): number {
  if (!(boreMm > 0)) throw new RangeError(`a pipe cannot have a bore of ${boreMm} mm`);
  return (Math.PI / 4) * (boreMm / 1000) ** 2;
}

/** Mean velocity in a full pipe. Source: first-principles. Throws: RangeError for a bore not above 0. */
export function pipeVelocity(flow: LitresPerHour, boreMm: Millimetres): MetresPerSecond {
  return as<MetresPerSecond>(m3PerSecond(flow) / boreAreaM2(boreMm));
}

/** Flow of a full pipe at a velocity; the inverse of `pipeVelocity`. */
export function flowAtVelocity(velocity: MetresPerSecond, boreMm: Millimetres): LitresPerHour {
  return as<LitresPerHour>(velocity * boreAreaM2(boreMm) * 3.6e6);
}

/** Water a full pipe holds. Source: elementary-geometry. Throws: RangeError for a bore not above 0. */
export function pipeVolume(length: Metres, boreMm: Millimetres): Litres {
  return as<Litres>(boreAreaM2(boreMm) * length * 1000);
}

export function reynolds(flow: LitresPerHour, boreMm: Millimetres, viscosity: M2PerSecond): number {
  return (pipeVelocity(flow, boreMm) * boreMm) / 1000 / viscosity;
}

/**
 * Darcy friction factor: 64/Re in laminar flow, Swamee–Jain in turbulent flow, and a straight line
 * in Re between the two, where neither holds, so that the loss never falls as the flow grows.
 * Source: swamee-jain-1976. Range: Re 5000–1e8, relative roughness 1e-6–0.05.
 */
export function frictionFactor(re: number, relativeRoughness: number): number {
  const turbulent = (at: number) => 0.25 / Math.log10(relativeRoughness / 3.7 + 5.74 / at ** 0.9) ** 2;
  if (re <= LAMINAR) return 64 / re;
  if (re >= TURBULENT) return turbulent(re);
  const share = (re - LAMINAR) / (TURBULENT - LAMINAR);
  return (1 - share) * (64 / LAMINAR) + share * turbulent(TURBULENT);
}

/** Head lost in a straight pipe by Hazen–Williams. Source: illinois-77-906. Range: turbulent water near 15 °C. */
export function hazenWilliamsLoss(
  length: Metres,
  flow: LitresPerHour,
  boreMm: Millimetres,
  c: number = HAZEN_C,
): Metres {
  if (!(boreMm > 0 && c > 0 && flow >= 0))
    throw new RangeError("a pipe needs a bore, a C and a flow of 0 or more");
  return as<Metres>(
    (HAZEN.factor * length * m3PerSecond(flow) ** HAZEN.flow) /
      (c ** HAZEN.flow * (boreMm / 1000) ** HAZEN.bore),
  );
}

/** Head lost in a pipe and its fittings by Darcy–Weisbach. Source: swamee-jain-1976 for the friction factor. */
export function darcyLoss(
  length: Metres,
  flow: LitresPerHour,
  boreMm: Millimetres,
  sumK: number,
  viscosity: M2PerSecond,
  roughnessMm: Millimetres = ROUGHNESS_MM,
): Metres {
  const velocity = pipeVelocity(flow, boreMm);
  if (velocity === 0) return as<Metres>(0);
  const f = frictionFactor(reynolds(flow, boreMm, viscosity), roughnessMm / boreMm);
  return as<Metres>(((f * length) / (boreMm / 1000) + sumK) * velocityHead(velocity));
}

/** v²/2g, m. */
export function velocityHead(velocity: MetresPerSecond): Metres {
  return as<Metres>(velocity ** 2 / (2 * STANDARD_GRAVITY));
}
