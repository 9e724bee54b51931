import type { Estimate } from "../quantity/estimate.ts";
import { as, type Fraction, type Litres, type MgPerL } from "../quantity/units.ts";
import { type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { alcoholCautions } from "./alcohol.ts";
import { AEROBIC_YIELD, oxygenTakenByDose } from "./ethanol-denitrification.ts";

/**
 * Which way the nitrogen leaves. "anoxic denitrification": in a slow box without oxygen, as gas.
 * "aerobic assimilation": in the open water, as bacteria that the skimmer has to take out.
 */
export type CarbonRoute = "anoxic denitrification" | "aerobic assimilation";

/** What has to be so before any carbon goes in. */
export interface CarbonConditions {
  readonly arePumpsRunning: boolean;
  readonly isAerationRunning: boolean;
  /** Skimming takes out what grew; without it the second route only moves the nitrogen about. */
  readonly isSkimmerRunning: boolean;
  readonly areFishEating: boolean;
  readonly isDenatured: boolean;
}

/** Oxygen one dose may take, mg/L: above the first it is warned of, above the second refused. Source: assumption. */
export const OXYGEN_WARN = as<MgPerL>(0.5);
export const OXYGEN_REFUSE = as<MgPerL>(1.5);

/** The refusal when no carbon should be dosed at all today. Source: common-practice. */
export function carbonForbidden(route: CarbonRoute, conditions: CarbonConditions): NoAnswer | undefined {
  if (conditions.isDenatured) return noAnswer("alcohol-is-denatured", {});
  if (!conditions.arePumpsRunning) return noAnswer("carbon-needs-flow", { off: "the pumps are off" });
  if (!conditions.isAerationRunning) return noAnswer("carbon-needs-flow", { off: "the aeration is off" });
  if (route === "aerobic assimilation" && !conditions.isSkimmerRunning) {
    return noAnswer("carbon-needs-flow", { off: "the skimmer is off" });
  }
  if (!conditions.areFishEating) return noAnswer("carbon-with-fish-off-food", {});
  return undefined;
}

/** What one dose takes from the water: as bacteria usually burn it, and if they burn all of it. */
export function doseOxygen(doseL: Litres, strength: Fraction, systemL: Litres) {
  return {
    likely: oxygenTakenByDose(doseL, strength, systemL, AEROBIC_YIELD),
    worst: oxygenTakenByDose(doseL, strength, systemL, as<Fraction>(0)),
  };
}

/** Fewest equal doses a day that keep each below the warning. Source: assumption. */
export function dosesBelowWarning(dailyOxygen: MgPerL): number {
  return Math.max(1, Math.ceil(dailyOxygen / OXYGEN_WARN - 1e-9));
}

/** The verdict on one dose's oxygen, taken at the high end of its range. */
export function judgeDoseOxygen(
  likely: Estimate<MgPerL>,
  worst: Estimate<MgPerL>,
  dosesPerDay: number,
): NoAnswer | readonly Caution[] {
  const dosesNeeded = dosesBelowWarning(as<MgPerL>(likely.high * dosesPerDay));
  if (likely.high > OXYGEN_REFUSE) {
    return noAnswer("carbon-takes-too-much-oxygen", { mgPerL: likely.high, max: OXYGEN_REFUSE, dosesNeeded });
  }
  if (likely.high <= OXYGEN_WARN) return [];
  return [
    caution("carbon-takes-oxygen", {
      mgPerL: likely.high,
      worstMgPerL: worst.high,
      dosesPerDay: dosesNeeded,
    }),
  ];
}

/** What everyone who doses alcohol is told, whichever the sum. */
export function carbonCautions(route: CarbonRoute, percentByVolume: number): Caution[] {
  return [
    caution("carbon-only-with-flow", {}, "danger"),
    caution("carbon-stop-signs", {}, "danger"),
    ...(route === "anoxic denitrification"
      ? [caution("sulphide-when-nitrate-is-gone", {}, "danger")]
      : [caution("skim-out-what-grew", {}, "warning")]),
    caution("phosphate-may-run-out", {}, "note"),
    caution("missed-dose-stays-missed", {}, "warning"),
    ...alcoholCautions(percentByVolume),
    caution("no-denatured-alcohol", {}, "warning"),
  ];
}
