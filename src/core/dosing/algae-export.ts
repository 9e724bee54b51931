import { fromNitrogen, type MgNPerL } from "../nitrogen/nitrogen-units.ts";
import { between, type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Grams, type Litres, type MgPerL } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { unusableFigure } from "./usable-figures.ts";

/** What is left of wet algae once dried. Source: algae-composition, from memory. */
export const ALGAE_DRY_SHARE = between(as<Fraction>(0.05), as<Fraction>(0.15));
/** Nitrogen of well-fed green algae, by dry weight. Source: algae-composition; huo-2024 found 0.0348 in Ulva. */
export const ALGAE_NITROGEN = between(as<Fraction>(0.02), as<Fraction>(0.05), as<Fraction>(0.03));

/** Nitrogen that leaves with a harvest. Source: mass-balance. */
export function nitrogenInAlgae(wet: Grams, dryShare: Fraction, nitrogenOfDry: Fraction): Grams {
  return as<Grams>(wet * dryShare * nitrogenOfDry);
}

/** Fall of nitrate that an amount of nitrogen stands for, mg/L as NO₃. Source: standard-atomic-weights. */
export function nitrateOf(nitrogen: Grams, volumeL: Litres): MgPerL {
  return as<MgPerL>(fromNitrogen(as<MgNPerL>((nitrogen * 1000) / volumeL), "NO3"));
}

/** How much wet algae has to leave each week to take a given amount of nitrogen with it. */
export function algaeExport(question: {
  readonly nitrogenPerWeek: Estimate<Grams>;
  readonly systemVolume: Estimate<Litres>;
  readonly dryShare?: Estimate<Fraction>;
  readonly nitrogenOfDry?: Estimate<Fraction>;
}): Answer<{ readonly wetPerWeek: Estimate<Grams>; readonly nitratePerWeek: Estimate<MgPerL> }> | NoAnswer {
  const {
    nitrogenPerWeek,
    systemVolume,
    dryShare = ALGAE_DRY_SHARE,
    nitrogenOfDry = ALGAE_NITROGEN,
  } = question;
  const unusable = unusableFigure([
    { name: "nitrogen to export a week", estimate: nitrogenPerWeek, unit: "g" },
    { name: "net volume", estimate: systemVolume, unit: "L" },
    { name: "dry share of wet algae", estimate: dryShare, unit: "of one", max: 1 },
    { name: "nitrogen of dry algae", estimate: nitrogenOfDry, unit: "of one", max: 1 },
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate(
    {
      "nitrogen to export": nitrogenPerWeek,
      "net volume": systemVolume,
      "dry share of wet algae": dryShare,
      "nitrogen of dry algae": nitrogenOfDry,
    },
    (v) => ({
      wetPerWeek: as<Grams>(
        v["nitrogen to export"] /
          nitrogenInAlgae(as<Grams>(1), v["dry share of wet algae"], v["nitrogen of dry algae"]),
      ),
      nitratePerWeek: nitrateOf(v["nitrogen to export"], v["net volume"]),
    }),
  );
  return {
    kind: "answer",
    value: estimates,
    method: "The nitrogen a harvest carries off: wet weight × dry share × nitrogen of the dry",
    working: [
      "wet algae = nitrogen / (dry share × nitrogen of dry algae)",
      "nitrate = nitrogen × 4.4268 / net volume",
    ],
    constants: [
      { name: "dry share of wet algae", value: "0.05–0.15", source: "algae-composition" },
      { name: "nitrogen of dry algae", value: "0.02–0.05", source: "algae-composition" },
    ],
    sources: ["mass-balance", "algae-composition", "huo-2024", "standard-atomic-weights"],
    assumptions: ["well-fed green algae, drained but not dried", "the same weight grows again every week"],
    cautions: [caution("harvest-or-no-export", {}, "warning")],
    driver: drivers.wetPerWeek,
  };
}
