import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type KgPerM3,
  type Kilograms,
  type Litres,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { DENSITY_FITTED, pureWaterDensity, seawaterDensity } from "./density.ts";
import { DENSITY_EQUATION, SALT_PER_SALINITY } from "./evidence.ts";
import { figure } from "./figure.ts";
import { liftingCautions, standingCautions } from "./handling.ts";
import { massOfSeawater, volumeOfSeawater } from "./mass.ts";
import { absoluteSalinity, type GramsPerLitre } from "./salinity-scales.ts";
import { additionToFinalVolume, additionToWater } from "./salt-balance.ts";
import { UNKNOWN_YIELD, YIELD_LIMITS, type YieldFactor } from "./salt-product.ts";
import {
  cut,
  firstNotCredible,
  fittedRange,
  keptPossible,
  SALINITY,
  TEMPERATURE,
  VOLUME,
  VOLUME_OR_NONE,
} from "./usable.ts";

export interface SaltMixInput {
  /** "final": the salt water wanted; "water": the fresh water that will be put in. */
  readonly volume: { readonly kind: "final" | "water"; readonly litres: Estimate<Litres> };
  readonly salinity: Estimate<PracticalSalinity>;
  readonly temperature: Estimate<DegreesC>;
  /** Of the product used; absent when nobody has measured it. */
  readonly yieldFactor?: Estimate<YieldFactor> | undefined;
  /** What already stands in the mixing vessel. */
  readonly held?:
    | { readonly litres: Estimate<Litres>; readonly salinity: Estimate<PracticalSalinity> }
    | undefined;
}

export interface SaltMix {
  /** Of the product as bought. */
  readonly saltKg: Estimate<Kilograms>;
  /** Fresh water to put in. */
  readonly waterL: Estimate<Litres>;
  readonly finalVolumeL: Estimate<Litres>;
  /** Of the finished salt water. */
  readonly density: Estimate<KgPerM3>;
  /** Product put in, per litre of finished water. */
  readonly saltGramsPerLitre: Estimate<GramsPerLitre>;
  readonly yieldFactor: Estimate<YieldFactor>;
}

/** How much of a salt mix, and how much fresh water, makes salt water of a wanted salinity. */
export function saltMix(input: SaltMixInput): Answer<SaltMix> | NoAnswer {
  const isYieldKnown = input.yieldFactor !== undefined;
  const yieldGiven = input.yieldFactor ?? UNKNOWN_YIELD;
  const held = input.held ?? { litres: exactly(as<Litres>(0)), salinity: exactly(as<PracticalSalinity>(0)) };
  const unusable = firstNotCredible([
    ["volume", input.volume.litres, VOLUME],
    ["salinity", input.salinity, SALINITY],
    ["temperature", input.temperature, TEMPERATURE],
    ["yield factor", yieldGiven, YIELD_LIMITS],
    ["water already in the vessel", held.litres, VOLUME_OR_NONE],
    ["salinity already in the vessel", held.salinity, SALINITY],
  ]);
  if (unusable !== undefined) return unusable;
  const yieldFactor = cut(yieldGiven, YIELD_LIMITS);

  const target = cut(input.salinity, SALINITY);
  if (absoluteSalinity(target.high) >= 1000 * yieldFactor.low) {
    return noAnswer("product-too-weak", { yieldFactor: yieldFactor.low, target: target.best });
  }

  const addition = input.volume.kind === "final" ? additionToFinalVolume : additionToWater;
  const { estimates, drivers } = propagate(
    {
      volume: cut(input.volume.litres, VOLUME),
      "target salinity": target,
      temperature: cut(input.temperature, TEMPERATURE),
      "yield factor": yieldFactor,
      "water in the vessel": cut(held.litres, VOLUME_OR_NONE),
      "salinity in the vessel": cut(held.salinity, SALINITY),
    },
    (v) => {
      const s = v["target salinity"];
      const t = v.temperature;
      const vessel = { volumeL: v["water in the vessel"], salinity: v["salinity in the vessel"] };
      const { saltKg, waterKg } = addition(vessel, v.volume, s, t, v["yield factor"]);
      const totalKg = massOfSeawater(vessel.volumeL, vessel.salinity, t) + waterKg + saltKg;
      const finalVolumeL = volumeOfSeawater(as<Kilograms>(Math.max(0, totalKg)), s, t);
      return {
        saltKg,
        waterL: as<Litres>((waterKg / pureWaterDensity(t)) * 1000),
        finalVolumeL,
        density: seawaterDensity(s, t),
        saltGramsPerLitre: as<GramsPerLitre>((1000 * saltKg) / finalVolumeL),
      };
    },
  );
  if (estimates.saltKg.best < 0) {
    return noAnswer("vessel-too-salty", { held: held.salinity.best, target: target.best });
  }
  if (estimates.waterL.best < 0) {
    return noAnswer("vessel-too-full", {
      heldL: held.litres.best,
      finalL: input.volume.litres.best,
    });
  }
  const possible = keptPossible(estimates);
  const { saltKg } = possible;
  const totalKg = (estimates.finalVolumeL.best * estimates.density.best) / 1000;

  return {
    kind: "answer",
    value: { ...possible, yieldFactor },
    method:
      "Balance of salt and of mass: the product brings salt and its own water, fresh water makes up the rest.",
    working: working(input, estimates, yieldFactor, totalKg, held),
    constants: [
      DENSITY_EQUATION,
      SALT_PER_SALINITY,
      {
        name: isYieldKnown ? "yield factor, as you gave it" : "yield factor, not measured",
        value: `${figure(yieldFactor.best)} g salt per g product (${figure(yieldFactor.low)}–${figure(yieldFactor.high)})`,
        source: isYieldKnown ? "assumption" : "salt-hydrate-bounds",
      },
    ],
    sources: ["mass-balance", "millero-poisson-1981", "millero-2008", "salt-hydrate-bounds", "jcgm-100-2008"],
    assumptions: [
      "the fresh water holds no salt (purified water)",
      "all the product dissolves",
      "water and salt water are at the temperature given",
      ...(input.volume.kind === "water" ? ["the water is measured before the salt goes in"] : []),
    ],
    cautions: [
      ...(isYieldKnown
        ? []
        : [
            caution("yield-unknown", {
              low: yieldFactor.low,
              high: yieldFactor.high,
              saltLowKg: saltKg.low,
              saltHighKg: saltKg.high,
            }),
          ]),
      caution("mix-apart", {}),
      caution("mains-near-water", {}, "danger"),
      caution("measure-before-use", {}),
      ...liftingCautions("the salt", saltKg.high),
      ...liftingCautions("the finished water", totalKg),
      ...standingCautions(totalKg),
      ...fittedRange("salinity", target, "ppt", DENSITY_FITTED.salinity),
      ...fittedRange("temperature", input.temperature, "°C", DENSITY_FITTED.temperatureC),
    ],
    driver: drivers.saltKg,
  };
}

function working(
  input: SaltMixInput,
  mix: Omit<SaltMix, "yieldFactor">,
  yieldFactor: Estimate<YieldFactor>,
  totalKg: number,
  held: { readonly litres: Estimate<Litres>; readonly salinity: Estimate<PracticalSalinity> },
): readonly string[] {
  const absolute = absoluteSalinity(input.salinity.best);
  const heldKg = massOfSeawater(held.litres.best, held.salinity.best, input.temperature.best);
  const heldSaltKg = (heldKg * absoluteSalinity(held.salinity.best)) / 1000;
  return [
    `salt per kg of salt water = ${figure(input.salinity.best)} × 35.16504/35 = ${figure(absolute)} g/kg`,
    `density of the salt water at ${figure(input.temperature.best)} °C = ${figure(mix.density.best, 5)} kg/m³`,
    `mass of the finished water = ${figure(mix.finalVolumeL.best)} L × density ÷ 1000 = ${figure(totalKg)} kg`,
    ...(heldKg > 0
      ? [`already in the vessel: ${figure(heldKg)} kg of water with ${figure(heldSaltKg)} kg of salt`]
      : []),
    `product = (salt needed − salt already there) ÷ yield factor = (${figure((totalKg * absolute) / 1000)} − ${figure(heldSaltKg)}) kg ÷ ${figure(yieldFactor.best)} = ${figure(mix.saltKg.best)} kg`,
    `fresh water = finished mass − product − what is already there = ${figure(totalKg - mix.saltKg.best - heldKg)} kg = ${figure(mix.waterL.best)} L`,
  ];
}
