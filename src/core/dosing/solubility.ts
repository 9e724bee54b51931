import { type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";

/** Salts whose limit in water is known here. */
export type KnownSolute =
  | "sodium bicarbonate"
  | "sodium carbonate"
  | "calcium chloride"
  | "calcium chloride dihydrate"
  | "magnesium chloride hexahydrate"
  | "magnesium sulphate heptahydrate"
  | "ammonium chloride";

/**
 * Grams that one kilogram of water takes at 20 °C, and the density of the liquid then, kg/L. The hydrates
 * bring water of their own, so far more of them dissolves than of the dry salt: their rows follow from
 * 740, 542 and 337 g of dry salt. Colder water takes less.
 * Source: handbook-solubility, from memory.
 */
const SATURATED: Readonly<Record<KnownSolute, { gramsPerKgWater: number; densityKgPerL: number }>> = {
  "sodium bicarbonate": { gramsPerKgWater: 96, densityKgPerL: 1.06 },
  "sodium carbonate": { gramsPerKgWater: 215, densityKgPerL: 1.19 },
  "calcium chloride": { gramsPerKgWater: 740, densityKgPerL: 1.42 },
  "calcium chloride dihydrate": { gramsPerKgWater: 1290, densityKgPerL: 1.42 },
  "magnesium chloride hexahydrate": { gramsPerKgWater: 3010, densityKgPerL: 1.33 },
  "magnesium sulphate heptahydrate": { gramsPerKgWater: 1070, densityKgPerL: 1.28 },
  "ammonium chloride": { gramsPerKgWater: 372, densityKgPerL: 1.075 },
};

/** Share of the limit above which a stock is likely to drop crystals in a cool room. Source: common-practice. */
const NEAR_SATURATION = 0.8;

/**
 * Most of a salt that one litre of finished stock can hold at 20 °C, g: share by weight × density.
 * Source: handbook-solubility, from memory. Range: near 20 °C.
 */
export function solubilityGramsPerL(solute: KnownSolute): number {
  const { gramsPerKgWater, densityKgPerL } = SATURATED[solute];
  return (gramsPerKgWater / (1000 + gramsPerKgWater)) * densityKgPerL * 1000;
}

/** Whether a stock of that strength can be made at all, and whether it will stay clear. */
export function checkSolubility(
  solute: KnownSolute | undefined,
  gramsPerL: number,
): NoAnswer | readonly Caution[] {
  if (solute === undefined) return [];
  const limit = solubilityGramsPerL(solute);
  const figures = { solute, gramsPerL, solubilityGramsPerL: limit };
  if (gramsPerL > limit) return noAnswer("will-not-dissolve", figures);
  return gramsPerL > NEAR_SATURATION * limit ? [caution("stock-near-saturation", figures)] : [];
}
