import { as, type Fraction, type GramsPerDay } from "../quantity/units.ts";
import type { GramsNPerDay } from "./nitrogen-units.ts";

/** Mass of protein that holds one mass of nitrogen. Source: definition (the feed-analysis convention). */
const PROTEIN_PER_NITROGEN = 6.25;

/** Ammonia nitrogen per gram of protein fed, for fast-growing fish on pellets: 0.16 × 0.80 × 0.80 × 0.90.
 *  Source: timmons-ebeling. */
export const PELLET_TAN_FACTOR = 0.092;

/** Nitrogen in a food. Source: definition, protein / 6.25. */
export function feedNitrogen(feed: GramsPerDay, proteinAsFed: Fraction): GramsNPerDay {
  return as<GramsNPerDay>((feed * proteinAsFed) / PROTEIN_PER_NITROGEN);
}

/** Ammonia made from food by the pellet rule. Source: timmons-ebeling. */
export function tanByPelletRule(
  feed: GramsPerDay,
  proteinAsFed: Fraction,
  factor = PELLET_TAN_FACTOR,
): GramsNPerDay {
  return as<GramsNPerDay>(feed * proteinAsFed * factor);
}

/** Ammonia made from food as a share of the nitrogen eaten: the better form for adult predators.
 *  Source: definition; the share itself is timmons-ebeling (0.575, growing) or an assumption (0.70–0.80, adult). */
export function tanFromFeed(
  feed: GramsPerDay,
  proteinAsFed: Fraction,
  excretedShare: Fraction,
): GramsNPerDay {
  return as<GramsNPerDay>(feedNitrogen(feed, proteinAsFed) * excretedShare);
}

/** Protein of the food as it goes in, from the dry-matter figure a sheet may give instead.
 *  Taking the dry figure for wet grams overstates the load four- to fivefold. Source: definition. */
export function proteinAsFed(water: Fraction, proteinOfDryMatter: Fraction): Fraction {
  return as<Fraction>((1 - water) * proteinOfDryMatter);
}
