import { as, type Quantity } from "../quantity/units.ts";

/** Milligrams of nitrogen per litre: the core's own unit for ammonia, nitrite and nitrate alike. */
export type MgNPerL = Quantity<"mg N/L">;
/** Grams of nitrogen per day. */
export type GramsNPerDay = Quantity<"g N/d">;

/** What a kit or a feed table may print: the whole ion or molecule, or only its nitrogen. */
export type NitrogenForm = "NO3-N" | "NO3" | "NO2-N" | "NO2" | "NH4-N" | "NH4" | "NH3-N" | "NH3" | "TAN";

/** Source: standard-atomic-weights. */
export const NITROGEN_G_PER_MOL = 14.0067;
const OXYGEN_G_PER_MOL = 15.9994;
const HYDROGEN_G_PER_MOL = 1.00794;

/** Mass of the named form that holds one unit mass of nitrogen. */
const MASS_PER_NITROGEN: Record<NitrogenForm, number> = {
  TAN: 1,
  "NO3-N": 1,
  "NO2-N": 1,
  "NH4-N": 1,
  "NH3-N": 1,
  NO3: (NITROGEN_G_PER_MOL + 3 * OXYGEN_G_PER_MOL) / NITROGEN_G_PER_MOL,
  NO2: (NITROGEN_G_PER_MOL + 2 * OXYGEN_G_PER_MOL) / NITROGEN_G_PER_MOL,
  NH4: (NITROGEN_G_PER_MOL + 4 * HYDROGEN_G_PER_MOL) / NITROGEN_G_PER_MOL,
  NH3: (NITROGEN_G_PER_MOL + 3 * HYDROGEN_G_PER_MOL) / NITROGEN_G_PER_MOL,
};

/** A reading brought to mg N/L. A kit's "ammonia" may mean N, NH₃ or NH₄: up to 29 % apart.
 *  Source: standard-atomic-weights. */
export function asNitrogen(value: number, form: NitrogenForm): MgNPerL {
  return as<MgNPerL>(value / MASS_PER_NITROGEN[form]);
}

/** A concentration of nitrogen as a kit of the named form would print it, mg/L. Source: standard-atomic-weights. */
export function fromNitrogen(value: MgNPerL, form: NitrogenForm): number {
  return value * MASS_PER_NITROGEN[form];
}

/** One form of printing turned into another of the same compound, mg/L. Source: standard-atomic-weights. */
export function convertNitrogen(value: number, from: NitrogenForm, to: NitrogenForm): number {
  return fromNitrogen(asNitrogen(value, from), to);
}
