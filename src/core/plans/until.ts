import { type ParameterId, parameter, parameterNamed, unitText } from "../log/parameters.ts";
import { readFigure } from "../log/read-figure.ts";
import { quote } from "../quantity/clean.ts";
import type { Habits, Read } from "../quantity/read.ts";
import { showNumber } from "../quantity/show.ts";

/** "until nitrate is under 10 twice": an end that the log decides. */
export interface Until {
  readonly parameter: ParameterId;
  readonly side: "under" | "above";
  /** In the parameter's canonical unit. */
  readonly limit: number;
  /** So many readings in a row. */
  readonly times: number;
}

/** What the log says of one test; `low` and `high` bound it. */
export interface Seen {
  readonly best: number;
  readonly low: number;
  readonly high: number;
  /** Milliseconds since 1970. */
  readonly at: number;
}

const TIMES: Readonly<Record<string, number>> = { once: 1, twice: 2, thrice: 3 };
const EXAMPLE = "“nitrate under 10 twice”";

/** Reads "nitrate is under 10 twice", "ammonia < 0.25 3 times", "until no3 below 10". */
export function readUntil(typed: string, habits: Habits): Read<Until> {
  const text = typed.normalize("NFKC").replace(/\s+/g, " ").trim().slice(0, 120);
  const match =
    /^(?:until )?(.+?) ?(?:is |was |reads )?(under|below|less than|<|above|over|more than|>) ?(.+?)(?:,? (once|twice|thrice|(\d) times)(?: in a row| running)?)?$/i.exec(
      text,
    );
  const [, name = "", word = "", figure = "", often, count] = match ?? [];
  const subject = parameterNamed(name);
  if (match === null || subject === undefined)
    return {
      kind: "unreadable",
      message: `${quote(typed)} is no end that readings can show. Try ${EXAMPLE}.`,
    };
  const side = /^(?:under|below|less than|<)$/i.test(word) ? "under" : "above";
  const read = readFigure(subject, name, figure, habits);
  if (read.kind === "impossible") return { kind: "unreadable", message: read.message };
  if (read.kind === "ask")
    return {
      ...read,
      choices: read.choices.map((choice) => ({
        ...choice,
        text: `${name} ${side} ${choice.text} ${often ?? ""}`.trim(),
      })),
    };
  if (read.kind === "unreadable") return read;
  const times = count !== undefined ? Number(count) : (TIMES[often?.toLowerCase() ?? "once"] ?? 1);
  if (times < 1) return { kind: "unreadable", message: `No times is never. Try ${EXAMPLE}.` };
  const value: Until = { parameter: subject.id, side, limit: read.value.estimate.best, times };
  return { kind: "read", value, readAs: sayUntil(value) };
}

export function sayUntil({ parameter: id, side, limit, times }: Until): string {
  const subject = parameter(id);
  const often = times === 1 ? "" : times === 2 ? " twice in a row" : ` ${times} times in a row`;
  return `until ${subject.name} is ${side} ${`${showNumber(limit)} ${unitText(subject)}`.trim()}${often}`;
}

/**
 * The newest readings that together reach the end, oldest first; undefined while they do not. A reading
 * counts only when its whole range lies beyond the limit: one that may be either side proves nothing.
 * `readings` newest first, none from before the plan.
 */
export function reachedBy(until: Until, readings: readonly Seen[]): readonly Seen[] | undefined {
  const last = readings.slice(0, until.times);
  const isBeyond = ({ low, high }: Seen): boolean =>
    until.side === "under" ? high < until.limit : low > until.limit;
  return last.length === until.times && last.every(isBeyond) ? last.toReversed() : undefined;
}
