import { as, type DegreesC, type MgPerL, type PracticalSalinity, type Quantity } from "../quantity/units.ts";
import { seawaterDensity } from "./density.ts";
import { absoluteSalinity } from "./salinity-scales.ts";

/** Grams of an ion in a kilogram of solution. */
export type IonGramsPerKg = Quantity<"g ion/kg">;

/** Mass of each constituent in a gram of sea salt. Source: millero-2008, teos-10-manual table D.3. */
export const ION_MASS_FRACTION = {
  Cl: 0.5503396,
  Na: 0.3065958,
  SO4: 0.0771319,
  Mg: 0.0365055,
  Ca: 0.0117186,
  K: 0.0113495,
  HCO3: 0.0029805,
  Br: 0.0019134,
  "B(OH)3": 0.0005527,
  CO3: 0.0004078,
  Sr: 0.000226,
  "B(OH)4": 0.0002259,
  F: 0.0000369,
  CO2: 0.0000121,
  OH: 0.0000038,
} as const;

export type SeawaterIon = keyof typeof ION_MASS_FRACTION;

/** An ion of natural seawater, by mass of solution. Source: millero-2008.
 *  Throws: RangeError when salinity is negative. */
export function ionGramsPerKg(ion: SeawaterIon, sp: PracticalSalinity): IonGramsPerKg {
  return as<IonGramsPerKg>(ION_MASS_FRACTION[ion] * absoluteSalinity(sp));
}

/** The same by volume, which is how test kits count: 2.3 % more at salinity 35 and 25 °C.
 *  Source: millero-2008, millero-poisson-1981. Throws: RangeError when salinity is negative. */
export function ionMgPerL(ion: SeawaterIon, sp: PracticalSalinity, t: DegreesC): MgPerL {
  return as<MgPerL>(ionGramsPerKg(ion, sp) * seawaterDensity(sp, t));
}
