import { NITROGEN_G_PER_MOL } from "../nitrogen/nitrogen-units.ts";
import { between, type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Fraction,
  type Grams,
  type GramsPerDay,
  type Litres,
  type MgPerL,
} from "../quantity/units.ts";
import type { Answer, NoAnswer } from "../result.ts";
import { ETHANOL_COD_G_PER_G, ETHANOL_G_PER_ML, ETHANOL_G_PER_MOL } from "./alcohol.ts";
import {
  type CarbonConditions,
  type CarbonRoute,
  carbonCautions,
  carbonForbidden,
  doseOxygen,
  judgeDoseOxygen,
} from "./carbon-safety.ts";
import {
  alkalinityRecovered,
  ETHANOL_COD_PER_NITRATE_N,
  ETHANOL_MOL_PER_NITRATE,
  NITROGEN_PER_ETHANOL,
} from "./ethanol-denitrification.ts";
import { unusableFigure } from "./usable-figures.ts";

/** Grams of ethanol per gram of nitrogen removed, by route: the span of the figures known. */
function ethanolPerNitrogen(route: CarbonRoute): Estimate {
  if (route === "anoxic denitrification") {
    const measured = ETHANOL_COD_PER_NITRATE_N / ETHANOL_COD_G_PER_G;
    return between(measured, (ETHANOL_MOL_PER_NITRATE * ETHANOL_G_PER_MOL) / NITROGEN_G_PER_MOL);
  }
  return between(1 / NITROGEN_PER_ETHANOL.high, 1 / NITROGEN_PER_ETHANOL.low);
}

export interface CarbonNeed {
  readonly route: CarbonRoute;
  readonly ethanolPerDay: Estimate<GramsPerDay>;
  /** Of the reservoir's own strength. */
  readonly reservoirPerDay: Estimate<Litres>;
  readonly reservoirPerDose: Estimate<Litres>;
  readonly oxygenPerDose: Estimate<MgPerL>;
  /** Alkalinity handed back per day, as CaCO₃; only where nitrate leaves as gas. */
  readonly alkalinityBackPerDay?: Estimate<Grams>;
}

/** How much dilute ethanol a day would remove a given amount of nitrogen, once the bacteria are there. */
export function carbonNeed(question: {
  readonly route: CarbonRoute;
  readonly nitrogenPerDay: Estimate<GramsPerDay>;
  readonly systemVolume: Estimate<Litres>;
  readonly reservoirPercent: Estimate;
  readonly dosesPerDay: number;
  readonly conditions: CarbonConditions;
}): Answer<CarbonNeed> | NoAnswer {
  const { route, nitrogenPerDay, systemVolume, reservoirPercent, dosesPerDay } = question;
  const forbidden = carbonForbidden(route, question.conditions);
  if (forbidden !== undefined) return forbidden;
  const unusable = unusableFigure([
    { name: "nitrogen to remove a day", estimate: nitrogenPerDay, unit: "g" },
    { name: "net volume", estimate: systemVolume, unit: "L" },
    { name: "reservoir strength by volume", estimate: reservoirPercent, unit: "%", max: 100 },
    { name: "doses per day", estimate: exactly(dosesPerDay), unit: "doses" },
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate(
    {
      "nitrogen to remove": nitrogenPerDay,
      "ethanol per gram of nitrogen": ethanolPerNitrogen(route),
      "net volume": systemVolume,
      "reservoir strength": reservoirPercent,
    },
    (v) => {
      const ethanol = v["nitrogen to remove"] * v["ethanol per gram of nitrogen"];
      const strength = as<Fraction>(v["reservoir strength"] / 100);
      const daily = as<Litres>(ethanol / ETHANOL_G_PER_ML / 1000 / strength);
      const perDose = as<Litres>(daily / dosesPerDay);
      const oxygen = doseOxygen(perDose, strength, v["net volume"]);
      return {
        ethanolPerDay: as<GramsPerDay>(ethanol),
        reservoirPerDay: daily,
        reservoirPerDose: perDose,
        oxygenPerDose: oxygen.likely,
        worst: oxygen.worst,
        alkalinityBackPerDay: alkalinityRecovered(as<Grams>(v["nitrogen to remove"])),
      };
    },
  );
  const { worst, alkalinityBackPerDay, ...value } = estimates;
  const verdict = judgeDoseOxygen(value.oxygenPerDose, worst, dosesPerDay);
  if ("kind" in verdict) return verdict;
  const isAnoxic = route === "anoxic denitrification";
  return {
    kind: "answer",
    value: { route, ...value, ...(isAnoxic ? { alkalinityBackPerDay } : {}) },
    method: isAnoxic
      ? "Ethanol to take nitrate to gas in a box without oxygen, bacteria's own growth included"
      : "Ethanol to grow bacteria that hold the nitrogen until they are skimmed out",
    working: [
      "ethanol = nitrogen × ethanol per gram of nitrogen",
      "reservoir = ethanol / density of ethanol / reservoir strength",
      "oxygen per dose = mass of ethanol × 2.084 × (1 − yield) / net volume",
    ],
    constants: isAnoxic
      ? [
          { name: "ethanol per nitrate, with growth", value: "0.613 mol/mol", source: "mccarty-1969" },
          { name: "oxygen demand per gram of nitrate-N", value: "3.85 g/g", source: "christensson-1994" },
        ]
      : [
          {
            name: "nitrogen held per gram of ethanol",
            value: "0.09–0.12 g/g",
            source: "asm-heterotroph-yield",
          },
        ],
    sources: isAnoxic
      ? ["mccarty-1969", "christensson-1994", "denitrification-textbook", "handbook-ethanol", "assumption"]
      : ["asm-heterotroph-yield", "handbook-ethanol", "assumption"],
    assumptions: isAnoxic
      ? [
          "the box is without oxygen, and none is carried in with the water",
          "the oxygen figure is for a dose that ends up in the open water",
        ]
      : ["all that grew is skimmed out", "nitrogen and phosphate are not short"],
    cautions: [...verdict, ...carbonCautions(route, reservoirPercent.high)],
    driver: drivers.reservoirPerDay,
  };
}
