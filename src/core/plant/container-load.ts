import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Kilograms, type Litres, type SquareMetres } from "../quantity/units.ts";
import type { Container } from "../tank/container.ts";
import { containerSurfaces } from "../tank/container-surfaces.ts";
import { ROCK_SOLID_KG_M3, SAND_GRAIN_KG_M3 } from "../tank/container-water.ts";
import type { FloorLoadInputs } from "./floor-load.ts";

/** What one container puts on the floor, as far as its description tells. */
export interface ContainerLoad {
  /** To the brim, beside rock and sand. */
  readonly waterL: Estimate<Litres>;
  readonly parts: FloorLoadInputs["parts"];
  readonly footprintM2: SquareMetres;
}

/** Water to the brim less what rock and sand push aside; undefined without dimensions.
 *  Source: elementary-geometry, mineral-densities. */
export function containerLoad(container: Container): ContainerLoad | undefined {
  const faces = containerSurfaces(container);
  if (faces === undefined) return undefined;
  const none = { best: as<Kilograms>(0), low: as<Kilograms>(0), high: as<Kilograms>(0) };
  const { rockKg = none, sandKg = none } = container;
  const { waterL } = propagate(
    {
      brim: faces.brimL,
      rock: rockKg,
      sand: sandKg,
      "density of rock": ROCK_SOLID_KG_M3,
      "density of sand": SAND_GRAIN_KG_M3,
    },
    (v) => ({
      waterL: as<Litres>(
        Math.max(0, v.brim - (v.rock / v["density of rock"]) * 1000 - (v.sand / v["density of sand"]) * 1000),
      ),
    }),
  ).estimates;
  return {
    waterL,
    footprintM2: faces.footprintM2,
    parts: [
      ...(container.rockKg === undefined ? [] : [{ name: "rock", massKg: container.rockKg }]),
      ...(container.sandKg === undefined ? [] : [{ name: "sand", massKg: container.sandKg }]),
    ],
  };
}
