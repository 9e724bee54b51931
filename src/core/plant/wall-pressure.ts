import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type KgPerM3, type KiloPascals, type Metres } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import { type KiloNewtons, STANDARD_GRAVITY } from "./plant-units.ts";
import { refuseUnlessPositive } from "./usable-figures.ts";

/** Pressure of standing water at a depth. Source: first-principles (hydrostatics). */
export function waterPressure(depth: Metres, density: KgPerM3): KiloPascals {
  return as<KiloPascals>((density * STANDARD_GRAVITY * depth) / 1000);
}

/** Push of water on the whole of an upright wall. Source: first-principles (hydrostatics). */
export function wallForce(depth: Metres, wallLength: Metres, density: KgPerM3): KiloNewtons {
  return as<KiloNewtons>((waterPressure(depth, density) * depth * wallLength) / 2);
}

export interface WallPressureInputs {
  readonly depthM: Estimate<Metres>;
  readonly wallLengthM: Estimate<Metres>;
  readonly density: Estimate<KgPerM3>;
}

export interface WallPressure {
  /** At the bottom. */
  readonly pressureKPa: Estimate<KiloPascals>;
  /** On the whole wall. */
  readonly forceKN: Estimate<KiloNewtons>;
}

/** How hard the water pushes: facts for the one who builds the wall. What thickness bears it is refused. */
export function wallPressure(inputs: WallPressureInputs): Answer<WallPressure> | NoAnswer {
  const { depthM, wallLengthM, density } = inputs;
  const refused = refuseUnlessPositive({
    "water depth": depthM,
    "length of the wall": wallLengthM,
    "density of the water": density,
  });
  if (refused !== undefined) return refused;
  const { estimates, drivers } = propagate(
    { "water depth": depthM, "length of the wall": wallLengthM, "density of the water": density },
    (v) => ({
      pressureKPa: waterPressure(v["water depth"], v["density of the water"]),
      forceKN: wallForce(v["water depth"], v["length of the wall"], v["density of the water"]),
    }),
  );
  return {
    kind: "answer",
    value: estimates,
    method: "The pressure of standing water, which depends on its depth alone",
    working: [
      "pressure at the bottom = density × 9.80665 × depth",
      "force on the wall = half that pressure × depth × length",
    ],
    constants: [{ name: "standard gravity", value: "9.80665 m/s²", source: "nist-sp-811" }],
    sources: ["first-principles", "nist-sp-811"],
    assumptions: ["the water stands still", "the wall is upright"],
    cautions: [caution("ask-a-tank-maker", {}, "danger")],
    driver: drivers.forceKN,
  };
}
