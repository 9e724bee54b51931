import type { Estimate } from "../quantity/estimate.ts";
import type { Millimetres } from "./plant-units.ts";

/** An opening under the running level through which the display can drain back. */
export interface DrainedOpening {
  readonly name: string;
  /** Its lowest edge under the running level. */
  readonly belowLevelMm: Estimate<Millimetres>;
  /** A hole that lets air in once the water has fallen to it; counted only when it is inspected. */
  readonly siphonBreak?: { readonly belowLevelMm: Estimate<Millimetres>; readonly isInspected: boolean };
}

/** How far the display falls through one opening: to its edge, or to a siphon break that can be trusted.
 *  Source: first-principles. */
export function openingDrop(opening: DrainedOpening, figure: "best" | "low" | "high"): Millimetres {
  const edge = opening.belowLevelMm[figure];
  const hole = opening.siphonBreak;
  return hole?.isInspected === true && hole.belowLevelMm[figure] < edge ? hole.belowLevelMm[figure] : edge;
}

/** The opening that lets the display fall furthest. Throws: RangeError without any opening. */
export function governingDrop(
  openings: readonly DrainedOpening[],
  figure: "best" | "low" | "high",
): DrainedOpening {
  const [first, ...others] = openings;
  if (first === undefined) throw new RangeError("there is no opening");
  return others.reduce(
    (lowest, opening) => (openingDrop(opening, figure) > openingDrop(lowest, figure) ? opening : lowest),
    first,
  );
}
