import { alkalinityDrop, type DegreesKH } from "../nitrogen/nitrification.ts";
import {
  asNitrogen,
  fromNitrogen,
  type MgNPerL,
  NITROGEN_G_PER_MOL,
  type NitrogenForm,
} from "../nitrogen/nitrogen-units.ts";
import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Grams, type Litres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { unusableFigure } from "./usable-figures.ts";

/** Source: standard-atomic-weights. */
const AMMONIUM_CHLORIDE_G_PER_MOL = 53.4915;

/** More than this, as nitrogen, slows the second step of the cycle. Source: common-practice. */
const CYCLE_MAX_MG_N_PER_L = 3;

/** Pure ammonium chloride that brings a volume to so much ammonia-nitrogen. Source: standard-atomic-weights. */
export function ammoniumChlorideFor(nitrogen: MgNPerL, volumeL: Litres): Grams {
  return as<Grams>((nitrogen * volumeL * AMMONIUM_CHLORIDE_G_PER_MOL) / NITROGEN_G_PER_MOL / 1000);
}

/** The dose of ammonium chloride to feed a filter with before any animal is in, in the unit the kit prints. */
export function ammoniumDose(question: {
  readonly systemVolume: Estimate<Litres>;
  readonly target: Estimate;
  /** What the kit means by "ammonia": nitrogen, or the whole ion or molecule. */
  readonly form: Extract<NitrogenForm, "TAN" | "NH4" | "NH3">;
  readonly purity: Estimate<Fraction>;
  readonly hasAnimals: boolean;
}):
  | Answer<{
      readonly mass: Estimate<Grams>;
      readonly asNitrogen: Estimate<MgNPerL>;
      /** Alkalinity that taking all of it to nitrate uses up. */
      readonly alkalinityUsed: Estimate<DegreesKH>;
    }>
  | NoAnswer {
  const { systemVolume, target, form, purity } = question;
  if (question.hasAnimals) return noAnswer("ammonia-with-animals", {});
  const unusable = unusableFigure([
    { name: "net volume", estimate: systemVolume, unit: "L" },
    { name: "target ammonia", estimate: target, unit: "mg/L" },
    { name: "purity", estimate: purity, unit: "of one", max: 1 },
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate({ "net volume": systemVolume, target, purity }, (v) => {
    const nitrogen = asNitrogen(v.target, form);
    return {
      mass: as<Grams>(ammoniumChlorideFor(nitrogen, v["net volume"]) / v.purity),
      asNitrogen: nitrogen,
      alkalinityUsed: alkalinityDrop(as<Grams>(nitrogen / 1000), as<Litres>(1), "ammonium salt"),
    };
  });
  const mgNPerL = estimates.asNitrogen.best;
  const slow: Caution[] =
    mgNPerL > CYCLE_MAX_MG_N_PER_L
      ? [caution("ammonia-slows-the-cycle", { mgNPerL, max: CYCLE_MAX_MG_N_PER_L })]
      : [];
  return {
    kind: "answer",
    value: estimates,
    method: "Ammonium chloride by the nitrogen it holds",
    working: [
      "target as nitrogen = target in the kit's unit / mass of that form per nitrogen",
      "mass = target as nitrogen × net volume × 53.4915 / 14.0067 / purity",
      "alkalinity used = 2 equivalents per mole of nitrogen",
    ],
    constants: [
      { name: "molar mass of ammonium chloride", value: "53.4915 g/mol", source: "standard-atomic-weights" },
      { name: "alkalinity used by an ammonium salt", value: "2 eq/mol N", source: "wolf-gladrow-2007" },
      { name: "most ammonia while cycling", value: "3 mg N/L", source: "common-practice" },
    ],
    sources: ["standard-atomic-weights", "wolf-gladrow-2007", "common-practice"],
    assumptions: [
      `the target is meant ${form === "TAN" ? "as nitrogen" : `as ${form}`}`,
      "no ammonia is there yet",
    ],
    cautions: [
      caution("ammonia-no-animals", {}, "danger"),
      caution("ammonia-unit-said", {
        mgNPerL,
        asNh4: fromNitrogen(estimates.asNitrogen.best, "NH4"),
        asNh3: fromNitrogen(estimates.asNitrogen.best, "NH3"),
      }),
      ...slow,
      caution("cycling-uses-alkalinity", { dkh: estimates.alkalinityUsed.best }, "note"),
    ],
    driver: drivers.mass,
  };
}
