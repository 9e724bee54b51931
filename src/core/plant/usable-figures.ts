import type { Estimate } from "../quantity/estimate.ts";
import { type NoAnswer, noAnswer } from "../result.ts";

type Named = Readonly<Record<string, Estimate | undefined>>;

/** No bore, volume, flow or power of a tank is smaller or larger, in any unit of this room: a slip of the keys. */
const SMALLEST = 1e-6;
const LARGEST = 1e9;

/** Refuses the first figure that is not a number above nothing over its whole range. */
export function refuseUnlessPositive(figures: Named): NoAnswer | undefined {
  return (
    refuseUnless(figures, (value) => value > 0, "has to be more than nothing") ??
    refuseUnless(figures, (value) => value >= SMALLEST, "is too small to be meant") ??
    refuseUnless(figures, (value) => value <= LARGEST, "is too large to be meant")
  );
}

/** Refuses the first figure that is not a number, or reaches below nothing. */
export function refuseIfNegative(figures: Named): NoAnswer | undefined {
  return (
    refuseUnless(figures, (value) => value >= 0, "cannot be less than nothing") ??
    refuseUnless(figures, (value) => value <= LARGEST, "is too large to be meant")
  );
}

/** Refuses the first figure that leaves `min`–`max`. */
export function refuseOutside(figures: Named, min: number, max: number): NoAnswer | undefined {
  return refuseUnless(
    figures,
    (value) => value >= min && value <= max,
    `has to lie between ${min} and ${max}`,
  );
}

/** Refuses two things of one name: their figures could not be told apart. */
export function refuseSameNames(things: readonly { readonly name: string }[]): NoAnswer | undefined {
  const seen = new Set<string>();
  for (const { name } of things) {
    if (seen.has(name)) return noAnswer("named-twice", { name });
    seen.add(name);
  }
  return undefined;
}

function refuseUnless(
  figures: Named,
  isUsable: (value: number) => boolean,
  rule: string,
): NoAnswer | undefined {
  for (const [figure, estimate] of Object.entries(figures)) {
    if (estimate === undefined) continue;
    const bad = [estimate.best, estimate.low, estimate.high].find(
      (value) => !Number.isFinite(value) || !isUsable(value),
    );
    if (bad !== undefined) return noAnswer("unusable-figure", { figure, value: bad, rule });
  }
  return undefined;
}
