import { as, type Centimetres, type Litres, type SquareMetres } from "../quantity/units.ts";
import type { Shape } from "./container.ts";

const CM3_PER_L = 1000;
const CM2_PER_M2 = 10_000;

/** Height of the rim above the inside floor. */
export function shapeHeightCm(shape: Shape): Centimetres {
  return shape.kind === "horizontal drum" ? shape.diameterCm : shape.heightCm;
}

/** What makes these dimensions impossible, or undefined when such a container can exist. */
export function shapeFault(shape: Shape): string | undefined {
  for (const [name, value] of Object.entries(shape)) {
    if (typeof value === "number" && !(Number.isFinite(value) && value > 0)) {
      return `${wordsOf(name)} must be more than nothing`;
    }
  }
  if (shape.kind === "bow front" && shape.bowDepthCm > shape.lengthCm / 2) {
    return "a bow cannot bulge by more than half the length";
  }
  if (shape.kind === "L-shape") {
    if (shape.cutLengthCm >= shape.lengthCm || shape.cutWidthCm >= shape.widthCm) {
      return "the cut-out must be shorter and narrower than the whole";
    }
  }
  return undefined;
}

/**
 * Water a container holds when it stands `waterDepthCm` deep over the inside floor, nothing else in it.
 * Water above the rim has run over: a depth beyond the height counts as the height.
 * Source: elementary-geometry; the tapered tub by the prismatoid rule, exact for straight walls.
 * Range: inside dimensions for which `shapeFault` finds nothing.
 * Throws: RangeError for a negative depth or impossible dimensions.
 */
export function shapeVolume(shape: Shape, waterDepthCm: Centimetres): Litres {
  const depth = checkedDepth(shape, waterDepthCm);
  switch (shape.kind) {
    case "horizontal drum":
      return as<Litres>((segmentAreaCm2(shape.diameterCm / 2, depth) * shape.lengthCm) / CM3_PER_L);
    case "tapered tub": {
      const bottom = areaAtCm2(shape, 0);
      const middle = areaAtCm2(shape, depth / 2);
      const top = areaAtCm2(shape, depth);
      return as<Litres>(((depth / 6) * (bottom + 4 * middle + top)) / CM3_PER_L);
    }
    default:
      return as<Litres>((areaAtCm2(shape, depth) * depth) / CM3_PER_L);
  }
}

/**
 * Open water surface when the water stands at `levelCm` over the inside floor.
 * Source: elementary-geometry.
 * Throws: RangeError for a negative level or impossible dimensions.
 */
export function shapeAreaAtLevel(shape: Shape, levelCm: Centimetres): SquareMetres {
  return as<SquareMetres>(areaAtCm2(shape, checkedDepth(shape, levelCm)) / CM2_PER_M2);
}

/**
 * Floor the container covers: the floor of a tub, the shadow (diameter × length) of a drum on its
 * side, which rests in a cradle and not on its belly. Walls are not added.
 * Source: elementary-geometry.
 */
export function shapeFootprintM2(shape: Shape): SquareMetres {
  if (shape.kind === "horizontal drum") {
    return as<SquareMetres>((shape.diameterCm * shape.lengthCm) / CM2_PER_M2);
  }
  return shapeAreaAtLevel(shape, as<Centimetres>(0));
}

function checkedDepth(shape: Shape, depthCm: number): number {
  const fault = shapeFault(shape);
  if (fault !== undefined) throw new RangeError(fault);
  if (!(depthCm >= 0)) throw new RangeError(`a water depth cannot be ${depthCm} cm`);
  return Math.min(depthCm, shapeHeightCm(shape));
}

function areaAtCm2(shape: Shape, levelCm: number): number {
  switch (shape.kind) {
    case "box":
      return shape.lengthCm * shape.widthCm;
    case "upright cylinder":
      return (Math.PI / 4) * shape.diameterCm ** 2;
    case "bow front": {
      const chord = shape.lengthCm;
      const bulge = shape.bowDepthCm;
      const radius = (chord ** 2 / 4 + bulge ** 2) / (2 * bulge);
      return chord * shape.endWidthCm + segmentAreaCm2(radius, bulge);
    }
    case "quarter round":
      return (Math.PI / 4) * shape.radiusCm ** 2;
    case "hexagon":
      return (Math.sqrt(3) / 2) * shape.acrossFlatsCm ** 2;
    case "L-shape":
      return shape.lengthCm * shape.widthCm - shape.cutLengthCm * shape.cutWidthCm;
    case "horizontal drum": {
      const fromCentre = shape.diameterCm / 2 - levelCm;
      const halfChord = Math.sqrt(Math.max(0, (shape.diameterCm / 2) ** 2 - fromCentre ** 2));
      return 2 * halfChord * shape.lengthCm;
    }
    case "tapered tub": {
      const share = levelCm / shape.heightCm;
      const length = shape.bottomLengthCm + share * (shape.topLengthCm - shape.bottomLengthCm);
      const width = shape.bottomWidthCm + share * (shape.topWidthCm - shape.bottomWidthCm);
      return length * width;
    }
  }
}

/** Area of the part of a circle cut off by a chord, from its height `rise` (0 to twice the radius). */
function segmentAreaCm2(radius: number, rise: number): number {
  const toChord = radius - rise;
  const cosine = Math.min(1, Math.max(-1, toChord / radius));
  return radius ** 2 * Math.acos(cosine) - toChord * Math.sqrt(Math.max(0, 2 * radius * rise - rise ** 2));
}

function wordsOf(name: string): string {
  return `the ${name
    .replace(/Cm$/, "")
    .replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
    .trim()}`;
}
