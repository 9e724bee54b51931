import type { KnownSolute } from "../dosing/solubility.ts";
import type { DegreesKH } from "../nitrogen/nitrification.ts";
import { as, type Grams, type Litres, type MgPerL } from "../quantity/units.ts";
import { alkalinityToMeq } from "./alkalinity-units.ts";

export type Mineral = "alkalinity" | "calcium" | "magnesium";

interface SaltRow {
  readonly mineral: Mineral;
  readonly name: string;
  readonly molarMass: number;
  /** Grams of the mineral per mole of salt; for alkalinity, equivalents. */
  readonly perMole: number;
  readonly solute?: KnownSolute;
}

const CALCIUM_G_PER_MOL = 40.078;
const MAGNESIUM_G_PER_MOL = 24.305;

/**
 * Salts that raise a mineral. The water bound in a hydrate is weighed and brings nothing: a third more of the
 * dihydrate than of the dry calcium chloride.
 * Source: standard-atomic-weights.
 */
export const MINERAL_SALTS = {
  NaHCO3: {
    mineral: "alkalinity",
    name: "sodium bicarbonate",
    molarMass: 84.007,
    perMole: 1,
    solute: "sodium bicarbonate",
  },
  Na2CO3: {
    mineral: "alkalinity",
    name: "sodium carbonate, dry",
    molarMass: 105.988,
    perMole: 2,
    solute: "sodium carbonate",
  },
  "Na2CO3.10H2O": {
    mineral: "alkalinity",
    name: "sodium carbonate decahydrate, washing soda",
    molarMass: 286.141,
    perMole: 2,
  },
  CaCl2: {
    mineral: "calcium",
    name: "calcium chloride, dry",
    molarMass: 110.984,
    perMole: CALCIUM_G_PER_MOL,
    solute: "calcium chloride",
  },
  "CaCl2.2H2O": {
    mineral: "calcium",
    name: "calcium chloride dihydrate",
    molarMass: 147.015,
    perMole: CALCIUM_G_PER_MOL,
    solute: "calcium chloride dihydrate",
  },
  "MgCl2.6H2O": {
    mineral: "magnesium",
    name: "magnesium chloride hexahydrate",
    molarMass: 203.303,
    perMole: MAGNESIUM_G_PER_MOL,
    solute: "magnesium chloride hexahydrate",
  },
  "MgSO4.7H2O": {
    mineral: "magnesium",
    name: "magnesium sulphate heptahydrate",
    molarMass: 246.475,
    perMole: MAGNESIUM_G_PER_MOL,
    solute: "magnesium sulphate heptahydrate",
  },
  MgCl2: {
    mineral: "magnesium",
    name: "magnesium chloride, dry",
    molarMass: 95.211,
    perMole: MAGNESIUM_G_PER_MOL,
  },
  MgSO4: {
    mineral: "magnesium",
    name: "magnesium sulphate, dry",
    molarMass: 120.368,
    perMole: MAGNESIUM_G_PER_MOL,
  },
} as const satisfies Record<string, SaltRow>;

export type MineralSalt = keyof typeof MINERAL_SALTS;
export type AlkalinitySalt = "NaHCO3" | "Na2CO3" | "Na2CO3.10H2O";

export function mineralSalt(salt: MineralSalt): SaltRow {
  return MINERAL_SALTS[salt];
}

/** Pure salt per litre of system for one unit of change: mg for 1 dKH, or for 1 mg/L of calcium or magnesium.
 *  Source: standard-atomic-weights. */
export function saltPerUnit(salt: MineralSalt): MgPerL {
  const { mineral, molarMass, perMole } = mineralSalt(salt);
  const perLitre = mineral === "alkalinity" ? alkalinityToMeq(1, "dKH") : 1;
  return as<MgPerL>((perLitre * molarMass) / perMole);
}

/** Pure salt that raises a system's alkalinity. Source: mass-balance, standard-atomic-weights. */
export function saltForAlkalinity(salt: AlkalinitySalt, change: DegreesKH, volumeL: Litres): Grams {
  return as<Grams>((saltPerUnit(salt) * change * volumeL) / 1000);
}

/** Pure salt that raises a system's calcium or magnesium. Source: mass-balance, standard-atomic-weights. */
export function saltForCation(
  salt: Exclude<MineralSalt, AlkalinitySalt>,
  change: MgPerL,
  volumeL: Litres,
): Grams {
  return as<Grams>((saltPerUnit(salt) * change * volumeL) / 1000);
}
