import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { exactly } from "../../src/core/quantity/estimate.ts";
import { as, type Centimetres, type Kilograms } from "../../src/core/quantity/units.ts";
import type { Container, Shape } from "../../src/core/tank/container.ts";
import { type NetVolume, netVolume } from "../../src/core/tank/net-volume.ts";
import { sandSolidsL } from "../../src/core/tank/sand-bed.ts";

// Rows: elementary solid geometry, Archimedes and the definition of porosity; each row names its own
// provenance in the last column.
const rows = checkRows("data/reference/tank-checks.csv");

const cm = (value: number) => as<Centimetres>(value);

const shapes: Record<string, (given: Given) => Shape> = {
  "volume.box": (given) => ({
    kind: "box",
    lengthCm: given("length_cm"),
    widthCm: given("width_cm"),
    heightCm: given("water_depth_cm"),
  }),
  "volume.cylinder_vertical": (given) => ({
    kind: "upright cylinder",
    diameterCm: given("inside_diameter_cm"),
    heightCm: given("water_depth_cm"),
  }),
  "volume.cylinder_horizontal_partial": (given) => ({
    kind: "horizontal drum",
    diameterCm: given("inside_diameter_cm"),
    lengthCm: given("length_cm"),
  }),
  "volume.bow_front": (given) => ({
    kind: "bow front",
    lengthCm: given("length_cm"),
    endWidthCm: given("end_width_cm"),
    bowDepthCm: given("bow_depth_cm"),
    heightCm: given("water_depth_cm"),
  }),
  "volume.quarter_round": (given) => ({
    kind: "quarter round",
    radiusCm: given("radius_cm"),
    heightCm: given("water_depth_cm"),
  }),
  "volume.hexagon": (given) => ({
    kind: "hexagon",
    acrossFlatsCm: given("across_flats_cm"),
    heightCm: given("water_depth_cm"),
  }),
  "volume.l_shape": (given) => ({
    kind: "L-shape",
    lengthCm: given("outer_length_cm"),
    widthCm: given("outer_width_cm"),
    cutLengthCm: given("cut_length_cm"),
    cutWidthCm: given("cut_width_cm"),
    heightCm: given("water_depth_cm"),
  }),
  "volume.tapered_tub": (given) => ({
    kind: "tapered tub",
    bottomLengthCm: given("bottom_length_cm"),
    bottomWidthCm: given("bottom_width_cm"),
    topLengthCm: given("top_length_cm"),
    topWidthCm: given("top_width_cm"),
    heightCm: given("tub_height_cm"),
  }),
};

const quantities: Record<string, (given: Given) => number> = {
  ...Object.fromEntries(
    Object.entries(shapes).map(([quantity, shape]) => [
      quantity,
      (given: Given) => answered([tank(shape(given), given("water_depth_cm"))]).totalL.best,
    ]),
  ),
  "displacement.rock": (given) => {
    // The row's density is the one the answer takes as best.
    expect(given("solid_density_kg_m3")).toBe(2800);
    const rocky = { ...tank(bigBox, cm(100)), rockKg: exactly(as<Kilograms>(given("dry_mass_kg"))) };
    const bare = tank(bigBox, cm(100));
    return answered([bare]).totalL.best - answered([rocky]).totalL.best;
  },
  "displacement.sand_solids": (given) =>
    sandSolidsL(as(given("bed_area_cm2") / 10_000), given("bed_depth_cm"), as(given("porosity"))),
};

const bigBox: Shape = { kind: "box", lengthCm: cm(300), widthCm: cm(100), heightCm: cm(100) };

describe("published and first-principles rows", () => {
  it.each(rows)("$id $quantity", ({ quantity, inputs, expected, tolerance }) => {
    const compute = quantities[quantity];
    expect(compute, `no check for ${quantity}`).toBeDefined();
    if (compute === undefined) return;
    const given: Given = (name) => {
      const value = inputs[name];
      if (value === undefined) throw new Error(`the row has no ${name}`);
      return cm(value);
    };
    const allowed = Number(/^rel ([\d.e-]+)$/.exec(tolerance)?.[1]) * Math.abs(expected);
    expect(Math.abs(compute(given) - expected)).toBeLessThanOrEqual(allowed);
  });

  it("uses every quantity it knows", () => {
    expect(new Set(rows.map((row) => row.quantity))).toEqual(new Set(Object.keys(quantities)));
  });
});

describe("a worked system", () => {
  // Geometry and Archimedes by hand: 260 × 100 × 70 cm is 1820 L; 240 kg ÷ 2.8 kg/L is 85.7 L;
  // 62.4 L of sand grains weigh 174.72 kg at 2.8 kg/L. 1820 − 85.7 − 62.4 = 1671.9 L.
  it("takes off what rock and sand displace, not what they bulk to", () => {
    const display: Container = {
      ...tank({ kind: "box", lengthCm: cm(260), widthCm: cm(100), heightCm: cm(78) }, cm(70)),
      rockKg: exactly(as<Kilograms>(240)),
      sandKg: exactly(as<Kilograms>(174.72)),
    };
    const { totalL, containers } = answered([display]);
    expect(totalL.best).toBeCloseTo(1671.9, 1);
    expect(containers[0]?.rockL.best).toBeCloseTo(85.7, 1);
    expect(containers[0]?.sandL.best).toBeCloseTo(62.4, 1);
  });

  // 25 mm walls on 260 × 100 cm: (255 × 95) ÷ (260 × 100) = 0.9317, about 7 % less.
  it("loses about 7 % to 25 mm walls on a box of 260 × 100 cm", () => {
    const shape: Shape = { kind: "box", lengthCm: cm(260), widthCm: cm(100), heightCm: cm(78) };
    const level = exactly(cm(70));
    const outside: Container = {
      ...tank(shape, cm(70)),
      volume: { kind: "dimensions", shape, measured: "outside", wallCm: cm(2.5), runningLevelCm: level },
    };
    const share = answered([outside]).totalL.best / answered([tank(shape, cm(70))]).totalL.best;
    expect(share).toBeCloseTo(0.9317, 4);
  });
});

type Given = (name: string) => Centimetres;

function tank(shape: Shape, levelCm: Centimetres): Container {
  return {
    name: "display",
    role: "display",
    volume: { kind: "dimensions", shape, measured: "inside", runningLevelCm: exactly(levelCm) },
    inSystem: true,
  };
}

function answered(containers: readonly Container[]): NetVolume {
  const answer = netVolume(containers);
  if (answer.kind !== "answer") throw new Error(`refused: ${answer.reason.code}`);
  return answer.value;
}

function checkRows(path: string) {
  const [, ...lines] = readFileSync(path, "utf8").trimEnd().split("\n");
  return lines.map((line) => {
    const [id, quantity, inputs, expected, , tolerance] = [
      ...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g),
    ].map((cell) => cell[1]?.replaceAll('""', '"') ?? cell[2] ?? "");
    return {
      id: id ?? "",
      quantity: quantity ?? "",
      inputs: JSON.parse(inputs ?? "") as Record<string, number>,
      expected: Number(expected),
      tolerance: tolerance ?? "",
    };
  });
}
