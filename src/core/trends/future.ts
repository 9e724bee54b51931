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
  const levels = new Float64Array(draws.length);
  draws.forEach((draw, i) => {
    let level = draw.level;
    let production = draw.production;
    let variance = 0;
    let time = now;
    const grow = (until: number) => {
      const days = until - time;
      const kept = Math.exp(-draw.uptakePerDay * days);
      level = level * kept + production * gainDays(draw.uptakePerDay, days);
      variance = variance * kept * kept + (draw.feedingSpread * production) ** 2 * days;
      time = until;
    };
    // One slow drift for the whole way: its mean effect on the level is that of the middle of the way.
    production *= Math.max(
      0,
      1 + draw.drift * Math.sqrt((at - now) / 3) * evenNormal(draw.point, FUTURE_DIMENSION),
    );
    for (const change of changes) {
      if (change.at < now || change.at > at) continue;
      grow(change.at);
      const uneven = draw.changeSpread * change.fraction * (level - change.newWater);
      const newWater = SETTINGS.newWaterSpread * change.fraction * change.newWater;
      level = waterChange(level, change.fraction, change.newWater);
      variance = variance * (1 - change.fraction) ** 2 + uneven * uneven + newWater * newWater;
    }
    grow(at);
    levels[i] = Math.max(0, level + Math.sqrt(variance) * evenNormal(draw.point, FUTURE_DIMENSION + 1));
  });
  return levels;
}
