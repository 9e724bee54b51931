import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Hours, type Litres, type LitresPerDay, type PracticalSalinity } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer } from "../result.ts";
import { refuseIfNegative, refuseOutside, refuseUnlessPositive } from "./usable-figures.ts";

/** A cup that fills sooner than a night and a working day. Source: assumption. */
const SOON_HOURS = 24;

export interface SkimmateInputs {
  readonly rate: Estimate<LitresPerDay>;
  readonly cupL: Estimate<Litres>;
  readonly inCupL: Estimate<Litres>;
  readonly systemL: Estimate<Litres>;
  readonly salinity: Estimate<PracticalSalinity>;
}

export interface Skimmate {
  readonly hoursToFull: Estimate<Hours>;
  /** Salinity lost in a week, as top-off puts fresh water where salt water was taken. */
  readonly salinityFallPerWeek: Estimate;
  /** Salt water to be put back in a week to keep it. */
  readonly litresPerWeek: Estimate<Litres>;
}

/** When the collecting cup runs over, and what it takes from the tank. */
export function skimmate(inputs: SkimmateInputs): Answer<Skimmate> | NoAnswer {
  const refused =
    refuseUnlessPositive({
      "skimmate a day": inputs.rate,
      cup: inputs.cupL,
      "water of the system": inputs.systemL,
    }) ??
    refuseIfNegative({ "skimmate in the cup": inputs.inCupL }) ??
    refuseOutside({ salinity: inputs.salinity }, 0, 60);
  if (refused !== undefined) return refused;
  const { estimates, drivers } = propagate(
    {
      "skimmate a day": inputs.rate,
      cup: inputs.cupL,
      "skimmate in the cup": inputs.inCupL,
      "water of the system": inputs.systemL,
      salinity: inputs.salinity,
    },
    (v) => {
      const week = v["skimmate a day"] * 7;
      return {
        hoursToFull: as<Hours>((Math.max(0, v.cup - v["skimmate in the cup"]) / v["skimmate a day"]) * 24),
        salinityFallPerWeek: v.salinity * (1 - Math.exp(-week / v["water of the system"])),
        litresPerWeek: as<Litres>(week),
      };
    },
  );
  const hours = Math.max(0, estimates.hoursToFull.low);
  const cautions: Caution[] = [
    caution("skimmate-overflows", { hours }, hours < SOON_HOURS ? "warning" : "note"),
  ];
  return {
    kind: "answer",
    value: estimates,
    method: "Room in the cup over the rate; the salt that leaves with it",
    working: [
      "hours = (cup − in the cup) ÷ litres a day × 24",
      "salinity after a week = S × e^(−litres a week ÷ water of the system), top-off filling up with fresh water",
    ],
    constants: [],
    sources: ["mass-balance"],
    assumptions: [
      "the rate stays; a fresh or over-wet setting can be far faster",
      "skimmate is as salty as the tank",
    ],
    cautions,
    driver: drivers.hoursToFull,
  };
}
