import { CACO3_G_PER_EQUIVALENT } from "../carbonate/alkalinity-units.ts";
import { NITROGEN_G_PER_MOL } from "../nitrogen/nitrogen-units.ts";
import {
  as,
  type Fraction,
  type Grams,
  type GramsPerDay,
  type Litres,
  type MgPerL,
  type Quantity,
} from "../quantity/units.ts";
import {
  ETHANOL_COD_G_PER_G,
  ETHANOL_G_PER_MOL,
  ethanolCod,
  ethanolMass,
  OXYGEN_G_PER_MOL,
} from "./alcohol.ts";

export type CubicMetresPerDay = Quantity<"m³/d">;

/** Moles of ethanol per mole of nitrate when cells grow on it too. Source: mccarty-1969, from memory. */
export const ETHANOL_MOL_PER_NITRATE = 0.613;
/** Oxygen demand spent per gram of nitrate-nitrogen in continuous culture, g/g. Source: christensson-1994. */
export const ETHANOL_COD_PER_NITRATE_N = 3.85;
/** Oxygen that nitrate-N and nitrite-N stand in for, g per g N: five and three electrons of oxygen's four. */
const OXYGEN_PER_NITRATE_N = (1.25 * OXYGEN_G_PER_MOL) / NITROGEN_G_PER_MOL;
const OXYGEN_PER_NITRITE_N = (0.75 * OXYGEN_G_PER_MOL) / NITROGEN_G_PER_MOL;

/** Share of the carbon that aerobic bacteria keep as cells, by COD. Source: asm-heterotroph-yield (ASM1). */
export const AEROBIC_YIELD = as<Fraction>(0.67);
/**
 * Nitrogen built into cells per gram of ethanol where there is oxygen, g/g: yield × nitrogen of the cells
 * × oxygen demand of ethanol; 0.09 (ASM2d) to 0.12 (ASM1). Source: asm-heterotroph-yield.
 */
export const NITROGEN_PER_ETHANOL = {
  low: 0.625 * 0.07 * ETHANOL_COD_G_PER_G,
  high: 0.67 * 0.086 * ETHANOL_COD_G_PER_G,
} as const;

/** Ethanol that takes nitrate to nitrogen gas, cells included. Source: mccarty-1969. */
export function ethanolForNitrate(nitrateN: Grams): Grams {
  return as<Grams>((nitrateN / NITROGEN_G_PER_MOL) * ETHANOL_MOL_PER_NITRATE * ETHANOL_G_PER_MOL);
}

/** The same from a measured oxygen demand per gram of nitrogen. Source: christensson-1994 for the default. */
export function ethanolForNitrateByCod(nitrateN: Grams, codPerN = ETHANOL_COD_PER_NITRATE_N): Grams {
  return as<Grams>((nitrateN * codPerN) / ETHANOL_COD_G_PER_G);
}

/**
 * Oxygen demand to feed a slow box: what the nitrate, the nitrite and the oxygen coming in take, over the
 * share not kept as cells. Source: mass-balance of electrons. Throws: RangeError unless 0 ≤ yield < 1.
 */
export function codForSideStream(
  flow: CubicMetresPerDay,
  removed: { readonly nitrateN: MgPerL; readonly nitriteN?: MgPerL },
  oxygenIn: MgPerL,
  yieldCod: Fraction,
): GramsPerDay {
  if (!(yieldCod >= 0 && yieldCod < 1)) throw new RangeError("the yield has to be below one");
  const demand =
    OXYGEN_PER_NITRATE_N * removed.nitrateN + OXYGEN_PER_NITRITE_N * (removed.nitriteN ?? 0) + oxygenIn;
  return as<GramsPerDay>((flow * demand) / (1 - yieldCod));
}

/** Oxygen that one dose of alcohol takes from the water; with a yield of nothing, the worst it can take.
 *  Source: mass-balance, with asm-heterotroph-yield for the yield. */
export function oxygenTakenByDose(
  doseL: Litres,
  strengthByVolume: Fraction,
  systemL: Litres,
  yieldCod: Fraction,
): MgPerL {
  const cod = ethanolCod(ethanolMass(doseL, strengthByVolume));
  return as<MgPerL>((cod * 1000 * (1 - yieldCod)) / systemL);
}

/** Alkalinity handed back, as grams of CaCO₃: one equivalent per mole. Source: denitrification-textbook. */
export function alkalinityRecovered(nitrateN: Grams): Grams {
  return as<Grams>((nitrateN / NITROGEN_G_PER_MOL) * CACO3_G_PER_EQUIVALENT);
}
