import { as, type DegreesC, type Kilograms, type Litres, type PracticalSalinity } from "../quantity/units.ts";
import { pureWaterDensity, seawaterDensity } from "./density.ts";
import { requireWithin } from "./domain.ts";

/** Mass of a volume of seawater. Source: millero-poisson-1981. Throws: RangeError when an input is negative. */
export function massOfSeawater(volume: Litres, s: PracticalSalinity, t: DegreesC): Kilograms {
  requireWithin("volume", volume, 0);
  return as<Kilograms>((volume * seawaterDensity(s, t)) / 1000);
}

/** Volume of a mass of seawater. Source: millero-poisson-1981. Throws: RangeError when an input is negative. */
export function volumeOfSeawater(mass: Kilograms, s: PracticalSalinity, t: DegreesC): Litres {
  requireWithin("mass", mass, 0);
  return as<Litres>((mass / seawaterDensity(s, t)) * 1000);
}

/** Mass of a volume of fresh water. Source: millero-poisson-1981. Throws: RangeError when the volume is negative. */
export function massOfFreshWater(volume: Litres, t: DegreesC): Kilograms {
  requireWithin("volume", volume, 0);
  return as<Kilograms>((volume * pureWaterDensity(t)) / 1000);
}

/** Volume of a mass of fresh water. Source: millero-poisson-1981. Throws: RangeError when the mass is negative. */
export function volumeOfFreshWater(mass: Kilograms, t: DegreesC): Litres {
  requireWithin("mass", mass, 0);
  return as<Litres>((mass / pureWaterDensity(t)) * 1000);
}
