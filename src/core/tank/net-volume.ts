import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Litres } from "../quantity/units.ts";
import { type Answer, type Caution, type Constant, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { SourceId } from "../sources.ts";
import type { Container, Role, VolumeBasis } from "./container.ts";
import {
  type ContainerFault,
  type ContainerWater,
  containerWater,
  type Doubt,
  DRY_OF_WET_ROCK,
  LABEL_FILLED,
  LEVEL_OF_RIM,
  ROCK_SOLID_KG_M3,
  SAND_GRAIN_KG_M3,
  WALL_OF_HEIGHT,
} from "./container-water.ts";

export interface ContainerNet {
  readonly name: string;
  readonly role: Role;
  readonly basis: VolumeBasis["kind"];
  readonly inSystem: boolean;
  /** Up to the running level, before rock and sand are taken off. */
  readonly grossL: Estimate<Litres>;
  /** What the solid of the rock displaces; nothing where a measured fill already has it in. */
  readonly rockL: Estimate<Litres>;
  readonly sandL: Estimate<Litres>;
  readonly netL: Estimate<Litres>;
  /** Of the system's water, by best values; absent outside the system. */
  readonly share?: Fraction;
}

export interface NetVolume {
  /** Water of all containers in the running system. */
  readonly totalL: Estimate<Litres>;
  /** Water of those called display; absent when none is. */
  readonly displayL?: Estimate<Litres>;
  readonly containers: readonly ContainerNet[];
}

/**
 * Water that a system of containers holds in running: each inside up to its water level, less the
 * solids of rock and sand. A measured fill overrides geometry; a label is never taken as it stands.
 * Source: elementary-geometry, mineral-densities, mass-balance; the shares assumed where something was
 * not said are in container-water.ts. Pipes and equipment count only when given as containers.
 */
export function netVolume(containers: readonly Container[]): Answer<NetVolume> | NoAnswer {
  const names = distinctNames(containers);
  const waters: ContainerWater[] = [];
  for (const [i, container] of containers.entries()) {
    const water = containerWater(container, names[i] as string);
    if ("kind" in water) return refuse(water, names[i] as string);
    waters.push(water);
  }
  if (!containers.some((container) => container.inSystem)) {
    return noAnswer("no-water-in-system", { containers: listed(names) });
  }

  const inputs: Record<string, Estimate> = Object.assign({}, ...waters.map((water) => water.inputs));
  const { estimates, drivers } = propagate(inputs, (values) => {
    const figures: Record<string, number> = { total: 0, display: 0 };
    for (const [i, water] of waters.entries()) {
      const gross = water.grossL(values);
      const rock = water.rockL(values);
      const sand = water.sandL(values);
      const net = Math.max(0, gross - rock - sand);
      Object.assign(figures, {
        [`gross ${i}`]: gross,
        [`rock ${i}`]: rock,
        [`sand ${i}`]: sand,
        [`net ${i}`]: net,
      });
      const container = containers[i] as Container;
      if (!container.inSystem) continue;
      figures["total"] = (figures["total"] ?? 0) + net;
      if (container.role === "display") figures["display"] = (figures["display"] ?? 0) + net;
    }
    return figures;
  });
  const litres = (key: string): Estimate<Litres> => {
    const { best, low, high } = estimates[key] as Estimate;
    return { best: as<Litres>(best), low: as<Litres>(Math.max(0, low)), high: as<Litres>(high) };
  };

  const totalL = litres("total");
  const nets = containers.map((container, i): ContainerNet => {
    const netL = litres(`net ${i}`);
    return {
      name: names[i] as string,
      role: container.role,
      basis: container.volume.kind,
      inSystem: container.inSystem,
      grossL: litres(`gross ${i}`),
      rockL: litres(`rock ${i}`),
      sandL: litres(`sand ${i}`),
      netL,
      ...(container.inSystem ? { share: as<Fraction>(netL.best / totalL.best) } : {}),
    };
  });
  const empty = nets.find((net) => net.netL.best <= 0);
  if (empty !== undefined) {
    return noAnswer("nothing-left-to-hold-water", {
      container: empty.name,
      grossL: empty.grossL.best,
      displacedL: empty.rockL.best + empty.sandL.best,
    });
  }

  const hasDisplay = containers.some((container) => container.inSystem && container.role === "display");
  const { constants, sources, assumptions } = evidence(containers, waters);
  return {
    kind: "answer",
    value: { totalL, ...(hasDisplay ? { displayL: litres("display") } : {}), containers: nets },
    method: "Each container's inside up to its running water level, less the solids in it, added up",
    working: [
      ...waters.map((water) => water.working),
      "total: all containers of the running system together",
    ],
    constants,
    sources,
    assumptions,
    cautions: cautionsOf(waters, names, hasDisplay),
    driver: drivers["total"],
  };
}

function refuse(fault: ContainerFault, container: string): NoAnswer {
  return fault.kind === "impossible"
    ? noAnswer("impossible-container", { container, fault: fault.fault })
    : noAnswer("level-above-rim", { container, levelCm: fault.levelCm, rimCm: fault.rimCm });
}

function cautionsOf(
  waters: readonly ContainerWater[],
  names: readonly string[],
  hasDisplay: boolean,
): Caution[] {
  const about = (doubt: Doubt) => listed(names.filter((_, i) => waters[i]?.doubts.includes(doubt)));
  const cautions: Caution[] = [];
  const raise = (
    doubt: Doubt,
    code:
      | "volume-from-label"
      | "running-level-not-said"
      | "inside-or-outside-not-said"
      | "wall-not-said"
      | "rock-weighed-wet",
    level: "note" | "warning",
  ) => {
    const concerned = about(doubt);
    if (concerned !== "") cautions.push(caution(code, { containers: concerned }, level));
  };
  raise("label", "volume-from-label", "warning");
  raise("level", "running-level-not-said", "warning");
  raise("wall", "wall-not-said", "warning");
  raise("inside or outside", "inside-or-outside-not-said", "warning");
  raise("wet rock", "rock-weighed-wet", "note");
  if (!hasDisplay) cautions.push(caution("no-display-named", { containers: listed(names) }, "note"));
  return cautions;
}

function evidence(containers: readonly Container[], waters: readonly ContainerWater[]) {
  const doubts = new Set(waters.flatMap((water) => water.doubts));
  const kinds = new Set(containers.map((container) => container.volume.kind));
  // A measured fill has rock and sand in already; only the other kinds take them off.
  const displaced = containers.filter((container) => container.volume.kind !== "measured fill");
  const hasRock = displaced.some((container) => container.rockKg !== undefined);
  const hasSand = displaced.some((container) => container.sandKg !== undefined);
  const constants: Constant[] = [];
  const assumptions: string[] = [];
  const sources: SourceId[] = ["mass-balance"];
  if (kinds.has("dimensions")) {
    sources.push("elementary-geometry");
    assumptions.push("dimensions are exact, and the water level is counted from the inside floor");
  }
  if (hasRock) {
    constants.push({
      name: "solid of rock",
      value: span(ROCK_SOLID_KG_M3, "kg/m³"),
      source: "mineral-densities",
    });
    assumptions.push("pores of the rock are full of water, so only its solid displaces");
    if (displaced.some(({ rockKg, rockWeighed }) => rockKg !== undefined && rockWeighed !== "wet")) {
      assumptions.push("the rock's mass is its dry mass");
    }
  }
  if (hasSand) {
    constants.push({
      name: "grains of sand",
      value: span(SAND_GRAIN_KG_M3, "kg/m³"),
      source: "mineral-densities",
    });
    assumptions.push("the sand's mass is its dry mass");
  }
  if (hasRock || hasSand) sources.push("mineral-densities");
  const assumed = (name: string, share: Estimate) => {
    constants.push({ name, value: span(share, "of one"), source: "assumption" });
    if (!sources.includes("assumption")) sources.push("assumption");
  };
  if (doubts.has("wet rock")) assumed("dry share of rock weighed wet", DRY_OF_WET_ROCK);
  if (doubts.has("label")) {
    assumed("water in running, of a label volume", LABEL_FILLED);
    assumptions.push("containers known by their label all run equally full");
  }
  if (doubts.has("level")) assumed("water level, of the rim's height", LEVEL_OF_RIM);
  if (doubts.has("wall") || doubts.has("inside or outside")) {
    assumed("wall thickness, of the height, for the volume only", WALL_OF_HEIGHT);
  }
  if (doubts.has("fill taken as ± 2 %")) {
    assumptions.push("a measured fill given without a range is taken as ± 2 %");
    if (!sources.includes("assumption")) sources.push("assumption");
  }
  if (kinds.has("measured fill")) {
    assumptions.push("a measured fill is water alone: rock and sand were already in place");
  }
  assumptions.push("pipes and equipment are left out unless given as containers");
  return { constants, sources, assumptions };
}

function span({ low, high, best }: Estimate, unit: string): string {
  return `${best} (${low}–${high}) ${unit}`;
}

function distinctNames(containers: readonly Container[]): string[] {
  const taken = new Set<string>();
  return containers.map(({ name }) => {
    let distinct = name;
    for (let n = 2; taken.has(distinct); n++) distinct = `${name} (${n})`;
    taken.add(distinct);
    return distinct;
  });
}

/** "a", "a and b", "a, b and c". */
function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
