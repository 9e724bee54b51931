import { describe, expect, it } from "vitest";
import { as, type Centimetres } from "../../../../src/core/quantity/units.ts";
import type { Shape } from "../../../../src/core/tank/container.ts";
import { insideShape } from "../../../../src/core/tank/inside-shape.ts";
import {
  shapeAreaAtLevel,
  shapeFault,
  shapeFootprintM2,
  shapeHeightCm,
  shapeVolume,
} from "../../../../src/core/tank/shape-volume.ts";

const cm = (value: number) => as<Centimetres>(value);

const box: Shape = { kind: "box", lengthCm: cm(100), widthCm: cm(50), heightCm: cm(60) };
const cylinder: Shape = { kind: "upright cylinder", diameterCm: cm(20), heightCm: cm(60) };
const bow: Shape = {
  kind: "bow front",
  lengthCm: cm(100),
  endWidthCm: cm(40),
  bowDepthCm: cm(50),
  heightCm: cm(60),
};
const corner: Shape = { kind: "quarter round", radiusCm: cm(80), heightCm: cm(60) };
const hexagon: Shape = { kind: "hexagon", acrossFlatsCm: cm(60), heightCm: cm(60) };
const bent: Shape = {
  kind: "L-shape",
  lengthCm: cm(200),
  widthCm: cm(150),
  cutLengthCm: cm(120),
  cutWidthCm: cm(90),
  heightCm: cm(60),
};
const drum: Shape = { kind: "horizontal drum", diameterCm: cm(60), lengthCm: cm(90) };
const tub: Shape = {
  kind: "tapered tub",
  bottomLengthCm: cm(80),
  bottomWidthCm: cm(50),
  topLengthCm: cm(100),
  topWidthCm: cm(70),
  heightCm: cm(50),
};
const all = [box, cylinder, bow, corner, hexagon, bent, drum, tub];

// Worked by hand from the school formulas named beside each.
describe("the volume of a shape", () => {
  const worked: readonly [string, Shape, number, number][] = [
    ["box: 100·50·40", box, 40, 200],
    ["cylinder: π·10²·30", cylinder, 30, 9.42478],
    ["half-circle bow: (100·40 + π·50²/2)·10", bow, 10, 79.26991],
    ["quarter circle: π/4·80²·10", corner, 10, 50.26548],
    ["hexagon: 6 triangles of side 60/√3, 3117.691 cm²·10", hexagon, 10, 31.17691],
    ["L: (200·150 − 120·90)·10", bent, 10, 192],
    ["half-full drum: half of π·30²·90", drum, 30, 127.2345],
    ["full drum: π·30²·90", drum, 60, 254.469],
    // ∫₀⁵⁰ (80 + 0.4z)(50 + 0.4z) dz = 4000·50 + 52·1250 + 0.16·41 666.667 = 271 666.7 cm³
    ["full tub, integrated by hand", tub, 50, 271.66667],
  ];
  it.each(worked)("%s", (_, shape, depth, litres) => {
    expect(shapeVolume(shape, cm(depth))).toBeCloseTo(litres, 4);
  });

  it("is nothing for no water, and no more than brimful above the rim", () => {
    for (const shape of all) {
      expect(shapeVolume(shape, cm(0))).toBeCloseTo(0, 9);
      const rim = shapeHeightCm(shape);
      expect(shapeVolume(shape, cm(rim + 20))).toBe(shapeVolume(shape, rim));
    }
  });

  it("refuses a depth below the floor", () => {
    expect(() => shapeVolume(box, cm(-1))).toThrow(RangeError);
    expect(() => shapeVolume(box, cm(Number.NaN))).toThrow(RangeError);
  });
});

describe("the surface and the footprint of a shape", () => {
  it("has the surface of a drum widest at half height and none at the bottom", () => {
    expect(shapeAreaAtLevel(drum, cm(30))).toBeCloseTo(0.54, 9);
    expect(shapeAreaAtLevel(drum, cm(0))).toBeCloseTo(0, 9);
  });
  it("widens with the level in a tub, whose footprint is its floor", () => {
    expect(shapeAreaAtLevel(tub, cm(25))).toBeCloseTo(0.54, 9); // 90 cm × 60 cm half-way up
    expect(shapeFootprintM2(tub)).toBeCloseTo(0.4, 9);
  });
  it("takes a lying drum's footprint as its shadow", () => {
    expect(shapeFootprintM2(drum)).toBeCloseTo(0.54, 9);
  });
});

describe("impossible dimensions", () => {
  it.each<[string, Shape]>([
    ["no length", { ...box, lengthCm: cm(0) }],
    ["a negative height", { ...box, heightCm: cm(-3) }],
    ["a width that is no number", { ...box, widthCm: cm(Number.NaN) }],
    ["a bow deeper than half the length", { ...bow, bowDepthCm: cm(51) }],
    ["a cut-out as long as the whole", { ...bent, cutLengthCm: cm(200) }],
    ["a cut-out as wide as the whole", { ...bent, cutWidthCm: cm(150) }],
  ])("finds %s", (_, shape) => {
    expect(shapeFault(shape)).toBeDefined();
    expect(() => shapeVolume(shape, cm(10))).toThrow(RangeError);
  });
  it("names the faulty dimension in words", () => {
    expect(shapeFault({ ...bow, endWidthCm: cm(0) })).toBe("the end width must be more than nothing");
  });
  it("finds nothing wrong with a shape that can be built", () => {
    for (const shape of all) expect(shapeFault(shape)).toBeUndefined();
  });
});

describe("the inside of a container measured outside", () => {
  it("takes two walls off a box's length and width and one off its height", () => {
    // 260×100 outside with 2.5 cm walls is 255×95 inside: 6.8 % less floor.
    const outside: Shape = { kind: "box", lengthCm: cm(260), widthCm: cm(100), heightCm: cm(72.5) };
    expect(insideShape(outside, cm(2.5))).toEqual({
      kind: "box",
      lengthCm: 255,
      widthCm: 95,
      heightCm: 70,
    });
  });
  it("keeps the cut-out of an L-shape", () => {
    const inside = insideShape(bent, cm(1));
    // By hand: outline 198×148, cut 120×90.
    expect(shapeFootprintM2(inside)).toBeCloseTo((198 * 148 - 120 * 90) / 1e4, 9);
  });
  it("takes a half-circle bow to the concentric half circle", () => {
    const inside = insideShape(bow, cm(2));
    // The inner arc: radius 48 about the same centre, over a chord of 96; the back wall takes 2 cm of the ends.
    expect(inside).toMatchObject({ lengthCm: 96, endWidthCm: 38, bowDepthCm: 48 });
  });
  it("gives a quarter round the area counted in thin strips", () => {
    const wall = 3;
    const arc = 80 - wall;
    let area = 0;
    const step = 0.001;
    for (let x = wall + step / 2; x * x + wall * wall < arc * arc; x += step) {
      area += (Math.sqrt(arc * arc - x * x) - wall) * step;
    }
    expect(shapeFootprintM2(insideShape(corner, cm(wall))) * 1e4).toBeCloseTo(area, 0);
  });
  it("leaves every shape as it is with walls of no thickness, and shrinks it otherwise", () => {
    for (const shape of all) {
      const rim = shapeHeightCm(shape);
      expect(shapeVolume(insideShape(shape, cm(0)), rim)).toBeCloseTo(shapeVolume(shape, rim), 6);
      expect(shapeVolume(insideShape(shape, cm(1)), rim)).toBeLessThan(shapeVolume(shape, rim));
    }
  });
  it("refuses walls thicker than the container", () => {
    for (const shape of all) expect(() => insideShape(shape, cm(45))).toThrow(RangeError);
    expect(() => insideShape(box, cm(-1))).toThrow(RangeError);
  });
});
