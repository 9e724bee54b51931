import { SETTINGS } from "./settings.ts";

/** Which way something goes, and how firmly that may be said. */
export interface Direction {
  readonly way: "rising" | "falling" | "steady" | "unclear";
  /** How to say it: "is rising", "is probably rising", or that it cannot be told yet. */
  readonly firmness: "is" | "probably" | "cannot tell";
  readonly chanceRising: number;
}

/** Direction from equally likely values of a change. "Steady" needs proof of its own: four times in five
 *  the change lies within what does not matter. */
export function directionOf(changes: Float64Array, matters: number): Direction {
  let up = 0;
  let small = 0;
  for (const change of changes) {
    if (change > 0) up += 1;
    if (Math.abs(change) < matters) small += 1;
  }
  const chanceRising = up / changes.length;
  if (small / changes.length > SETTINGS.steadyChance) return { way: "steady", firmness: "is", chanceRising };
  const surest = Math.max(chanceRising, 1 - chanceRising);
  const way = chanceRising > 0.5 ? "rising" : "falling";
  if (surest > SETTINGS.sureChance) return { way, firmness: "is", chanceRising };
  if (surest > SETTINGS.probableChance) return { way, firmness: "probably", chanceRising };
  return { way: "unclear", firmness: "cannot tell", chanceRising };
}
