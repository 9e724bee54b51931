import { as, type Centimetres, type SquareMetres } from "../quantity/units.ts";
import type { Shape } from "./container.ts";
import { shapeAreaAtLevel, shapeHeightCm, shapeVolume } from "./shape-volume.ts";

const CM2_PER_M2 = 10_000;

/**
 * Inside of walls and floor that the water touches when it stands `levelCm` deep.
 * Source: elementary-geometry; a leaning wall counts by its slant.
 * Throws: RangeError for a negative level or impossible dimensions.
 */
export function wettedAreaM2(shape: Shape, levelCm: Centimetres): SquareMetres {
  const depth = Math.min(levelCm, shapeHeightCm(shape));
  if (shape.kind === "horizontal drum") {
    const radius = shape.diameterCm / 2;
    const angle = 2 * Math.acos(Math.min(1, Math.max(-1, (radius - depth) / radius)));
    const ends = (2 * 1000 * shapeVolume(shape, as<Centimetres>(depth))) / shape.lengthCm;
    return as<SquareMetres>((angle * radius * shape.lengthCm + ends) / CM2_PER_M2);
  }
  const floor = shapeAreaAtLevel(shape, as<Centimetres>(0));
  return as<SquareMetres>(floor + sideAreaCm2(shape, depth) / CM2_PER_M2);
}

function sideAreaCm2(shape: Exclude<Shape, { kind: "horizontal drum" }>, depth: number): number {
  switch (shape.kind) {
    case "box":
    case "L-shape":
      // A corner cut out leaves the way around as long as it was.
      return 2 * (shape.lengthCm + shape.widthCm) * depth;
    case "upright cylinder":
      return Math.PI * shape.diameterCm * depth;
    case "quarter round":
      return (2 + Math.PI / 2) * shape.radiusCm * depth;
    case "hexagon":
      return 2 * Math.sqrt(3) * shape.acrossFlatsCm * depth;
    case "bow front": {
      const radius = (shape.lengthCm ** 2 / 4 + shape.bowDepthCm ** 2) / (2 * shape.bowDepthCm);
      const arc = 2 * radius * Math.asin(Math.min(1, shape.lengthCm / 2 / radius));
      return (shape.lengthCm + 2 * shape.endWidthCm + arc) * depth;
    }
    case "tapered tub": {
      const share = depth / shape.heightCm;
      const outLength = ((shape.topLengthCm - shape.bottomLengthCm) / 2) * share;
      const outWidth = ((shape.topWidthCm - shape.bottomWidthCm) / 2) * share;
      const longSides = (2 * shape.bottomLengthCm + 2 * outLength) * Math.hypot(depth, outWidth);
      const shortSides = (2 * shape.bottomWidthCm + 2 * outWidth) * Math.hypot(depth, outLength);
      return longSides + shortSides;
    }
  }
}
