import { as, type Metres } from "../quantity/units.ts";
import type { Millimetres } from "./plant-units.ts";

/** Inside diameter of schedule 40 PVC pipe by its nominal size in inches. Source: astm-d1785, minimum wall. */
export const SCHEDULE_40_BORE_MM = {
  "3/4": as<Millimetres>(20.9),
  "1": as<Millimetres>(26.6),
  "1 1/4": as<Millimetres>(35.1),
  "1 1/2": as<Millimetres>(40.9),
  "2": as<Millimetres>(52.5),
  "3": as<Millimetres>(77.9),
  "4": as<Millimetres>(102.3),
} as const;

export type NominalSize = keyof typeof SCHEDULE_40_BORE_MM;

/**
 * What a fitting costs: K velocity heads, or as many bores of straight pipe. Screwed fittings; sweeps
 * joined with solvent cost less, so these are upper values. A loss is counted by K or by length, never by both.
 * Source: irc-2018-a22 where bores are given, otherwise crane-tp-410.
 */
export const FITTINGS = {
  "45° elbow": { k: 0.42, bores: 14 },
  "90° elbow": { k: 0.9, bores: 30 },
  "tee, through the branch": { k: 1.8, bores: 60 },
  "close return": { k: 2, bores: 67 },
  "flush entry": { k: 0.5, bores: undefined },
  "projecting entry": { k: 0.8, bores: undefined },
  exit: { k: 1, bores: undefined },
  "open ball valve": { k: 0.1, bores: undefined },
  "swing check valve": { k: 2, bores: undefined },
} as const satisfies Record<string, { k: number; bores: number | undefined }>;

export type Fitting = keyof typeof FITTINGS;

export interface FittingCount {
  readonly fitting: Fitting;
  readonly count: number;
}

/** Sum of K over fittings, each counted once. Source: irc-2018-a22, crane-tp-410. */
export function sumOfK(fittings: readonly FittingCount[]): number {
  return fittings.reduce((sum, { fitting, count }) => sum + FITTINGS[fitting].k * count, 0);
}

/** Straight pipe that costs as much as one such fitting; undefined for those known by K only.
 *  Source: irc-2018-a22. */
export function equivalentLength(fitting: Fitting, boreMm: Millimetres): Metres | undefined {
  const { bores } = FITTINGS[fitting];
  return bores === undefined ? undefined : as<Metres>((bores * boreMm) / 1000);
}
