import type { Estimate } from "../quantity/estimate.ts";

/** A range whose low end was carried under zero by adding doubts, cut off where the quantity ends. */
export function notBelowZero(estimate: Estimate): Estimate {
  return estimate.low < 0 ? { ...estimate, low: 0 } : estimate;
}

/** The same for every figure of a record. */
export function allNotBelowZero<K extends string>(
  estimates: Readonly<Record<K, Estimate>>,
): Readonly<Record<K, Estimate>> {
  return Object.fromEntries(
    Object.entries<Estimate>(estimates).map(([name, estimate]) => [name, notBelowZero(estimate)]),
  ) as Record<K, Estimate>;
}
