import { type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type Fraction,
  type PracticalSalinity,
  type SquareMetres,
  type Watts,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { dewPoint, latentPower } from "./evaporation.ts";
import { EVAPORATION_FORMULA, evaporationAt } from "./evaporation-spread.ts";
import type { KilogramsPerDay } from "./plant-units.ts";
import { refuseOutside, refuseUnlessPositive } from "./usable-figures.ts";

export interface EvaporationInputs {
  /** Open water of every container, covers taken off. */
  readonly openAreaM2: Estimate<SquareMetres>;
  readonly waterC: Estimate<DegreesC>;
  readonly roomC: Estimate<DegreesC>;
  readonly humidity: Estimate<Fraction>;
  readonly salinity?: Estimate<PracticalSalinity>;
  readonly isDisturbed: boolean;
}

export interface DailyEvaporation {
  /** Also the purified water to be topped up, in litres a day. */
  readonly kgPerDay: Estimate<KilogramsPerDay>;
  /** Heat it takes from the water. */
  readonly coolingW: Estimate<Watts>;
  /** Surfaces colder than this get wet. */
  readonly dewPointC: Estimate<DegreesC>;
}

export const SEAWATER_SALINITY: Estimate<PracticalSalinity> = {
  best: as<PracticalSalinity>(35),
  low: as<PracticalSalinity>(35),
  high: as<PracticalSalinity>(35),
};

/** Refuses air or water that no living room or tank has. */
export function refuseClimate(inputs: {
  readonly waterC: Estimate<DegreesC>;
  readonly roomC: Estimate<DegreesC>;
  readonly humidity: Estimate<Fraction>;
  readonly salinity?: Estimate<PracticalSalinity> | undefined;
}): NoAnswer | undefined {
  return (
    refuseOutside({ "water temperature": inputs.waterC }, 0, 45) ??
    refuseOutside({ "room temperature": inputs.roomC }, -10, 50) ??
    refuseOutside({ "relative humidity": inputs.humidity }, 0.01, 1) ??
    refuseOutside({ salinity: inputs.salinity }, 0, 60)
  );
}

/** How much water evaporates in a day. */
export function dailyEvaporation(inputs: EvaporationInputs): Answer<DailyEvaporation> | NoAnswer {
  const refused = refuseUnlessPositive({ "open surface": inputs.openAreaM2 }) ?? refuseClimate(inputs);
  if (refused !== undefined) return refused;
  const { estimates, drivers } = propagate(
    {
      "open surface": inputs.openAreaM2,
      "water temperature": inputs.waterC,
      "room temperature": inputs.roomC,
      "relative humidity": inputs.humidity,
      salinity: inputs.salinity ?? SEAWATER_SALINITY,
      "choice of formula": EVAPORATION_FORMULA,
    },
    (v) => {
      const kgPerDay = evaporationAt(v["choice of formula"], {
        areaM2: v["open surface"],
        waterC: v["water temperature"],
        roomC: v["room temperature"],
        humidity: v["relative humidity"],
        salinity: v.salinity,
        isDisturbed: inputs.isDisturbed,
      });
      return {
        kgPerDay,
        coolingW: latentPower(kgPerDay, v["water temperature"]),
        dewPointC: dewPoint(v["room temperature"], v["relative humidity"]),
      };
    },
  );
  return {
    kind: "answer",
    value: estimates,
    method: inputs.isDisturbed
      ? "Between the formulas for a still pool and for a disturbed one"
      : "The middle of three published formulas for a still pool; the range is their spread",
    working: [
      "vapour pressure over the water, a little less for its salt; vapour pressure in the room × its humidity",
      "pool formula: 4.0e-5 × surface × difference (kPa) × activity, kg/s",
      "buoyancy formula: 35 × air density × (density difference)^⅓ × humidity difference, kg/(m² h)",
      "measured still pools: 74 % of 0.0885 × difference (Pa), W/m²",
      "cooling: evaporation × latent heat",
    ],
    constants: [
      {
        name: "activity of the pool formula",
        value: "0.5 still, 1.0 disturbed",
        source: "ashrae-hvac-applications",
      },
      { name: "latent heat at 25 °C", value: "2.442 MJ/kg", source: "iapws-if97" },
      {
        name: "vapour pressure over seawater of salinity 35",
        value: "× 0.981",
        source: "green-carritt-1967",
      },
    ],
    sources: [
      "shah-2014",
      "ashrae-hvac-applications",
      "smith-lof-jones-1998",
      "buck-1981",
      "green-carritt-1967",
      "iapws-if97",
    ],
    assumptions: [
      "sea-level air pressure",
      "no draught beyond what a room has",
      "covered surfaces are left out",
    ],
    cautions: [
      caution(
        "moisture-into-the-room",
        { kgPerDay: estimates.kgPerDay.best, dewPointC: estimates.dewPointC.best },
        "note",
      ),
    ],
    driver: drivers.kgPerDay,
  };
}
