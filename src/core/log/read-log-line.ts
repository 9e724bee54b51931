import { quote } from "../quantity/clean.ts";
import type { Habits, Read } from "../quantity/read.ts";
import type { LogEntry } from "./entry.ts";
import { PARAMETERS, type Parameter } from "./parameters.ts";
import { findEvent } from "./read-event.ts";
import { type Figure, readFigure } from "./read-figure.ts";

const LONGEST_LINE = 600;
const MOST_FIGURE_WORDS = 8;
const EXAMPLES = "“no3 20, ph 8.1, temp 25.5”, “wc 30 %”, “fed 40 g prawn” or “note glass cleaned”";

/** Every name a reading can begin with, the forms of nitrogen and phosphorus included; longest first. */
const NAMES: readonly { readonly name: string; readonly parameter: Parameter }[] = PARAMETERS.flatMap(
  (parameter) =>
    [
      ...parameter.spellings,
      ...parameter.spellings.flatMap((spelling) => nutrientForms(parameter, spelling)),
    ].map((name) => ({ name, parameter })),
).sort((a, b) => b.name.length - a.name.length);
/** The same by first letter, since a name is looked for at every word. */
const NAMES_BY_LETTER: ReadonlyMap<string, typeof NAMES> = new Map(
  NAMES.map(({ name }) => [name.charAt(0), NAMES.filter((other) => other.name.charAt(0) === name.charAt(0))]),
);
/** What a figure can begin with. */
const FIGURE_AHEAD =
  /^(?:[<>≤≥~≈±.+-]*\s?\d|[<>≤≥]=|(?:about|around|approx|ca|between|from|below|under|over|above|less than|more than) ?\.?\d|not (?:det|meas)|undetect|none\b|nil\b|n\/?d\b|bdl\b)/i;
const BETWEEN_NAME_AND_FIGURE = /^(?:\s*[:=]\s*|\s+(?:is|was|at|of|reading|reads)\s+(?=[<>~\d.])|\s*)/i;
/** "do 2 water changes" is no oxygen. */
const TO_DO = /^do \d+ ?(?:%|l\b|water|wc|partial|more|times)/i;
const NOTE = /^(?:notes?|nb|remark|comment)(?![\p{L}\d])[\s:]*/iu;

/**
 * Everything in one typed line: `sg 1.0255 temp 25.5, no3 <5, wc 30%, skimmer off, note glass cleaned`.
 * Readings are a name and a figure, events a verb and its words, and a note takes the rest of the line.
 * A choice's text is the whole line with the doubtful figure settled. Where a piece cannot be read,
 * nothing is taken: the message names it, and gives the rest as understood.
 */
export function readLogLine(typed: string, habits: Habits): Read<readonly LogEntry[]> {
  if (typed.length > LONGEST_LINE) {
    return {
      kind: "unreadable",
      message: `That is ${typed.length} characters long, and I read lines up to ${LONGEST_LINE}.`,
    };
  }
  const line = plainLine(typed);
  const entries: LogEntry[] = [];
  const unread: string[] = [];
  let complaint: string | undefined;
  for (let at = skipMarks(line, 0), isAfterUnread = false; at < line.length; at = skipMarks(line, at)) {
    const taken = takeNext(line, at, habits);
    if (taken.kind === "ask") return taken.question;
    if (taken.kind === "entry") entries.push(taken.entry);
    else if (isAfterUnread && !/[,;]/.test(line.slice(0, at).trimEnd().slice(-1))) {
      unread.push(`${unread.pop() ?? ""} ${line.slice(at, taken.end)}`);
    } else unread.push(line.slice(at, taken.end));
    if (taken.kind === "unread") complaint ??= taken.message;
    isAfterUnread = taken.kind === "unread";
    at = taken.end;
  }
  if (unread.length > 0) return unreadable(unread, complaint, entries);
  if (entries.length === 0)
    return { kind: "unreadable", message: `There is nothing to log in that. Try ${EXAMPLES}.` };
  return { kind: "read", value: entries, readAs: entries.map(({ readAs }) => readAs).join("; ") };
}

type Taken =
  | { readonly kind: "entry"; readonly entry: LogEntry; readonly end: number }
  | { readonly kind: "ask"; readonly question: Extract<Read<never>, { kind: "ask" }>; readonly end: number }
  | { readonly kind: "unread"; readonly message?: string; readonly end: number };

function takeNext(line: string, at: number, habits: Habits): Taken {
  const rest = line.slice(at);
  const note = NOTE.exec(rest);
  if (note !== null) {
    const text = rest.slice(note[0].length).trim();
    if (text === "") return { kind: "unread", message: "A note needs its words.", end: line.length };
    return {
      kind: "entry",
      entry: { kind: "event", event: "note", text, typed: rest, readAs: `note: ${text}` },
      end: line.length,
    };
  }
  const segment = rest.slice(0, segmentEnd(rest));
  return (
    takeReading(line, at, segment, habits) ??
    takeEvent(line, at, segment, habits) ??
    takeFigureFirst(line, at, segment, habits) ??
    unreadWord(segment, at)
  );
}

function unreadWord(segment: string, at: number): Taken {
  const length = firstWordEnd(segment);
  const match = namesLike(segment).find(({ name }) => beginsWith(segment, name) && name.length === length);
  const lacks =
    match === undefined ? {} : { message: `The ${match.parameter.name} needs a figure after its name.` };
  return { kind: "unread", end: at + length, ...lacks };
}

/** "no3 20", "nitrate-N: 4.5", "ph8.1", "po4 not detected". */
function takeReading(line: string, at: number, segment: string, habits: Habits): Taken | undefined {
  const named = nameAt(segment);
  if (named === undefined) return undefined;
  const text = segment.slice(named.figureAt);
  const found = longestFigure(named.parameter, named.name, text, habits);
  const start = at + named.figureAt;
  const end = start + found.text.length;
  if (found.read.kind === "unreadable" || found.read.kind === "impossible") {
    return { kind: "unread", message: found.read.message, end };
  }
  if (found.read.kind === "ask") return asked(line, found.read, start, end);
  return { kind: "entry", entry: reading(named.parameter, found.read, line.slice(at, end)), end };
}

/** "20 ppm nitrate", "1.026 sg", "8.1 pH". */
function takeFigureFirst(line: string, at: number, segment: string, habits: Habits): Taken | undefined {
  if (!/^[<>~≈]?\d/.test(segment)) return undefined;
  const gaps = [...segment.matchAll(/ /g)].slice(0, MOST_FIGURE_WORDS);
  for (const gap of gaps) {
    const after = segment.slice(gap.index + 1);
    const match = namesLike(after).find(({ name }) => beginsWith(after, name));
    if (match === undefined || nameAt(after) !== undefined) continue;
    const text = segment.slice(0, gap.index);
    const read = readFigure(match.parameter, match.name, text, habits);
    const end = at + gap.index + 1 + match.name.length;
    if (read.kind === "unreadable" || read.kind === "impossible") continue;
    if (read.kind === "ask") return asked(line, read, at, at + text.length);
    return { kind: "entry", entry: reading(match.parameter, read, line.slice(at, end)), end };
  }
  return undefined;
}

function takeEvent(line: string, at: number, segment: string, habits: Habits): Taken | undefined {
  const found = findEvent(segment, readingStart(segment), habits);
  if (found === undefined) return undefined;
  if ("question" in found) return asked(line, found.question, at + found.start, at + found.end);
  const end = at + found.length;
  const { event, amount, text, readAs } = found;
  const entry: LogEntry = {
    kind: "event",
    event,
    ...(amount === undefined ? {} : { amount }),
    text,
    typed: line.slice(at, end).trim(),
    readAs,
  };
  return { kind: "entry", entry, end };
}

/** The figure as long as it reads, so that "25/25" stays with its gravity and "ca 430" with itself. */
function longestFigure(subject: Parameter, name: string, text: string, habits: Habits) {
  const words = text.split(" ");
  let shortest: { text: string; read: ReturnType<typeof readFigure> } | undefined;
  for (let n = Math.min(MOST_FIGURE_WORDS, words.length); n > 0; n--) {
    // In "ph 8.1 ph 8.2" the second name opens a reading of its own.
    if (n > 1 && nameAt(words.slice(n - 1).join(" ")) !== undefined) continue;
    const figure = words.slice(0, n).join(" ");
    const read = readFigure(subject, name, figure, habits);
    if (read.kind !== "unreadable") return { text: figure, read };
    shortest = { text: figure, read };
  }
  return shortest ?? { text, read: readFigure(subject, name, text, habits) };
}

function reading(subject: Parameter, read: Extract<Read<Figure>, { kind: "read" }>, typed: string): LogEntry {
  const { estimate, censored } = read.value;
  // "about, taken as ± 10 %: 20 mg/L" reads better after a name the other way round.
  const about = /^about, (taken as [^:]+): (.+)$/.exec(read.readAs);
  const figure = about === null ? read.readAs : `${about[2]}, ${about[1]}`;
  const said = figure.startsWith(subject.name) ? figure : `${subject.name} ${figure}`;
  return {
    kind: "reading",
    parameter: subject.id,
    estimate,
    unit: subject.unit,
    basis: subject.basis,
    ...(censored === undefined ? {} : { censored }),
    typed,
    readAs: said,
  };
}

function asked(line: string, read: Extract<Read<never>, { kind: "ask" }>, start: number, end: number): Taken {
  const choices = read.choices.map((choice) => ({
    ...choice,
    text: `${line.slice(0, start)}${choice.text}${line.slice(end)}`,
  }));
  return { kind: "ask", question: { ...read, choices }, end };
}

/** The name with which a reading begins, when a figure follows it. */
function nameAt(text: string): { parameter: Parameter; name: string; figureAt: number } | undefined {
  for (const { name, parameter } of namesLike(text)) {
    if (!beginsWith(text, name) || TO_DO.test(text)) continue;
    const gap = BETWEEN_NAME_AND_FIGURE.exec(text.slice(name.length))?.[0].length ?? 0;
    const figureAt = name.length + gap;
    if (FIGURE_AHEAD.test(text.slice(figureAt))) return { parameter, name, figureAt };
  }
  return undefined;
}

function namesLike(text: string): typeof NAMES {
  return NAMES_BY_LETTER.get(text.charAt(0).toLowerCase()) ?? [];
}

/** Whether the text begins with the name as a word of its own; "ph8.1" counts, "phosphor" does not. */
function beginsWith(text: string, name: string): boolean {
  if (text.slice(0, name.length).toLowerCase() !== name) return false;
  const next = text.charAt(name.length);
  return !/[\p{L}/]/u.test(next) && !(/\d/.test(next) && (/\d$/.test(name) || name.length < 2));
}

/** Where, in the words of an event, a reading begins that could be nothing else. */
function readingStart(segment: string): number {
  for (const gap of segment.matchAll(/ /g)) {
    const named = nameAt(segment.slice(gap.index + 1));
    // "do 2", "t 5" and "mg 3" may be anything within a sentence.
    if (named !== undefined && named.name.length > 2) return gap.index;
    if (named !== undefined && /^(?:ph|kh|gh|sg)$/.test(named.name)) return gap.index;
  }
  return segment.length;
}

function nutrientForms({ id }: Parameter, spelling: string): readonly string[] {
  if (id === "phosphate")
    return spelling === "phosphorus" ? [] : [`${spelling}-p`, `${spelling} p`, `${spelling}p`];
  if (id !== "nitrate" && id !== "nitrite" && id !== "ammonia") return [];
  return spelling === "tan"
    ? []
    : [`${spelling}-n`, `${spelling} n`, `${spelling}n`, `${spelling} nitrogen`, `${spelling}-nitrogen`];
}

/** The next comma that parts, semicolon or line end. A comma within a number does not part. */
function segmentEnd(text: string): number {
  const mark = /;|,(?!\d)|(?<!\d),/.exec(text);
  return mark?.index ?? text.length;
}

function skipMarks(line: string, from: number): number {
  let at = from;
  while (/[ ,;.!&|]/.test(line.charAt(at)) && !/^\.\d/.test(line.slice(at))) at += 1;
  return /^and /i.test(line.slice(at)) ? skipMarks(line, at + 4) : at;
}

function firstWordEnd(segment: string): number {
  const space = segment.indexOf(" ");
  return Math.max(1, space < 0 ? segment.length : space);
}

function unreadable<T>(
  unread: readonly string[],
  complaint: string | undefined,
  entries: readonly LogEntry[],
): Read<T> {
  const pieces = unread.map((piece) => quote(piece)).join(" and ");
  const why = complaint === undefined ? "" : ` ${complaint}`;
  const rest =
    entries.length === 0
      ? ` Try ${EXAMPLES}.`
      : ` The rest I understood: ${entries.map(({ readAs }) => readAs).join("; ")}. Nothing is logged yet; to keep words as they are, put “note” before them at the end of the line.`;
  return { kind: "unreadable", message: `I cannot read ${pieces}.${why}${rest}` };
}

function plainLine(typed: string): string {
  return typed
    .replace(/[\r\n]+/g, "; ")
    .normalize("NFKC")
    .replace(/[‐‑‒–—―−]/g, "-")
    .replace(/[‘’ʹʼ]/g, "'")
    .replace(/[\p{Cf}\p{Variation_Selector}]/gu, "")
    .replace(/[\s\p{Cc}]+/gu, " ")
    .trim();
}
