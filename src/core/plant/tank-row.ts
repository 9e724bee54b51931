import { type Estimate, mapEstimate, propagate } from "../quantity/estimate.ts";
import { as, type Litres, type SquareMetres } from "../quantity/units.ts";
import type { Container } from "../tank/container.ts";
import { containerSurfaces } from "../tank/container-surfaces.ts";
import { netVolume } from "../tank/net-volume.ts";
import type { WallMaterial } from "./heat.ts";
import type { Wall } from "./heat-balance.ts";
import type { FailingContainer } from "./largest-spill.ts";
import type { Millimetres } from "./plant-units.ts";
import type { RowFact } from "./read-row.ts";
import type { RowContainer } from "./row.ts";

/** A row ready to be checked, or the first thing missing of it. */
export type TankRow =
  | {
      readonly kind: "row";
      readonly row: readonly RowContainer[];
      readonly fromDimensions: readonly string[];
    }
  | { readonly kind: "missing"; readonly container: string; readonly what: "surface" | "room" };

/** The row as described, its surfaces and rims from the containers' dimensions where they were not said. */
export function tankRow(facts: readonly RowFact[], containers: readonly Container[]): TankRow {
  const row: RowContainer[] = [];
  const fromDimensions: string[] = [];
  for (const fact of facts) {
    const same = containers.find(({ name }) => plainName(name) === plainName(fact.name));
    const faces = same === undefined ? undefined : containerSurfaces(same);
    const areaM2 = fact.areaM2 ?? faces?.areaM2;
    const freeboardMm = fact.freeboardMm ?? faces?.roomMm;
    if (areaM2 === undefined) return { kind: "missing", container: fact.name, what: "surface" };
    if (freeboardMm === undefined) return { kind: "missing", container: fact.name, what: "room" };
    if (fact.areaM2 === undefined || fact.freeboardMm === undefined) fromDimensions.push(fact.name);
    const { name, onward, aboveOutletMm, belowFirstMm } = fact;
    row.push({
      name,
      onward,
      areaM2,
      freeboardMm,
      ...(aboveOutletMm === undefined ? {} : { aboveOutletMm }),
      ...(belowFirstMm === undefined ? {} : { belowFirstMm }),
    });
  }
  return { kind: "row", row, fromDimensions };
}

/** Open water of the containers that pass, added up; undefined when one of them is known by its litres only. */
export function openSurface(
  containers: readonly Container[],
  isCounted: (container: Container) => boolean,
): Estimate<SquareMetres> | undefined {
  const counted = containers.filter(isCounted);
  const areas: Record<string, Estimate<SquareMetres>> = {};
  for (const [index, container] of counted.entries()) {
    const faces = containerSurfaces(container);
    if (faces === undefined) return undefined;
    areas[`surface ${index}`] = faces.areaM2;
  }
  if (counted.length === 0) return undefined;
  return propagate(areas, (v) => ({
    total: as<SquareMetres>(Object.values(v).reduce((sum, area) => sum + area, 0)),
  })).estimates.total;
}

/** Room from the display's running level to its rim. */
export function displayRoom(containers: readonly Container[]): Estimate<Millimetres> | undefined {
  const display = containers.find(({ role, inSystem }) => role === "display" && inSystem);
  return display === undefined ? undefined : containerSurfaces(display)?.roomMm;
}

export interface TankWalls {
  readonly walls: readonly Wall[];
  /** Containers whose walls are not known, so that their heat is left out. */
  readonly leftOut: readonly string[];
}

/** The wetted walls of a system's containers, all taken as of one material. */
export function tankWalls(
  containers: readonly Container[],
  wall: { readonly material: WallMaterial; readonly thicknessMm: Millimetres },
): TankWalls {
  const inSystem = containers.filter((container) => container.inSystem);
  const faces = inSystem.map((container) => ({ name: container.name, found: containerSurfaces(container) }));
  return {
    walls: faces.flatMap(({ found }) =>
      found === undefined ? [] : [{ areaM2: found.wettedM2.best, ...wall }],
    ),
    leftOut: faces.flatMap(({ name, found }) => (found === undefined ? [name] : [])),
  };
}

/** Net water of the display and of all else that runs with it. */
export function loopParts(containers: readonly Container[]): {
  readonly display?: Estimate<Litres>;
  readonly rest?: Estimate<Litres>;
} {
  const water = (isCounted: (container: Container) => boolean) => {
    const net = netVolume(containers.filter((container) => container.inSystem && isCounted(container)));
    return net.kind === "answer" ? net.value.totalL : undefined;
  };
  const display = water(({ role }) => role === "display");
  const rest = water(({ role }) => role !== "display");
  return { ...(display === undefined ? {} : { display }), ...(rest === undefined ? {} : { rest }) };
}

/** Containers that may fail, each at its floor; those of the row that are joined under water go together. */
export function failingContainers(
  containers: readonly Container[],
  facts: readonly RowFact[],
): readonly FailingContainer[] {
  let group = 0;
  const groups = new Map<string, string>();
  for (const { name, onward } of facts) {
    groups.set(plainName(name), `group ${group}`);
    if (onward === "overflows") group += 1;
  }
  return containers.flatMap((container): readonly FailingContainer[] => {
    const faces = container.inSystem ? containerSurfaces(container) : undefined;
    if (faces === undefined) return [];
    const joinedGroup = groups.get(plainName(container.name));
    return [
      {
        name: container.name,
        areaM2: faces.areaM2,
        levelOverHoleMm: mapEstimate(faces.depthCm, (cm) => as<Millimetres>(cm * 10)),
        isDisplay: container.role === "display",
        ...(joinedGroup === undefined ? {} : { joinedGroup }),
      },
    ];
  });
}

/** A container described as "pump box 100x60x60 cm" is called "pump": the word for its form was taken off. */
export function plainName(name: string): string {
  return name
    .toLowerCase()
    .replace(/\b(?:box|round|cylinder)\b/g, "")
    .replace(/\s+/g, " ")
    .trim();
}
