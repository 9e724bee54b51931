import { PARAMETERS, type ParameterId, parameter, parameterNamed } from "../../src/core/log/parameters.ts";
import type { Meaning, Understood } from "../../src/core/questions/meaning.ts";
import { understand } from "../../src/core/questions/understand.ts";
import { findDates } from "../../src/kit/find-dates.ts";
import {
  type Context,
  defineCommand,
  type Forward,
  type Outcome,
  type Question,
  type Reply,
  UserError,
  words,
} from "../../src/kit/index.ts";
import { sharedLine, visibleTanks } from "../../src/kit/tank-option.ts";
import type { Tank } from "../../src/records/tank.ts";
import { declineReply } from "./declines.ts";
import { fromRecord } from "./from-record.ts";
import { equivalentOf } from "./requests.ts";
import { sayMeaning, sayRequest } from "./words.ts";

/** Answers to our own questions: which meaning, which parameter, whether to write. */
const MEANT = "meant";
const OF = "of";
const WRITE = "write";
const LONGEST_QUESTION = 300;
const RECENT_LINES = 60;
const MOST_CHOICES = 4;
const USUAL: readonly ParameterId[] = ["nitrate", "phosphate", "alkalinity", "ph"];

export default defineCommand({
  name: "ask",
  summary: "A question in plain words: is nitrate going up, when did I last change water",
  options: { question: words("In your own words", "is nitrate going up", LONGEST_QUESTION) },
  examples: [
    "/ask question:is nitrate in the lagoon going up since I added the trigger",
    "/ask question:how much salt for 60 gal at 1.025",
    "/ask question:when did I last change water",
  ],
  run({ question }, context): Outcome | Forward {
    const { now, member } = context;
    const tanks = visibleTanks(context);
    const understood = understand(question, { tanks, findDates: findDates(now, member.zone) });
    const meaning = settled(understood, context);
    if (meaning === undefined)
      return understood.kind === "unsure" && context.request.answers[MEANT] === undefined
        ? whichOne(understood.candidates, context)
        : notUnderstood(context);
    if (meaning.intent === "decline") return declineReply(meaning.who ?? "vet", context);
    const tank = tankMeant(meaning, tanks, context);
    return missing(meaning, tank, context) ?? answered(meaning, tank, context);
  },
});

/** What is meant, the member's own answers to our questions put in. */
function settled(understood: Understood, { request }: Context): Meaning | undefined {
  const chosen = request.answers[MEANT];
  const found =
    understood.kind === "meaning"
      ? understood.meaning
      : understood.kind === "unsure"
        ? understood.candidates.find(({ intent }) => intent === chosen)
        : undefined;
  const of = parameterNamed(request.answers[OF] ?? "")?.id;
  return found === undefined || of === undefined ? found : { ...found, parameter: of };
}

function tankMeant(
  { tank }: Meaning,
  tanks: readonly Tank[],
  { records, member }: Context,
): Tank | undefined {
  const named = tanks.filter(({ name }) => name === tank);
  const own = named.find(({ owner }) => owner === member.id);
  return tank === undefined ? records.tanks.own(member.id)[0] : (own ?? named[0]);
}

function answered(meaning: Meaning, tank: Tank | undefined, context: Context): Outcome | Forward {
  const { intent } = meaning;
  const line = `Understood: ${sayMeaning(meaning)}.`;
  if (intent === "latest" || intent === "value" || intent === "last-event") {
    if (tank === undefined)
      throw new UserError(
        "not-found",
        "You keep no tank here yet. Describe one with /tank add, then log into it.",
      );
    const told = fromRecord(meaning, tank, context);
    if (told === undefined) return notUnderstood(context);
    return {
      kind: "reply",
      ...told,
      body: [line, ...told.body, ...[sharedLine(tank)].filter((each) => each !== undefined)],
      cautions: [],
      audience: context.audience,
    };
  }
  const equivalent = equivalentOf(meaning, tank, context);
  if (equivalent === undefined) return notUnderstood(context);
  const { path, options, remarks } = equivalent;
  if (intent === "help") return help(context);
  return {
    kind: "forward",
    path,
    options,
    understood: [`${line.slice(0, -1)} → ${sayRequest(path, options)}`, ...remarks],
  };
}

/** What must be known before another command can be asked. */
function missing(meaning: Meaning, tank: Tank | undefined, context: Context): Question | undefined {
  const { intent, parameter: of, quantities } = meaning;
  const needsParameter = intent === "trend" || intent === "effect" || intent === "until";
  if (needsParameter && of === undefined) {
    const choices =
      intent === "effect" ? (["nitrate", "phosphate"] as const) : latestParameters(tank, context);
    return {
      ...asked("Of what?", context),
      choices: choices.map((id) => ({ label: parameter(id).name, settle: { answers: { [OF]: id } } })),
    };
  }
  // What nobody plainly ordered to be written is read back first.
  const isOrder = meaning.confidence >= 0.95;
  if (intent === "log" && !isOrder && context.request.answers[WRITE] !== "yes") {
    return {
      ...asked(
        `Shall I log “${quantities?.["line"] ?? ""}”${tank === undefined ? "" : ` for ${tank.name}`}?`,
        context,
      ),
      choices: [{ label: "Log it", tone: "go", settle: { answers: { [WRITE]: "yes" } } }],
    };
  }
  return undefined;
}

/** What the member tests, the newest first: what "it" is likely to be. */
function latestParameters(tank: Tank | undefined, { records }: Context): readonly ParameterId[] {
  const lines = tank === undefined ? [] : records.log.recent(tank.owner, tank.id, RECENT_LINES);
  const tested = lines.flatMap((line) => (line.kind === "reading" ? [line.reading.parameter] : []));
  const known = PARAMETERS.map(({ id }) => id).filter((id) => tested.includes(id));
  return known.length === 0
    ? USUAL
    : known.sort((a, b) => tested.indexOf(a) - tested.indexOf(b)).slice(0, MOST_CHOICES);
}

function whichOne(candidates: readonly Meaning[], context: Context): Question {
  const [likeliest] = candidates;
  return {
    ...asked(
      candidates.length === 1 && likeliest !== undefined
        ? `Do you mean ${sayMeaning(likeliest)}?`
        : "Which do you mean?",
      context,
    ),
    choices: candidates.map((meaning) => ({
      label: candidates.length === 1 ? "Yes" : sayMeaning(meaning),
      settle: { answers: { [MEANT]: meaning.intent } },
    })),
  };
}

function asked(text: string, { audience }: Context): Question {
  return {
    kind: "question",
    isMistake: false,
    title: "Your question",
    text,
    body: [],
    cautions: [],
    choices: [],
    typed: { option: "question", label: "In other words", example: "is nitrate going up" },
    audience,
  };
}

const EXAMPLES = [
  "is nitrate in the lagoon going up since I added the trigger",
  "how long until no3 hits 40",
  "what was alk in june",
  "when did I last change water",
  "did the algae harvest help",
  "how much salt for 60 gal at 1.025",
  "is 0.5 ammonia at ph 8.2 bad",
  "what is 1.026 in ppt",
  "log nitrate 20",
];

function help(context: Context): Reply {
  return {
    ...spoken(context),
    ok: true,
    title: "What you can ask",
    body: [
      "Sums of an aquarium and your own record, in plain words. For instance:",
      ...EXAMPLES.map((example) => `“${example}”`),
      "I say back how I understood it and what to type for the same. /help lists every command.",
    ],
    cautions: [
      {
        level: "note",
        text: "For sick animals ask a vet, for mains power a licensed electrician, for floors and glass an engineer.",
      },
    ],
  };
}

function notUnderstood(context: Context): Reply {
  return {
    ...spoken(context),
    ok: false,
    title: "I did not understand that",
    body: [
      "I answer sums of an aquarium and questions about your own record, no others. For instance:",
      ...EXAMPLES.slice(2, 7).map((example) => `“${example}”`),
      "/help lists every command.",
    ],
    cautions: [],
  };
}

/** Nothing of a record stands in these: asked aloud, they are answered aloud. */
function spoken({ audience, request }: Context): Pick<Reply, "kind" | "audience"> {
  return { kind: "reply", audience: request.isAloud === true ? "channel" : audience };
}
