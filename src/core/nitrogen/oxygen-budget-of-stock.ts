import { type Estimate, mapEstimate } from "../quantity/estimate.ts";
import { as, type GramsPerDay, type KiloPascals, type MgPerL } from "../quantity/units.ts";
import type { Answer, NoAnswer } from "../result.ts";
import { type OxygenBudget, oxygenBudget } from "./oxygen-budget.ts";
import type { StockingSituation } from "./stocking-input.ts";
import { stockingLoad } from "./stocking-load.ts";

export interface StockedOxygenBudget extends OxygenBudget {
  readonly restGPerDay: Estimate;
  readonly afterMealGPerDay: Estimate;
}

/** The oxygen budget of a stocked system: its animals and food decide what is breathed. */
export function oxygenBudgetOfStock(
  situation: StockingSituation,
  water: { readonly measuredMgPerL?: Estimate<MgPerL>; readonly pressureKPa?: Estimate<KiloPascals> },
): Answer<StockedOxygenBudget> | NoAnswer {
  const load = stockingLoad(situation);
  if (load.kind === "no-answer") return load;
  const { totalRestGPerDay, totalAfterMealGPerDay } = load.value.oxygen;
  const budget = oxygenBudget({
    volumeL: situation.volumeL,
    salinity: situation.salinity,
    temperatureC: situation.temperatureC,
    restGPerDay: mapEstimate(totalRestGPerDay, (grams) => as<GramsPerDay>(grams)),
    afterMealGPerDay: mapEstimate(totalAfterMealGPerDay, (grams) => as<GramsPerDay>(grams)),
    ...water,
  });
  if (budget.kind === "no-answer") return budget;
  const aboutOxygen = load.cautions.filter(({ code }) => OXYGEN_CAUTIONS.has(code));
  return {
    ...budget,
    value: { ...budget.value, restGPerDay: totalRestGPerDay, afterMealGPerDay: totalAfterMealGPerDay },
    method: "oxygen held by the water against what animals, filter and leftovers use",
    working: [...load.working, ...budget.working],
    constants: [...load.constants, ...budget.constants],
    sources: [...new Set([...load.sources, ...budget.sources])],
    assumptions: [...new Set([...load.assumptions, ...budget.assumptions])],
    cautions: [...budget.cautions, ...aboutOxygen],
  };
}

/** What the stocking sum has to say that bears on oxygen; the rest belongs to its own answer. */
const OXYGEN_CAUTIONS: ReadonlySet<string> = new Set([
  "ration-assumed",
  "fish-oxygen-unknown",
  "ration-looks-wrong",
  "protein-looks-dry",
]);
