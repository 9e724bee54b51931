import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Fraction,
  type KgPerM3,
  type Kilograms,
  type Litres,
  type SquareMetres,
} from "../quantity/units.ts";
import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import { DRY_OF_WET_ROCK, ROCK_SOLID_KG_M3, SAND_GRAIN_KG_M3 } from "../tank/container-water.ts";
import { SAND_POROSITY, sandSolidsL } from "../tank/sand-bed.ts";
import type { Millimetres } from "./plant-units.ts";
import { refuseUnlessPositive } from "./usable-figures.ts";

/**
 * Water that rock pushes aside: its solid only, since water fills the open pores.
 * Source: mass-balance (Archimedes). Throws: RangeError when a figure is not positive.
 */
export function solidVolume(dryMass: Kilograms, solidDensity: KgPerM3): Litres {
  if (!(dryMass >= 0 && solidDensity > 0)) throw new RangeError("mass and density must be positive");
  return as<Litres>((dryMass / solidDensity) * 1000);
}

export type RockWeighed = "dry" | "wet and drained";

export interface DisplacementInputs {
  readonly rock?: { readonly mass: Estimate<Kilograms>; readonly weighed: RockWeighed };
  /** By the bed's size, or by the dry mass poured in. */
  readonly sand?:
    | { readonly areaM2: Estimate<SquareMetres>; readonly depthMm: Estimate<Millimetres> }
    | { readonly dryMass: Estimate<Kilograms> };
}

export interface Displacement {
  readonly rockL: Estimate<Litres>;
  readonly sandL: Estimate<Litres>;
  /** Water standing between the sand grains: part of the water, but slow to mix. Zero when only a mass is known. */
  readonly sandPoreWaterL: Estimate<Litres>;
  readonly totalL: Estimate<Litres>;
}

/** How much water rock and sand push aside. */
export function displacement(inputs: DisplacementInputs): Answer<Displacement> | NoAnswer {
  const { rock, sand } = inputs;
  if (rock === undefined && sand === undefined) return noAnswer("nothing-named", { what: "rock or sand" });
  const bySize = sand !== undefined && "areaM2" in sand ? sand : undefined;
  const byMass = sand !== undefined && "dryMass" in sand ? sand : undefined;
  const refused = refuseUnlessPositive({
    "rock mass": rock?.mass,
    "sand area": bySize?.areaM2,
    "sand depth": bySize?.depthMm,
    "sand mass": byMass?.dryMass,
  });
  if (refused !== undefined) return refused;

  const wet = rock?.weighed === "wet and drained";
  const none = exactly(0);
  const { estimates, drivers } = propagate(
    {
      "rock mass": rock?.mass ?? none,
      "rock's dry share": wet ? DRY_OF_WET_ROCK : exactly(1),
      "density of the rock's solid": ROCK_SOLID_KG_M3,
      "density of the sand grains": SAND_GRAIN_KG_M3,
      "sand area": bySize?.areaM2 ?? none,
      "sand depth": bySize?.depthMm ?? none,
      "sand porosity": SAND_POROSITY,
      "sand mass": byMass?.dryMass ?? none,
    },
    (v) => {
      const dryRock = as<Kilograms>(v["rock mass"] * v["rock's dry share"]);
      const rockL = solidVolume(dryRock, as<KgPerM3>(v["density of the rock's solid"]));
      const area = as<SquareMetres>(v["sand area"]);
      const bed = sandSolidsL(area, v["sand depth"] / 10, as<Fraction>(v["sand porosity"]));
      const poured = solidVolume(as<Kilograms>(v["sand mass"]), as<KgPerM3>(v["density of the sand grains"]));
      const sandL = as<Litres>(bed + poured);
      return {
        rockL,
        sandL,
        // 1 m² × 1 mm is 1 L.
        sandPoreWaterL: as<Litres>(area * v["sand depth"] * v["sand porosity"]),
        totalL: as<Litres>(rockL + sandL),
      };
    },
  );
  return {
    kind: "answer",
    value: estimates,
    method: "Rock and sand push aside only the volume of their solid; water fills the pores",
    working: [
      "rock: dry mass ÷ density of the solid",
      ...(bySize ? ["sand: area × depth × (1 − porosity)"] : []),
      ...(byMass ? ["sand: dry mass ÷ density of the solid"] : []),
    ],
    constants: [
      ...(rock
        ? [
            {
              name: "density of the rock's solid",
              value: "2800 kg/m³ (2710–2930)",
              source: "mineral-densities",
            } as const,
          ]
        : []),
      ...(byMass
        ? [
            {
              name: "density of sand grains",
              value: "2800 kg/m³ (2650–2930)",
              source: "mineral-densities",
            } as const,
          ]
        : []),
      ...(bySize
        ? [{ name: "porosity of sand", value: "0.40 (0.25–0.50)", source: "freeze-cherry-1979" } as const]
        : []),
      ...(wet
        ? [{ name: "dry share of drained rock", value: "0.85 (0.70–1.00)", source: "assumption" } as const]
        : []),
    ],
    sources: [
      "mass-balance",
      ...(rock || byMass ? (["mineral-densities"] as const) : []),
      ...(bySize ? (["freeze-cherry-1979"] as const) : []),
      ...(wet ? (["assumption"] as const) : []),
    ],
    assumptions: [
      "the pores of the rock are open and full of water",
      ...(wet ? ["rock weighed wet still carries water, so its dry mass is a guess"] : []),
    ],
    cautions: [],
    driver: drivers.totalL,
  };
}
