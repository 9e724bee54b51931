import { type Day, daysBetween } from "./calendar.ts";
import { cultureOutlook } from "./culture-outlook.ts";
import { hatchWindow } from "./hatch-window.ts";
import { waterNameOf } from "./ledger/advance.ts";
import { ZONES } from "./ledger/facts.ts";
import { type Batch, type GroupState, keyOf } from "./ledger/state.ts";

/** One thing to do or to look at this evening. */
export type Task =
  | { readonly kind: "watch hatch"; readonly batch: Batch; readonly from: Day; readonly until: Day }
  | { readonly kind: "feed larvae"; readonly batch: Batch; readonly daysPostHatch: number }
  | { readonly kind: "look after"; readonly batch: Batch }
  | { readonly kind: "count culture"; readonly culture: string; readonly daysOld?: number }
  | { readonly kind: "save culture"; readonly culture: string; readonly backupKeeper?: number }
  | { readonly kind: "alert"; readonly water: string; readonly day: Day }
  | { readonly kind: "quarantine"; readonly tank: string; readonly until: Day }
  | { readonly kind: "confirm transfer"; readonly transfer: number };

const DAY_MS = 86_400_000;
/** A culture is counted every other day. Source: common-practice. */
const COUNT_EVERY_DAYS = 2;
/** Larvae in this sense are fed live food in the first weeks after hatching. Source: common-practice. */
const LARVA_DAYS = 30;

/** This evening's work, from the most delicate tanks to the least, quarantine and sick tanks last. */
export function tonight(state: GroupState, today: Day, nowMs: number): readonly Task[] {
  const batches = Object.values(state.batches)
    .filter(({ isClosed }) => !isClosed)
    .sort((a, b) => zoneRank(state, a.tank) - zoneRank(state, b.tank));
  const tasks: Task[] = [];
  for (const batch of batches) {
    if (batch.hatchDay === undefined && batch.stage === "eggs") {
      const window = hatchWindow(batch, state.hatches);
      if (window.kind === "answer" && today >= window.value.from)
        tasks.push({ kind: "watch hatch", batch, from: window.value.from, until: window.value.until });
      continue;
    }
    const age = daysBetween(batch.hatchDay ?? batch.laidDay, today);
    tasks.push(
      batch.stage === "hatched" || (batch.stage.startsWith("larva") && age <= LARVA_DAYS)
        ? { kind: "feed larvae", batch, daysPostHatch: age }
        : { kind: "look after", batch },
    );
  }
  const cultures = Object.values(state.cultures).filter(({ ended }) => ended === undefined);
  for (const culture of cultures) {
    const outlook = cultureOutlook(culture, cultures, nowMs);
    const keeper = outlook.kind === "answer" ? outlook.value.backups[0]?.keeper : undefined;
    const lastAt = culture.counts.at(-1)?.at;
    const daysOld = lastAt === undefined ? undefined : (nowMs - Date.parse(lastAt)) / DAY_MS;
    if (outlook.kind === "answer" && outlook.value.isFalling)
      tasks.push({
        kind: "save culture",
        culture: culture.name,
        ...(keeper === undefined ? {} : { backupKeeper: keeper }),
      });
    else if (daysOld === undefined || daysOld >= COUNT_EVERY_DAYS)
      tasks.push({
        kind: "count culture",
        culture: culture.name,
        ...(daysOld === undefined ? {} : { daysOld: Math.floor(daysOld) }),
      });
  }
  for (const { number, day } of Object.values(state.transfers))
    if (day === undefined) tasks.push({ kind: "confirm transfer", transfer: number });
  const waters = new Set<string>();
  for (const { name, water, quarantineUntil } of Object.values(state.tanks))
    if (quarantineUntil !== undefined && quarantineUntil > today && !waters.has(water)) {
      waters.add(water);
      tasks.push({ kind: "quarantine", tank: name, until: quarantineUntil });
    }
  for (const { water, day } of Object.values(state.alerts)) tasks.push({ kind: "alert", water, day });
  return tasks;
}

export function zoneRank(state: GroupState, tank: string): number {
  const zone = state.tanks[keyOf(tank)]?.zone;
  return zone === undefined ? ZONES.length : ZONES.indexOf(zone);
}

/** Whether moving from one tank to another runs against the order of work, and who had animals of its water. */
export function isUphill(state: GroupState, from: string, to: string): boolean {
  return waterNameOf(state, from) !== waterNameOf(state, to) && zoneRank(state, to) < zoneRank(state, from);
}

const TELL_WITHIN_DAYS = 30;

/** Those who had animals from that water in the last thirty days. */
export function recentReceivers(state: GroupState, water: string, today: Day): readonly number[] {
  return [
    ...new Set(
      Object.values(state.transfers)
        .filter(
          ({ day, water: from }) =>
            day !== undefined && keyOf(from) === keyOf(water) && daysBetween(day, today) <= TELL_WITHIN_DAYS,
        )
        .map(({ to }) => to),
    ),
  ];
}
