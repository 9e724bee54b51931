import { as, type DegreesC, type Kilograms, type Litres, type PracticalSalinity } from "../quantity/units.ts";
import { requirePositive, requireWithin } from "./domain.ts";
import { massOfFreshWater, massOfSeawater, volumeOfFreshWater, volumeOfSeawater } from "./mass.ts";
import { absoluteSalinity } from "./salinity-scales.ts";
import type { YieldFactor } from "./salt-product.ts";

/** What a batch of new salt water takes. */
export interface Batch {
  /** Mass of the product as bought, its water of crystallisation and moisture included. */
  readonly saltKg: Kilograms;
  readonly waterL: Litres;
  readonly finalVolumeL: Litres;
}

function requireYield(yieldFactor: number): void {
  requirePositive("yield factor", yieldFactor);
  requireWithin("yield factor", yieldFactor, 0, 1);
}

/**
 * Product and fresh water for a final volume of seawater. The product's own water counts as water, so
 * product and water together weigh what the batch weighs.
 * Source: mass-balance: product = batch mass × absolute salinity ÷ (1000 × yield); water = the rest.
 * Throws: RangeError when the yield is not above 0 and at most 1, or the product alone outweighs the batch.
 */
export function batchForFinalVolume(
  finalVolume: Litres,
  s: PracticalSalinity,
  t: DegreesC,
  yieldFactor: YieldFactor,
): Batch {
  requireYield(yieldFactor);
  const batchKg = massOfSeawater(finalVolume, s, t);
  const saltKg = as<Kilograms>((batchKg * absoluteSalinity(s)) / (1000 * yieldFactor));
  const waterL = volumeOfFreshWater(as<Kilograms>(batchKg - saltKg), t);
  return { saltKg, waterL, finalVolumeL: finalVolume };
}

/**
 * Product to stir into a volume of fresh water, and the volume it becomes.
 * Source: mass-balance: product = water mass × absolute salinity ÷ (1000 × yield − absolute salinity).
 * Throws: RangeError when the yield is not above 0 and at most 1, or no amount of product gets there.
 */
export function batchForWaterVolume(
  water: Litres,
  s: PracticalSalinity,
  t: DegreesC,
  yieldFactor: YieldFactor,
): Batch {
  const waterKg = massOfFreshWater(water, t);
  const saltKg = drySaltToRaise(waterKg, as<PracticalSalinity>(0), s, yieldFactor);
  const finalVolumeL = volumeOfSeawater(as<Kilograms>(waterKg + saltKg), s, t);
  return { saltKg, waterL: water, finalVolumeL };
}

/**
 * Product that brings a mass of water from one salinity to a higher one, nothing removed.
 * Source: mass-balance: mass × (target − now) ÷ (1000 × yield − target), absolute salinities.
 * Throws: RangeError when the target is below the present salinity, the yield is not above 0 and at
 * most 1, or the product is weaker than the target.
 */
export function drySaltToRaise(
  mass: Kilograms,
  now: PracticalSalinity,
  target: PracticalSalinity,
  yieldFactor: YieldFactor,
): Kilograms {
  requireWithin("mass", mass, 0);
  requireYield(yieldFactor);
  requireWithin("target salinity", target, now);
  const rise = absoluteSalinity(target) - absoluteSalinity(now);
  const strength = 1000 * yieldFactor - absoluteSalinity(target);
  requirePositive("yield above the target", strength);
  return as<Kilograms>((mass * rise) / strength);
}

/** A mixing vessel that is already partly filled. */
export interface PartFilled {
  readonly volumeL: Litres;
  readonly salinity: PracticalSalinity;
}

/** What to put into a partly filled vessel. A negative figure means that it cannot be reached by
 *  adding: the vessel already holds too much salt, or too much water. */
export interface Addition {
  readonly saltKg: Kilograms;
  readonly waterKg: Kilograms;
}

/**
 * What a partly filled vessel still needs to hold a final volume at a salinity.
 * Source: mass-balance, of salt and of everything.
 * Throws: RangeError when the yield is not above 0 and at most 1, or an input is negative.
 */
export function additionToFinalVolume(
  held: PartFilled,
  finalVolume: Litres,
  s: PracticalSalinity,
  t: DegreesC,
  yieldFactor: YieldFactor,
): Addition {
  requireYield(yieldFactor);
  const heldKg = massOfSeawater(held.volumeL, held.salinity, t);
  const finalKg = massOfSeawater(finalVolume, s, t);
  const missingSaltG = finalKg * absoluteSalinity(s) - heldKg * absoluteSalinity(held.salinity);
  const saltKg = missingSaltG / (1000 * yieldFactor);
  return { saltKg: as<Kilograms>(saltKg), waterKg: as<Kilograms>(finalKg - heldKg - saltKg) };
}

/**
 * What a partly filled vessel needs when a given volume of fresh water goes into it as well.
 * Source: mass-balance, of salt.
 * Throws: RangeError when the yield is not above 0 and at most 1, an input is negative, or the product
 * is weaker than the salinity wanted.
 */
export function additionToWater(
  held: PartFilled,
  water: Litres,
  s: PracticalSalinity,
  t: DegreesC,
  yieldFactor: YieldFactor,
): Addition {
  requireYield(yieldFactor);
  const strength = 1000 * yieldFactor - absoluteSalinity(s);
  requirePositive("yield above the salinity wanted", strength);
  const heldKg = massOfSeawater(held.volumeL, held.salinity, t);
  const waterKg = massOfFreshWater(water, t);
  const missingSaltG = (heldKg + waterKg) * absoluteSalinity(s) - heldKg * absoluteSalinity(held.salinity);
  return { saltKg: as<Kilograms>(missingSaltG / strength), waterKg };
}

/**
 * Yield factor shown by a trial: product stirred into a known volume of fresh water, salinity measured.
 * Above 1 is impossible, and left to the caller to explain.
 * Source: mass-balance: absolute salinity × (water + product) ÷ (1000 × product).
 * Throws: RangeError when there is no product, or an input is negative.
 */
export function yieldFromWaterTrial(
  water: Litres,
  salt: Kilograms,
  s: PracticalSalinity,
  t: DegreesC,
): YieldFactor {
  requirePositive("salt", salt);
  const batchKg = massOfFreshWater(water, t) + salt;
  return as<YieldFactor>((absoluteSalinity(s) * batchKg) / (1000 * salt));
}

/** The same when the final volume was measured instead of the water put in.
 *  Source: mass-balance: absolute salinity × batch mass ÷ (1000 × product). Throws: as `yieldFromWaterTrial`. */
export function yieldFromFinalTrial(
  finalVolume: Litres,
  salt: Kilograms,
  s: PracticalSalinity,
  t: DegreesC,
): YieldFactor {
  requirePositive("salt", salt);
  return as<YieldFactor>((absoluteSalinity(s) * massOfSeawater(finalVolume, s, t)) / (1000 * salt));
}
