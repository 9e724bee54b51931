import { type Day, dayAfter, daysBetween } from "../calendar.ts";
import type { Batch } from "./state.ts";

/** Deaths in a day that count as out of the ordinary: so many times the batch's own mean, and at least so many.
 *  Source: common-practice. */
const TIMES_MEAN = 3;
const AT_LEAST = 3;
const LOOK_BACK_DAYS = 7;

export interface DeathLook {
  readonly today: number;
  /** Deaths per day over the days before, as far as the record goes. */
  readonly meanPerDay: number;
  readonly days: number;
  readonly isAlarming: boolean;
}

/** Today's deaths against the batch's own mean of the seven days before. */
export function deathLook(batch: Batch, today: Day): DeathLook {
  const from = dayAfter(today, -LOOK_BACK_DAYS);
  const since = batch.start?.day ?? batch.hatchDay ?? batch.laidDay;
  const days = Math.min(LOOK_BACK_DAYS, Math.max(0, daysBetween(since, today)));
  let dead = 0;
  let before = 0;
  for (const [day, deaths] of batch.rows) {
    if (day === today) dead += deaths;
    else if (day >= from && day < today) before += deaths;
  }
  const meanPerDay = days === 0 ? 0 : before / days;
  return {
    today: dead,
    meanPerDay,
    days,
    isAlarming: dead >= AT_LEAST && dead >= TIMES_MEAN * meanPerDay,
  };
}

/** The same deaths noted by two people within so long may be one event. Source: assumption. */
const SAME_WITHIN_MS = 15 * 60_000;

/** Whether somebody else noted deaths of this batch a moment ago. */
export function notedJustNow(batch: Batch, by: number, nowMs: number): Batch["lastDeaths"] {
  const last = batch.lastDeaths;
  return last !== undefined && last.by !== by && nowMs - Date.parse(last.enteredAt) <= SAME_WITHIN_MS
    ? last
    : undefined;
}
