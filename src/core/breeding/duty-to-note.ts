import { type Day, dayAfter } from "./calendar.ts";
import type { Duty, GroupState } from "./ledger/state.ts";
import { dutiesOn } from "./rota-plan.ts";

/** The duty somebody means who says it is done: their own of that day, else an open one, else another's. */
export function dutyToNote(state: GroupState, today: Day, daysAgo: number, doer: number): Duty | undefined {
  const left = dutiesOn(state, dayAfter(today, -daysAgo)).filter(({ doneBy }) => doneBy === undefined);
  return (
    left.find(({ person }) => person === doer) ?? left.find(({ person }) => person === undefined) ?? left[0]
  );
}
