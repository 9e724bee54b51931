import { describe, expect, it } from "vitest";
import { as } from "../../../../src/core/quantity/units.ts";
import type { Container, Shape } from "../../../../src/core/tank/container.ts";
import { containerSurfaces } from "../../../../src/core/tank/container-surfaces.ts";
import { readContainers } from "../../../../src/core/tank/read-containers.ts";
import { wettedAreaM2 } from "../../../../src/core/tank/shape-walls.ts";

function container(text: string): Container {
  const read = readContainers(text, {});
  if (read.kind !== "read" || read.value[0] === undefined) throw new Error(`not read: ${text}`);
  return read.value[0];
}

const cm = <T extends Record<string, unknown>>(shape: T) => shape as unknown as Shape;

describe("walls and floor that water touches (elementary geometry)", () => {
  it.each([
    // 2.6 × 1.0 floor + 2 × (2.6 + 1.0) × 0.7.
    ["box", cm({ kind: "box", lengthCm: 260, widthCm: 100, heightCm: 78 }), 70, 7.64],
    // A corner cut out keeps the way around: floor 0.24 × 1.8 … 2.72 m² + 2 × (2.4 + 1.8) × 0.6.
    [
      "L-shape",
      cm({ kind: "L-shape", lengthCm: 240, widthCm: 180, cutLengthCm: 160, cutWidthCm: 100, heightCm: 65 }),
      60,
      7.76,
    ],
    // π/4 × 0.5² + π × 0.5 × 0.4.
    ["upright cylinder", cm({ kind: "upright cylinder", diameterCm: 50, heightCm: 60 }), 40, 0.8247],
    // (2 + π/2) × 1 × 0.6 + π/4.
    ["quarter round", cm({ kind: "quarter round", radiusCm: 100, heightCm: 65 }), 60, 2.9279],
    // Six sides of 0.9 ÷ √3 = 0.5196 m: × 0.7 + √3/2 × 0.81.
    ["hexagon", cm({ kind: "hexagon", acrossFlatsCm: 90, heightCm: 75 }), 70, 2.8839],
    // Full drum: π × 0.5 × 1 + 2 × π/4 × 0.25.
    ["horizontal drum", cm({ kind: "horizontal drum", diameterCm: 50, lengthCm: 100 }), 50, 1.9635],
    // Upright walls are a box: 0.8 × 0.5 + 2 × 1.3 × 0.4.
    [
      "tapered tub without taper",
      cm({
        kind: "tapered tub",
        bottomLengthCm: 80,
        bottomWidthCm: 50,
        topLengthCm: 80,
        topWidthCm: 50,
        heightCm: 45,
      }),
      40,
      1.44,
    ],
  ] as const)("%s", (_, shape, level, expected) => {
    expect(wettedAreaM2(shape, as(level))).toBeCloseTo(expected, 3);
  });
});

describe("the faces of a described container", () => {
  it("gives surface, room and brim of inside dimensions", () => {
    const faces = containerSurfaces(container("display 260x100x78 cm inside, level 70 cm"));
    expect(faces?.areaM2.best).toBeCloseTo(2.6, 9);
    expect(faces?.roomMm.best).toBeCloseTo(80, 9);
    expect(faces?.brimL.best).toBeCloseTo(2028, 6);
    expect(faces?.filled.best).toBeCloseTo(70 / 78, 9);
    expect(faces?.isLevelSaid).toBe(true);
  });

  it("takes walls off outside dimensions, and guesses a level with its range", () => {
    const faces = containerSurfaces(container("sump 100x60x60 cm outside, wall 1 cm"));
    // (100 − 2) × (60 − 2) cm².
    expect(faces?.areaM2.best).toBeCloseTo(0.5684, 6);
    expect(faces?.isLevelSaid).toBe(false);
    expect(faces?.roomMm.low).toBeLessThan(faces?.roomMm.high ?? 0);
  });

  it("has none where only litres are known", () => {
    expect(containerSurfaces(container("drum 110 L measured"))).toBeUndefined();
  });
});
