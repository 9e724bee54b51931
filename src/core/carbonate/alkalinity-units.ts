import { as, type KgPerM3, type MicromolPerKg, type MilliequivPerL } from "../quantity/units.ts";

/** Ways a kit prints alkalinity. "ppm CaCO3" is mg/L as calcium carbonate. */
export type AlkalinityUnit = "dKH" | "meq/L" | "ppm CaCO3";

/** Half a mole of CaCO₃, g. Source: standard-atomic-weights. */
export const CACO3_G_PER_EQUIVALENT = 100.0869 / 2;
/** 1 °dH is 10 mg CaO per litre; half a mole of CaO weighs 28.0387 g. Source: definition. */
const MEQ_PER_DKH = 10 / 28.0387;

const MEQ_PER_UNIT: Readonly<Record<AlkalinityUnit, number>> = {
  dKH: MEQ_PER_DKH,
  "meq/L": 1,
  "ppm CaCO3": 1 / CACO3_G_PER_EQUIVALENT,
};

/** Alkalinity as printed, in the core's own unit. Source: definition; molar masses standard-atomic-weights. */
export function alkalinityToMeq(value: number, unit: AlkalinityUnit): MilliequivPerL {
  return as<MilliequivPerL>(value * MEQ_PER_UNIT[unit]);
}

/** Alkalinity as a kit of the named unit prints it. Source: definition. */
export function alkalinityFromMeq(alkalinity: MilliequivPerL, unit: AlkalinityUnit): number {
  return alkalinity / MEQ_PER_UNIT[unit];
}

/** One printed unit turned into another. Source: definition. */
export function convertAlkalinity(value: number, from: AlkalinityUnit, to: AlkalinityUnit): number {
  return alkalinityFromMeq(alkalinityToMeq(value, from), to);
}

/** Per kilogram of sea water, as oceanographers count it; a litre weighs more than a kilogram. Source: definition. */
export function alkalinityPerKg(alkalinity: MilliequivPerL, density: KgPerM3): MicromolPerKg {
  return as<MicromolPerKg>((alkalinity * 1e6) / density);
}
