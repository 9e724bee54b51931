import {
  type AbsoluteSalinity,
  as,
  type DegreesC,
  type PracticalSalinity,
  type Quantity,
} from "../quantity/units.ts";
import { CONDUCTIVITY_FITTED } from "./conductivity.ts";
import { seawaterDensity } from "./density.ts";
import { requireWithin } from "./domain.ts";
import { invertRising } from "./invert.ts";

/** Grams of sea salt per litre of solution, at the solution's temperature. */
export type GramsPerLitre = Quantity<"g/L">;
/** Chlorinity: grams of chloride equivalent per kilogram of solution. */
export type Chlorinity = Quantity<"g Cl/kg">;

/** Reference salinity, g/kg, of seawater of practical salinity 35. Source: millero-2008. */
const ABSOLUTE_PER_PRACTICAL = 35.16504 / 35;
/** Salinity per chlorinity. Source: wooster-1969. */
const SALINITY_PER_CHLORINITY = 1.80655;
/** Pure salt would be 1000; no brine comes near this. */
const HIGHEST_SALINITY = 300;

/** Grams of sea salt per kilogram of solution. Source: millero-2008, reference-composition salinity.
 *  Throws: RangeError when salinity is negative. */
export function absoluteSalinity(sp: PracticalSalinity): AbsoluteSalinity {
  requireWithin("salinity", sp, 0);
  return as<AbsoluteSalinity>(sp * ABSOLUTE_PER_PRACTICAL);
}

/** Practical salinity of a solution with `sa` grams of sea salt per kilogram. Source: millero-2008.
 *  Throws: RangeError when salinity is negative. */
export function practicalFromAbsolute(sa: AbsoluteSalinity): PracticalSalinity {
  requireWithin("absolute salinity", sa, 0);
  return as<PracticalSalinity>(sa / ABSOLUTE_PER_PRACTICAL);
}

/** Grams of sea salt in a litre of the solution; falls as the water warms and swells.
 *  Source: millero-2008 and millero-poisson-1981. Range: salinity 0–42, −2 to 40 °C.
 *  Throws: RangeError when salinity is negative. */
export function saltGramsPerLitre(sp: PracticalSalinity, t: DegreesC): GramsPerLitre {
  return as<GramsPerLitre>((absoluteSalinity(sp) * seawaterDensity(sp, t)) / 1000);
}

/** Practical salinity of a solution with `gL` grams of sea salt per litre at t.
 *  Source: as `saltGramsPerLitre`, solved for salinity.
 *  Throws: RangeError when `gL` is negative or more than any brine holds. */
export function salinityFromGramsPerLitre(gL: GramsPerLitre, t: DegreesC): PracticalSalinity {
  const salinity = invertRising(
    (s) => saltGramsPerLitre(as<PracticalSalinity>(s), t),
    gL,
    0,
    HIGHEST_SALINITY,
  );
  return as<PracticalSalinity>(salinity);
}

/** Grams of chloride equivalent per kilogram. Source: wooster-1969. Throws: RangeError when salinity is negative. */
export function chlorinity(sp: PracticalSalinity): Chlorinity {
  requireWithin("salinity", sp, 0);
  return as<Chlorinity>(sp / SALINITY_PER_CHLORINITY);
}

/** Whether the Practical Salinity Scale is defined there. Source: fofonoff-millard-1983, 2 to 42. */
export function inPss78Range(sp: PracticalSalinity): boolean {
  const { min, max } = CONDUCTIVITY_FITTED.salinity;
  return sp >= min && sp <= max;
}
