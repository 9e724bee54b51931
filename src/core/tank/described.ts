import { quote } from "../quantity/clean.ts";
import { type Estimate, isExact } from "../quantity/estimate.ts";
import type { Read } from "../quantity/read.ts";
import { as, type Centimetres, type Kilograms, type Litres } from "../quantity/units.ts";
import type { Container, Role, Shape, VolumeBasis } from "./container.ts";
import { isUsuallyInSystem, roleOf } from "./container-role.ts";
import { SAND_GRAIN_KG_M3 } from "./container-water.ts";
import { shapeFrom } from "./read-shape.ts";
import { SAND_POROSITY, sandMassKg, sandSolidsL } from "./sand-bed.ts";
import { shapeAreaAtLevel, shapeHeightCm } from "./shape-volume.ts";

/** Carries the outcome out of the depth of one part; caught in `readContainer` only. */
export class Halt extends Error {
  override readonly name = "Halt";
  readonly read: Read<never>;
  constructor(read: Read<never>) {
    super("reading stops here");
    this.read = read;
  }
}

/** What a member said of one container, before it is put together. */
export interface Facts {
  name: string;
  role?: Role | undefined;
  form?: Shape["kind"] | undefined;
  sidesCm?: readonly Centimetres[];
  diameterCm?: Centimetres;
  heightCm?: Centimetres;
  bowCm?: Centimetres;
  cutCm?: readonly Centimetres[];
  litres?: Estimate<Litres>;
  isMeasured?: boolean;
  side: "inside" | "outside" | "not said";
  wallCm?: Centimetres;
  levelCm?: Estimate<Centimetres>;
  levelShare?: Estimate;
  rockKg?: Estimate<Kilograms>;
  rockWeighed?: "dry" | "wet";
  sandKg?: Estimate<Kilograms>;
  sandDepthCm?: Estimate<Centimetres>;
  inSystem?: boolean;
}

/** Throws: Halt, where the facts make no container. */
export function toContainer(facts: Facts, part: string): Container {
  if (facts.name === "") halt(`${quote(part)} has no name. Try ${quote(`sump ${part}`)}.`);
  const role = facts.role ?? roleOf(facts.name) ?? "other";
  const volume = basisOf(facts, part);
  const sandKg = facts.sandKg ?? sandOfDepth(facts, volume, part);
  return {
    name: facts.name,
    role,
    volume,
    ...(facts.rockKg === undefined ? {} : { rockKg: facts.rockKg }),
    ...(facts.rockKg === undefined || facts.rockWeighed === undefined
      ? {}
      : { rockWeighed: facts.rockWeighed }),
    ...(sandKg === undefined ? {} : { sandKg }),
    inSystem: facts.inSystem ?? isUsuallyInSystem(role),
  };
}

/** Litres that were measured stand first, dimensions next, a label last. */
function basisOf(facts: Facts, part: string): VolumeBasis {
  const { litres, isMeasured } = facts;
  if (litres !== undefined && !(litres.best > 0))
    halt(`In ${quote(part)}: a container of nothing holds no water.`);
  if (litres !== undefined && isMeasured === true) return { kind: "measured fill", litres };
  const hasSides =
    facts.sidesCm !== undefined ||
    facts.diameterCm !== undefined ||
    facts.heightCm !== undefined ||
    facts.form !== undefined;
  if (!hasSides) {
    if (litres === undefined) {
      halt(
        `${quote(part)} has no volume. Give litres (measured or label), or inside dimensions and the water level.`,
      );
    }
    if (facts.levelCm !== undefined || facts.levelShare !== undefined) {
      halt(
        `In ${quote(part)}: a water level is of use with dimensions only. Give those, or the litres measured.`,
      );
    }
    return { kind: "label", litres };
  }
  const shape = shapeFrom({ ...facts, form: facts.form, sidesCm: facts.sidesCm ?? [] });
  if ("missing" in shape) halt(`In ${quote(part)}: ${shape.missing}`);
  const rim = shapeHeightCm(shape);
  const runningLevelCm = facts.levelCm ?? levelOfShare(facts.levelShare, rim);
  if (runningLevelCm !== undefined && runningLevelCm.best > rim) {
    halt(
      `In ${quote(part)}: water ${shortly(runningLevelCm.best)} cm deep would stand above the rim, at ${shortly(rim)} cm.`,
    );
  }
  return {
    kind: "dimensions",
    shape,
    measured: facts.side,
    ...(facts.wallCm === undefined ? {} : { wallCm: facts.wallCm }),
    ...(runningLevelCm === undefined ? {} : { runningLevelCm }),
  };
}

function levelOfShare(share: Estimate | undefined, rimCm: Centimetres): Estimate<Centimetres> | undefined {
  if (share === undefined) return undefined;
  const level = as<Centimetres>(rounded(share.best * rimCm));
  return { best: level, low: level, high: level };
}

/** A bed's depth over the whole floor, as the dry mass of its grains. */
function sandOfDepth(facts: Facts, volume: VolumeBasis, part: string): Estimate<Kilograms> | undefined {
  const depth = facts.sandDepthCm;
  if (depth === undefined) return undefined;
  if (volume.kind !== "dimensions") {
    halt(
      `In ${quote(part)}: the depth of the sand tells how much it is only with the container's dimensions. Give its mass.`,
    );
  }
  const areaM2 = shapeAreaAtLevel(volume.shape, as<Centimetres>(0.001));
  const massKg = (depthCm: number, porosity: number) =>
    as<Kilograms>(rounded(sandMassKg(sandSolidsL(areaM2, depthCm, as(porosity)), SAND_GRAIN_KG_M3.best)));
  const best = massKg(depth.best, SAND_POROSITY.best);
  return isExact(depth) || depth.low > 0
    ? { best, low: massKg(depth.low, SAND_POROSITY.high), high: massKg(depth.high, SAND_POROSITY.low) }
    : { best, low: as<Kilograms>(0), high: massKg(depth.high, SAND_POROSITY.low) };
}

export function halt(message: string): never {
  throw new Halt({ kind: "unreadable", message });
}

function shortly(value: number): string {
  return String(rounded(value));
}

/** What is worked out from a guess or a share needs no more figures than these. */
function rounded(value: number): number {
  return Number(value.toPrecision(4));
}
