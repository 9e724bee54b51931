import { as, type Grams, type Kilograms, type Litres } from "../quantity/units.ts";
import { requireWithin } from "./domain.ts";

/**
 * Grams of each salt, as weighed, in a kilogram of solution of salinity 35.00.
 * The paper gives the last three in mol/kg (0.05327, 0.01033, 0.00009); the grams are of the hydrate named.
 * Source: kester-1967.
 */
export const KESTER_1967_G_PER_KG = {
  NaCl: 23.926,
  Na2SO4: 4.008,
  KCl: 0.677,
  NaHCO3: 0.196,
  KBr: 0.098,
  H3BO3: 0.026,
  NaF: 0.003,
  "MgCl2.6H2O": 10.83,
  "CaCl2.2H2O": 1.519,
  "SrCl2.6H2O": 0.024,
} as const;

/** Grams of each salt, free of water of crystallisation, in a litre of solution of chlorinity 19.38.
 *  Source: astm-d1141-98, from memory; its chlorinity closes. */
export const ASTM_D1141_G_PER_L = {
  NaCl: 24.53,
  MgCl2: 5.2,
  Na2SO4: 4.09,
  CaCl2: 1.16,
  KCl: 0.695,
  NaHCO3: 0.201,
  KBr: 0.101,
  H3BO3: 0.027,
  SrCl2: 0.025,
  NaF: 0.003,
} as const;

export type KesterSalt = keyof typeof KESTER_1967_G_PER_KG;
export type AstmSalt = keyof typeof ASTM_D1141_G_PER_L;

/** Grams of a salt to weigh for a mass of solution of salinity 35. Source: kester-1967.
 *  Throws: RangeError when the mass is negative. */
export function kesterSaltGrams(salt: KesterSalt, solution: Kilograms): Grams {
  requireWithin("mass of solution", solution, 0);
  return as<Grams>(KESTER_1967_G_PER_KG[salt] * solution);
}

/** Grams of a salt to weigh for a volume of substitute ocean water. Source: astm-d1141-98 (from memory).
 *  Throws: RangeError when the volume is negative. */
export function astmSaltGrams(salt: AstmSalt, solution: Litres): Grams {
  requireWithin("volume of solution", solution, 0);
  return as<Grams>(ASTM_D1141_G_PER_L[salt] * solution);
}
