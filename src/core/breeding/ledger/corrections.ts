import type { LedgerEvent } from "./facts.ts";
import { CORRECTABLE } from "./facts.ts";

/** The entries these corrections took back. */
export function correctedIn(events: readonly LedgerEvent[]): ReadonlySet<number> {
  return new Set(events.flatMap(({ fact }) => (fact.kind === "corrected" ? [fact.event] : [])));
}

/** Why an entry cannot be taken back by a correction; undefined when it can. */
export function notCorrectable({ number, fact }: LedgerEvent, gone: ReadonlySet<number>): string | undefined {
  if (gone.has(number)) return `Entry ${number} has been taken back already.`;
  if (CORRECTABLE.includes(fact.kind)) return undefined;
  return `Entry ${number} (${fact.kind}) has others built upon it: put it right with its opposite instead, e.g. merge what was split, or note a new role.`;
}
