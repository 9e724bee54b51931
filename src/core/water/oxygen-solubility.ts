import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type KiloPascals,
  type Metres,
  type MgPerL,
  type MicromolPerKg,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer } from "../result.ts";
import { figure } from "./figure.ts";
import {
  OXYGEN_FITTED,
  oxygenSaturation,
  oxygenSaturationPerKg,
  type PercentSaturation,
  percentSaturation,
  pressureAtAltitude,
  SEA_LEVEL_KPA,
} from "./oxygen-saturation.ts";
import { cut, firstNotCredible, fittedRange, keptPossible, SALINITY, TEMPERATURE } from "./usable.ts";

export interface OxygenConditions {
  /** Height above the sea, or the true air pressure there. Sea level when absent. */
  readonly air?:
    | { readonly kind: "altitude"; readonly altitude: Estimate<Metres> }
    | { readonly kind: "pressure"; readonly pressure: Estimate<KiloPascals> }
    | undefined;
  /** A reading to be put beside what the water could hold. */
  readonly measured?: Estimate<MgPerL> | undefined;
}

export interface OxygenSolubility {
  /** Fully aerated, in equilibrium with moist air. */
  readonly saturation: Estimate<MgPerL>;
  readonly saturationPerKg: Estimate<MicromolPerKg>;
  /** The same water with no salt in it. */
  readonly freshWaterSaturation: Estimate<MgPerL>;
  readonly pressure: Estimate<KiloPascals>;
  readonly percentOfSaturation?: Estimate<PercentSaturation>;
}

const ALTITUDE = { unit: "m", min: -500, max: 9000 };
const PRESSURE = { unit: "kPa", min: 25, max: 120 };
const MEASURED = { unit: "mg/L", min: 0, max: 60 };
/** Below this a stocked tank is short of oxygen; above the other, bubbles or algae make more than air
 *  gives. Per cent of saturation. Source: common-practice. */
const LOW_PERCENT = 80;
const HIGH_PERCENT = 110;
/** From this salinity a meter set to fresh water is clearly wrong. Source: assumption. */
const SALTY = 2;

/** How much oxygen water can hold, and what share of it a reading is. */
export function oxygenSolubility(
  salinity: Estimate<PracticalSalinity>,
  temperature: Estimate<DegreesC>,
  conditions: OxygenConditions = {},
): Answer<OxygenSolubility> | NoAnswer {
  const { air } = conditions;
  const measured = conditions.measured ?? exactly(as<MgPerL>(0));
  const unusable = firstNotCredible([
    ["salinity", salinity, SALINITY],
    ["temperature", temperature, TEMPERATURE],
    air?.kind === "altitude"
      ? ["altitude", air.altitude, ALTITUDE]
      : ["air pressure", air?.pressure ?? exactly(SEA_LEVEL_KPA), PRESSURE],
    ["oxygen measured", measured, MEASURED],
  ]);
  if (unusable !== undefined) return unusable;

  const { estimates, drivers } = propagate(
    {
      salinity: cut(salinity, SALINITY),
      temperature: cut(temperature, TEMPERATURE),
      altitude: air?.kind === "altitude" ? cut(air.altitude, ALTITUDE) : exactly(as<Metres>(0)),
      "air pressure": air?.kind === "pressure" ? cut(air.pressure, PRESSURE) : exactly(SEA_LEVEL_KPA),
      "oxygen measured": cut(measured, MEASURED),
    },
    (v) => {
      const { salinity: s, temperature: t } = v;
      const pressure = air?.kind === "altitude" ? pressureAtAltitude(v.altitude) : v["air pressure"];
      const saturation = oxygenSaturation(s, t, pressure);
      const thinning = saturation / oxygenSaturation(s, t);
      return {
        saturation,
        saturationPerKg: as<MicromolPerKg>(oxygenSaturationPerKg(s, t) * thinning),
        freshWaterSaturation: oxygenSaturation(as<PracticalSalinity>(0), t, pressure),
        pressure,
        percentOfSaturation: percentSaturation(v["oxygen measured"], saturation),
      };
    },
  );
  const { percentOfSaturation, ...always } = keptPossible(estimates);
  const isMeasured = conditions.measured !== undefined;
  const saturation = figure(always.saturation.best);

  return {
    kind: "answer",
    value: { ...always, ...(isMeasured ? { percentOfSaturation } : {}) },
    method: "Benson & Krause equation in mg/L, Garcia & Gordon fit to the same data in µmol/kg.",
    working: [
      air?.kind === "altitude"
        ? `air pressure at ${figure(air.altitude.best)} m = 101.325 × (1 − 2.25577e-5 × height) to the power 5.25588 = ${figure(always.pressure.best)} kPa`
        : `air pressure ${figure(always.pressure.best)} kPa`,
      `oxygen at 101.325 kPa: exponential of a polynomial in 1/(temperature in kelvin), less a part proportional to salinity = ${figure(oxygenSaturation(salinity.best, temperature.best))} mg/L`,
      `at this pressure: × (pressure − water vapour) ÷ (101.325 − water vapour), with a small correction for real gas = ${saturation} mg/L`,
      ...(isMeasured
        ? [
            `share of saturation = 100 × ${figure(measured.best)} ÷ ${saturation} = ${figure(percentOfSaturation.best)} %`,
          ]
        : []),
    ],
    constants: [
      { name: "standard air pressure", value: "101.325 kPa", source: "definition" },
      {
        name: "oxygen equation, mg/L",
        value: "8 coefficients, salinity 0–40, 0–40 °C",
        source: "benson-krause-1984",
      },
      {
        name: "oxygen equation, µmol/kg",
        value: "11 coefficients, Benson & Krause column",
        source: "garcia-gordon-1992",
      },
    ],
    sources: [
      "benson-krause-1984",
      "usgs-2011-03",
      "garcia-gordon-1992",
      ...(air?.kind === "altitude" ? (["us-standard-atmosphere-1976"] as const) : []),
      "jcgm-100-2008",
    ],
    assumptions: [
      ...(air === undefined ? ["sea-level pressure"] : []),
      ...(air?.kind === "pressure"
        ? ["the pressure is the true one, not a weather report's brought down to sea level"]
        : []),
      ...(air?.kind === "altitude"
        ? ["the standard atmosphere: weather moves the figure by some per cent"]
        : []),
      "air saturated with water vapour",
      ...(isMeasured ? ["the meter was set to this salinity and pressure"] : []),
    ],
    cautions: [
      caution("saturation-is-a-ceiling", {}, "note"),
      ...(isMeasured ? readingCautions(percentOfSaturation.best) : []),
      ...(isMeasured && salinity.best > SALTY
        ? [
            caution("meter-set-to-fresh", {
              percent: 100 * (always.freshWaterSaturation.best / always.saturation.best - 1),
            }),
          ]
        : []),
      ...fittedRange("salinity", salinity, "ppt", OXYGEN_FITTED.salinity),
      ...fittedRange("temperature", temperature, "°C", OXYGEN_FITTED.temperatureC),
    ],
    driver: isMeasured ? drivers.percentOfSaturation : drivers.saturation,
  };
}

function readingCautions(percent: number): readonly Caution[] {
  if (percent < LOW_PERCENT) return [caution("oxygen-low", { percent }, "danger")];
  return percent > HIGH_PERCENT ? [caution("oversaturated", { percent }, "note")] : [];
}
