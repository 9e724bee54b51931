import type { EventKind } from "../log/entry.ts";
import { findEventWord } from "./events.ts";

/** An event of the record, as far as it is looked for. */
export interface Recorded {
  readonly event: string;
  readonly text: string;
}

/**
 * The newest event that a question speaks of: of that kind and with that word in it, or a note that says so.
 * `events` come newest first. A word nobody logged finds nothing rather than another event.
 */
export function findRecorded<R extends Recorded>(
  events: readonly R[],
  kind: EventKind,
  about: string | undefined,
): R | undefined {
  const isMeant = ({ event, text }: R): boolean =>
    (event === kind || (event === "note" && findEventWord(text.toLowerCase())?.event === kind)) &&
    (about === undefined || isNamed(text, about));
  return events.find(isMeant);
}

/** Words too general to tell one event from another. */
const GENERAL = /^(?:fish|animal|animals|coral|corals|filter|media|filter media|the|a)$/;

function isNamed(text: string, about: string): boolean {
  const logged = text.toLowerCase();
  const words = about
    .split(" ")
    .filter((word) => !GENERAL.test(word))
    .map((word) => word.replace(/(?:fish|s)$/, ""));
  return words.length === 0 || words.some((word) => word.length > 1 && logged.includes(word));
}
