import type { EventKind } from "../log/entry.ts";
import { quote } from "../quantity/clean.ts";
import type { Read } from "../quantity/read.ts";
import { type LocalTime, WEEKDAY_NAMES } from "./calendar.ts";
import { type Rule, sayRule } from "./recurrence.ts";

export const RULE_EXAMPLES =
  "“every 7 days 19:00”, “mon, thu 8pm”, “2 days after each water change” or “tomorrow 20:00”";

/** The longest gap between two times, days. */
const LONGEST_GAP = 366;

const NUMBER_WORDS: Readonly<Record<string, number>> = {
  a: 1,
  an: 1,
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  ten: 10,
};
const COUNT = "(\\d{1,4}|an?|one|two|three|four|five|six|seven|ten)";
const EVENTS: readonly (readonly [RegExp, EventKind])[] = [
  [/^(?:water[- ]?changes?|wcs?|changes? of water)$/, "water change"],
  [/^(?:doses?|dosings?|additions?)$/, "dose"],
  [/^(?:feeds?|feedings?|meals?)$/, "feeding"],
  [/^harvests?$/, "harvest"],
  [/^(?:media|filter|carbon) changes?$/, "media change"],
  [/^(?:new )?(?:arrivals?|animals?|fish|livestock)$/, "livestock in"],
  [/^deaths?$/, "death"],
];

/**
 * A rule that repeats, from words; undefined when the text is no repeating rule at all, and so perhaps a
 * single date. `today` is the member's own. A time of day left out is `usualMinute`.
 */
export function readRule(typed: string, today: LocalTime, usualMinute: number): Read<Rule> | undefined {
  const text = typed.toLowerCase().normalize("NFKC").replace(/\s+/g, " ").trim();
  const { rest, minute, isTimeUnreadable } = splitTime(text);
  if (isTimeUnreadable) return unreadable(typed, "has a time of day that no clock shows");
  const after = RegExp(
    `^(?:${COUNT} (days?|weeks?)|the day|on the day|the same day) (?:after|of|following) (?:each|every|any|a|the) (.+)$`,
  ).exec(rest);
  if (after !== null) return afterRule(typed, after, minute);
  const at = minute ?? usualMinute;
  const weekdays = readWeekdays(rest);
  if (weekdays !== undefined) return read({ kind: "weekdays", weekdays, minute: at });
  const days = readGap(rest);
  if (days === undefined) return undefined;
  if (days < 1 || days > LONGEST_GAP)
    return unreadable(typed, `repeats every ${days} days; from 1 to ${LONGEST_GAP} will do`);
  // What is still ahead today begins today; what is past begins a full gap later.
  const from = at > today.minute ? today.day : today.day + days;
  return read({ kind: "every", days, from, minute: at });
}

function read(rule: Rule): Read<Rule> {
  return { kind: "read", value: rule, readAs: sayRule(rule) };
}

function unreadable(typed: string, why: string): Read<Rule> {
  return { kind: "unreadable", message: `${quote(typed)} ${why}. Try ${RULE_EXAMPLES}.` };
}

function afterRule(typed: string, match: RegExpExecArray, minute: number | undefined): Read<Rule> {
  const [, count, unit = "day", words = ""] = match;
  const days =
    count === undefined ? (match[0].startsWith("the day") ? 1 : 0) : countOf(count) * perUnit(unit);
  const event = EVENTS.find(([pattern]) => pattern.test(words.trim()))?.[1];
  if (event === undefined)
    return unreadable(typed, `follows ${quote(words)}, which is nothing that is logged`);
  if (days > LONGEST_GAP) return unreadable(typed, `waits ${days} days; at most ${LONGEST_GAP} will do`);
  return read({ kind: "after", event, days, ...(minute === undefined ? {} : { minute }) });
}

/** "every 3 days", "daily", "weekly", "every other day", "every fortnight". */
function readGap(text: string): number | undefined {
  if (/^(?:daily|every day|each day|every morning|every evening|every night)$/.test(text)) return 1;
  if (/^(?:weekly|every week)$/.test(text)) return 7;
  if (/^(?:fortnightly|every fortnight|every other week|biweekly)$/.test(text)) return 14;
  if (/^(?:monthly|every month)$/.test(text)) return 30;
  if (/^(?:every (?:other|second) day)$/.test(text)) return 2;
  const match = RegExp(`^(?:every|each) ${COUNT} ?(days?|d|weeks?|w)$`).exec(text);
  return match === null ? undefined : countOf(match[1] ?? "") * perUnit(match[2] ?? "");
}

/** "mon", "mondays and thursdays", "every tue, fri", "weekdays". */
function readWeekdays(text: string): readonly number[] | undefined {
  const plain = text.replace(/^(?:every|each|on) /, "");
  if (/^(?:weekdays|working days?)$/.test(plain)) return [1, 2, 3, 4, 5];
  if (/^weekends?$/.test(plain)) return [6, 7];
  const isSaidOften = plain !== text || /[,&]| and |s$/.test(plain);
  const words = plain.split(/(?:\s*,\s*|\s+and\s+|\s*&\s*|\s+)/).filter(Boolean);
  const days = words.map((word) => weekdayNamed(word));
  if (days.length === 0 || days.length > 7 || days.includes(undefined)) return undefined;
  // "monday" alone may be the one to come: only "every monday" or several of them repeat.
  if (days.length === 1 && !isSaidOften) return undefined;
  return [...new Set(days.filter((day) => day !== undefined))].sort((a, b) => a - b);
}

function weekdayNamed(word: string): number | undefined {
  const plain = word.replace(/s$/, "").replace(/\.$/, "");
  if (plain.length < 3) return undefined;
  const index = WEEKDAY_NAMES.findIndex((name) => {
    const lower = name.toLowerCase();
    return lower === plain || lower.slice(0, 3) === plain || (plain.length === 4 && lower.startsWith(plain));
  });
  return index < 0 ? undefined : index + 1;
}

function countOf(word: string): number {
  return NUMBER_WORDS[word] ?? Number(word);
}

function perUnit(unit: string): number {
  return unit.startsWith("w") ? 7 : 1;
}

/** Cuts a time of day off the end: "19:00", "at 8pm", "8.30 am", "noon". */
function splitTime(text: string): {
  readonly rest: string;
  readonly minute?: number;
  readonly isTimeUnreadable?: true;
} {
  const named = /^(.*?),? (?:at )?(noon|midday|midnight)$/.exec(text);
  if (named !== null) return { rest: named[1] ?? "", minute: named[2] === "midnight" ? 0 : 720 };
  const match = /^(.*?),? (?:at )?(\d{1,2})(?:[:.](\d{2}))? ?(am|pm)?$/.exec(text);
  if (match === null) return { rest: text };
  const [, rest = "", hourText = "", minuteText, half] = match;
  if (minuteText === undefined && half === undefined) return { rest: text };
  const hour = Number(hourText);
  const minutes = Number(minuteText ?? "0");
  const isTwelve = half !== undefined;
  if (minutes > 59 || hour > (isTwelve ? 12 : 23) || (isTwelve && hour === 0))
    return { rest, isTimeUnreadable: true };
  const of24 = isTwelve ? (hour % 12) + (half === "pm" ? 12 : 0) : hour;
  return { rest, minute: of24 * 60 + minutes };
}
