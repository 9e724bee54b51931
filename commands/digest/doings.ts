import { habitOf } from "../../src/core/log/habit.ts";
import { replacedShare } from "../../src/core/log/replaced-since.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import { counted, listed } from "../../src/kit/index.ts";
import type { DatedEvent, TrendRecord } from "../../src/kit/trend-record.ts";

const DAY_MS = 86_400_000;

/** Kinds of events that are looked for as habits, in the words for them. */
const HABITS: Readonly<Partial<Record<DatedEvent["kind"], string>>> = {
  "water change": "water change",
  harvest: "harvest",
  "media change": "media change",
  dose: "dose",
  feeding: "feeding",
};

/** What used to be done more often than of late. */
export function overdueLines(
  records: readonly TrendRecord[],
  dated: readonly DatedEvent[],
  now: number,
): readonly string[] {
  const today = now / DAY_MS;
  const doings = [
    ...Object.entries(HABITS).map(([kind, name]) => ({
      name,
      times: dated.filter((each) => each.kind === kind).map(({ at }) => at),
    })),
    ...records.map(({ parameter, readings }) => ({
      name: `${parameter.name} test`,
      times: readings.map(({ at }) => at),
    })),
  ];
  return doings.flatMap(({ name, times }) => {
    const habit = habitOf(times, today);
    return habit?.isOverdue === true
      ? [
          `Overdue: ${name}, last ${counted(Math.round(habit.sinceDays), "day")} ago; it used to be every ${showNumber(habit.everyDays, 2)} days.`,
        ]
      : [];
  });
}

/** "Done: 3 water changes (66 % of the water in all), 1 harvest." */
export function doneLine(dated: readonly DatedEvent[]): readonly string[] {
  const kinds = [...new Set(dated.map(({ kind }) => kind))].filter((kind) => kind !== "note");
  const shares = dated.flatMap(({ event }) => (event.kind === "water change" ? [event.fraction] : []));
  const said = kinds.map((kind) => {
    const count = counted(
      dated.filter((each) => each.kind === kind).length,
      kind,
      PLURAL[kind] ?? `${kind}s`,
    );
    return kind === "water change" && shares.length > 0
      ? `${count} (${showNumber(replacedShare(shares) * 100, 2)} % of the water in all)`
      : count;
  });
  return said.length === 0 ? [] : [`Done: ${listed(said)}.`];
}

const PLURAL: Readonly<Partial<Record<DatedEvent["kind"], string>>> = {
  "livestock in": "times livestock in",
  "livestock out": "times livestock out",
  "equipment on": "times equipment on",
  "equipment off": "times equipment off",
};
