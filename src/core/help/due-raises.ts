/** A case that waits, as the clockwork sees it. Times in milliseconds since 1970. */
export interface WaitingCase {
  readonly id: number;
  readonly openedAt: number;
  /** The last time somebody other than its owner wrote; absent when nobody has. */
  readonly answeredAt?: number;
  readonly raisedAt?: number;
  readonly isOpen: boolean;
}

/** Minutes from midnight by the helper's own clock; the same twice means never quiet. */
export interface QuietHours {
  readonly from: number;
  readonly until: number;
}

/** A case nobody has answered for this long is raised. */
export const UNANSWERED_MS = 12 * 3_600_000;

/** Cases to raise now: unanswered for 12 h, each once, and not within the helper's quiet hours. */
export function dueRaises(
  cases: readonly WaitingCase[],
  now: number,
  localMinute: number,
  quiet: QuietHours,
): readonly number[] {
  if (isQuiet(localMinute, quiet)) return [];
  return cases
    .filter(
      ({ isOpen, answeredAt, raisedAt, openedAt }) =>
        isOpen && answeredAt === undefined && raisedAt === undefined && now - openedAt >= UNANSWERED_MS,
    )
    .map(({ id }) => id);
}

/** Whether a minute of the day lies in the quiet hours, which may run over midnight. */
export function isQuiet(minute: number, { from, until }: QuietHours): boolean {
  if (from === until) return false;
  return from < until ? minute >= from && minute < until : minute >= from || minute < until;
}
