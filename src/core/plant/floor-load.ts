import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type KgPerM3,
  type Kilograms,
  type KiloPascals,
  type Litres,
  type SquareMetres,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { type Millimetres, type PoundsPerSquareFoot, STANDARD_GRAVITY } from "./plant-units.ts";
import { refuseIfNegative, refuseSameNames, refuseUnlessPositive } from "./usable-figures.ts";

/** Source: nist-sp-811. */
const PA_PER_PSF = 47.880259;
/** Uniform live load that living rooms are designed for. Source: irc-r301-5. */
export const LIVING_ROOM_PSF = as<PoundsPerSquareFoot>(40);
export const SLEEPING_ROOM_PSF = as<PoundsPerSquareFoot>(30);
/** Feet do not share evenly: two may carry half of it all. Source: assumption. */
const SHARE_ON_TWO_FEET = 0.5;

/** Mean pressure of a mass on its footprint. Source: first-principles. Throws: RangeError for a footprint not above 0. */
export function floorPressure(mass: Kilograms, footprint: SquareMetres): KiloPascals {
  if (!(footprint > 0)) throw new RangeError("a footprint has to be above 0");
  return as<KiloPascals>((mass * STANDARD_GRAVITY) / footprint / 1000);
}

/** Source: nist-sp-811. */
export function poundsPerSquareFoot(pressure: KiloPascals): PoundsPerSquareFoot {
  return as<PoundsPerSquareFoot>((pressure * 1000) / PA_PER_PSF);
}

/** Depth of water that alone weighs as much as a live load. Source: irc-r301-5, first-principles. */
export function depthEqualToLoad(load: PoundsPerSquareFoot, density: KgPerM3): Millimetres {
  return as<Millimetres>(((load * PA_PER_PSF) / (density * STANDARD_GRAVITY)) * 1000);
}

/** Mean pressure under feet, MPa. Source: first-principles. Throws: RangeError without feet. */
export function footBearing(mass: Kilograms, feet: number, footAreaCm2: number): number {
  if (!(feet > 0 && footAreaCm2 > 0)) throw new RangeError("feet need a number and an area");
  return (mass * STANDARD_GRAVITY) / (feet * footAreaCm2 * 1e-4) / 1e6;
}

export interface FloorLoadInputs {
  /** Water to the brim: the check is for the fullest it can be. */
  readonly waterL: Estimate<Litres>;
  readonly density: Estimate<KgPerM3>;
  /** Rock, sand, shell, stand, equipment, and people working on it: dry mass of each. */
  readonly parts: readonly { readonly name: string; readonly massKg: Estimate<Kilograms> }[];
  readonly footprintM2: Estimate<SquareMetres>;
  readonly feet?: { readonly count: number; readonly areaCm2: Estimate };
}

export interface FloorLoad {
  readonly massKg: Estimate<Kilograms>;
  readonly pressureKPa: Estimate<KiloPascals>;
  readonly psf: Estimate<PoundsPerSquareFoot>;
  /** Against the figure for living rooms: a flag, never a verdict. */
  readonly timesLivingRoom: Estimate;
  readonly timesSleepingRoom: Estimate;
  readonly footMPa: Estimate | undefined;
}

/** What a filled tank weighs, and how it presses on the floor. */
export function floorLoad(inputs: FloorLoadInputs): Answer<FloorLoad> | NoAnswer {
  const { parts, feet } = inputs;
  const refused =
    refuseSameNames(parts) ??
    refuseUnlessPositive({
      water: inputs.waterL,
      "density of the water": inputs.density,
      footprint: inputs.footprintM2,
      "number of feet": feet && exactly(feet.count),
      "area of a foot": feet?.areaCm2,
    }) ??
    refuseIfNegative(Object.fromEntries(parts.map(({ name, massKg }) => [`mass of ${name}`, massKg])));
  if (refused !== undefined) return refused;
  const ranged: Readonly<Record<string, Estimate>> = {
    water: inputs.waterL,
    "density of the water": inputs.density,
    footprint: inputs.footprintM2,
    ...(feet === undefined ? {} : { "area of a foot": feet.areaCm2 }),
    ...Object.fromEntries(parts.map(({ name, massKg }) => [`mass of ${name}`, massKg])),
  };
  const { estimates, drivers } = propagate(ranged, (v) => {
    const at = (name: string) => v[name] ?? 0;
    const water = (at("water") * at("density of the water")) / 1000;
    const massKg = as<Kilograms>(parts.reduce((sum, { name }) => sum + at(`mass of ${name}`), water));
    const pressureKPa = floorPressure(massKg, as<SquareMetres>(at("footprint")));
    const psf = poundsPerSquareFoot(pressureKPa);
    return {
      massKg,
      pressureKPa,
      psf,
      timesLivingRoom: psf / LIVING_ROOM_PSF,
      timesSleepingRoom: psf / SLEEPING_ROOM_PSF,
      footMPa: feet === undefined ? 0 : footBearing(massKg, feet.count, at("area of a foot")),
    };
  });
  const worstMPa =
    feet !== undefined && feet.count > 2
      ? (estimates.footMPa.high * feet.count * SHARE_ON_TWO_FEET) / 2
      : estimates.footMPa.high;
  return {
    kind: "answer",
    value: { ...estimates, footMPa: feet && estimates.footMPa },
    method: "All that stands there, over the floor it stands on",
    working: [
      "mass = water to the brim × density + rock, sand, shell, stand, equipment, people",
      "pressure = mass × 9.80665 ÷ footprint; psf = pascals ÷ 47.880",
      ...(feet ? ["under the feet: mass × 9.80665 ÷ (feet × area of a foot), shared evenly"] : []),
    ],
    constants: [
      { name: "standard gravity", value: "9.80665 m/s²", source: "nist-sp-811" },
      { name: "1 psf", value: "47.880 Pa", source: "nist-sp-811" },
      { name: "design live load, living rooms", value: "40 psf (1.92 kPa)", source: "irc-r301-5" },
      { name: "design live load, sleeping rooms", value: "30 psf (1.44 kPa)", source: "irc-r301-5" },
    ],
    sources: ["first-principles", "nist-sp-811", "irc-r301-5"],
    assumptions: [
      "the mass spreads evenly over the footprint, which it seldom does",
      "the water given is what is left beside rock and sand",
      "span, joists, walls, creep and what lies under a slab are not looked at",
    ],
    cautions: [
      caution("ask-a-structural-engineer", {}, "danger"),
      ...(estimates.timesLivingRoom.high > 1
        ? [
            caution("floor-figure-is-a-flag", {
              psf: estimates.psf.best,
              times: estimates.timesLivingRoom.best,
            }),
          ]
        : []),
      ...(feet && feet.count > 2 ? [caution("uneven-feet", { worstMPa })] : []),
    ],
    driver: drivers.pressureKPa,
  };
}
