import type { Outcome, Question, Reply, ReplyCaution, ReplyTable, Working } from "../kit/reply.ts";

export interface Style {
  strong(text: string): string;
  faint(text: string): string;
  alarm(text: string): string;
}

export const PLAIN: Style = { strong: same, faint: same, alarm: same };

export const COLOURED: Style = {
  strong: (text) => `\u001b[1m${text}\u001b[22m`,
  faint: (text) => `\u001b[2m${text}\u001b[22m`,
  alarm: (text) => `\u001b[33m${text}\u001b[39m`,
};

const WIDTH = 96;

/** The outcome as lines for a terminal: the number first, then what it rests on, cautions, basis. */
export function renderOutcome(outcome: Outcome, style: Style): string {
  return outcome.kind === "reply" ? renderReply(outcome, style) : renderQuestion(outcome, style);
}

function renderReply(reply: Reply, style: Style): string {
  return [
    style.strong(safe(reply.title)),
    ...(reply.headline === undefined ? [] : ["", `  ${style.strong(safe(reply.headline))}`, ""]),
    ...reply.body.flatMap((line) => wrapped(safe(line), "  ")),
    ...(reply.table === undefined ? [] : tableLines(reply.table)),
    ...(reply.chart === undefined ? [] : wrapped(`Chart: ${safe(reply.chart.altText)}`, "  ")),
    ...cautionLines(reply.cautions, style),
    ...(reply.basis === undefined ? [] : wrapped(`Basis: ${safe(reply.basis)}.`, "  ").map(style.faint)),
    ...(reply.working === undefined
      ? []
      : [style.faint("  (type working to see every figure and its source)")]),
  ].join("\n");
}

function renderQuestion(question: Question, style: Style): string {
  const { typed } = question;
  return [
    style.strong(safe(question.title)),
    ...wrapped(safe(question.text), "  "),
    ...question.body.flatMap((line) => wrapped(safe(line), "  ")),
    ...cautionLines(question.cautions, style),
    ...question.choices.map(({ label }, index) => `  ${index + 1}) ${safe(label)}`),
    ...(typed === undefined
      ? [style.faint("  (type the number)")]
      : [
          style.faint(
            question.choices.length === 0
              ? `  (type it, e.g. ${safe(typed.example)})`
              : "  (type the number, or say it in other words)",
          ),
        ]),
  ].join("\n");
}

/** What stands behind a figure, for the member who asks. */
export function renderWorking(title: string, working: Working, style: Style): string {
  const part = (name: string, lines: readonly string[]): readonly string[] =>
    lines.length === 0 ? [] : [style.strong(name), ...lines.flatMap((line) => wrapped(safe(line), "  "))];
  return [
    style.strong(`Working: ${safe(title)}`),
    ...part(
      "As read",
      working.inputs.map(({ name, typed, readAs }) => `${name}: ${typed} → ${readAs}`),
    ),
    ...part("Steps", working.steps),
    ...part(
      "Constants",
      working.constants.map(({ name, value, source }) => `${name} = ${value}. ${source}`),
    ),
    ...part("Taken for granted", working.assumptions),
    ...part(
      "Sources",
      working.sources.map(({ citation, standing, link }) =>
        [`${citation} (${standing})`, link].join(" ").trim(),
      ),
    ),
  ].join("\n");
}

const MARK = { note: "·", warning: "▲", danger: "◆" } as const;

function cautionLines(cautions: readonly ReplyCaution[], style: Style): readonly string[] {
  return cautions.flatMap(({ level, text }) => {
    const lines = wrapped(`${MARK[level]} ${safe(text)}`, "  ", "    ");
    return level === "note" ? lines : lines.map(style.alarm);
  });
}

function tableLines({ columns, rows }: ReplyTable): readonly string[] {
  const all = [columns, ...rows].map((row) => row.map(safe));
  const widths = columns.map((_, column) => Math.max(...all.map((row) => [...(row[column] ?? "")].length)));
  const line = (row: readonly string[]): string =>
    `  ${row.map((cell, column) => cell + " ".repeat(Math.max(0, (widths[column] ?? 0) - [...cell].length))).join("  ")}`.trimEnd();
  const [head = [], ...body] = all;
  return [line(head), line(widths.map((width) => "─".repeat(width))), ...body.map(line)];
}

/** Breaks at spaces to fit a terminal. */
function wrapped(text: string, indent: string, hanging = indent): readonly string[] {
  const lines: string[] = [];
  let line = indent;
  let isEmpty = true;
  for (const word of text.split(" ")) {
    if (!isEmpty && [...line].length + 1 + [...word].length > WIDTH) {
      lines.push(line);
      line = hanging;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line];
}

/** Nothing a member typed may steer the terminal. */
export function safe(text: string): string {
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, " ");
}

function same(text: string): string {
  return text;
}
