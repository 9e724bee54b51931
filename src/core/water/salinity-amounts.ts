import { as, type DegreesC, type Kilograms, type Litres, type PracticalSalinity } from "../quantity/units.ts";
import { massOfSeawater, volumeOfSeawater } from "./mass.ts";
import { blendVolumeForTarget, swapVolumeForTarget } from "./salinity-balance.ts";
import { drySaltToRaise } from "./salt-balance.ts";
import type { YieldFactor } from "./salt-product.ts";

/** How salinity is changed: salt dissolved in tank water; other water poured in; equal volumes exchanged. */
export type Route = "dry salt" | "pour in" | "exchange";

export interface Change {
  readonly volumeL: Litres;
  readonly from: PracticalSalinity;
  readonly to: PracticalSalinity;
  readonly temperatureC: DegreesC;
  /** Salinity of the water put in; of no account for dry salt. */
  readonly added: PracticalSalinity;
  /** Of the product; of account for dry salt only. */
  readonly yieldFactor: YieldFactor;
}

export interface Amounts {
  readonly addL: Litres;
  readonly removeL: Litres;
  readonly saltKg: Kilograms;
  readonly resultingVolumeL: Litres;
}

const NO_WATER = as<Litres>(0);
const NO_SALT = as<Kilograms>(0);

/**
 * What takes a volume of water from one salinity to another.
 * Source: mass-balance.
 * Throws: RangeError when the route cannot get there.
 */
export function amountsFor(route: Route, change: Change): Amounts {
  const { volumeL, from, to, temperatureC, added, yieldFactor } = change;
  if (from === to) return { addL: NO_WATER, removeL: NO_WATER, saltKg: NO_SALT, resultingVolumeL: volumeL };
  const massKg = massOfSeawater(volumeL, from, temperatureC);
  switch (route) {
    case "dry salt": {
      const saltKg = drySaltToRaise(massKg, from, to, yieldFactor);
      const resultingVolumeL = volumeOfSeawater(as<Kilograms>(massKg + saltKg), to, temperatureC);
      return { addL: NO_WATER, removeL: NO_WATER, saltKg, resultingVolumeL };
    }
    case "pour in": {
      const addL = blendVolumeForTarget(volumeL, from, added, to, temperatureC);
      const addedKg = massOfSeawater(addL, added, temperatureC);
      const resultingVolumeL = volumeOfSeawater(as<Kilograms>(massKg + addedKg), to, temperatureC);
      return { addL, removeL: NO_WATER, saltKg: NO_SALT, resultingVolumeL };
    }
    case "exchange": {
      const swapL = swapVolumeForTarget(volumeL, from, added, to, temperatureC);
      const leftKg = massOfSeawater(as<Litres>(Math.max(0, volumeL - swapL)), from, temperatureC);
      const addedKg = massOfSeawater(swapL, added, temperatureC);
      const resultingVolumeL = volumeOfSeawater(as<Kilograms>(leftKg + addedKg), to, temperatureC);
      return { addL: swapL, removeL: swapL, saltKg: NO_SALT, resultingVolumeL };
    }
  }
}
