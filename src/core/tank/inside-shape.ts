import { as, type Centimetres } from "../quantity/units.ts";
import type { Shape } from "./container.ts";
import { shapeFault } from "./shape-volume.ts";

/**
 * The inside of a container whose outside was measured: every wall and the floor move inward by one
 * wall thickness; the top is open. A quarter round keeps the true inside area rather than the length
 * of its straight sides (its inside is no longer quite a quarter circle). A tapered tub's walls are
 * taken as upright over their own thickness.
 * Source: elementary-geometry.
 * Throws: RangeError when the walls leave no inside.
 */
export function insideShape(outside: Shape, wallCm: Centimetres): Shape {
  const inside = movedInward(outside, wallCm);
  const fault = shapeFault(inside);
  if (fault !== undefined) throw new RangeError(`the walls leave no inside: ${fault}`);
  return inside;
}

function movedInward(outside: Shape, wallCm: Centimetres): Shape {
  if (!(wallCm >= 0)) throw new RangeError(`a wall cannot be ${wallCm} cm thick`);
  const less = (outsideCm: number, walls: number): Centimetres => {
    const inside = outsideCm - walls * wallCm;
    if (!(inside > 0)) throw new RangeError("the walls are thicker than the container");
    return as<Centimetres>(inside);
  };
  switch (outside.kind) {
    case "box":
      return {
        ...outside,
        lengthCm: less(outside.lengthCm, 2),
        widthCm: less(outside.widthCm, 2),
        heightCm: less(outside.heightCm, 1),
      };
    case "upright cylinder":
      return { ...outside, diameterCm: less(outside.diameterCm, 2), heightCm: less(outside.heightCm, 1) };
    case "hexagon":
      return {
        ...outside,
        acrossFlatsCm: less(outside.acrossFlatsCm, 2),
        heightCm: less(outside.heightCm, 1),
      };
    case "L-shape":
      // The cut-out's walls and the outer walls shift together, so the cut-out keeps its size.
      return {
        ...outside,
        lengthCm: less(outside.lengthCm, 2),
        widthCm: less(outside.widthCm, 2),
        heightCm: less(outside.heightCm, 1),
      };
    case "horizontal drum":
      return { ...outside, diameterCm: less(outside.diameterCm, 2), lengthCm: less(outside.lengthCm, 2) };
    case "tapered tub":
      return {
        ...outside,
        bottomLengthCm: less(outside.bottomLengthCm, 2),
        bottomWidthCm: less(outside.bottomWidthCm, 2),
        topLengthCm: less(outside.topLengthCm, 2),
        topWidthCm: less(outside.topWidthCm, 2),
        heightCm: less(outside.heightCm, 1),
      };
    case "bow front": {
      // The inner arc has the outer one's centre and a radius one wall shorter.
      const radius = (outside.lengthCm ** 2 / 4 + outside.bowDepthCm ** 2) / (2 * outside.bowDepthCm);
      const innerRadius = less(radius, 1);
      const halfLength = less(outside.lengthCm / 2, 1);
      const toEnd = Math.sqrt(Math.max(0, innerRadius ** 2 - halfLength ** 2));
      const endMoved = radius - outside.bowDepthCm - toEnd;
      return {
        ...outside,
        lengthCm: less(outside.lengthCm, 2),
        endWidthCm: less(outside.endWidthCm - endMoved, 1),
        bowDepthCm: less(innerRadius - toEnd, 0),
        heightCm: less(outside.heightCm, 1),
      };
    }
    case "quarter round": {
      const arc = less(outside.radiusCm, 1);
      if (arc ** 2 <= 2 * wallCm ** 2) throw new RangeError("the walls are thicker than the container");
      // Quarter of the inner circle, less the strip under each straight wall, their overlap once.
      const strip = (wallCm * Math.sqrt(arc ** 2 - wallCm ** 2) + arc ** 2 * Math.asin(wallCm / arc)) / 2;
      const area = (Math.PI / 4) * arc ** 2 - 2 * strip + wallCm ** 2;
      return {
        ...outside,
        radiusCm: less(Math.sqrt((4 / Math.PI) * area), 0),
        heightCm: less(outside.heightCm, 1),
      };
    }
  }
}
