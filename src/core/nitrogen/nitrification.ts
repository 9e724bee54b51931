import { alkalinityFromMeq, CACO3_G_PER_EQUIVALENT } from "../carbonate/alkalinity-units.ts";
import type {
  DegreesC,
  Fraction,
  Grams,
  GramsPerDay,
  Litres,
  LitresPerHour,
  MilliequivPerL,
  PracticalSalinity,
  Quantity,
  SquareMetres,
} from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import { requirePositive } from "../water/domain.ts";
import { type GramsNPerDay, type MgNPerL, NITROGEN_G_PER_MOL } from "./nitrogen-units.ts";

/** Degrees of carbonate hardness, the hobby's unit of alkalinity. */
export type DegreesKH = Quantity<"dKH">;
/** Grams of nitrogen taken up per square metre and day. */
export type GramsNPerM2Day = Quantity<"g N/m²/d">;
/** Metres per day: a film's uptake divided by the concentration it feeds on. */
export type MetresPerDay = Quantity<"m/d">;
export type Millimetres = Quantity<"mm">;

/** Oxygen to take ammonium to nitrate, g per g N: 3.43 to nitrite and 1.14 on to nitrate.
 *  Source: zhu-chen-2002, citing EPA 1975. */
export const OXYGEN_PER_N = 4.57;
/** The same with the carbon built into cells taken off. Source: ebeling-2006 (4.18–4.25). */
export const OXYGEN_PER_N_WITH_CELLS = 4.18;

/** Equivalents of alkalinity lost per mole of nitrogen taken to nitrate. Source: wolf-gladrow-2007. */
export const ALKALINITY_EQ_PER_MOL = {
  /** Ammonium added as a salt: fishless cycling. */
  "ammonium salt": 2,
  /** Food: its nitrogen is neutral, becomes ammonia (+1), then nitrate (−2). */
  food: 1,
} as const;

/** Oxygen for full nitrification. Source: zhu-chen-2002. */
export function nitrificationOxygen(tan: GramsNPerDay, oxygenPerN = OXYGEN_PER_N): GramsPerDay {
  return as<GramsPerDay>(tan * oxygenPerN);
}

/** Alkalinity used by nitrifying an ammonium salt, as grams of CaCO₃. Source: definition, 2 eq per mol N. */
export function nitrificationCaCO3(tan: GramsNPerDay): GramsPerDay {
  return as<GramsPerDay>(
    (tan / NITROGEN_G_PER_MOL) * ALKALINITY_EQ_PER_MOL["ammonium salt"] * CACO3_G_PER_EQUIVALENT,
  );
}

/** Fall of alkalinity when an amount of nitrogen is taken to nitrate. Source: wolf-gladrow-2007; mass-balance.
 *  Throws: RangeError when the volume is not above zero. */
export function alkalinityDrop(
  nitrogenG: Grams,
  volumeL: Litres,
  from: keyof typeof ALKALINITY_EQ_PER_MOL,
): DegreesKH {
  requirePositive("volume", volumeL);
  const milliequiv = (nitrogenG / NITROGEN_G_PER_MOL) * 1000 * ALKALINITY_EQ_PER_MOL[from];
  return as<DegreesKH>(alkalinityFromMeq(as<MilliequivPerL>(milliequiv / volumeL), "dKH"));
}

/** Where alkalinity settles, just before each change, if water changes alone hold it up. Source: mass-balance, geometric series.
 *  Throws: RangeError when the share changed is not above zero. */
export function alkalinityBeforeChange(
  source: DegreesKH,
  lossPerPeriod: DegreesKH,
  changed: Fraction,
): DegreesKH {
  requirePositive("share changed", changed);
  return as<DegreesKH>(source - lossPerPeriod / changed);
}

/** Highest uptake of an adapted film at 24 °C. Source: nijhof-bovendeur-1990. */
export const HIGHEST_UPTAKE = { fresh: as<GramsNPerM2Day>(0.69), sea: as<GramsNPerM2Day>(0.28) } as const;
/** First-order constant of a film at low ammonia, fresh water. Source: kinyage-pedersen. */
const FIRST_ORDER_FRESH = 0.22;
/** Salinity from which a film counts as a sea-water film; below, the two are mixed in proportion. Source: assumption. */
const FULL_SEA_SALINITY = 30;

/** How much slower an adapted film works than in fresh water: 1 down to 0.28/0.69. Source: nijhof-bovendeur-1990; in between, assumption. */
export function saltSlowdown(salinity: PracticalSalinity): number {
  const share = Math.min(1, Math.max(0, salinity / FULL_SEA_SALINITY));
  return 1 - share * (1 - HIGHEST_UPTAKE.sea / HIGHEST_UPTAKE.fresh);
}

/** First-order constant for this salinity, 24 °C. Source: kinyage-pedersen scaled by nijhof-bovendeur-1990 (assumption). */
export function firstOrderConstant(salinity: PracticalSalinity): MetresPerDay {
  return as<MetresPerDay>(FIRST_ORDER_FRESH * saltSlowdown(salinity));
}

/** Rate relative to 24 °C: +4.3 % per °C, held at its ends. Source: zhu-chen-2002. Range: 15–30 °C. */
export function nitrificationTemperatureFactor(temperatureC: DegreesC): number {
  return 1 + 0.043 * (Math.min(30, Math.max(15, temperatureC)) - 24);
}

/** Uptake of a film at the ammonia you accept in the water: first order, up to its ceiling. */
export function filmUptake(
  tan: MgNPerL,
  firstOrder: MetresPerDay,
  ceiling: GramsNPerM2Day,
  temperatureFactor = 1,
): GramsNPerM2Day {
  return as<GramsNPerM2Day>(Math.min(ceiling, firstOrder * tan) * temperatureFactor);
}

/** Film that carries a load at a given uptake. Source: mass-balance.
 *  Throws: RangeError when the uptake is not above zero. */
export function filmArea(load: GramsNPerDay, uptake: GramsNPerM2Day): SquareMetres {
  requirePositive("uptake", uptake);
  return as<SquareMetres>(load / uptake);
}

/** Ammonia that settles in a tank whose filter takes a fixed share at each pass. Source: mass-balance, P/(Q η).
 *  Throws: RangeError when the flow or the removal per pass is not above zero. */
export function tanWithSinglePass(
  load: GramsNPerDay,
  flow: LitresPerHour,
  removalPerPass: Fraction,
): MgNPerL {
  requirePositive("flow", flow);
  requirePositive("removal per pass", removalPerPass);
  return as<MgNPerL>(load / ((flow * 24) / 1000) / removalPerPass);
}

/** How deep oxygen reaches into a film or a porous piece that uses it at a constant rate.
 *  Source: mass-balance of a zero-order slab, √(2 D C / k). D about 1.6e-9 m²/s (assumption).
 *  Throws: RangeError when the oxygen use is not above zero. */
export function oxygenPenetration(
  diffusivityM2PerS: number,
  oxygenMgPerL: number,
  useGPerM3Day: number,
): Millimetres {
  requirePositive("oxygen use", useGPerM3Day);
  return as<Millimetres>(Math.sqrt((2 * diffusivityM2PerS * 86_400 * oxygenMgPerL) / useGPerM3Day) * 1000);
}
