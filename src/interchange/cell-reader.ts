import type { ReadingEntry } from "../core/log/entry.ts";
import { isPossible, type Parameter } from "../core/log/parameters.ts";
import { readLogLine } from "../core/log/read-log-line.ts";
import type { Choice, Habits } from "../core/quantity/read.ts";
import { showNumber } from "../core/quantity/show.ts";

/** What a cell came to: a reading, a reason why not, or a question that holds for the whole column. */
export type Cell =
  | { readonly kind: "reading"; readonly entry: ReadingEntry }
  | { readonly kind: "problem"; readonly reason: string }
  | {
      readonly kind: "ask";
      readonly question: string;
      readonly choices: readonly Choice[];
      readonly typed: string;
    };

interface Sample {
  readonly typed: number;
  readonly value: number;
}

const PLAIN = /^-?\d+(?:\.\d+)?$/;

/**
 * Reads the cells of one column as `/log` would read "nitrate 20 ppm". Equal cells are read once. Where
 * three plain numbers have been seen to lie on one straight line, further plain numbers near them are
 * converted by that line: a file of two hundred thousand meter readings takes seconds, not minutes.
 */
export function cellReader(parameter: Parameter, unit: string, habits: Habits): (cell: string) => Cell {
  const word = parameter.spellings[0] ?? parameter.id;
  const seen = new Map<string, Cell>();
  const samples: Sample[] = [];
  let model: ReadingEntry | undefined;
  return (cell) => {
    const known = seen.get(cell);
    if (known !== undefined) return known;
    const fast = PLAIN.test(cell) && model !== undefined ? byLine(Number(cell), samples) : undefined;
    if (fast !== undefined && model !== undefined && isPossible(parameter, fast)) {
      const typed = unit === "" ? cell : `${cell} ${unit}`;
      const entry: ReadingEntry = {
        ...model,
        estimate: { best: fast, low: fast, high: fast },
        typed,
        readAs: `${parameter.name} ${showNumber(fast)} ${model.unit}`.trim(),
      };
      return { kind: "reading", entry };
    }
    const read = slow(word, unit, cell, habits);
    seen.set(cell, read);
    if (read.kind === "reading" && PLAIN.test(cell)) {
      const { estimate, censored } = read.entry;
      if (
        censored === undefined &&
        estimate.low === estimate.high &&
        !samples.some(({ typed }) => typed === Number(cell))
      ) {
        samples.push({ typed: Number(cell), value: estimate.best });
        model = read.entry;
      }
    }
    return read;
  };
}

function slow(word: string, unit: string, cell: string, habits: Habits): Cell {
  const typed = `${word} ${cell}${unit === "" || /[a-z°%]/i.test(cell) ? "" : ` ${unit}`}`;
  const read = readLogLine(typed, habits);
  if (read.kind === "unreadable") return { kind: "problem", reason: read.message };
  if (read.kind === "ask")
    return { kind: "ask", question: read.question, choices: read.choices, typed: `${word} ${cell}` };
  const [entry, ...others] = read.value;
  return entry?.kind === "reading" && others.length === 0
    ? { kind: "reading", entry: { ...entry, typed: typed.slice(word.length + 1) } }
    : { kind: "problem", reason: `“${cell.slice(0, 30)}” is not one value` };
}

/** The value on the line through the first two samples, if all the others lie on it too and `typed` is near them. */
function byLine(typed: number, samples: readonly Sample[]): number | undefined {
  const [first, second, third] = samples;
  if (first === undefined || second === undefined || third === undefined) return undefined;
  const slope = (second.value - first.value) / (second.typed - first.typed);
  const at = (x: number): number => first.value + slope * (x - first.typed);
  if (
    !samples.every(
      (sample) => Math.abs(at(sample.typed) - sample.value) <= 1e-9 * Math.max(1, Math.abs(sample.value)),
    )
  )
    return undefined;
  const lowest = Math.min(...samples.map((sample) => sample.typed));
  const highest = Math.max(...samples.map((sample) => sample.typed));
  const isNear =
    typed >= Math.min(lowest * 0.5, lowest * 1.5) && typed <= Math.max(highest * 2, highest * 0.5);
  return isNear ? at(typed) : undefined;
}
