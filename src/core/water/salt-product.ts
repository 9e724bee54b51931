import { between, type Estimate } from "../quantity/estimate.ts";
import { as, type Quantity } from "../quantity/units.ts";

/** Grams of anhydrous sea salt that a gram of a bought mix delivers; the rest is water of
 *  crystallisation and moisture. */
export type YieldFactor = Quantity<"g salt/g product">;

/**
 * The yield of a mix nobody has measured. Published recipes bound it: 1.00 with no water of
 * crystallisation, 0.842 with all magnesium and sulfate as the wettest hydrates. Where a real mix
 * lies between, and the 0.90, are guesses of the trade.
 * Source: salt-hydrate-bounds.
 */
export const UNKNOWN_YIELD: Estimate<YieldFactor> = between(
  as<YieldFactor>(0.84),
  as<YieldFactor>(0.97),
  as<YieldFactor>(0.9),
);

/** A product from next to nothing to all salt. */
export const YIELD_LIMITS = { unit: "g salt per g product", min: 0.05, max: 1 } as const;
