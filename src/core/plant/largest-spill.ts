import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Litres, type SquareMetres } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { Millimetres } from "./plant-units.ts";
import { refuseIfNegative, refuseSameNames, refuseUnlessPositive } from "./usable-figures.ts";

/** A container that may fail: a seam, a bulkhead, a hose. */
export interface FailingContainer {
  readonly name: string;
  readonly areaM2: Estimate<SquareMetres>;
  /** Running level over the place that fails. */
  readonly levelOverHoleMm: Estimate<Millimetres>;
  /** Containers joined under water with the same name here empty together; a closed valve separates them. */
  readonly joinedGroup?: string;
  /** The display goes on receiving what the pump reaches, the others what falls back. */
  readonly isDisplay: boolean;
}

export interface LargestSpillInputs {
  readonly containers: readonly FailingContainer[];
  /** What falls back when the pump stops. */
  readonly fallbackL: Estimate<Litres>;
  /** Water the pump can take before it draws air. */
  readonly pumpableL: Estimate<Litres>;
}

export interface LargestSpill {
  readonly container: string;
  readonly litres: Estimate<Litres>;
  readonly each: readonly { readonly container: string; readonly litres: Estimate<Litres> }[];
}

/** How much ends on the floor when one container fails: the worst of them, and each. */
export function largestSpill(inputs: LargestSpillInputs): Answer<LargestSpill> | NoAnswer {
  const { containers, fallbackL, pumpableL } = inputs;
  const refused =
    refuseSameNames(containers) ??
    refuseUnlessPositive(
      Object.fromEntries(containers.map(({ name, areaM2 }) => [`surface of ${name}`, areaM2])),
    ) ??
    refuseIfNegative({
      "water falling back": fallbackL,
      "water the pump reaches": pumpableL,
      ...Object.fromEntries(
        containers.map(({ name, levelOverHoleMm }) => [`water over the hole of ${name}`, levelOverHoleMm]),
      ),
    });
  if (refused !== undefined) return refused;
  const spills = containers.map((failing) => ({ container: failing.name, ...spillOf(failing, inputs) }));
  const worst = [...spills].sort((a, b) => b.litres.best - a.litres.best)[0];
  if (worst === undefined) return noAnswer("nothing-named", { what: "a container" });
  return {
    kind: "answer",
    value: {
      container: worst.container,
      litres: worst.litres,
      each: spills.map(({ container, litres }) => ({ container, litres })),
    },
    method: "Everything above the hole, in every container joined to it, and what still arrives",
    working: [
      "own water: surface × height over the hole, for it and all joined to it under water",
      "a display: and the water the pump still brings before it draws air",
      "any other: and what falls back from the display when the pump stops",
    ],
    constants: [],
    sources: ["mass-balance"],
    assumptions: ["one failure at a time", "nobody closes a valve", "joined containers have the same level"],
    cautions: [
      caution("spill-on-the-floor", { container: worst.container, litres: worst.litres.best }),
      caution("ask-an-electrician", {}, "danger"),
    ],
    driver: worst.driver,
  };
}

function spillOf(failing: FailingContainer, { containers, fallbackL, pumpableL }: LargestSpillInputs) {
  const joined = containers.filter(
    (other) =>
      other === failing || (failing.joinedGroup !== undefined && other.joinedGroup === failing.joinedGroup),
  );
  const inputs: Readonly<Record<string, Estimate>> = {
    ...Object.fromEntries(joined.map(({ name, areaM2 }) => [`surface of ${name}`, areaM2])),
    "water over the hole": failing.levelOverHoleMm,
    "water still arriving": failing.isDisplay ? pumpableL : fallbackL,
  };
  const { estimates, drivers } = propagate(inputs, (v) => {
    const at = (name: string) => v[name] ?? 0;
    const surface = joined.reduce((sum, { name }) => sum + at(`surface of ${name}`), 0);
    return { litres: as<Litres>(surface * at("water over the hole") + at("water still arriving")) };
  });
  return { litres: estimates.litres, driver: drivers.litres };
}
