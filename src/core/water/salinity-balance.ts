import { as, type DegreesC, type Litres, type PracticalSalinity } from "../quantity/units.ts";
import { pureWaterDensity, seawaterDensity } from "./density.ts";
import { requirePositive, requireWithin } from "./domain.ts";
import { massOfFreshWater, massOfSeawater } from "./mass.ts";

/**
 * Salinity after `changed` litres of tank water are taken out and as many litres of other water put
 * in, both at the tank's temperature.
 * Source: mass-balance: the mean of both salinities, each counted by the mass of its water.
 * Throws: RangeError when more is changed than there is, or an input is negative.
 */
export function salinityAfterSwap(
  volume: Litres,
  changed: Litres,
  tank: PracticalSalinity,
  added: PracticalSalinity,
  t: DegreesC,
): PracticalSalinity {
  requireWithin("changed volume", changed, 0, volume);
  return salinityOfBlend(as<Litres>(volume - changed), tank, changed, added, t);
}

/**
 * Litres to exchange so that the tank reaches the target.
 * Source: mass-balance, solved for the volume exchanged.
 * Throws: RangeError when the target does not lie between the two waters, or an input is negative.
 */
export function swapVolumeForTarget(
  volume: Litres,
  tank: PracticalSalinity,
  added: PracticalSalinity,
  target: PracticalSalinity,
  t: DegreesC,
): Litres {
  requirePositive("volume", volume);
  requireWithin("target salinity", target, Math.min(tank, added), Math.max(tank, added));
  const out = seawaterDensity(tank, t) * (tank - target);
  const into = seawaterDensity(added, t) * (target - added);
  return as<Litres>(out === 0 ? 0 : (volume * out) / (out + into));
}

/**
 * Salinity of two waters poured together, both at t.
 * Source: mass-balance: the mean of both salinities, each counted by the mass of its water.
 * Throws: RangeError when there is no water, or an input is negative.
 */
export function salinityOfBlend(
  firstVolume: Litres,
  first: PracticalSalinity,
  secondVolume: Litres,
  second: PracticalSalinity,
  t: DegreesC,
): PracticalSalinity {
  const firstKg = massOfSeawater(firstVolume, first, t);
  const secondKg = massOfSeawater(secondVolume, second, t);
  requirePositive("water", firstKg + secondKg);
  return as<PracticalSalinity>((firstKg * first + secondKg * second) / (firstKg + secondKg));
}

/**
 * Salinity after `evaporated` litres of pure water have left the tank; the salt stays.
 * Source: mass-balance: salinity × mass before ÷ mass after.
 * Throws: RangeError when as much water evaporates as the tank holds, or an input is negative.
 */
export function salinityAfterEvaporation(
  volume: Litres,
  s: PracticalSalinity,
  evaporated: Litres,
  t: DegreesC,
): PracticalSalinity {
  const before = massOfSeawater(volume, s, t);
  const after = before - massOfFreshWater(evaporated, t);
  requirePositive("water left", after);
  return as<PracticalSalinity>((s * before) / after);
}

/**
 * Litres of fresh water that bring the tank down to the target, nothing removed; equally, the litres
 * that have evaporated when a salinity has risen from the target to now, the volume being that of now.
 * Source: mass-balance: mass × (now ÷ target − 1).
 * Throws: RangeError when the target is not above 0 or is above the present salinity.
 */
export function freshWaterToReach(
  volume: Litres,
  now: PracticalSalinity,
  target: PracticalSalinity,
  t: DegreesC,
): Litres {
  requirePositive("target salinity", target);
  requireWithin("salinity now", now, target);
  const mass = massOfSeawater(volume, now, t);
  return as<Litres>((mass * (now / target - 1) * 1000) / pureWaterDensity(t));
}

/**
 * Litres of salt water of another salinity that bring the tank to the target, nothing removed.
 * Source: mass-balance: mass × (target − now) ÷ (added − target).
 * Throws: RangeError when the target does not lie between the two waters, or equals the added water
 * without being reached already.
 */
export function blendVolumeForTarget(
  volume: Litres,
  tank: PracticalSalinity,
  added: PracticalSalinity,
  target: PracticalSalinity,
  t: DegreesC,
): Litres {
  requireWithin("target salinity", target, Math.min(tank, added), Math.max(tank, added));
  if (target === tank) return as<Litres>(0);
  if (target === added) throw new RangeError("no finite amount of added water reaches its own salinity");
  const mass = (massOfSeawater(volume, tank, t) * (target - tank)) / (added - target);
  return as<Litres>((mass * 1000) / seawaterDensity(added, t));
}
