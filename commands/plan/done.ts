import type { LogEntry } from "../../src/core/log/entry.ts";
import { type ParameterId, parameter } from "../../src/core/log/parameters.ts";
import { readLogLine } from "../../src/core/log/read-log-line.ts";
import {
  askFor,
  type Context,
  capitalised,
  defineCommand,
  listed,
  type Outcome,
  optional,
  type Question,
  UserError,
  words,
} from "../../src/kit/index.ts";
import { readingsSince } from "../../src/kit/tank-log.ts";
import { sayWhen, whenOption } from "../../src/kit/when-option.ts";
import type { Duty, DutyEntry } from "../../src/records/plan.ts";
import { instrumentFor, isReading, newEvent, newReading } from "../log/entries.ts";
import { settleSlips } from "../log/slips.ts";
import { dutyMeant, dutyOption, isQuestion, plainReply } from "./shared.ts";

const TITLE = "Done";
/** A test taken so long before it fell due still counts. */
const EARLY_MS = 12 * 3_600_000;

/** How each event begins when it is written into the log with another amount. */
const VERBS: Readonly<Record<string, string>> = {
  "water change": "wc",
  feeding: "fed",
  dose: "dosed",
  harvest: "harvested",
};

export default defineCommand({
  name: "done",
  summary: "Say that a due task is done; it goes into the log with its amount",
  options: {
    task: optional(dutyOption),
    amount: optional(
      words(
        "What it really was: 150 L, 25 %, or the reading of a test; as planned if left out",
        "150 L",
        120,
      ),
    ),
    when: optional(whenOption()),
  },
  examples: ["/plan done", "/plan done task:12 amount:150 L when:yesterday 9pm"],
  run(input, context): Outcome {
    const duty = dutyMeant(input.task, TITLE, context);
    if (isQuestion(duty)) return duty;
    const { records, member, now } = context;
    const isSettled = duty.state === "done" || duty.state === "skipped";
    if (isSettled && input.amount === undefined)
      return plainReply(
        `${capitalised(duty.words.title)}: ${duty.state} already`,
        [
          `Since ${sayWhen(duty.settledAt ?? duty.dueAt, member, now)}. Nothing was logged twice; amount: corrects what was.`,
        ],
        context,
      );
    if (input.amount !== undefined && duty.half !== "whole")
      throw new UserError("bad-input", `${capitalised(duty.words.title)} has no amount: leave amount: out.`);
    const at = input.when ?? new Date(now).toISOString();
    const entry = entryOf(duty, input.amount, at, context);
    if (entry !== undefined && "kind" in entry) return entry;
    const settled = records.plans.settle(
      member.id,
      duty.id,
      "done",
      entry,
      at,
      new Date(now).toISOString(),
      isSettled,
    );
    const logged = [...(entry?.readings ?? []), ...(entry?.events ?? [])].map(({ readAs }) => readAs);
    return plainReply(
      settled ? TITLE : `${capitalised(duty.words.title)}: done already`,
      [
        logged.length === 0 ? "It was in the log already." : `Logged ${sayWhen(at, member, now)}.`,
        ...(duty.words.event?.amount === undefined || input.amount !== undefined
          ? []
          : [`Was it another amount? /plan done task:${duty.id} amount:… puts that in its place.`]),
        ...backLine(duty, context),
      ],
      context,
      { headline: capitalised(logged.length === 0 ? duty.words.title : logged.join("; ")) },
    );
  },
});

/** Whoever has just switched something off is told when it is asked for again. */
function backLine(duty: Duty, { records, member, now }: Context): readonly string[] {
  if (duty.half !== "off") return [];
  const pair = records.plans.switchedOff(duty.tankId).find(({ off }) => off.id === duty.id);
  return pair === undefined
    ? []
    : [`Back on ${sayWhen(pair.back.dueAt, member, now)}; from then I ask until you say so.`];
}

/** What goes into the log; nothing where it stands there already. */
function entryOf(
  duty: Duty,
  amount: string | undefined,
  at: string,
  context: Context,
): DutyEntry | Question | undefined {
  const { event } = duty.words;
  const plan = context.records.plans.find(context.member.id, duty.planId);
  if (plan?.task.kind === "test") return readingEntry(duty, plan.task.parameters, amount, at, context);
  if (event === undefined) return undefined;
  const verb = VERBS[event.event];
  if (amount === undefined || verb === undefined)
    return {
      line: event.words,
      readings: [],
      events: [
        {
          event: event.event,
          ...(event.amount === undefined || event.unit === undefined
            ? {}
            : { amount: event.amount, unit: event.unit }),
          text: amount === undefined ? event.text : `${event.text}, ${amount}`,
          typed: amount ?? event.words,
          readAs: amount === undefined ? event.words : `${event.words}, ${amount}`,
          at,
        },
      ],
    };
  return logEntry(
    `${verb} ${amount} ${event.text}`.trim(),
    duty,
    at,
    context,
    (entries) => entries.length === 1 && entries[0]?.kind === "event" && entries[0].amount !== undefined,
  );
}

function readingEntry(
  duty: Duty,
  parameters: readonly ParameterId[],
  amount: string | undefined,
  at: string,
  context: Context,
): DutyEntry | Question | undefined {
  const { records, member } = context;
  const since = new Date(Date.parse(duty.dueAt) - EARLY_MS).toISOString();
  const missing = parameters.filter(
    (id) => readingsSince({ owner: member.id, id: duty.tankId }, id, since, records).length === 0,
  );
  if (amount === undefined && missing.length === 0) return undefined;
  const [first = "nitrate"] = missing.length === 0 ? parameters : missing;
  const names = parameters.map((id) => parameter(id).name);
  const [spelling = first] = parameter(first).spellings;
  if (amount === undefined)
    return askFor(
      context,
      { name: "amount", example: `${spelling} 20` },
      { title: capitalised(duty.words.title), text: `What did you read for ${listed(names)}?` },
    );
  const hasName = /[\p{L}]{2,}.*\d/u.test(amount);
  return logEntry(hasName ? amount : `${spelling} ${amount}`, duty, at, context, (entries) =>
    entries.some(isReading),
  );
}

function logEntry(
  line: string,
  duty: Duty,
  at: string,
  context: Context,
  isRight: (entries: readonly LogEntry[]) => boolean,
): DutyEntry | Question {
  const read = readLogLine(line, context.member.habits);
  if (read.kind === "ask")
    return askFor(
      context,
      { name: "amount", example: "150 L" },
      {
        title: capitalised(duty.words.title),
        text: read.question,
        choices: read.choices.map(({ label, text }) => ({
          label,
          settle: { options: { amount: text.replace(/^(?:wc|fed|dosed|harvested) /, "") } },
        })),
      },
    );
  if (read.kind === "unreadable" || !isRight(read.value))
    throw new UserError(
      "bad-input",
      read.kind === "unreadable"
        ? read.message
        : `I cannot read an amount in that. Try amount:150 L, 25 % or 40 g, or for a test the reading: amount:no3 20.`,
    );
  const tank = context.records.tanks.own(context.member.id).find(({ id }) => id === duty.tankId);
  if (tank === undefined) throw new UserError("not-found", "Its tank has gone.");
  const settled = settleSlips(read.value, tank, at, context);
  if (settled.kind === "question") return settled;
  return {
    line,
    readings: settled.entries
      .filter(isReading)
      .map((entry) => newReading(entry, at, instrumentFor(entry, undefined, context))),
    events: settled.entries.flatMap((entry) => (isReading(entry) ? [] : [newEvent(entry, at)])),
  };
}
