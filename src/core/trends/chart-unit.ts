import { alkalinityToMeq } from "../carbonate/alkalinity-units.ts";
import type { ParameterId } from "../log/parameters.ts";
import { type Basis, onBasis, type Substance } from "../quantity/substances.ts";

/** How far a reading may lie from a step, as a share of it, and still be that step. Source: assumption. */
const SAME_STEP = 0.02;

/**
 * A colour chart's steps in the unit its readings are kept in: the chart may be printed in another. Of the
 * factors that could lie between the two, the one is taken under which most readings fall on a step or half-way
 * between two; the first of those that do equally well.
 */
export function stepsAsKept(
  steps: readonly number[],
  kept: readonly number[],
  factors: readonly number[],
): readonly number[] {
  let best = steps;
  let most = -1;
  for (const factor of factors) {
    const scaled = steps.map((step) => step * factor);
    const known = scaled.flatMap((step, i) => (i === 0 ? [step] : [step, (step + (scaled[i - 1] ?? 0)) / 2]));
    const hits = kept.filter(
      (value) => value > 0 && known.some((step) => Math.abs(value - step) <= SAME_STEP * step),
    ).length;
    if (hits > most) {
      most = hits;
      best = scaled;
    }
  }
  return best;
}

/** What one of a chart's own units may be in the unit readings are kept in: as kept first, then the others a
 *  chart for that may be printed in. Source: definition; molar masses as in the quantity room. */
export function chartFactors(id: ParameterId): readonly number[] {
  switch (id) {
    case "nitrate":
    case "nitrite":
      return [1, ...toKept(id, ["N"], "ion")];
    case "phosphate":
      return [1, ...toKept(id, ["P"], "ion")];
    case "ammonia":
      return [1, ...toKept(id, ["NH4", "NH3"], "N")];
    case "alkalinity":
      return [1, alkalinityToMeq(1, "dKH"), alkalinityToMeq(1, "ppm CaCO3")];
    default:
      return [1];
  }
}

function toKept(substance: Substance, printed: readonly Basis[], kept: Basis): readonly number[] {
  return printed.flatMap((basis) => onBasis(1, substance, basis, kept) ?? []);
}
