import { type Answer, type Constant, caution, type NoAnswer, noAnswer } from "../result.ts";
import { DENSITY_EQUATION } from "../water/evidence.ts";
import {
  type Conversion,
  type ConversionQuestion,
  type Converted,
  densityOf,
  differs,
  FITTED_FIGURES,
  NO_WATER,
  type Of,
  plain,
  waterOf,
} from "./conversion.ts";
import { type ConcentrationTarget, concentrationTarget } from "./conversion-target.ts";
import { type Driver, propagate } from "./estimate.ts";
import { type Basis, FORMS, formOf, type Substance } from "./substances.ts";

/** A concentration on another basis, in moles, or per kilogram. Source: standard-atomic-weights, millero-poisson-1981. */
export function convertedConcentration(
  question: ConversionQuestion,
  { entry, per, isFormSaid }: Of<"concentration">,
): Answer<Conversion> | NoAnswer {
  const { to } = question;
  const { estimate, basis } = entry;
  const named = FORMS.find(
    ({ names }) => to !== undefined && names.some((name) => says(to, name)),
  )?.substance;
  const substance = entry.substance ?? named;
  const targets =
    to === undefined ? usualConcentrations(substance, basis) : [concentrationTarget(to, substance, basis)];
  const [first] = targets;
  const isOther = entry.substance !== undefined && named !== undefined && named !== entry.substance;
  if (first === undefined || isOther)
    return differs("concentration", to ?? "", ["mg/L", "µg/L", "mg/kg", "µmol/L", "mg/L as N"]);
  const water = waterOf(question);
  if (water !== undefined && "kind" in water) return water;
  if (to !== undefined && first.per !== per && water === undefined)
    return noAnswer("conversion-needs", { what: "the salinity of the water", example: "“salinity:35 ppt”" });
  const possible = targets.filter(
    (target) => target !== undefined && (target.per === per || water !== undefined),
  );
  const results: { readonly row: Converted; readonly driver: Driver | undefined }[] = [];
  for (const target of possible) {
    if (target === undefined) continue;
    const share = basisFactor(substance, basis, target.basis);
    if (share === undefined)
      return noAnswer("conversion-needs", { what: "to know of which substance", example: "“of:nitrate”" });
    const isAcross = target.per !== per;
    const { estimates, drivers } = propagate(
      { "the figure typed": estimate, ...(isAcross && water !== undefined ? water : NO_WATER) },
      (given) => {
        const kgPerL = isAcross ? densityOf(given) / 1000 : 1;
        const across = per === "L" ? 1 / kgPerL : kgPerL;
        return { figure: (given["the figure typed"] * share * across) / target.mgPerUnit };
      },
    );
    results.push({
      row: { unit: target.label, estimate: estimates.figure, significant: FITTED_FIGURES },
      driver: drivers.figure,
    });
  }
  const rows = results.map(({ row }) => row);
  const form = substance === undefined ? undefined : formOf(substance, basis);
  const isForms = substance !== undefined && FORMS.filter((each) => each.substance === substance).length > 1;
  const isAcross = possible.some((target) => target?.per !== per);
  return {
    ...plain("concentration", to === undefined ? undefined : rows[0], to === undefined ? rows : []),
    method: "By molar masses and, between litres and kilograms, by the density of the water",
    working: [
      ...(form === undefined
        ? []
        : [`one mole of ${form.label} weighs ${Number(form.gPerMol.toPrecision(7))} g`]),
      "milligrams on another basis = milligrams × molar mass of that basis ÷ molar mass of this one",
      ...(isAcross ? ["mg per kg = mg per litre ÷ density in kg/L"] : []),
    ],
    constants: [...massesOf(substance), ...(isAcross ? [DENSITY_EQUATION] : [])],
    sources: [
      ...(substance === undefined ? (["definition"] as const) : (["standard-atomic-weights"] as const)),
      ...(isAcross ? (["millero-poisson-1981"] as const) : []),
    ],
    cautions: [
      ...(isForms && !isFormSaid && form !== undefined && to !== undefined
        ? [caution("form-not-said", { as: form.label }, "note")]
        : []),
      ...(entry.typedUnit === "ppm" ? [caution("ppm-is-mg-per-litre-here", {}, "note")] : []),
    ],
    driver: results[0]?.driver,
  };
}

function says(text: string, name: string): boolean {
  return (
    name.length > 2 &&
    text
      .toLowerCase()
      .split(/[\s()]+/)
      .includes(name)
  );
}

/** Grams on one basis for a gram on another; undefined when the substance is not known. */
function basisFactor(
  substance: Substance | undefined,
  from: Basis,
  to: Basis | undefined,
): number | undefined {
  if (to === undefined || to === from) return 1;
  const [a, b] = [substance, substance].map((each, at) =>
    each === undefined ? undefined : formOf(each, at === 0 ? from : to),
  );
  return a === undefined || b === undefined ? undefined : b.gPerMol / a.gPerMol;
}

/** The units a concentration is usually met in. */
function usualConcentrations(
  substance: Substance | undefined,
  basis: Basis,
): readonly (ConcentrationTarget | undefined)[] {
  const forms = FORMS.filter((form) => form.substance === substance);
  const perLitre = forms.length > 1 ? forms.map(({ label }) => `mg/L as ${label}`) : ["mg/L"];
  const moles = substance === undefined ? [] : ["µmol/L", "µmol/kg"];
  return [...perLitre, "µg/L", "mg/kg", ...moles].map((unit) => concentrationTarget(unit, substance, basis));
}

function massesOf(substance: Substance | undefined): readonly Constant[] {
  return FORMS.filter((form) => form.substance === substance).map(({ label, gPerMol }) => ({
    name: `molar mass of ${label}`,
    value: `${Number(gPerMol.toPrecision(7))} g/mol`,
    source: "standard-atomic-weights",
  }));
}
