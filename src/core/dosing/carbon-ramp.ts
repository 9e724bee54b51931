import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Grams, type Litres, type MgPerL } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
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

/** First week's daily dose, and the step up each week after: 0.1 mL of 40 % per 100 L. Source: common-practice. */
const STEP_ETHANOL_L_PER_L = (0.1 * 0.4) / 1000 / 100;

export interface RampWeek {
  /** 1 for the first. */
  readonly week: number;
  /** Of the reservoir's own strength. */
  readonly daily: Estimate<Litres>;
  readonly perDose: Estimate<Litres>;
  readonly ethanolPerDay: Estimate<Grams>;
  /** Oxygen each dose takes as bacteria usually burn it, and at worst. */
  readonly oxygenPerDose: Estimate<MgPerL>;
  readonly worstOxygenPerDose: Estimate<MgPerL>;
  /** Fewest doses a day that stay below the warning. */
  readonly dosesForComfort: number;
}

/** Ethanol a day in a given week of the ramp, as litres of pure ethanol. Source: common-practice. */
export function rampEthanolL(week: number, systemL: Litres): Litres {
  return as<Litres>(week * STEP_ETHANOL_L_PER_L * systemL);
}

/** A slow start on dilute ethanol, week by week; every week's dose is checked for the oxygen it takes. */
export function carbonRamp(question: {
  readonly route: CarbonRoute;
  readonly systemVolume: Estimate<Litres>;
  /** Strength of the dosing reservoir, per cent by volume. */
  readonly reservoirPercent: Estimate;
  readonly weeks: number;
  readonly dosesPerDay: number;
  readonly conditions: CarbonConditions;
}): Answer<{ readonly route: CarbonRoute; readonly weeks: readonly RampWeek[] }> | NoAnswer {
  const { route, systemVolume, reservoirPercent, dosesPerDay } = question;
  const forbidden = carbonForbidden(route, question.conditions);
  if (forbidden !== undefined) return forbidden;
  const unusable = unusableFigure([
    { name: "net volume", estimate: systemVolume, unit: "L" },
    { name: "reservoir strength by volume", estimate: reservoirPercent, unit: "%", max: 100 },
    { name: "weeks", estimate: exactly(question.weeks), unit: "weeks", max: 52 },
    { name: "doses per day", estimate: exactly(dosesPerDay), unit: "doses" },
  ]);
  if (unusable !== undefined) return unusable;
  const inputs = { "net volume": systemVolume, "reservoir strength": reservoirPercent };
  const plan = Array.from({ length: Math.ceil(question.weeks) }, (_, index) => {
    const week = index + 1;
    // The reservoir is measured out for the best volume: a smaller system feels the same dose more.
    const ethanolL = rampEthanolL(week, systemVolume.best);
    return propagate(inputs, (v) => {
      const strength = as<Fraction>(v["reservoir strength"] / 100);
      const daily = as<Litres>(ethanolL / (reservoirPercent.best / 100));
      const perDose = as<Litres>(daily / dosesPerDay);
      const oxygen = doseOxygen(perDose, strength, v["net volume"]);
      return {
        daily,
        perDose,
        ethanolPerDay: ethanolMass(daily, strength),
        oxygenPerDose: oxygen.likely,
        worstOxygenPerDose: oxygen.worst,
      };
    });
  });
  const weeks: RampWeek[] = plan.map(({ estimates }, index) => ({
    week: index + 1,
    ...estimates,
    dosesForComfort: dosesBelowWarning(as<MgPerL>(estimates.oxygenPerDose.high * dosesPerDay)),
  }));
  const last = weeks.at(-1);
  const verdict =
    last === undefined ? [] : judgeDoseOxygen(last.oxygenPerDose, last.worstOxygenPerDose, dosesPerDay);
  if ("kind" in verdict) return verdict;
  return {
    kind: "answer",
    value: { route, weeks },
    method: "Start at 0.1 mL of 40 % alcohol per 100 L a day and add the same step each week",
    working: [
      "ethanol a day = week × 0.04 mL × net volume / 100 L",
      "reservoir a day = ethanol a day / reservoir strength",
      "oxygen per dose = mass of ethanol × 2.084 × (1 − yield) / net volume",
    ],
    constants: [
      {
        name: "first dose and weekly step",
        value: "0.1 mL of 40 % per 100 L and day",
        source: "common-practice",
      },
      { name: "share kept as cells", value: "0.67 g COD per g COD", source: "asm-heterotroph-yield" },
      { name: "oxygen per dose, warned of above", value: "0.5 mg/L", source: "assumption" },
      { name: "oxygen per dose, refused above", value: "1.5 mg/L", source: "assumption" },
    ],
    sources: ["common-practice", "asm-heterotroph-yield", "handbook-ethanol", "assumption"],
    assumptions: [
      "the whole dose is burnt before air can bring oxygen back",
      "strength by volume at about 20 °C",
    ],
    cautions: [
      ...verdict,
      caution("carbon-ramp-rule", {}, "note"),
      ...carbonCautions(route, reservoirPercent.high),
    ],
    driver: plan.at(-1)?.drivers.oxygenPerDose,
  };
}
