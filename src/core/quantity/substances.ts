/** Standard atomic weights, g/mol. Source: standard-atomic-weights. */
const H = 1.00794;
const B = 10.811;
const C = 12.0107;
const N = 14.0067;
const O = 15.9994;
const MG = 24.305;
const P = 30.973762;
const CL = 35.453;
const K = 39.0983;
const CA = 40.078;
const FE = 55.845;
const CU = 63.546;
const SR = 87.62;

/** What the milligrams are milligrams of: the substance as it is named, or one part of it. */
export type Basis = "ion" | "N" | "P" | "NH3" | "NH4";

export type Substance =
  | "nitrate"
  | "nitrite"
  | "ammonia"
  | "phosphate"
  | "calcium"
  | "magnesium"
  | "potassium"
  | "strontium"
  | "boron"
  | "iron"
  | "copper"
  | "chlorine"
  | "oxygen"
  | "carbon dioxide";

export interface SubstanceForm {
  readonly substance: Substance;
  readonly basis: Basis;
  readonly gPerMol: number;
  /** As chemists write it; reads back. */
  readonly label: string;
  /** In lower case, cleaned. */
  readonly names: readonly string[];
}

const form = (
  substance: Substance,
  basis: Basis,
  gPerMol: number,
  label: string,
  ...names: readonly string[]
): SubstanceForm => ({ substance, basis, gPerMol, label, names: [label.toLowerCase(), ...names] });

/** Every form a kit or a laboratory prints; the first of a substance is the usual one, but for ammonia. */
export const FORMS: readonly SubstanceForm[] = [
  form("nitrate", "ion", N + 3 * O, "NO3", "nitrate"),
  form(
    "nitrate",
    "N",
    N,
    "NO3-N",
    "no3n",
    "no3 n",
    "nitrate-n",
    "nitrate n",
    "nitrate nitrogen",
    "nitrate-nitrogen",
  ),
  form("nitrite", "ion", N + 2 * O, "NO2", "nitrite"),
  form(
    "nitrite",
    "N",
    N,
    "NO2-N",
    "no2n",
    "no2 n",
    "nitrite-n",
    "nitrite n",
    "nitrite nitrogen",
    "nitrite-nitrogen",
  ),
  form(
    "ammonia",
    "N",
    N,
    "TAN",
    "ammonia-n",
    "ammonia n",
    "ammonia nitrogen",
    "total ammonia nitrogen",
    "nh3-n",
    "nh4-n",
    "nh3/nh4-n",
  ),
  form("ammonia", "NH3", N + 3 * H, "NH3"),
  form("ammonia", "NH4", N + 4 * H, "NH4", "ammonium"),
  form("phosphate", "ion", P + 4 * O, "PO4", "phosphate", "orthophosphate"),
  form(
    "phosphate",
    "P",
    P,
    "PO4-P",
    "po4p",
    "phosphate-p",
    "phosphate p",
    "phosphorus",
    "phosphate phosphorus",
  ),
  form("calcium", "ion", CA, "Ca", "calcium", "ca^2"),
  form("magnesium", "ion", MG, "Mg", "magnesium", "mg^2"),
  form("potassium", "ion", K, "K", "potassium"),
  form("strontium", "ion", SR, "Sr", "strontium"),
  form("boron", "ion", B, "B", "boron"),
  form("iron", "ion", FE, "Fe", "iron"),
  form("copper", "ion", CU, "Cu", "copper"),
  form("chlorine", "ion", 2 * CL, "Cl2", "chlorine"),
  form("oxygen", "ion", 2 * O, "O2", "oxygen", "do", "dissolved oxygen"),
  form("carbon dioxide", "ion", C + 2 * O, "CO2", "carbon dioxide"),
];

/** The form of a substance on a basis; with no substance, any that gives the basis its meaning. */
export function formOf(substance: Substance | undefined, basis: Basis): SubstanceForm | undefined {
  return FORMS.find(
    (each) =>
      each.basis === basis && (substance === undefined ? basis !== "ion" : each.substance === substance),
  );
}

/** Milligrams on another basis of the same substance; undefined when the substance has not both. */
export function onBasis(mgPerL: number, substance: Substance, from: Basis, to: Basis): number | undefined {
  const a = formOf(substance, from);
  const b = formOf(substance, to);
  return a === undefined || b === undefined ? undefined : (mgPerL / a.gPerMol) * b.gPerMol;
}
