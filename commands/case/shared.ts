import type { AdviceStep } from "../../src/core/help/advice.ts";
import { FACT_FIELDS, type FactField, type HelpFacts, type TypedFact } from "../../src/core/help/facts.ts";
import { type HelpCard, helpCase } from "../../src/core/help/help-case.ts";
import { readFacts } from "../../src/core/help/read-facts.ts";
import { readReadings } from "../../src/core/help/read-readings.ts";
import { sentencesOf } from "../../src/core/help/sentences.ts";
import { peopleFirst } from "../../src/core/questions/people-first.ts";
import { SOURCES, type SourceId } from "../../src/core/sources.ts";
import {
  answerReply,
  type Context,
  type Option,
  optional,
  quoted,
  type Reply,
  reading,
  UserError,
  words,
} from "../../src/kit/index.ts";
import { safetyCard } from "../../src/kit/safety-card.ts";
import { sayWhen } from "../../src/kit/when-option.ts";
import type { HelpCase, HelpEntry, HelpViewer, NewHelpEntry } from "../../src/records/help.ts";

const LONGEST = 1500;

/** The form: every field may be left out. */
export const FORM = {
  worry: optional(words("What worries you", "the fish hide all day", LONGEST)),
  trouble: optional(words("Anything gasping, lying down, or dead?", "one gasps at the top", LONGEST)),
  tank: optional(words("Tank size, fresh or salt, and since when it runs", "60 L fresh, 5 weeks", LONGEST)),
  animals: optional(words("Which animals, and since when", "6 neon tetras since 2 weeks", LONGEST)),
  change: optional(words("Last water change", "20 % last Sunday", LONGEST)),
  readings: optional(words("Test results, in any units", "ammonia 0.5, pH 7.6, 25 °C", LONGEST)),
};

type Form = { readonly [F in FactField]?: string | undefined };

export function factsOf(form: Form): readonly NewHelpEntry[] {
  return FACT_FIELDS.flatMap((field) => {
    const text = form[field];
    return text === undefined ? [] : [{ kind: "fact" as const, field, text }];
  });
}

/** Which case; the one of this thread, or the newest open one, if left out. */
export function caseOption(): Option<HelpCase, false> {
  return optional(
    reading<HelpCase>(
      "Number of the case; this thread's, or your newest, if left out",
      "7",
      (text, context) => {
        const id = Number(/^(?:case )?#?(\d{1,9})$/i.exec(text)?.[1] ?? "NaN");
        const found = Number.isNaN(id)
          ? undefined
          : context.records.help.find({ member: context.request.member, club: context.request.club }, id);
        return found === undefined
          ? { kind: "unreadable", message: `There is no case ${quoted(text)} here. /case list shows them.` }
          : { kind: "read", value: found, readAs: `case ${found.id}` };
      },
    ),
  );
}

export function viewerOf({ request }: Context): HelpViewer {
  return { member: request.member, club: request.club };
}

/** The case meant. Throws: UserError when none is, or when it cannot be told which. */
export function caseInMind(given: HelpCase | undefined, context: Context): HelpCase {
  if (given !== undefined) return given;
  const { help } = context.records;
  const viewer = viewerOf(context);
  const { place } = context.request;
  const here = place === undefined ? undefined : help.inPlace(viewer, place);
  if (here !== undefined) return here;
  const all = help.visible(viewer);
  const mine = all.find(({ owner }) => owner === viewer.member);
  if (mine !== undefined) return mine;
  const open = all.filter(({ state }) => state === "open");
  const [only, ...others] = open;
  if (only !== undefined && others.length === 0) return only;
  throw new UserError(
    "bad-input",
    only === undefined
      ? "There is no help case here yet. /case open starts one."
      : "Several cases are open. Say which with case:, for example case:7; /case list shows them.",
  );
}

/** Somebody hurt comes first, also where a long text says so late. */
export function hurtIn(form: Form, context: Context): Reply | undefined {
  const harm = Object.values(form)
    .flatMap((text) => (text === undefined ? [] : sentencesOf(text)))
    .map(peopleFirst)
    .find((found) => found?.certainty === "certain")?.harm;
  return harm === undefined
    ? undefined
    : safetyCard(harm, context.audience, context.records.tanks.own(context.member.id));
}

export interface Gathered {
  readonly facts: HelpFacts;
  readonly entries: readonly HelpEntry[];
}

export function gather(helped: HelpCase, context: Context): Gathered {
  const entries = context.records.help.entries(helped.id);
  const typed = entries.flatMap(({ kind, field, text, at }): readonly TypedFact[] =>
    kind === "fact" && field !== undefined
      ? [{ field, text, at }]
      : kind === "done" && /water|\bwc\b/i.test(text)
        ? [{ field: "change", text: `${text} today`, at }]
        : [],
  );
  return { facts: readFacts(typed, context.member.habits), entries };
}

interface CardWords {
  /** What was just noted, for the one who did it. */
  readonly remark: string;
  readonly isNew?: boolean;
  /** Whether the case was urgent before. */
  readonly wasUrgent?: boolean;
}

/** The case as one card, which a front shows in its thread and keeps up to date. */
export function cardReply(
  helped: HelpCase,
  context: Context,
  { remark, isNew = false, wasUrgent = true }: CardWords,
): Reply {
  const { facts, entries } = gather(helped, context);
  const open = entries.filter(({ kind, isSettled }) => kind === "step" && !isSettled);
  const steps = open.map(({ number = 0, text }): AdviceStep => ({ number, text }));
  const answer = helpCase(facts, steps);
  const { urgency, questions } = answer.value;
  const reply = answerReply(answer, context, {
    title: `Help case ${helped.id}${helped.state === "closed" ? " (closed)" : ""}`,
    headline: (card) => headlineOf(card),
    body: (card) => bodyOf(card, facts, entries, helped, context),
  });
  const { title, headline, body, cautions } = reply;
  const next = questions[0];
  const home = helped.club === undefined ? undefined : context.records.help.home(helped.club);
  return {
    ...reply,
    body: [remark, ...body],
    leavesNoTrace: true,
    helpCase: {
      number: helped.id,
      threadName: threadName(helped, answer.value),
      face: { title, ...(headline === undefined ? {} : { headline }), body, cautions },
      ...(helped.card === undefined ? {} : { card: helped.card }),
      ...(home === undefined ? {} : { home }),
      isNew,
      isNewAlarm: !wasUrgent && urgency.level === "now",
      isOpen: helped.state === "open",
      isUrgent: urgency.level === "now",
      ...(next === undefined || helped.state === "closed"
        ? {}
        : { next: { field: next.field, text: next.text, example: next.example } }),
      remark,
    },
  };
}

function headlineOf({ urgency: { level } }: HelpCard): string {
  if (level === "now") return "Do this now, in this order";
  return level === "soon" ? "Look closely today" : "No alarm in what was told so far";
}

/** Nothing of the newcomer's own words: a thread's name is seen by everybody. */
function threadName({ id }: HelpCase, { urgency: { alarms } }: HelpCard): string {
  const [first] = alarms;
  return `Help ${id}: ${first === undefined ? "a question" : `urgent, ${first.code}`}`;
}

function bodyOf(
  { urgency, doNow, findings, questions, contradictions }: HelpCard,
  facts: HelpFacts,
  entries: readonly HelpEntry[],
  helped: HelpCase,
  context: Context,
): readonly string[] {
  const steps = entries.filter(({ kind }) => kind === "step");
  const done = entries.filter(({ kind }) => kind === "done");
  const [next] = questions;
  const when = (at: string): string => sayWhen(at, context.member, context.now);
  return [
    ...(doNow?.steps.map((step, at) => `${at + 1}. ${step}`) ?? []),
    ...urgency.alarms.map(({ because, source }) => `Why: ${because} (${standingOf(source)}).`),
    ...toldLines(facts, entries),
    ...findings.map(({ kind, says, source }) => `${FINDING[kind]}: ${says} (${standingOf(source)})`),
    ...steps.map(
      ({ number, text, isSettled, followUpAt }) =>
        `Step ${number}${isSettled ? ", done" : ""}: ${text}${followUpAt === undefined || isSettled ? "" : ` (look again ${Date.parse(followUpAt) <= context.now ? "now" : when(followUpAt)})`}`,
    ),
    ...contradictions.map(
      ({ first, second, about, settledBy }) =>
        `Steps ${first.number} and ${second.number} differ about ${about}. Both are meant well; what settles it: ${settledBy}.`,
    ),
    ...done.map(({ text, at }) => `Done ${when(at)}: ${text}`),
    ...(helped.helper === undefined ? [] : [`In the hands of ${helped.helper.name ?? "a helper"}.`]),
    ...(helped.worked === undefined ? [] : [`What worked: ${helped.worked}`]),
    ...(helped.state === "closed" || next === undefined ? [] : [`Asked next: ${next.text} ${next.why}`]),
  ];
}

const FINDING = { fits: "Fits", doubtful: "Doubtful", measure: "To measure" } as const;

const FIELD = {
  worry: "Worry",
  trouble: "The animals now",
  tank: "Tank",
  animals: "Animals",
  change: "Last water change",
  readings: "Readings",
} as const satisfies Record<FactField, string>;

/** What was told, field by field, in the newcomer's own words. */
function toldLines(facts: HelpFacts, entries: readonly HelpEntry[]): readonly string[] {
  const lines = FACT_FIELDS.flatMap((field) => {
    const told = entries.filter((entry) => entry.kind === "fact" && entry.field === field);
    return told.length === 0 || field === "readings"
      ? []
      : [`${FIELD[field]}: ${told.map(({ text }) => clipped(text)).join(" / ")}`];
  });
  const readings = [...facts.readings.values()].map(({ parameter, readAs }) => named(parameter, readAs));
  return readings.length === 0 ? lines : [...lines, `Readings: ${readings.join("; ")}`];
}

function named(parameter: string, readAs: string): string {
  return readAs.toLowerCase().startsWith(parameter) ? readAs : `${parameter} ${readAs}`;
}

function clipped(text: string): string {
  const plain = text.replace(/\s+/g, " ");
  return plain.length <= 300 ? plain : `${plain.slice(0, 299)}…`;
}

/** How a text of readings was understood, said back. */
export function readBack(form: Form, context: Context): string {
  const found = Object.values(form)
    .flatMap((text) => (text === undefined ? [] : [readReadings(text, context.member.habits)]))
    .flatMap(({ readings }) => readings.map(({ parameter, readAs }) => named(parameter, readAs)));
  if (found.length > 0) return `Noted. Read as: ${found.join("; ")}.`;
  return form.readings === undefined
    ? "Noted."
    : "Noted in your words; I could not read a figure in it. “ammonia 0.5, pH 7.4, 25 °C” would work.";
}

/** A published finding by its work; anything else by how firmly it is known. */
function standingOf(source: SourceId): string {
  const { citation, standing } = SOURCES[source];
  if (standing === "common practice, no source" || standing === "assumption" || standing === "definition")
    return standing;
  const [work = citation] = /^.*?\d{4}/.exec(citation) ?? [];
  return `${work}, ${standing}`;
}
