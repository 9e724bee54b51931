import { type Estimate, propagate } from "../quantity/estimate.ts";
import {
  type AbsoluteSalinity,
  as,
  type DegreesC,
  type KgPerM3,
  type MilliSiemensPerCm,
  type PracticalSalinity,
  type Quantity,
  type SpecificGravity,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { CONDUCTIVITY_FITTED, conductivityFromSalinity } from "./conductivity.ts";
import { DENSITY_FITTED, seawaterDensity } from "./density.ts";
import { DENSITY_EQUATION, SALT_PER_SALINITY } from "./evidence.ts";
import { figure } from "./figure.ts";
import {
  absoluteSalinity,
  type Chlorinity,
  chlorinity,
  type GramsPerLitre,
  saltGramsPerLitre,
} from "./salinity-scales.ts";
import { specificGravity } from "./specific-gravity.ts";
import { cut, firstNotCredible, fittedRange, keptPossible, SALINITY, TEMPERATURE } from "./usable.ts";

/** One water on every scale its salinity is quoted in. */
export interface SalinityScales {
  readonly practical: Estimate<PracticalSalinity>;
  /** Grams of salt per kilogram of salt water. */
  readonly absolute: Estimate<AbsoluteSalinity>;
  /** Grams of salt per litre of salt water, at the water's temperature. */
  readonly gramsPerLitre: Estimate<GramsPerLitre>;
  /** Grams of salt per kilogram of fresh water it was dissolved in. */
  readonly gramsPerKgOfWater: Estimate<Quantity<"g salt/kg water">>;
  readonly gravity25at25: Estimate<SpecificGravity>;
  readonly gravity20at20: Estimate<SpecificGravity>;
  /** 60 °F for both, which is 15.56 °C. */
  readonly gravity60FAt60F: Estimate<SpecificGravity>;
  readonly gravity15point6at4: Estimate<SpecificGravity>;
  readonly gravity20at4: Estimate<SpecificGravity>;
  readonly conductivityAt25: Estimate<MilliSiemensPerCm>;
  /** Uncompensated, at the water's temperature. */
  readonly conductivityAsMeasured: Estimate<MilliSiemensPerCm>;
  readonly chlorinity: Estimate<Chlorinity>;
  /** At the water's temperature. */
  readonly density: Estimate<KgPerM3>;
}

const SIXTY_FAHRENHEIT = (60 - 32) / 1.8;

/** One salinity on all the scales a book, a bag or an instrument may use. */
export function convertSalinity(
  salinity: Estimate<PracticalSalinity>,
  temperature: Estimate<DegreesC>,
): Answer<SalinityScales> | NoAnswer {
  const unusable = firstNotCredible([
    ["salinity", salinity, SALINITY],
    ["temperature", temperature, TEMPERATURE],
  ]);
  if (unusable !== undefined) return unusable;

  const { estimates, drivers } = propagate(
    { salinity: cut(salinity, SALINITY), temperature: cut(temperature, TEMPERATURE) },
    ({ salinity: s, temperature: t }) => {
      const absolute = absoluteSalinity(s);
      const gravity = (sampleC: number, referenceC: number) =>
        specificGravity(s, as<DegreesC>(sampleC), as<DegreesC>(referenceC));
      return {
        practical: s,
        absolute,
        gramsPerLitre: saltGramsPerLitre(s, t),
        gramsPerKgOfWater: as<Quantity<"g salt/kg water">>((1000 * absolute) / (1000 - absolute)),
        gravity25at25: gravity(25, 25),
        gravity20at20: gravity(20, 20),
        gravity60FAt60F: gravity(SIXTY_FAHRENHEIT, SIXTY_FAHRENHEIT),
        gravity15point6at4: gravity(15.6, 4),
        gravity20at4: gravity(20, 4),
        conductivityAt25: conductivityFromSalinity(s, as<DegreesC>(25)),
        conductivityAsMeasured: conductivityFromSalinity(s, t),
        chlorinity: chlorinity(s),
        density: seawaterDensity(s, t),
      };
    },
  );
  const s = figure(estimates.practical.best);
  const density = figure(estimates.density.best, 6);

  return {
    kind: "answer",
    value: keptPossible(estimates),
    method:
      "Density by EOS-80, conductivity by the Practical Salinity Scale 1978, grams by the reference composition.",
    working: [
      `grams per kg of salt water = ${s} × 35.16504/35 = ${figure(estimates.absolute.best, 5)}`,
      `density at ${figure(temperature.best)} °C = ${density} kg/m³; grams per litre = grams per kg × density ÷ 1000 = ${figure(estimates.gramsPerLitre.best, 5)}`,
      "specific gravity = density at the sample's temperature ÷ density of pure water at the reference temperature; both temperatures are part of the figure",
      "conductivity: the one at which the Practical Salinity Scale gives this salinity at that temperature",
      `chlorinity = ${s} ÷ 1.80655 = ${figure(estimates.chlorinity.best, 5)} g/kg`,
    ],
    constants: [
      DENSITY_EQUATION,
      SALT_PER_SALINITY,
      { name: "salinity per chlorinity", value: "1.80655", source: "wooster-1969" },
      {
        name: "conductivity of standard seawater at 15 °C",
        value: "42.914 mS/cm",
        source: "culkin-smith-1980",
      },
    ],
    sources: [
      "millero-poisson-1981",
      "millero-2008",
      "fofonoff-millard-1983",
      "culkin-smith-1980",
      "wooster-1969",
      ...(salinity.low < CONDUCTIVITY_FITTED.salinity.min
        ? (["hill-dauphinee-woods-1986", "pawlowicz-2008"] as const)
        : []),
      "jcgm-100-2008",
    ],
    assumptions: ["the salts are in the proportions of seawater", "sea-level pressure"],
    cautions: [
      caution(
        "ppt-has-two-meanings",
        { perKg: estimates.absolute.best, perLitre: estimates.gramsPerLitre.best },
        "note",
      ),
      ...(salinity.best < CONDUCTIVITY_FITTED.salinity.min ? [caution("not-for-tap-water", {})] : []),
      ...fittedRange("salinity", salinity, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("temperature", temperature, "°C", CONDUCTIVITY_FITTED.temperatureC),
    ],
    driver: drivers.practical,
  };
}
