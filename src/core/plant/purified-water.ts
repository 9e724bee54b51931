import { between, type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Days,
  type DegreesC,
  type KiloPascals,
  type Litres,
  type LitresPerDay,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { refuseIfNegative, refuseOutside, refuseUnlessPositive } from "./usable-figures.ts";

/** Rise per °C. Source: astm-d4516; viscosity alone gives 0.78 at 15 °C where this rule gives 0.74. */
const PER_DEGREE = 1.03;
const RATED_C = 25;
/** kPa held back for each mg/L dissolved. Source: vant-hoff. */
const OSMOTIC_PER_MG_L = 0.08;
/** Litres to the drain for each litre made. Source: epa-watersense-ro. */
export const TYPICAL_REJECT = between(2.3, 6, 5);
/** The rule of thumb for cold against viscosity. Source: assumption. */
const TEMPERATURE_RULE = between(0.97, 1.06, 1);

/** Make in a day at a feed pressure and temperature, from a rating at 25 °C.
 *  Source: astm-d4516. Throws: RangeError when a pressure does not exceed what the salts hold back. */
export function permeatePerDay(
  rated: LitresPerDay,
  ratedPressure: KiloPascals,
  feedPressure: KiloPascals,
  feedTemperature: DegreesC,
  osmotic: KiloPascals = as<KiloPascals>(0),
): LitresPerDay {
  if (!(ratedPressure > osmotic && feedPressure > osmotic)) {
    throw new RangeError("the pressure does not overcome what the salts hold back");
  }
  const pressures = (feedPressure - osmotic) / (ratedPressure - osmotic);
  return as<LitresPerDay>(rated * pressures * PER_DEGREE ** (feedTemperature - RATED_C));
}

/** Tap water used, to the drain and made. Source: mass-balance. */
export function tapWaterUsed(made: Litres, rejectPerLitre: number): Litres {
  return as<Litres>(made * (1 + rejectPerLitre));
}

export interface PurifiedWaterInputs {
  readonly litres: Estimate<Litres>;
  readonly ratedLPerDay: Estimate<LitresPerDay>;
  /** 345 or 414 kPa: both are in use. */
  readonly ratedPressureKPa: KiloPascals;
  readonly feedPressureKPa: Estimate<KiloPascals>;
  readonly feedC: Estimate<DegreesC>;
  /** Dissolved in the tap water, mg/L; none when absent. */
  readonly dissolvedMgPerL?: Estimate;
  /** Litres to the drain per litre made, when known. */
  readonly rejectRatio?: Estimate;
}

export interface PurifiedWater {
  readonly perDayL: Estimate<LitresPerDay>;
  readonly days: Estimate<Days>;
  readonly toDrainL: Estimate<Litres>;
  readonly tapWaterL: Estimate<Litres>;
}

/** How long a purifier takes to make an amount of water, and how much goes to the drain. */
export function purifiedWater(inputs: PurifiedWaterInputs): Answer<PurifiedWater> | NoAnswer {
  const dissolved = inputs.dissolvedMgPerL ?? between(0, 0);
  const refused =
    refuseUnlessPositive({
      "water wanted": inputs.litres,
      "rated output": inputs.ratedLPerDay,
      "pressure of the rating": between(inputs.ratedPressureKPa, inputs.ratedPressureKPa),
      "feed pressure": inputs.feedPressureKPa,
    }) ??
    refuseOutside({ "feed temperature": inputs.feedC }, 1, 45) ??
    refuseIfNegative({ "dissolved matter": dissolved, "waste ratio": inputs.rejectRatio });
  if (refused !== undefined) return refused;
  const osmoticKPa = dissolved.high * OSMOTIC_PER_MG_L;
  const least = Math.min(inputs.feedPressureKPa.low, inputs.ratedPressureKPa);
  if (least <= osmoticKPa) return noAnswer("feed-pressure-too-low", { feedKPa: least, osmoticKPa });

  const { estimates, drivers } = propagate(
    {
      "water wanted": inputs.litres,
      "rated output": inputs.ratedLPerDay,
      "feed pressure": inputs.feedPressureKPa,
      "feed temperature": inputs.feedC,
      "dissolved matter": dissolved,
      "temperature rule": TEMPERATURE_RULE,
      "waste ratio": inputs.rejectRatio ?? TYPICAL_REJECT,
    },
    (v) => {
      const perDayL = as<LitresPerDay>(
        permeatePerDay(
          v["rated output"],
          inputs.ratedPressureKPa,
          v["feed pressure"],
          v["feed temperature"],
          as<KiloPascals>(v["dissolved matter"] * OSMOTIC_PER_MG_L),
        ) * v["temperature rule"],
      );
      return {
        perDayL,
        days: as<Days>(v["water wanted"] / perDayL),
        toDrainL: as<Litres>(v["water wanted"] * v["waste ratio"]),
        tapWaterL: tapWaterUsed(v["water wanted"], v["waste ratio"]),
      };
    },
  );
  return {
    kind: "answer",
    value: estimates,
    method: "The rated output, brought to your pressure and temperature",
    working: [
      "litres a day = rating × (feed pressure − osmotic) ÷ (rated pressure − osmotic) × 1.03^(°C − 25)",
      "days = water wanted ÷ litres a day",
      "tap water = water made × (1 + litres to drain per litre)",
    ],
    constants: [
      { name: "rise per °C", value: "3 %", source: "astm-d4516" },
      { name: "osmotic pressure", value: "8 kPa per 100 mg/L", source: "vant-hoff" },
      ...(inputs.rejectRatio === undefined
        ? [{ name: "to the drain per litre made", value: "5 (2.3–6)", source: "epa-watersense-ro" } as const]
        : []),
    ],
    sources: ["astm-d4516", "astm-d5615", "epa-watersense-ro", "vant-hoff", "assumption"],
    assumptions: [
      "clean membrane and prefilters",
      "no back pressure from a closed tank",
      "running day and night",
    ],
    cautions: [caution("never-unattended-filling", {}), caution("ask-rating-conditions", {}, "note")],
    driver: drivers.days,
  };
}
