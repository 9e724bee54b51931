import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type GramsPerDay } from "../quantity/units.ts";
import { type NoAnswer, noAnswer } from "../result.ts";
import { FEEDS } from "./feeds.ts";
import { feedNitrogen, proteinAsFed } from "./food-nitrogen.ts";
import type { GramsNPerDay } from "./nitrogen-units.ts";
import { rounded } from "./rounded.ts";
import { EXCRETED_SHARE, type Food, type Growth, type Ration, withDistinctLabels } from "./stocking-input.ts";

/**
 * Nitrogen that all the food brings in a day, with the range of its grams and proteins.
 * Source: definition, protein / 6.25. No answer when a protein's basis is not known.
 */
export function foodNitrogenPerDay(food: readonly Food[]): Estimate<GramsNPerDay> | NoAnswer {
  if (food.length === 0) return noAnswer("no-food-and-no-animals", {});
  const foods = withDistinctLabels(food);
  for (const { label, protein } of foods) {
    if (protein.kind !== "own" || protein.basis === "as fed") continue;
    if (protein.basis === "not said")
      return noAnswer("protein-basis-not-said", {
        food: label,
        proteinPercent: rounded(protein.protein.best * 100),
      });
    if (protein.water === undefined) return noAnswer("water-in-food-not-said", { food: label });
  }
  const inputs = Object.fromEntries(
    foods.flatMap(({ label, ration, protein }): readonly (readonly [string, Estimate])[] => [
      [`grams of ${label}`, gramsOf(ration)],
      [`protein of ${label}`, protein.kind === "own" ? protein.protein : FEEDS[protein.feed].protein],
      ...(protein.kind === "own" && protein.water !== undefined
        ? ([[`water in ${label}`, protein.water]] as const)
        : []),
    ]),
  );
  const { estimates } = propagate(inputs, (values: Readonly<Record<string, number>>) => {
    const figure = (name: string) => values[name] ?? 0;
    const nitrogen = foods.reduce((sum, { label, ration, protein }) => {
      const grams = as<GramsPerDay>(figure(`grams of ${label}`) * timesPerDay(ration));
      const said = as<Fraction>(figure(`protein of ${label}`));
      const isDryFigure = protein.kind === "own" && protein.basis === "dry matter";
      const water = as<Fraction>(figure(`water in ${label}`));
      return sum + feedNitrogen(grams, isDryFigure ? proteinAsFed(water, said) : said);
    }, 0);
    return { nitrogen: as<GramsNPerDay>(nitrogen) };
  });
  return { ...estimates.nitrogen, low: as<GramsNPerDay>(Math.max(0, estimates.nitrogen.low)) };
}

function gramsOf(ration: Ration): Estimate {
  return ration.kind === "meals" ? ration.gramsPerMeal : ration.gramsPerDay;
}

function timesPerDay(ration: Ration): number {
  return ration.kind === "meals" ? ration.mealsPerWeek / 7 : 1;
}

/** Ammonia nitrogen that the animals and leftovers make of it. Source: as EXCRETED_SHARE says. */
export function ammoniaPerDay(food: Estimate<GramsNPerDay>, growth: Growth): Estimate<GramsNPerDay> {
  return propagate({ food, share: EXCRETED_SHARE[growth] }, (v) => ({
    ammonia: as<GramsNPerDay>(v.food * v.share),
  })).estimates.ammonia;
}
