import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Litres, type SquareMetres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { type DrainedOpening, governingDrop } from "./lowest-opening.ts";
import { pipeVolume } from "./pipe-loss.ts";
import type { PipeSegment } from "./pipe-run.ts";
import type { Millimetres } from "./plant-units.ts";
import { type RowContainer, receiversOf, refuseRow } from "./row.ts";
import { refuseIfNegative, refuseSameNames, refuseUnlessPositive } from "./usable-figures.ts";

/** Free volume wanted for each litre that falls back. Source: common-practice. */
export const USUAL_MARGIN = 1.25;

export interface PumpOffInputs {
  readonly display: {
    readonly name: string;
    readonly areaM2: Estimate<SquareMetres>;
    /** Running level over the crest of the overflow, or over the foot of its teeth. */
    readonly aboveCrestMm: Estimate<Millimetres>;
    /** Return outlets under water. */
    readonly returns: readonly DrainedOpening[];
  };
  /** Water in the overflow box above its open standpipe. */
  readonly overflowBoxL?: Estimate<Litres>;
  /** Pipes that empty into the row when the pump stops: those above its water. */
  readonly pipes: readonly Pick<PipeSegment, "name" | "boreMm" | "lengthM">[];
  /** In the order the water takes, the pump's container last. */
  readonly row: readonly RowContainer[];
  readonly margin?: number;
}

export interface PumpOffFlood {
  readonly fallback: {
    readonly displayL: Estimate<Litres>;
    readonly overflowBoxL: Estimate<Litres>;
    readonly pipesL: Estimate<Litres>;
    /** What containers that overflow onward lose of their own running height. */
    readonly cascadeL: Estimate<Litres>;
    readonly totalL: Estimate<Litres>;
  };
  /** The opening that sets how far the display falls. */
  readonly lowestOpening: string;
  readonly dropMm: Estimate<Millimetres>;
  /** Falling back as well should every siphon break be clogged. */
  readonly ifSiphonBreaksClogL: Estimate<Litres>;
  /** Room in the containers that receive it, up to the lowest opening. */
  readonly freeL: Estimate<Litres>;
  /** What takes it: the pump's container and those that share its level. */
  readonly receivers: readonly string[];
  /** How far the receivers rise. */
  readonly riseMm: Estimate<Millimetres>;
  readonly verdict: {
    readonly outcome: "floods" | "may flood" | "tight" | "fits";
    /** The container whose rim, hole or notch is lowest: where it runs over first. */
    readonly container: string;
    /** Left under that opening; below nothing: how far the water would stand above it. */
    readonly leftMm: Estimate<Millimetres>;
  };
  /** The most the display may fall, with the margin kept. */
  readonly allowedDropMm: Estimate<Millimetres>;
}

/** What falls back when the pump stops, and whether the row holds it. */
export function pumpOffFlood(inputs: PumpOffInputs): Answer<PumpOffFlood> | NoAnswer {
  const { display, overflowBoxL, pipes, row } = inputs;
  const margin = inputs.margin ?? USUAL_MARGIN;
  if (row.length === 0) return noAnswer("nothing-named", { what: "the container the pump stands in" });
  const refused =
    refuseSameNames(row) ??
    refuseSameNames(display.returns) ??
    refuseUnlessPositive({ "surface of the display": display.areaM2, margin: exactly(margin) }) ??
    refuseIfNegative({
      "running level over the crest": display.aboveCrestMm,
      "overflow box": overflowBoxL,
    }) ??
    refuseIfNegative(
      Object.fromEntries(display.returns.map(({ name, belowLevelMm }) => [`depth of ${name}`, belowLevelMm])),
    ) ??
    refuseIfNegative(
      Object.fromEntries(
        display.returns.map(({ name, siphonBreak }) => [
          `depth of the siphon break of ${name}`,
          siphonBreak?.belowLevelMm,
        ]),
      ),
    ) ??
    refuseUnlessPositive(
      Object.fromEntries(pipes.map(({ name, boreMm }) => [`bore of ${name}`, exactly(boreMm)])),
    ) ??
    refuseIfNegative(
      Object.fromEntries(pipes.map(({ name, lengthM }) => [`length of ${name}`, exactly(lengthM)])),
    ) ??
    refuseRow(row);
  if (refused !== undefined) return refused;

  const { receivers, cascading } = receiversOf(row);
  const pipesL = pipes.reduce((sum, { lengthM, boreMm }) => sum + pipeVolume(lengthM, boreMm), 0);
  const openings = [{ name: "the overflow's crest", belowLevelMm: display.aboveCrestMm }, ...display.returns];
  const governing = governingDrop(openings, "best");
  const ranged: Readonly<Record<string, Estimate>> = {
    "surface of the display": display.areaM2,
    "overflow box": overflowBoxL ?? exactly(0),
    ...Object.fromEntries(openings.map(({ name, belowLevelMm }) => [`depth of ${name}`, belowLevelMm])),
    ...Object.fromEntries(
      display.returns.flatMap(({ name, siphonBreak }) =>
        siphonBreak === undefined ? [] : [[`depth of the siphon break of ${name}`, siphonBreak.belowLevelMm]],
      ),
    ),
    ...Object.fromEntries(row.map(({ name, areaM2 }) => [`surface of ${name}`, areaM2])),
    ...Object.fromEntries(
      row.map(({ name, freeboardMm }) => [`room above the water in ${name}`, freeboardMm]),
    ),
    ...Object.fromEntries(
      cascading.map(({ name, aboveOutletMm }) => [`water over the outlet of ${name}`, aboveOutletMm]),
    ),
  };
  const { estimates, drivers } = propagate(ranged, (v) => {
    const at = (name: string) => v[name] ?? 0;
    const depth = (opening: DrainedOpening) =>
      opening.siphonBreak?.isInspected === true
        ? Math.min(at(`depth of ${opening.name}`), at(`depth of the siphon break of ${opening.name}`))
        : at(`depth of ${opening.name}`);
    const area = at("surface of the display");
    const drop = Math.max(...openings.map(depth));
    const dropClogged = Math.max(...openings.map(({ name }) => at(`depth of ${name}`)));
    // 1 m² × 1 mm is 1 L.
    const displayL = area * drop;
    const box = at("overflow box");
    const cascadeL = cascading.reduce(
      (sum, { name }) => sum + at(`surface of ${name}`) * at(`water over the outlet of ${name}`),
      0,
    );
    const surface = receivers.reduce((sum, { name }) => sum + at(`surface of ${name}`), 0);
    // When the flow stops, levels that stood apart meet at their mean.
    const meanBelow =
      receivers.reduce(
        (sum, { name, belowFirstMm }) => sum + at(`surface of ${name}`) * (belowFirstMm ?? 0),
        0,
      ) / surface;
    const lowest = Math.min(
      ...receivers.map(
        ({ name, belowFirstMm }) => at(`room above the water in ${name}`) - (belowFirstMm ?? 0),
      ),
    );
    const room = lowest + meanBelow;
    const total = displayL + box + pipesL + cascadeL;
    const free = surface * room;
    return {
      displayL: as<Litres>(displayL),
      overflowBoxL: as<Litres>(box),
      pipesL: as<Litres>(pipesL),
      cascadeL: as<Litres>(cascadeL),
      totalL: as<Litres>(total),
      dropMm: as<Millimetres>(drop),
      ifSiphonBreaksClogL: as<Litres>(area * (dropClogged - drop)),
      freeL: as<Litres>(free),
      riseMm: as<Millimetres>(total / surface),
      leftMm: as<Millimetres>(room - total / surface),
      reserveMm: as<Millimetres>(room - (margin * total) / surface),
      allowedDropMm: as<Millimetres>(Math.max(0, (free / margin - (total - displayL)) / area)),
    };
  });
  const lowestContainer = [...receivers].sort(
    (a, b) => a.freeboardMm.best - (a.belowFirstMm ?? 0) - (b.freeboardMm.best - (b.belowFirstMm ?? 0)),
  )[0];
  const container = lowestContainer?.name ?? "";
  const { leftMm, reserveMm } = estimates;
  const outcome =
    leftMm.best < 0 ? "floods" : leftMm.low < 0 ? "may flood" : reserveMm.low < 0 ? "tight" : "fits";
  return {
    kind: "answer",
    value: {
      fallback: {
        displayL: estimates.displayL,
        overflowBoxL: estimates.overflowBoxL,
        pipesL: estimates.pipesL,
        cascadeL: estimates.cascadeL,
        totalL: estimates.totalL,
      },
      lowestOpening: governing.name,
      dropMm: estimates.dropMm,
      ifSiphonBreaksClogL: estimates.ifSiphonBreaksClogL,
      freeL: estimates.freeL,
      receivers: receivers.map(({ name }) => name),
      riseMm: estimates.riseMm,
      verdict: { outcome, container, leftMm },
      allowedDropMm: estimates.allowedDropMm,
    },
    method: "All the water that falls back, against the room up to the lowest opening of what receives it",
    working: [
      "display: surface × fall to the lowest opening, crest or return outlet (1 m² × 1 mm = 1 L)",
      "overflow box: water above its standpipe; pipes: bore area × length",
      "containers that overflow onward: surface × water over their outlet",
      "room: surfaces of the containers that share the pump's level × height to their lowest opening",
      `verdict: room against what falls back, and against ${margin} times as much`,
    ],
    constants: [
      { name: "room wanted per litre falling back", value: `× ${margin}`, source: "common-practice" },
    ],
    sources: ["mass-balance", "elementary-geometry", "common-practice"],
    assumptions: [
      "check valves leak",
      "a siphon break counts only if it is inspected",
      "walls are upright between the running level and the rim",
      "no top-off runs meanwhile",
    ],
    cautions: floodCautions(inputs, {
      outcome,
      container,
      leftMm,
      margin,
      crestDropMm: display.aboveCrestMm.best,
    }),
    driver: drivers.leftMm,
  };
}

function floodCautions(
  { display, row }: PumpOffInputs,
  verdict: {
    outcome: PumpOffFlood["verdict"]["outcome"];
    container: string;
    leftMm: Estimate<Millimetres>;
    margin: number;
    crestDropMm: number;
  },
): readonly Caution[] {
  const { outcome, container, leftMm, margin, crestDropMm } = verdict;
  const cautions: Caution[] = [];
  if (outcome === "floods")
    cautions.push(caution("pump-off-floods", { container, overMm: -leftMm.best }, "danger"));
  if (outcome === "may flood")
    cautions.push(caution("pump-off-may-flood", { container, overMm: -leftMm.low }, "danger"));
  if (outcome === "tight")
    cautions.push(caution("pump-off-tight", { container, leftMm: leftMm.best, margin }));
  for (const { name, belowLevelMm, siphonBreak } of display.returns) {
    const credited = siphonBreak?.isInspected === true ? siphonBreak.belowLevelMm.best : belowLevelMm.best;
    if (siphonBreak !== undefined) {
      const extraL =
        display.areaM2.best *
        Math.max(0, belowLevelMm.best - Math.max(crestDropMm, siphonBreak.belowLevelMm.best));
      cautions.push(caution("siphon-break-needs-cleaning", { opening: name, extraL }));
    }
    if (credited > crestDropMm) {
      const extraL = display.areaM2.best * (credited - crestDropMm);
      cautions.push(caution("return-empties-display", { opening: name, depthMm: credited, extraL }));
    }
  }
  const { cascading } = receiversOf(row);
  if (cascading.length > 0) {
    cautions.push(
      caution(
        "cascade-holds-nothing-more",
        { containers: cascading.map(({ name }) => name).join(", ") },
        "note",
      ),
    );
  }
  cautions.push(
    caution("check-valve-not-counted", {}, "note"),
    caution("thin-walls-bulge", {}, "note"),
    caution("do-pump-off-test", {}),
  );
  return cautions;
}
