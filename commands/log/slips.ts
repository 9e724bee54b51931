import type { LogEntry, ReadingEntry } from "../../src/core/log/entry.ts";
import { parameter, unitText } from "../../src/core/log/parameters.ts";
import { replacedShare } from "../../src/core/log/replaced-since.ts";
import { looksLikeSlip, type PastValue, type SlipChoice } from "../../src/core/log/slips.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import type { Context, Question } from "../../src/kit/index.ts";
import type { QuestionChoice } from "../../src/kit/reply.ts";
import type { Tank } from "../../src/records/tank.ts";

/** Past readings looked at; older ones say little about today. */
const LOOKED_AT = 10;
/** Events searched for water changes since the last reading. */
const EVENTS_LOOKED_AT = 100;

/**
 * Asks about the first reading that looks like a slip, unless the member has settled it already. The
 * reading that is being replaced, if any, says nothing about what is likely.
 */
export function settleSlips(
  entries: readonly LogEntry[],
  tank: Tank,
  at: string,
  context: Context,
  replacedId?: number,
): { readonly kind: "settled"; readonly entries: readonly LogEntry[] } | Question {
  const settled: LogEntry[] = [];
  for (const [index, entry] of entries.entries()) {
    if (entry.kind === "event") {
      settled.push(entry);
      continue;
    }
    const answer = context.request.answers[answerName(index, entry)];
    if (answer === undefined) {
      const question = slipQuestion(entry, index, tank, at, context, replacedId);
      if (question !== undefined) return question;
      settled.push(entry);
    } else settled.push(answer === "keep" ? entry : corrected(entry, Number(answer)));
  }
  return { kind: "settled", entries: settled };
}

/** An answer holds for the figure it was given about, and for no other. */
function answerName(index: number, { parameter: id, estimate }: ReadingEntry): string {
  return `slip ${index} ${id} ${estimate.best}`;
}

function slipQuestion(
  entry: ReadingEntry,
  index: number,
  tank: Tank,
  at: string,
  context: Context,
  replacedId: number | undefined,
): Question | undefined {
  // "Below 5" says only what the kit can show: there is no figure in it to have slipped.
  if (entry.censored !== undefined) return undefined;
  const { records, member } = context;
  const recentOf = (tankId: number): readonly PastValue[] =>
    records.log
      .readings(member.id, tankId, entry.parameter, LOOKED_AT)
      .filter(({ id }) => id !== replacedId)
      .map((reading) => ({ value: reading.best, at: reading.at }));
  const recent = recentOf(tank.id);
  const slip = looksLikeSlip(
    {
      parameter: entry.parameter,
      value: entry.estimate.best,
      at,
      replacedSince: changedSince(recent[0]?.at, tank, context),
    },
    recent,
    // A reading that is corrected stays with its tank.
    (replacedId === undefined ? records.tanks.own(member.id) : [])
      .filter(({ id }) => id !== tank.id)
      .map(({ id, name }) => ({ name, recent: recentOf(id) })),
  );
  if (slip === undefined) return undefined;
  return {
    kind: "question",
    isMistake: false,
    title: `${tank.name}: ${entry.readAs}?`,
    text: slip.question,
    body: [`Nothing has been ${replacedId === undefined ? "logged" : "changed"} yet.`],
    cautions: [],
    choices: slip.choices.map((choice) => choiceOf(choice, answerName(index, entry))),
    audience: "asker",
  };
}

function choiceOf(choice: SlipChoice, name: string): QuestionChoice {
  switch (choice.kind) {
    case "keep":
      return { label: choice.label, settle: { answers: { [name]: "keep" } } };
    case "value":
      return { label: choice.label, settle: { answers: { [name]: String(choice.value) } } };
    case "tank":
      return { label: choice.label, settle: { options: { tank: choice.tank } } };
  }
}

function changedSince(since: string | undefined, tank: Tank, { records, member }: Context): number {
  if (since === undefined) return 0;
  return replacedShare(
    records.log
      .recent(member.id, tank.id, EVENTS_LOOKED_AT)
      .flatMap((line) =>
        line.kind === "event" &&
        line.event.event === "water change" &&
        line.event.unit === "fraction" &&
        line.event.at >= since
          ? [line.event.amount ?? 0]
          : [],
      ),
  );
}

/** What was typed stays as typed; how it is understood now says what it was corrected to. */
function corrected(entry: ReadingEntry, value: number): ReadingEntry {
  const subject = parameter(entry.parameter);
  return {
    ...entry,
    estimate: { best: value, low: value, high: value },
    readAs: `${subject.name} ${showNumber(value)} ${unitText(subject)}, corrected from ${entry.readAs}`,
  };
}
