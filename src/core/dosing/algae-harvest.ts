import type { GramsNPerDay } from "../nitrogen/nitrogen-units.ts";
import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Grams, type Litres, type MgPerL } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { ALGAE_DRY_SHARE, ALGAE_NITROGEN, nitrateOf, nitrogenInAlgae } from "./algae-export.ts";
import { unusableFigure } from "./usable-figures.ts";

/** What one harvest took out of a system. */
export function algaeHarvest(question: {
  /** Drained, not dried. */
  readonly wet: Estimate<Grams>;
  readonly systemVolume: Estimate<Litres>;
  readonly dryShare?: Estimate<Fraction>;
  readonly nitrogenOfDry?: Estimate<Fraction>;
}): Answer<{ readonly nitrogen: Estimate<Grams>; readonly nitrate: Estimate<MgPerL> }> | NoAnswer {
  const { wet, systemVolume, dryShare = ALGAE_DRY_SHARE, nitrogenOfDry = ALGAE_NITROGEN } = question;
  const unusable = unusableFigure([
    { name: "weight of the harvest", estimate: wet, unit: "g" },
    { name: "net volume", estimate: systemVolume, unit: "L" },
    { name: "dry share of wet algae", estimate: dryShare, unit: "of one", max: 1 },
    { name: "nitrogen of dry algae", estimate: nitrogenOfDry, unit: "of one", max: 1 },
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate(
    {
      "weight of the harvest": wet,
      "net volume": systemVolume,
      "dry share of wet algae": dryShare,
      "nitrogen of dry algae": nitrogenOfDry,
    },
    (v) => {
      const nitrogen = nitrogenInAlgae(
        v["weight of the harvest"],
        v["dry share of wet algae"],
        v["nitrogen of dry algae"],
      );
      return { nitrogen, nitrate: nitrateOf(nitrogen, v["net volume"]) };
    },
  );
  return {
    kind: "answer",
    value: estimates,
    method: "The nitrogen a harvest carries off: wet weight × dry share × nitrogen of the dry",
    working: [
      "nitrogen = wet weight × dry share × nitrogen of dry algae",
      "nitrate = nitrogen × 4.4268 / net volume",
    ],
    constants: [
      { name: "dry share of wet algae", value: "0.05–0.15", source: "algae-composition" },
      { name: "nitrogen of dry algae", value: "0.02–0.05", source: "algae-composition" },
    ],
    sources: ["mass-balance", "algae-composition", "huo-2024", "standard-atomic-weights"],
    assumptions: ["well-fed green algae, drained but not dried"],
    cautions: [caution("harvest-or-no-export", {}, "warning")],
    driver: drivers.nitrogen,
  };
}

/** Nitrogen that a weekly harvest carries off each day, where nothing more is known of the algae. Source: mass-balance. */
export function harvestNitrogenPerDay(wetPerWeek: Estimate<Grams>): Estimate<GramsNPerDay> {
  return propagate(
    { wet: wetPerWeek, "dry share": ALGAE_DRY_SHARE, "nitrogen of dry": ALGAE_NITROGEN },
    (v) => ({
      perDay: as<GramsNPerDay>(nitrogenInAlgae(v.wet, v["dry share"], v["nitrogen of dry"]) / 7),
    }),
  ).estimates.perDay;
}
