import type { GramsPerDay, LitresPerHour, MgPerL, Quantity } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import { requirePositive } from "../water/domain.ts";

/** A flow as the balances of this room use it. */
export type CubicMetresPerDay = Quantity<"m³/d">;

export function cubicMetresPerDay(flow: LitresPerHour): CubicMetresPerDay {
  return as<CubicMetresPerDay>((flow * 24) / 1000);
}

/** Oxygen leaving a stirred chamber whose inhabitants use a fixed amount, never below zero. Source: mass-balance.
 *  Throws: RangeError when the flow is not above zero. */
export function oxygenOutFixedDemand(
  flow: CubicMetresPerDay,
  oxygenIn: MgPerL,
  demand: GramsPerDay,
  aeration: GramsPerDay,
): MgPerL {
  requirePositive("flow", flow);
  return as<MgPerL>(Math.max(0, oxygenIn - (demand - aeration) / flow));
}

/** Aeration of a stirred chamber: transfer capacity kLa·V, and the oxygen it strives for. */
export interface Aeration {
  readonly capacityM3PerDay: number;
  readonly saturation: MgPerL;
}

/**
 * Oxygen leaving a stirred chamber whose inhabitants slow down as oxygen runs out (Monod):
 * the positive root of a C² + b C + c = 0.
 * Source: mass-balance.
 *  Throws: RangeError when neither flow nor air brings oxygen.
 */
export function oxygenOutMonod(
  flow: CubicMetresPerDay,
  oxygenIn: MgPerL,
  demandMax: GramsPerDay,
  halfSaturation: MgPerL,
  aeration: Aeration,
): MgPerL {
  const a = flow + aeration.capacityM3PerDay;
  if (!(a > 0)) throw new RangeError("a chamber needs flow or aeration");
  const supply = flow * oxygenIn + aeration.capacityM3PerDay * aeration.saturation;
  const b = a * halfSaturation - supply + demandMax;
  const c = -supply * halfSaturation;
  const root = Math.sqrt(b * b - 4 * a * c);
  // The two forms are equal; each is taken where it does not subtract nearly equal numbers.
  return as<MgPerL>(b > 0 ? (-2 * c) / (b + root) : (-b + root) / (2 * a));
}

/** Flow at which what is used in a box pulls its oxygen down to the target. Source: mass-balance, OUR/(in − target).
 *  Throws: RangeError when the fall of oxygen is not above zero. */
export function flowForLowOxygen(demand: GramsPerDay, oxygenIn: MgPerL, target: MgPerL): LitresPerHour {
  requirePositive("fall of oxygen", oxygenIn - target);
  return as<LitresPerHour>((demand / (oxygenIn - target) / 24) * 1000);
}
