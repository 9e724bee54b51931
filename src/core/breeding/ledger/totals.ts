import type { Day } from "../calendar.ts";
import type { Batch, GroupState } from "./state.ts";

/** Where everybody of a batch went; `start + joined = alive + dead + left alive + missing`. */
export interface BatchTotals {
  readonly start: number;
  readonly joined: number;
  readonly dead: number;
  readonly leftAlive: number;
  readonly missing: number;
  readonly alive: number;
}

export function batchTotals(batch: Batch): BatchTotals {
  const sum = (column: 1 | 2 | 3 | 4): number => batch.rows.reduce((total, row) => total + row[column], 0);
  return {
    start: batch.start?.count.best ?? 0,
    joined: sum(3),
    dead: sum(1),
    leftAlive: sum(2),
    missing: sum(4),
    alive: batch.alive?.best ?? 0,
  };
}

/** What a stretch of days brought, over all batches. */
export interface StretchTotals {
  readonly spawns: number;
  readonly hatched: number;
  readonly dead: number;
  readonly missing: number;
  readonly given: number;
  readonly aliveNow: number;
}

export function stretchTotals(state: GroupState, from: Day, until: Day): StretchTotals {
  const within = (day: Day | undefined): boolean => day !== undefined && day >= from && day <= until;
  const spawns = new Set<number>();
  const hatched = new Set<number>();
  let [dead, missing, aliveNow] = [0, 0, 0];
  for (const batch of Object.values(state.batches)) {
    const [spawn] = batch.spawns;
    if (spawn !== undefined && within(batch.laidDay)) spawns.add(spawn);
    if (spawn !== undefined && within(batch.hatchDay)) hatched.add(spawn);
    aliveNow += batch.alive?.best ?? 0;
    for (const [day, deaths, , , lost] of batch.rows)
      if (within(day)) {
        dead += deaths;
        missing += lost;
      }
  }
  const given = Object.values(state.transfers)
    .filter(({ day }) => within(day))
    .reduce((sum, { animals }) => sum + animals, 0);
  return { spawns: spawns.size, hatched: hatched.size, dead, missing, given, aliveNow };
}
