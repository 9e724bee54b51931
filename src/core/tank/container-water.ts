import { between, type Estimate, isExact } from "../quantity/estimate.ts";
import { as, type Centimetres } from "../quantity/units.ts";
import type { Container, Shape } from "./container.ts";
import { insideShape } from "./inside-shape.ts";
import { shapeFault, shapeHeightCm, shapeVolume } from "./shape-volume.ts";

/** A typed fill without a range of its own. Source: assumption. */
export const MEASURED_FILL_ERROR = 0.02;
/** Water in running as a share of a label or brimful volume. Source: assumption. */
export const LABEL_FILLED = between(0.7, 0.95, 0.85);
/** Water depth in running as a share of the inside height. Source: assumption. */
export const LEVEL_OF_RIM = between(0.8, 0.95, 0.9);
/** Wall thickness as a share of the outside height, for the volume only. Source: assumption. */
export const WALL_OF_HEIGHT = between(0.01, 0.04, 0.02);
/** Solid of limestone rock, kg/m³: calcite to aragonite. Source: mineral-densities. */
export const ROCK_SOLID_KG_M3 = between(2710, 2930, 2800);
/** Grains of sand, kg/m³: quartz to aragonite. Source: mineral-densities. */
export const SAND_GRAIN_KG_M3 = between(2650, 2930, 2800);
/** Dry share of the mass of rock weighed wet and drained. Source: assumption. */
export const DRY_OF_WET_ROCK = between(0.7, 1, 0.85);

/** The inputs all containers share; the others carry their container's name. */
const LABEL_INPUT = "how full label-rated containers run";
const ROCK_DENSITY_INPUT = "density of rock";
const SAND_DENSITY_INPUT = "density of sand";
const WET_ROCK_INPUT = "water in rock weighed wet";

type Inputs = Readonly<Record<string, Estimate>>;
type Values = Readonly<Record<string, number>>;

/** What one container's water rests on, and the sums that give it. */
export interface ContainerWater {
  readonly inputs: Inputs;
  readonly grossL: (values: Values) => number;
  readonly rockL: (values: Values) => number;
  readonly sandL: (values: Values) => number;
  readonly working: string;
  readonly doubts: readonly Doubt[];
}

export type Doubt = "label" | "level" | "inside or outside" | "wall" | "wet rock" | "fill taken as ± 2 %";

export type ContainerFault =
  | { readonly kind: "impossible"; readonly fault: string }
  | { readonly kind: "level above rim"; readonly levelCm: number; readonly rimCm: number };

/** `name` must be the container's own among all that are added up together. */
export function containerWater(container: Container, name: string): ContainerWater | ContainerFault {
  const { volume } = container;
  switch (volume.kind) {
    case "measured fill": {
      const { litres } = volume;
      const input = `measured fill of ${name}`;
      const error = MEASURED_FILL_ERROR * litres.best;
      const fill: Estimate = isExact(litres)
        ? between<number>(litres.best - error, litres.best + error, litres.best)
        : litres;
      return {
        inputs: { [input]: fill },
        grossL: (values) => value(values, input),
        rockL: () => 0,
        sandL: () => 0,
        working: `${name}: the litres measured, with whatever stood in it then`,
        doubts: isExact(litres) ? ["fill taken as ± 2 %"] : [],
      };
    }
    case "label": {
      const input = `label volume of ${name}`;
      return {
        ...solids(container, name, ["label"]),
        ...withInputs(container, name, { [input]: volume.litres, [LABEL_INPUT]: LABEL_FILLED }),
        grossL: (values) => value(values, input) * value(values, LABEL_INPUT),
        working: `${name}: label volume × share it runs at${lessSolids(container)}`,
      };
    }
    case "dimensions":
      return dimensionsWater(container, volume, name);
  }
}

function dimensionsWater(
  container: Container,
  volume: Extract<Container["volume"], { kind: "dimensions" }>,
  name: string,
): ContainerWater | ContainerFault {
  const { shape, measured, wallCm, runningLevelCm } = volume;
  const fault = shapeFault(shape);
  if (fault !== undefined) return { kind: "impossible", fault };
  const wallInput = `wall of ${name}`;
  const levelInput = `water level in ${name}`;
  const wall = wallOf(shape, measured, wallCm);
  const inside = (wallNow: number): Shape => (wallNow > 0 ? insideShape(shape, as(wallNow)) : shape);
  let rimCm: number;
  try {
    rimCm = shapeHeightCm(inside(wall.low));
    inside(wall.high);
  } catch (error) {
    if (error instanceof RangeError) return { kind: "impossible", fault: error.message };
    throw error;
  }
  if (runningLevelCm !== undefined) {
    if (!(runningLevelCm.low >= 0))
      return { kind: "impossible", fault: "a water level cannot be below the floor" };
    if (runningLevelCm.best > rimCm) return { kind: "level above rim", levelCm: runningLevelCm.best, rimCm };
  }
  const doubts: Doubt[] = [];
  if (runningLevelCm === undefined) doubts.push("level");
  if (measured === "not said") doubts.push("inside or outside");
  if (measured === "outside" && wallCm === undefined) doubts.push("wall");
  return {
    ...solids(container, name, doubts),
    ...withInputs(container, name, {
      [wallInput]: wall,
      [levelInput]: runningLevelCm ?? LEVEL_OF_RIM,
    }),
    grossL: (values) => {
      const within = inside(value(values, wallInput));
      const level = value(values, levelInput);
      const depth = runningLevelCm === undefined ? level * shapeHeightCm(within) : level;
      return shapeVolume(within, as<Centimetres>(depth));
    },
    working: `${name}: inside (${shape.kind}) up to the water level${lessSolids(container)}`,
  };
}

/** Nothing to take off inside dimensions; the measured wall, or a guess in proportion to the height. */
export function wallOf(
  shape: Shape,
  measured: "inside" | "outside" | "not said",
  wallCm?: Centimetres,
): Estimate {
  if (measured === "inside") return between<number>(0, 0, 0);
  const height = shapeHeightCm(shape);
  const guess = (share: number) => share * height;
  if (measured === "outside") {
    return wallCm === undefined
      ? between(guess(WALL_OF_HEIGHT.low), guess(WALL_OF_HEIGHT.high), guess(WALL_OF_HEIGHT.best))
      : between<number>(wallCm, wallCm, wallCm);
  }
  // Either the tape was inside, or a whole wall has to come off: the best value lies between the two.
  const whole = wallCm ?? guess(WALL_OF_HEIGHT.high);
  return between(0, whole, wallCm === undefined ? guess(WALL_OF_HEIGHT.best) / 2 : wallCm / 2);
}

function solids(container: Container, name: string, doubts: readonly Doubt[]) {
  const isWet = container.rockWeighed === "wet";
  return {
    rockL: (values: Values) => {
      if (container.rockKg === undefined) return 0;
      const dryKg = value(values, `rock in ${name}`) * (isWet ? value(values, WET_ROCK_INPUT) : 1);
      return (dryKg / value(values, ROCK_DENSITY_INPUT)) * 1000;
    },
    sandL: (values: Values) => {
      if (container.sandKg === undefined) return 0;
      return (value(values, `sand in ${name}`) / value(values, SAND_DENSITY_INPUT)) * 1000;
    },
    doubts: isWet && container.rockKg !== undefined ? [...doubts, "wet rock" as const] : doubts,
  };
}

function withInputs({ rockKg, rockWeighed, sandKg }: Container, name: string, inputs: Inputs) {
  const all: Record<string, Estimate> = { ...inputs };
  if (rockKg !== undefined) {
    all[`rock in ${name}`] = rockKg;
    all[ROCK_DENSITY_INPUT] = ROCK_SOLID_KG_M3;
    if (rockWeighed === "wet") all[WET_ROCK_INPUT] = DRY_OF_WET_ROCK;
  }
  if (sandKg !== undefined) {
    all[`sand in ${name}`] = sandKg;
    all[SAND_DENSITY_INPUT] = SAND_GRAIN_KG_M3;
  }
  return { inputs: all };
}

function lessSolids({ rockKg, sandKg }: Container): string {
  const parts = [
    rockKg === undefined ? "" : " − rock mass ÷ density of its solid",
    sandKg === undefined ? "" : " − sand mass ÷ density of its grains",
  ];
  return parts.join("");
}

function value(values: Values, input: string): number {
  const found = values[input];
  if (found === undefined) throw new RangeError(`no input called ${input}`);
  return found;
}
