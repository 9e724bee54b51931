import { caution, type NoAnswer, noAnswer } from "../result.ts";

/** Why no sum can stand in for the one who builds and answers for a tank. */
export const WALL_THICKNESS_REASONS = [
  "stress-depends-on-support",
  "glass-is-flawed",
  "acrylic-creeps",
  "joints-govern",
  "containers-not-made-for-it",
  "failure-is-sudden",
] as const;

export type WallThicknessReason = (typeof WALL_THICKNESS_REASONS)[number];

/** Always refused: glass or acrylic thickness, bracing, seams. What can be told is the water's push: see `wallPressure`. */
export function wallThickness(): NoAnswer {
  return noAnswer("wall-thickness-is-for-makers", { reasons: WALL_THICKNESS_REASONS }, [
    caution("ask-a-tank-maker", {}, "danger"),
  ]);
}
