import { daysToLimit, gainDays, waterChange } from "./balance.ts";
import { type Draw, evenNormal, FUTURE_DIMENSION, quantile } from "./draws.ts";
import type { PlannedChange } from "./future.ts";

/** When a limit is reached, in days from now; Infinity stands for "not within the horizon". No mean: the
 *  late side has no end. */
export interface Crossing {
  /** Chance that the level is at the limit or above it today. */
  readonly chanceNow: number;
  /** Chance that it gets there within the horizon. */
  readonly chanceWithin: number;
  readonly horizonDays: number;
  /** One time in ten it is there by then: the useful figure. */
  readonly earlyDays: number;
  readonly middleDays: number;
  readonly lateDays: number;
}

/** When each way the tank may stand reaches the limit with no further change of water. */
export function crossingWithoutChanges(draws: readonly Draw[], limit: number, horizonDays: number): Crossing {
  const days = Float64Array.from(draws, (d) => daysToLimit(d.level, d.production, d.uptakePerDay, limit));
  return summary(days, horizonDays);
}

/** Every how many draws one is walked along the plan: a date needs no finer ranges than that. */
const WALKED = 3;

/** The same on a plan, with uneven feeding and inexact changes on the way. */
export function crossingOnPlan(
  draws: readonly Draw[],
  limit: number,
  horizonDays: number,
  now: number,
  changes: readonly PlannedChange[],
): Crossing {
  const walked = draws.filter((_, i) => i % WALKED === 0);
  const days = Float64Array.from(walked, (draw) => firstCrossing(draw, limit, now, horizonDays, changes));
  return summary(days, horizonDays);
}

function firstCrossing(
  draw: Draw,
  limit: number,
  now: number,
  horizonDays: number,
  changes: readonly PlannedChange[],
): number {
  let level = draw.level;
  let time = now;
  const end = now + horizonDays;
  for (let i = 0; i <= changes.length; i += 1) {
    const change = changes[i];
    const until = Math.min(change?.at ?? end, end);
    const days = until - time;
    if (days < 0) continue;
    // A stretch's own feeding: its mean differs from the usual by the spread of its days.
    const luck = evenNormal(draw.point + 131 * (i + 1), FUTURE_DIMENSION + (i % 3));
    const production =
      draw.production * Math.max(0, 1 + (days > 0 ? (draw.feedingSpread / Math.sqrt(days)) * luck : 0));
    const reached = daysToLimit(level, production, draw.uptakePerDay, limit);
    if (reached <= days) return time - now + reached;
    level = level * Math.exp(-draw.uptakePerDay * days) + production * gainDays(draw.uptakePerDay, days);
    time = until;
    if (!change || until >= end) break;
    const slip = draw.changeSpread * evenNormal(draw.point + 257 * (i + 1), (i + 1) % 4);
    const fraction = Math.min(1, Math.max(0, change.fraction * (1 + slip)));
    level = waterChange(level, fraction, change.newWater);
  }
  return Number.POSITIVE_INFINITY;
}

function summary(days: Float64Array, horizonDays: number): Crossing {
  const within = days.map((d) => (d <= horizonDays ? d : Number.POSITIVE_INFINITY)).sort();
  const share = (test: (d: number) => boolean) => within.filter(test).length / within.length;
  return {
    chanceNow: share((d) => d === 0),
    chanceWithin: share((d) => d <= horizonDays),
    horizonDays,
    earlyDays: quantile(within, 0.1),
    middleDays: quantile(within, 0.5),
    lateDays: quantile(within, 0.9),
  };
}
