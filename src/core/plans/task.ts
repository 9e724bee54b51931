import type { EventAmount, EventKind } from "../log/entry.ts";
import { type ParameterId, parameter, parameterNamed } from "../log/parameters.ts";
import { readLogLine } from "../log/read-log-line.ts";
import { quote } from "../quantity/clean.ts";
import type { Habits, Read } from "../quantity/read.ts";

/** What is to be done when a plan falls due. */
export type Task =
  /** Something that is logged when done; its amount as planned. */
  | {
      readonly kind: "event";
      readonly event: EventKind;
      readonly amount?: { readonly best: number; readonly unit: EventAmount["unit"] };
      readonly text: string;
      readonly words: string;
    }
  /** Readings to take. */
  | { readonly kind: "test"; readonly parameters: readonly ParameterId[] }
  /** Something switched off that has to come back. */
  | {
      readonly kind: "switch off";
      readonly device: string;
      readonly hours: number;
      readonly because?: string;
    }
  /** Today's step of a slow start on dilute alcohol. */
  | { readonly kind: "ethanol step"; readonly percent: number; readonly dosesPerDay: number }
  /** Ammonium salt for a filter without animals. */
  | { readonly kind: "ammonium dose"; readonly mgPerL: number }
  | { readonly kind: "words"; readonly words: string };

const LONGEST = 120;

/** Reads "water change 30 %", "fed 40 g prawn", "test nitrate", or any other words as they stand. */
export function readTask(typed: string, habits: Habits): Read<Task> {
  const text = typed.replace(/\s+/g, " ").trim();
  if ([...text].length > LONGEST)
    return {
      kind: "unreadable",
      message: `That is ${[...text].length} characters long; a task takes ${LONGEST}.`,
    };
  if (!/[\p{L}\p{N}]/u.test(text))
    return { kind: "unreadable", message: `${quote(typed)} names nothing to do. Try “water change 30 %”.` };
  const tests = readTests(text);
  if (tests !== undefined) return read({ kind: "test", parameters: tests });
  const line = readLogLine(asLogged(text), habits);
  if (line.kind === "ask") return line;
  const only = line.kind === "read" && line.value.length === 1 ? line.value[0] : undefined;
  if (only?.kind === "event" && isRepeatable(only.event))
    return read({
      kind: "event",
      event: only.event,
      ...(only.amount === undefined
        ? {}
        : { amount: { best: only.amount.estimate.best, unit: only.amount.unit } }),
      text: only.text,
      words: only.readAs,
    });
  return read({ kind: "words", words: text });
}

/** "feed 40 g" is an order where "fed 40 g" is a report; the log knows the report. */
function asLogged(text: string): string {
  return text
    .replace(/^(?:do|make) (?:an? )?/i, "")
    .replace(/^feed\b(?!ing)/i, "fed")
    .replace(/^change (\S.*?) of (?:the )?water$/i, "wc $1");
}

function isRepeatable(event: EventKind): boolean {
  return ["water change", "dose", "feeding", "harvest", "media change"].includes(event);
}

function readTests(text: string): readonly ParameterId[] | undefined {
  const [, names] = /^(?:test|check|measure)(?: for)? (.+)$/i.exec(text) ?? [];
  if (names === undefined) return undefined;
  const ids = names.split(/\s*(?:,|&|\band\b)\s*/).map((name) => parameterNamed(name)?.id);
  const known = ids.filter((id) => id !== undefined);
  return known.length === ids.length ? [...new Set(known)] : undefined;
}

function read(task: Task): Read<Task> {
  return { kind: "read", value: task, readAs: sayTask(task) };
}

/** The task in a few words, without what is only known when it falls due. */
export function sayTask(task: Task): string {
  switch (task.kind) {
    case "event":
    case "words":
      return task.words;
    case "test":
      return `test ${task.parameters.map((id) => parameter(id).name).join(" and ")}`;
    case "switch off":
      return `${task.device} off${task.because === undefined ? "" : ` (${task.because})`}`;
    case "ethanol step":
      return `alcohol, today's step of the ramp`;
    case "ammonium dose":
      return "ammonium salt for the filter";
  }
}
