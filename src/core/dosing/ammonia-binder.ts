import { type MgNPerL, NITROGEN_G_PER_MOL } from "../nitrogen/nitrogen-units.ts";
import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Grams, type Hours, type Litres, type MgPerL } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { unusableFigure } from "./usable-figures.ts";

/** Pure reagents that tie up ammonia one to one, g/mol. Source: general-chemistry, from memory. */
export const BINDERS = {
  "sodium hydroxymethanesulfonate": { molarMass: 134.087, oxygenGPerMol: 0 },
  "sodium hydroxymethanesulfinate dihydrate": { molarMass: 154.12, oxygenGPerMol: 16 },
} as const;
export type BinderReagent = keyof typeof BINDERS;

/** How long ammonia readings mean nothing after a dose. Source: common-practice. */
const BLIND = { likelyH: 24, longestH: 48 } as const;

/** Ways an ammonia test works. */
export type AmmoniaTest = "salicylate" | "Nessler" | "gas membrane";

/** Pure reagent that ties up the ammonia of a volume, mole for mole. Source: general-chemistry. */
export function binderMass(reagentGPerMol: number, nitrogen: MgNPerL, volumeL: Litres): Grams {
  return as<Grams>(((nitrogen * volumeL) / 1000 / NITROGEN_G_PER_MOL) * reagentGPerMol);
}

/**
 * How much of a named, pure reagent would match the ammonia there. A bottled product says its own dose:
 * its strength is on no other paper.
 */
export function binderDose(question: {
  readonly reagent: BinderReagent;
  /** As the label states it. */
  readonly purity: Estimate<Fraction>;
  readonly ammonia: Estimate<MgNPerL>;
  readonly systemVolume: Estimate<Litres>;
}): Answer<{ readonly mass: Estimate<Grams>; readonly oxygenTaken: Estimate<MgPerL> }> | NoAnswer {
  const { reagent, purity, ammonia, systemVolume } = question;
  const unusable = unusableFigure([
    { name: "ammonia, as nitrogen", estimate: ammonia, unit: "mg/L" },
    { name: "net volume", estimate: systemVolume, unit: "L" },
    { name: "purity", estimate: purity, unit: "of one", max: 1 },
  ]);
  if (unusable !== undefined) return unusable;
  const { molarMass, oxygenGPerMol } = BINDERS[reagent];
  const { estimates, drivers } = propagate({ ammonia, "net volume": systemVolume, purity }, (v) => ({
    mass: as<Grams>(binderMass(molarMass, v.ammonia, v["net volume"]) / v.purity),
    oxygenTaken: as<MgPerL>((v.ammonia / NITROGEN_G_PER_MOL) * oxygenGPerMol),
  }));
  return {
    kind: "answer",
    value: estimates,
    method: "One mole of reagent for each mole of ammonia",
    working: ["mass = ammonia-nitrogen × net volume / 14.0067 × molar mass / purity"],
    constants: [
      { name: `molar mass of ${reagent}`, value: `${molarMass} g/mol`, source: "general-chemistry" },
    ],
    sources: ["general-chemistry", "standard-atomic-weights"],
    assumptions: ["the reagent reacts completely, one to one", "the label's purity is right"],
    cautions: [
      caution("binder-strength-from-label", {}, "warning"),
      caution("binder-nitrogen-stays", {}, "note"),
      caution("binder-blinds-the-test", { hours: BLIND.longestH }, "warning"),
      ...(oxygenGPerMol > 0
        ? [caution("binder-takes-oxygen", { mgPerL: estimates.oxygenTaken.high }, "danger")]
        : []),
    ],
    driver: drivers.mass,
  };
}

/** What an ammonia reading is worth after a binder went in. */
export interface BinderReading {
  readonly verdict: "not interpretable" | "doubtful" | "interpretable";
  /** Until the reading means something again; nothing when it does. */
  readonly waitHours: Hours;
}

/** Whether an ammonia reading can be believed so many hours after a binder. */
export function ammoniaAfterBinder(question: {
  readonly hoursSince: Hours;
  readonly test: AmmoniaTest;
}): Answer<BinderReading> | NoAnswer {
  const { hoursSince, test } = question;
  const unusable = unusableFigure([
    { name: "hours since the binder", estimate: exactly(hoursSince), unit: "h", zeroAllowed: true },
  ]);
  if (unusable !== undefined) return unusable;
  const readsFree = test === "gas membrane";
  const waitHours = as<Hours>(readsFree ? 0 : Math.max(0, BLIND.longestH - hoursSince));
  const verdict =
    waitHours === 0 ? "interpretable" : hoursSince < BLIND.likelyH ? "not interpretable" : "doubtful";
  return {
    kind: "answer",
    value: { verdict, waitHours },
    method: "Tests that raise the pH set bound ammonia free again, and read it as if it were still there",
    working: [`a ${test} test ${readsFree ? "sees only free ammonia" : "reads bound ammonia too"}`],
    constants: [{ name: "readings mean nothing for", value: "24–48 h", source: "common-practice" }],
    sources: ["general-chemistry", "common-practice"],
    assumptions: ["one dose of binder, none since"],
    cautions: waitHours > 0 ? [caution("binder-blinds-the-test", { hours: waitHours }, "warning")] : [],
  };
}
