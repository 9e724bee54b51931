import { gainDays, waterChange } from "./balance.ts";
import { type Draw, evenNormal, FUTURE_DIMENSION } from "./draws.ts";
import { SETTINGS } from "./settings.ts";

/** A dated change of water still to come. */
export interface PlannedChange {
  readonly at: number;
  readonly fraction: number;
  readonly newWater: number;
}

/** The level of each draw at `at`, with `changes` (in order of time) on the way, uneven feeding, drift and
 *  inexact changes included. */
export function levelsAt(
  draws: readonly Draw[],
  now: number,
  at: number,
  changes: readonly PlannedChange[],
): Float64Array {
  const due = changes.filter((change) => change.at >= now && change.at <= at);
  return Float64Array.from(draws, (draw) => levelOf(draw, now, at, due));
}

function levelOf(draw: Draw, now: number, at: number, due: readonly PlannedChange[]): number {
  // One slow drift for the whole way: its mean effect on the level is that of the middle of the way.
  const drift = draw.drift * Math.sqrt((at - now) / 3) * evenNormal(draw.point, FUTURE_DIMENSION);
  const production = draw.production * Math.max(0, 1 + drift);
  const feeding = (draw.feedingSpread * production) ** 2;
  let level = draw.level;
  let variance = 0;
  let time = now;
  for (let i = 0; i <= due.length; i += 1) {
    const change = due[i];
    const days = (change?.at ?? at) - time;
    const kept = draw.uptakePerDay === 0 ? 1 : Math.exp(-draw.uptakePerDay * days);
    level = level * kept + production * gainDays(draw.uptakePerDay, days);
    variance = variance * kept * kept + feeding * days;
    if (!change) break;
    time = change.at;
    const uneven = draw.changeSpread * change.fraction * (level - change.newWater);
    const newWater = SETTINGS.newWaterSpread * change.fraction * change.newWater;
    level = waterChange(level, change.fraction, change.newWater);
    variance = variance * (1 - change.fraction) ** 2 + uneven * uneven + newWater * newWater;
  }
  return Math.max(0, level + Math.sqrt(variance) * evenNormal(draw.point, FUTURE_DIMENSION + 1));
}
