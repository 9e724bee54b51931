import type { Answer, Caution, Constant, NoAnswer } from "../core/result.ts";
import type { Source } from "../core/source.ts";
import { SOURCES, type SourceId } from "../core/sources.ts";
import { sayCaution, sayRefusal } from "../wording/index.ts";
import type { ChartSpec } from "./chart.ts";
import type { Context } from "./context.ts";
import type { Audience, Reply, ReplyCaution, ReplyTable, Working } from "./reply.ts";
import type { PedigreeSpec, PumpSpec, RotaSpec, SystemSpec } from "./system-spec.ts";
import { capitalised } from "./text.ts";

/** A figure that was not typed but taken from the records or assumed. */
export interface TakenFigure {
  readonly name: string;
  /** "Lagoon, measured fill", "logged 3 days ago". */
  readonly from: string;
  readonly readAs: string;
}

export interface AnswerWords<T> {
  readonly title: string;
  readonly headline: (value: T) => string;
  readonly body: (value: T) => readonly string[];
  readonly table?: (value: T) => ReplyTable;
  readonly chart?: (value: T) => ChartSpec;
  readonly picture?: (value: T) => SystemSpec | PumpSpec | RotaSpec | PedigreeSpec;
  readonly taken?: readonly TakenFigure[];
  /** Doubts about the figures taken along, beside those of the answer itself. */
  readonly cautions?: readonly Caution[];
  readonly audience?: Audience;
}

/** Turns a computed answer into a reply: every caution, source and assumption goes along. */
export function answerReply<T>(answer: Answer<T> | NoAnswer, context: Context, words: AnswerWords<T>): Reply {
  const taken = words.taken ?? [];
  const audience = words.audience ?? context.audience;
  const raised = [...answer.cautions, ...(words.cautions ?? [])].map(spoken);
  const cautions = [...new Map(raised.map((each) => [each.text, each])).values()];
  if (answer.kind === "no-answer") {
    return {
      kind: "reply",
      ok: false,
      title: words.title,
      body: [capitalised(sayRefusal(answer.reason)), ...takenLine(taken)],
      cautions,
      audience,
    };
  }
  const { driver } = answer;
  const table = words.table?.(answer.value);
  const hasTable = table !== undefined && table.rows.length > 0;
  const chart = words.chart?.(answer.value);
  const picture = words.picture?.(answer.value);
  return {
    kind: "reply",
    ok: true,
    title: words.title,
    headline: words.headline(answer.value),
    body: [
      ...words.body(answer.value),
      ...(driver === undefined
        ? []
        : [`What widens the range${driver.share > 0.95 ? "" : " most"}: ${driver.input}.`]),
      ...takenLine(taken),
    ],
    ...(hasTable ? { table } : {}),
    ...(chart === undefined ? {} : { chart }),
    ...(picture === undefined ? {} : { picture }),
    cautions,
    basis: basisLine(answer),
    working: workingOf(answer, context, taken),
    audience,
  };
}

function spoken(caution: Caution): ReplyCaution {
  return { level: caution.level, text: capitalised(sayCaution(caution)) };
}

function takenLine(taken: readonly TakenFigure[]): readonly string[] {
  return taken.length === 0
    ? []
    : [`Taken along: ${taken.map(({ name, from, readAs }) => `${name} ${readAs} (${from})`).join("; ")}.`];
}

/** The method, and the weakest ground any of its figures stands on. */
function basisLine(answer: Answer<unknown>): string {
  const weakest = WEAKEST_FIRST.find((standing) =>
    groundsOf(answer).some((id) => sourceOf(id).standing === standing),
  );
  const method = answer.method.replace(/\.$/, "");
  return weakest === undefined || weakest === "published" || weakest === "definition"
    ? method
    : `${method}; weakest figure: ${weakest}`;
}

const WEAKEST_FIRST: readonly Source["standing"][] = [
  "assumption",
  "common practice, no source",
  "from memory",
  "reference library",
  "published",
  "definition",
];

function groundsOf(answer: Answer<unknown>): readonly SourceId[] {
  return [...new Set([...answer.sources, ...answer.constants.map((constant) => constant.source)])];
}

function sourceOf(id: SourceId): Source {
  return SOURCES[id];
}

function workingOf(answer: Answer<unknown>, context: Context, taken: readonly TakenFigure[]): Working {
  return {
    inputs: [
      ...[...context.readAs].map(([name, { typed, readAs }]) => ({ name, typed, readAs })),
      ...taken.map(({ name, from, readAs }) => ({ name, typed: from, readAs })),
    ],
    steps: answer.working,
    constants: answer.constants.map(constantLine),
    assumptions: answer.assumptions,
    sources: groundsOf(answer).map((id) => {
      const { citation, standing, link } = sourceOf(id);
      return { citation, standing, ...(link === undefined ? {} : { link }) };
    }),
  };
}

function constantLine({ name, value, source }: Constant): Working["constants"][number] {
  const { citation, standing } = sourceOf(source);
  return { name, value, source: `${citation} (${standing})` };
}
