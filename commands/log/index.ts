import type { LogEntry } from "../../src/core/log/entry.ts";
import { readLogLine } from "../../src/core/log/read-log-line.ts";
import { splitWhen } from "../../src/core/log/split-when.ts";
import type { Read } from "../../src/core/quantity/read.ts";
import type { ReadContext } from "../../src/kit/context.ts";
import { defineCommand, type Outcome, optional, reading, tankOption, words } from "../../src/kit/index.ts";
import { readWhen, sayWhen, whenOption } from "../../src/kit/when-option.ts";
import { ownTank } from "../tank/shared.ts";
import { habitsWith, instrumentFor, isReading, newEvent, newReading } from "./entries.ts";
import { settleSlips } from "./slips.ts";

interface Line {
  readonly text: string;
  readonly entries: readonly LogEntry[];
  /** UTC, ISO 8601; absent when the line does not say. */
  readonly at?: string | undefined;
}

/** One typed line: what was logged, and when if the line ends with that. */
function readLine(text: string, context: ReadContext): Read<Line> {
  const { line, when } = splitWhen(text);
  const habits = habitsWith(context.request.options["with"], context);
  const entries = readLogLine(line, habits);
  if (entries.kind === "unreadable") return entries;
  if (entries.kind === "ask") return withTail(entries, (choice) => `${choice} ${when ?? ""}`.trim());
  const at = when === undefined ? undefined : readWhen(when, context.member, context.now);
  if (at?.kind === "unreadable") return at;
  if (at?.kind === "ask") return withTail(at, (choice) => `${line} ${choice}`);
  return { kind: "read", value: { text, entries: entries.value, at: at?.value }, readAs: entries.readAs };
}

function withTail(
  read: Extract<Read<unknown>, { kind: "ask" }>,
  rewrite: (text: string) => string,
): Read<Line> {
  return { ...read, choices: read.choices.map((choice) => ({ ...choice, text: rewrite(choice.text) })) };
}

export default defineCommand({
  name: "log",
  summary: "Log readings and events of a tank in one line",
  options: {
    line: reading(
      "E.g. no3 20, temp 25.5, wc 30 %, fed 280 g prawn",
      "sg 1.0255 temp 25.5 alk 7.4",
      readLine,
    ),
    when: optional(whenOption()),
    with: optional(
      words("The test kit or meter used, as named with /instrument add", "glass hydrometer", 40),
    ),
    tank: optional(tankOption()),
  },
  examples: [
    "/log line:sg 1.0255 temp 25.5 alk 7.4",
    "/log line:no3 20, wc 30 % when:yesterday 9pm tank:Lagoon",
  ],
  run(input, context): Outcome {
    const tank = ownTank(input.tank, context);
    const { records, member, now, audience } = context;
    const at = input.when ?? input.line.at ?? new Date(now).toISOString();
    const settled = settleSlips(input.line.entries, tank, at, context);
    if (settled.kind === "question") return settled;
    const { entries } = settled;
    records.log.add({
      owner: member.id,
      tankId: tank.id,
      line: input.line.text,
      readings: entries
        .filter(isReading)
        .map((entry) => newReading(entry, at, instrumentFor(entry, input.with, context))),
      events: entries.flatMap((entry) => (isReading(entry) ? [] : [newEvent(entry, at)])),
      now: new Date(now).toISOString(),
    });
    return {
      kind: "reply",
      ok: true,
      title: `${tank.name}: logged`,
      headline: entries.map(({ readAs }) => readAs).join("; "),
      body: [
        `At: ${sayWhen(at, member, now)}. /undo${tank.isDefault ? "" : ` tank:${tank.name}`} takes it back.`,
      ],
      cautions: [],
      audience,
    };
  },
});
