import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Grams, type Litres, type MgPerL } from "../quantity/units.ts";
import type { Answer, NoAnswer } from "../result.ts";
import { ethanolMass } from "./alcohol.ts";
import {
  type CarbonConditions,
  type CarbonRoute,
  carbonCautions,
  carbonForbidden,
  doseOxygen,
  dosesBelowWarning,
  judgeDoseOxygen,
} from "./carbon-safety.ts";
import { unusableFigure } from "./usable-figures.ts";

export interface CarbonDoseCheck {
  readonly ethanolPerDay: Estimate<Grams>;
  /** Oxygen each dose takes as bacteria usually burn it, and if they burn all of it. */
  readonly oxygenPerDose: Estimate<MgPerL>;
  readonly worstOxygenPerDose: Estimate<MgPerL>;
  /** Fewest doses a day that stay below the warning. */
  readonly dosesForComfort: number;
}

/** Whether a carbon dose that somebody has in mind leaves the animals their oxygen. */
export function carbonDoseCheck(question: {
  readonly route: CarbonRoute;
  /** One day's amount, at the strength named. */
  readonly daily: Estimate<Litres>;
  readonly dosesPerDay: number;
  readonly percentByVolume: Estimate;
  readonly systemVolume: Estimate<Litres>;
  readonly conditions: CarbonConditions;
}): Answer<CarbonDoseCheck> | NoAnswer {
  const { route, daily, dosesPerDay, percentByVolume, systemVolume } = question;
  const forbidden = carbonForbidden(route, question.conditions);
  if (forbidden !== undefined) return forbidden;
  const unusable = unusableFigure([
    { name: "amount a day", estimate: daily, unit: "L" },
    { name: "doses per day", estimate: exactly(dosesPerDay), unit: "doses" },
    { name: "strength by volume", estimate: percentByVolume, unit: "%", max: 100 },
    { name: "net volume", estimate: systemVolume, unit: "L" },
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate(
    { "amount a day": daily, strength: percentByVolume, "net volume": systemVolume },
    (v) => {
      const strength = as<Fraction>(v.strength / 100);
      const oxygen = doseOxygen(as<Litres>(v["amount a day"] / dosesPerDay), strength, v["net volume"]);
      return {
        ethanolPerDay: ethanolMass(v["amount a day"], strength),
        oxygenPerDose: oxygen.likely,
        worstOxygenPerDose: oxygen.worst,
      };
    },
  );
  const { oxygenPerDose, worstOxygenPerDose } = estimates;
  const verdict = judgeDoseOxygen(oxygenPerDose, worstOxygenPerDose, dosesPerDay);
  if ("kind" in verdict) return verdict;
  return {
    kind: "answer",
    value: {
      ...estimates,
      dosesForComfort: dosesBelowWarning(as<MgPerL>(oxygenPerDose.high * dosesPerDay)),
    },
    method: "Oxygen that one dose of ethanol takes from the water when bacteria burn it",
    working: [
      "ethanol = amount × strength × 0.7893 g/mL",
      "oxygen per dose = mass of ethanol × 2.084 × (1 − yield) / net volume",
      "at worst, with a yield of nothing, all of it is burnt",
    ],
    constants: [
      { name: "share kept as cells", value: "0.67 g COD per g COD", source: "asm-heterotroph-yield" },
      { name: "oxygen per dose, warned of above", value: "0.5 mg/L", source: "assumption" },
      { name: "oxygen per dose, refused above", value: "1.5 mg/L", source: "assumption" },
    ],
    sources: ["asm-heterotroph-yield", "handbook-ethanol", "assumption"],
    assumptions: [
      "the whole dose is burnt before air can bring oxygen back",
      "strength by volume at about 20 °C",
    ],
    cautions: [...verdict, ...carbonCautions(route, percentByVolume.high)],
    driver: drivers.oxygenPerDose,
  };
}
