import { type Estimate, exactly } from "../quantity/estimate.ts";
import type { SquareMetres } from "../quantity/units.ts";
import type { NoAnswer } from "../result.ts";
import type { Millimetres } from "./plant-units.ts";
import { refuseIfNegative, refuseUnlessPositive } from "./usable-figures.ts";

/** A container of the filter row. */
export interface RowContainer {
  readonly name: string;
  readonly areaM2: Estimate<SquareMetres>;
  /** From its running level up to its lowest opening: rim, hole, or notch for a cable. */
  readonly freeboardMm: Estimate<Millimetres>;
  /** How its water goes on: through a joint under water, or over an edge. The last one holds the pump. */
  readonly onward: "shares level" | "overflows" | "holds the pump";
  /** How far its running level stands over the edge it overflows by; only for one that overflows. */
  readonly aboveOutletMm?: Estimate<Millimetres>;
  /** How far its running level stands below that of the first container it shares a level with. */
  readonly belowFirstMm?: Millimetres;
}

/** A container whose water falls to its outlet edge when the flow stops. */
export interface CascadingContainer extends RowContainer {
  readonly aboveOutletMm: Estimate<Millimetres>;
}

/**
 * Which containers end up with what falls back: the pump's, and those before it joined under water.
 * Every container further up passes its water on, and loses what stands over its outlet; those that
 * share a level with a container that overflows fall to that outlet as well.
 */
export function receiversOf(row: readonly RowContainer[]): {
  readonly receivers: readonly RowContainer[];
  readonly cascading: readonly CascadingContainer[];
} {
  const receivers: RowContainer[] = [];
  const cascading: CascadingContainer[] = [];
  let outletOver: Estimate<Millimetres> | undefined;
  let isReceiving = true;
  for (const [fromEnd, container] of [...row].reverse().entries()) {
    // The last one has nowhere to pass its water on to, whatever was said of it.
    if (container.onward === "overflows" && fromEnd > 0) {
      isReceiving = false;
      outletOver = container.aboveOutletMm ?? (exactly(0) as Estimate<Millimetres>);
    }
    if (isReceiving) receivers.unshift(container);
    else if (outletOver !== undefined) cascading.unshift({ ...container, aboveOutletMm: outletOver });
  }
  return { receivers, cascading };
}

/** Refuses containers that cannot be as described. */
export function refuseRow(row: readonly RowContainer[]): NoAnswer | undefined {
  return (
    refuseUnlessPositive(Object.fromEntries(row.map(({ name, areaM2 }) => [`surface of ${name}`, areaM2]))) ??
    refuseIfNegative(
      Object.fromEntries(
        row.map(({ name, freeboardMm }) => [`room above the water in ${name}`, freeboardMm]),
      ),
    ) ??
    refuseIfNegative(
      Object.fromEntries(
        row.map(({ name, aboveOutletMm }) => [`water over the outlet of ${name}`, aboveOutletMm]),
      ),
    ) ??
    refuseIfNegative(
      Object.fromEntries(
        row.map(({ name, belowFirstMm }) => [
          `step down to ${name}`,
          belowFirstMm === undefined ? undefined : exactly(belowFirstMm),
        ]),
      ),
    )
  );
}
