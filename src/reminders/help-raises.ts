import { dueRaises, UNANSWERED_MS } from "../core/help/due-raises.ts";
import { calendarOf } from "../kit/calendar.ts";
import type { CardPlace, HelpRecords } from "../records/help.ts";
import type { MemberId } from "../records/ids.ts";

/** A case to tell one helper of, once. */
export interface Raise {
  readonly caseNumber: number;
  readonly helper: MemberId;
  readonly card?: CardPlace;
}

/**
 * Takes the cases that are to be raised now, each with one helper on duty who is not in quiet hours. What is
 * taken is marked before it is told: a case is raised once at most, whatever fails afterwards.
 */
export function takeRaises(help: HelpRecords, now: number): readonly Raise[] {
  const waiting = help.waiting(new Date(now - UNANSWERED_MS).toISOString());
  const taken = new Map<number, Raise>();
  for (const { id, helper, zone, quietFrom, quietUntil, openedAt, card } of waiting) {
    if (taken.has(id)) continue;
    const due = dueRaises(
      [{ id, openedAt: Date.parse(openedAt), isOpen: true }],
      now,
      calendarOf(zone).local(now).minute,
      { from: quietFrom, until: quietUntil },
    );
    if (due.length > 0 && help.raise(id, new Date(now).toISOString()))
      taken.set(id, { caseNumber: id, helper, ...(card === undefined ? {} : { card }) });
  }
  return [...taken.values()];
}
