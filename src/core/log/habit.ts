/** Something done again and again: how often, and how long ago last. Days. */
export interface Habit {
  readonly everyDays: number;
  readonly sinceDays: number;
  readonly isOverdue: boolean;
}

/** Fewest times from which a habit is seen. Source: assumption. */
const FEWEST = 4;
/** Gaps looked at: the newest. Source: assumption. */
const NEWEST_GAPS = 8;
/** Late is this many times the usual gap, and a day at the least. Source: assumption. */
const LATE = 1.5;
const LATE_DAYS = 1;
/** Nothing done this long ago is a habit any more: it was given up. Source: assumption. */
const GIVEN_UP = 6;
/** Doings closer together than this are one. Source: assumption. */
const SAME_DAYS = 0.25;

/**
 * The habit that dated doings show: the middle gap between the newest of them. Times in days since any fixed
 * moment, in any order. Undefined with too few to see one, or when it was given up.
 */
export function habitOf(times: readonly number[], now: number): Habit | undefined {
  const inOrder = times.filter((at) => at <= now).sort((a, b) => a - b);
  const apart = inOrder.filter((at, i) => i === 0 || at - (inOrder[i - 1] ?? at) > SAME_DAYS);
  const last = apart.at(-1);
  if (last === undefined || apart.length < FEWEST) return undefined;
  const gaps = apart
    .slice(1)
    .map((at, i) => at - (apart[i] ?? at))
    .slice(-NEWEST_GAPS)
    .sort((a, b) => a - b);
  const everyDays = ((gaps[(gaps.length - 1) >> 1] ?? 0) + (gaps[gaps.length >> 1] ?? 0)) / 2;
  const sinceDays = now - last;
  if (sinceDays > GIVEN_UP * everyDays + GIVEN_UP) return undefined;
  return { everyDays, sinceDays, isOverdue: sinceDays > Math.max(LATE * everyDays, everyDays + LATE_DAYS) };
}
