import type { Estimate } from "../quantity/estimate.ts";
import { type NoAnswer, noAnswer } from "../result.ts";

type Named = Readonly<Record<string, Estimate | undefined>>;

/** Refuses the first figure that is not a number above nothing over its whole range. */
export function refuseUnlessPositive(figures: Named): NoAnswer | undefined {
  return refuseUnless(figures, (value) => value > 0, "has to be more than nothing");
}

/** Refuses the first figure that is not a number, or reaches below nothing. */
export function refuseIfNegative(figures: Named): NoAnswer | undefined {
  return refuseUnless(figures, (value) => value >= 0, "cannot be less than nothing");
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
