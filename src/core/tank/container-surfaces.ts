import { type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type Centimetres,
  type Fraction,
  type Litres,
  type Quantity,
  type SquareMetres,
} from "../quantity/units.ts";
import type { Container, Shape } from "./container.ts";
import { LEVEL_OF_RIM, wallOf } from "./container-water.ts";
import { insideShape } from "./inside-shape.ts";
import {
  shapeAreaAtLevel,
  shapeFault,
  shapeFootprintM2,
  shapeHeightCm,
  shapeVolume,
} from "./shape-volume.ts";
import { wettedAreaM2 } from "./shape-walls.ts";

export interface ContainerSurfaces {
  /** Open water at the running level. */
  readonly areaM2: Estimate<SquareMetres>;
  /** From the running level up to the rim. */
  readonly roomMm: Estimate<Quantity<"mm">>;
  /** Water depth in running. */
  readonly depthCm: Estimate<Centimetres>;
  /** Depth as a share of the inside height. */
  readonly filled: Estimate<Fraction>;
  /** Walls and floor the water touches. */
  readonly wettedM2: Estimate<SquareMetres>;
  /** Water to the rim, nothing else in it. */
  readonly brimL: Estimate<Litres>;
  /** Floor it covers, by its outside where that was measured. */
  readonly footprintM2: SquareMetres;
  /** Whether the running level was said; guessed from the rim otherwise. */
  readonly isLevelSaid: boolean;
}

/**
 * The faces of a container's water, from its dimensions; undefined where only litres are known, or where
 * the dimensions make no container. Source: elementary-geometry; level and wall as in container-water.ts.
 */
export function containerSurfaces({ volume }: Container): ContainerSurfaces | undefined {
  if (volume.kind !== "dimensions" || shapeFault(volume.shape) !== undefined) return undefined;
  const { shape, measured, wallCm, runningLevelCm } = volume;
  const within = (wall: number): Shape => (wall > 0 ? insideShape(shape, as<Centimetres>(wall)) : shape);
  try {
    const { estimates } = propagate(
      { wall: wallOf(shape, measured, wallCm), level: runningLevelCm ?? LEVEL_OF_RIM },
      (v) => {
        const inside = within(v.wall);
        const rim = shapeHeightCm(inside);
        const depth = as<Centimetres>(Math.min(rim, runningLevelCm === undefined ? v.level * rim : v.level));
        return {
          areaM2: shapeAreaAtLevel(inside, depth),
          roomMm: as<Quantity<"mm">>((rim - depth) * 10),
          depthCm: depth,
          filled: as<Fraction>(depth / rim),
          wettedM2: wettedAreaM2(inside, depth),
          brimL: shapeVolume(inside, rim),
        };
      },
    );
    const { roomMm } = estimates;
    return {
      ...estimates,
      roomMm: { ...roomMm, low: as<Quantity<"mm">>(Math.max(0, roomMm.low)) },
      footprintM2: shapeFootprintM2(shape),
      isLevelSaid: runningLevelCm !== undefined,
    };
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
