import { type Estimate, propagate } from "../quantity/estimate.ts";
import type { DegreesC, MgPerL, PracticalSalinity } from "../quantity/units.ts";
import type { Answer, NoAnswer } from "../result.ts";
import { DENSITY_FITTED } from "./density.ts";
import { DENSITY_EQUATION, SALT_PER_SALINITY } from "./evidence.ts";
import { figure } from "./figure.ts";
import {
  ION_MASS_FRACTION,
  type IonGramsPerKg,
  ionGramsPerKg,
  ionMgPerL,
  type SeawaterIon,
} from "./reference-composition.ts";
import { cut, firstNotCredible, fittedRange, keptPossible, SALINITY, TEMPERATURE } from "./usable.ts";

export interface NaturalIon {
  /** By volume, as test kits count. */
  readonly perLitre: Estimate<MgPerL>;
  /** By mass of solution, as tables of the sea count. */
  readonly perKg: Estimate<IonGramsPerKg>;
}

/** How much of one ion natural seawater of this salinity holds. */
export function naturalIon(
  ion: SeawaterIon,
  salinity: Estimate<PracticalSalinity>,
  temperature: Estimate<DegreesC>,
): Answer<NaturalIon> | NoAnswer {
  const unusable = firstNotCredible([
    ["salinity", salinity, SALINITY],
    ["temperature", temperature, TEMPERATURE],
  ]);
  if (unusable !== undefined) return unusable;
  const { estimates, drivers } = propagate(
    { salinity: cut(salinity, SALINITY), temperature: cut(temperature, TEMPERATURE) },
    ({ salinity: s, temperature: t }) => ({
      perLitre: ionMgPerL(ion, s, t),
      perKg: ionGramsPerKg(ion, s),
    }),
  );
  const { perLitre, perKg } = keptPossible(estimates);
  return {
    kind: "answer",
    value: { perLitre, perKg },
    method: "Share of the ion in sea salt, times the salt in the water.",
    working: [
      `grams per kg = ${ION_MASS_FRACTION[ion]} × ${figure(salinity.best)} × 35.16504/35 = ${figure(perKg.best)}`,
      `mg per litre = grams per kg × density in kg/m³ = ${figure(perLitre.best)}`,
    ],
    constants: [
      { name: `share of ${ion} in sea salt`, value: `${ION_MASS_FRACTION[ion]} g/g`, source: "millero-2008" },
      SALT_PER_SALINITY,
      DENSITY_EQUATION,
    ],
    sources: ["millero-2008", "teos-10-manual", "millero-poisson-1981", "jcgm-100-2008"],
    assumptions: ["the salts are in the proportions of seawater"],
    cautions: [
      ...fittedRange("salinity", salinity, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("temperature", temperature, "°C", DENSITY_FITTED.temperatureC),
    ],
    driver: drivers.perLitre,
  };
}
