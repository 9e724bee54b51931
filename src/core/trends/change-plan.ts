import {
  type ChangePlan,
  changesToReach,
  longestInterval,
  settledPeak,
  smallestFraction,
} from "./balance.ts";
import { type Band, bandOf, type Draw, quantile } from "./draws.ts";
import type { PlannedChange } from "./future.ts";
import type { TrendEvent } from "./readings.ts";

/** A habit of changing water, with the day the next change is due. */
export interface WaterChangePlan {
  readonly everyDays: number;
  readonly fraction: number;
  readonly newWater: number;
  readonly nextAt: number;
}

/** What it takes to keep the level under a limit. */
export interface PlanNeeded {
  /** Where the peaks settle on the present plan. */
  readonly settledPeak: Band;
  /** Chance that they settle above the limit. */
  readonly chancePeakAbove: number;
  /** Share to change at the present interval, enough nine times in ten; undefined when none is. */
  readonly fraction: number | undefined;
  /** Longest interval at the present share, short enough nine times in ten; undefined when none is. */
  readonly everyDays: number | undefined;
  /** Changes of the present share, one after another, to bring today's level under the limit; 0 when it is. */
  readonly changesFirst: number | undefined;
}

const MOST_LISTED = 400;
const HABIT_CHANGES = 5;

/** The dated changes of a plan up to `until`. */
export function datedChanges(plan: WaterChangePlan, now: number, until: number): readonly PlannedChange[] {
  const changes: PlannedChange[] = [];
  let at = plan.nextAt;
  while (at < now) at += plan.everyDays;
  for (; at <= until && changes.length < MOST_LISTED; at += plan.everyDays) {
    changes.push({ at, fraction: plan.fraction, newWater: plan.newWater });
  }
  return changes;
}

/** The habit the log shows: the middle gap and share of the last few changes. Undefined with fewer than
 *  three, with gaps too unlike each other to be a habit, or when the next one is long overdue. */
export function presentPlan(events: readonly TrendEvent[], now: number): WaterChangePlan | undefined {
  const changes = events
    .filter((e) => e.kind === "water change")
    .filter((e) => e.at <= now)
    .sort((a, b) => a.at - b.at)
    .slice(-HABIT_CHANGES);
  const last = changes.at(-1);
  if (!last || changes.length < 3) return undefined;
  const gaps = changes.slice(1).map((change, i) => change.at - (changes[i]?.at ?? change.at));
  const everyDays = middle(gaps);
  const isHabit = gaps.every((gap) => gap > everyDays / 2 && gap < everyDays * 2);
  if (!isHabit || everyDays <= 0 || now - last.at > 2 * everyDays) return undefined;
  const fraction = middle(changes.map((c) => c.fraction));
  return { everyDays, fraction, newWater: last.newWater, nextAt: Math.max(last.at + everyDays, now) };
}

function middle(values: readonly number[]): number {
  return quantile(Float64Array.from(values).sort(), 0.5);
}

/** What keeps the level under `limit`, from the high side of production rather than its middle. */
export function planNeeded(draws: readonly Draw[], plan: WaterChangePlan, limit: number): PlanNeeded {
  const balancePlan: ChangePlan = {
    everyDays: plan.everyDays,
    fraction: plan.fraction,
    newWaterMgPerL: plan.newWater,
  };
  const peaks = Float64Array.from(draws, (d) => settledPeak(d.production, d.uptakePerDay, balancePlan));
  const fractions = Float64Array.from(
    draws,
    (d) =>
      smallestFraction(d.production, d.uptakePerDay, plan.everyDays, plan.newWater, limit) ??
      Number.POSITIVE_INFINITY,
  ).sort();
  const intervals = Float64Array.from(
    draws,
    (d) => longestInterval(d.production, d.uptakePerDay, plan.fraction, plan.newWater, limit) ?? 0,
  ).sort();
  const fraction = quantile(fractions, 0.9);
  const everyDays = quantile(intervals, 0.1);
  const levels = Float64Array.from(draws, (d) => d.level).sort();
  return {
    settledPeak: bandOf(peaks),
    chancePeakAbove: peaks.filter((peak) => peak > limit).length / peaks.length,
    fraction: Number.isFinite(fraction) ? fraction : undefined,
    everyDays: everyDays > 0 ? everyDays : undefined,
    changesFirst: changesToReach(quantile(levels, 0.5), limit, plan.fraction, plan.newWater),
  };
}
