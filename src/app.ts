import type { Read } from "./core/quantity/read.ts";
import { peopleFirst } from "./core/questions/people-first.ts";
import { type Command, type CommandEntry, findCommand } from "./kit/command.ts";
import type { Context, ReadContext } from "./kit/context.ts";
import type { Exchange, ExchangeRecords } from "./kit/exchange.ts";
import { uploadText } from "./kit/file-option.ts";
import { nearest } from "./kit/nearest.ts";
import type { AnyOption } from "./kit/option.ts";
import type { Forward, Outcome, Question, Reply, Settled } from "./kit/reply.ts";
import type { Request } from "./kit/request.ts";
import { safetyCard } from "./kit/safety-card.ts";
import { sharedLine } from "./kit/tank-option.ts";
import { cleaned, listed, quoted } from "./kit/text.ts";
import { UserError } from "./kit/user-error.ts";
import type { CardPlace, FollowUp } from "./records/help.ts";
import type { MemberId } from "./records/ids.ts";
import type { Records } from "./records/index.ts";
import type { Tank } from "./records/tank.ts";
import { type Raise, takeRaises } from "./reminders/help-raises.ts";

/** What a front hands over and gets back. */
export interface Told {
  /** Names the exchange for buttons pressed later. */
  readonly id: string;
  readonly outcome: Outcome;
}

export interface AppParts {
  readonly commands: readonly CommandEntry[];
  readonly records: Records;
  readonly exchanges: ExchangeRecords;
  /** Milliseconds since 1970, UTC. */
  readonly clock: () => number;
  /** A fresh unguessable id, at most 40 characters. */
  readonly newId: () => string;
  /** Told of defects, with the reference the member was given. */
  readonly report: (reference: string, error: unknown) => void;
}

/** The conversation, whatever carries it: request → command → outcome. The one error boundary. */
export interface App {
  readonly commands: readonly CommandEntry[];
  answer(request: Request): Promise<Told>;
  /** Says why a request cannot even be read: an attached file that did not arrive, say. */
  decline(request: Request, sentence: string): Told;
  /** Takes choice number `index` of a question asked earlier. */
  choose(exchangeId: string, member: MemberId, index: number): Promise<Told>;
  /** Answers a question asked earlier in the member's own words. */
  fill(exchangeId: string, member: MemberId, text: string): Promise<Told>;
  /** An earlier exchange: the asker's own, or one that stands in the channel. */
  recall(exchangeId: string, member: MemberId): Exchange | undefined;
  /** The member's private answer, from now on open to the channel; undefined when not theirs or gone. */
  publish(exchangeId: string, member: MemberId): Exchange | undefined;
  /** Where a front has put a help case's card. */
  placed(caseNumber: number, card: CardPlace): void;
  /** Somebody wrote in a place where a help case's card may stand. */
  heard(place: string, member: MemberId): void;
  /** Help cases to tell a helper on duty of; each is given out once. */
  raises(): readonly Raise[];
  /** Steps of help cases to look at again now; each is given out once. */
  followUps(): readonly FollowUp[];
  /** Keeps a file handed over for an option; the text returned stands for it in a request. */
  keepFile(member: MemberId, name: string, content: string): string;
  /** Whole texts that would complete an option being typed; at most 25. */
  suggest(request: Request, option: string, typed: string): readonly string[];
}

export function createApp(parts: AppParts): App {
  const { commands, records, exchanges, clock, newId, report } = parts;

  async function answer(request: Request): Promise<Told> {
    const hurt = somebodyHurt(request);
    if (hurt !== undefined) return keep(request, hurt);
    let asked = request;
    const outcome = await guarded(async () => {
      const first = await run(request);
      if (first.kind !== "forward") return first;
      asked = { ...request, path: first.path, options: first.options, answers: {} };
      return forwarded(first, await run(asked));
    });
    return keep(asked, outcome);
  }

  /** Somebody hurt comes before any command, whatever option the words stand in. */
  function somebodyHurt(request: Request): Reply | undefined {
    const found = Object.values(request.options)
      .filter((text) => text.length <= LONGEST_SENTENCE)
      .map(peopleFirst);
    const certain = found.find((each) => each?.certainty === "certain");
    if (certain === undefined) return undefined;
    const audience = request.audience ?? (request.isAloud === true ? "channel" : "asker");
    try {
      return safetyCard(certain.harm, audience, records.tanks.own(request.member));
    } catch (error) {
      report("safety", error);
      return safetyCard(certain.harm, audience, []);
    }
  }

  async function guarded(work: () => Promise<Outcome>): Promise<Outcome> {
    try {
      return await work();
    } catch (error) {
      if (error instanceof UserError) return refusal("Not done", error.message);
      const reference = newId().slice(0, 8);
      report(reference, error);
      return refusal(
        "That went wrong here",
        `Sorry: this is a fault of the bot, not of what you typed, and nothing was changed. Its reference is ${reference}.`,
      );
    }
  }

  function keep(request: Request, outcome: Outcome): Told {
    const id = newId();
    const told = { id, outcome };
    if (outcome.kind === "reply" && outcome.leavesNoTrace === true) return told;
    try {
      exchanges.keep({ id, request, outcome, at: iso(clock()) }, outcome.audience === "channel");
    } catch (error) {
      report(id.slice(0, 8), error);
    }
    return told;
  }

  async function run(request: Request): Promise<Outcome | Forward> {
    const command = findCommand(commands, request.path);
    if (command === undefined) return unknownCommand(request.path);
    const now = clock();
    const member = records.members.member(request.member, request.club);
    const name = cleaned(request.name ?? "").slice(0, LONGEST_NAME);
    if (name !== "" && name !== member.name) records.members.setName(request.member, name);
    const reading: ReadContext = { habits: member.habits, now, member, request, records };
    const audience = request.audience ?? command.audience;
    const read = readOptions(command, request, reading);
    if (read.kind === "question") return { ...read, audience };
    const context: Context = { audience, now, member, request, records, commands, readAs: read.readAs };
    return withOwners(await command.run(read.input, context), read.input);
  }

  function settle(exchange: Exchange, settled: Settled): Request {
    const { request } = exchange;
    return {
      ...request,
      options: { ...request.options, ...settled.options },
      answers: { ...request.answers, ...settled.answers },
    };
  }

  function openQuestion(
    exchangeId: string,
    member: MemberId,
  ): { exchange: Exchange; question: Question } | undefined {
    const exchange = exchanges.find(exchangeId, member);
    return exchange?.outcome.kind === "question" ? { exchange, question: exchange.outcome } : undefined;
  }

  async function tooOld(member: MemberId): Promise<Told> {
    return keep(
      { member, isSteward: false, path: "", options: {}, answers: {} },
      refusal(
        "That question has gone",
        "It was asked too long ago, or of somebody else. Type the command again and it will be asked anew.",
      ),
    );
  }

  return {
    commands,
    answer,
    decline: (request, sentence) => keep(request, refusal("Not done", sentence)),
    async choose(exchangeId, member, index) {
      const open = openQuestion(exchangeId, member);
      const choice = open?.question.choices[index];
      if (open === undefined || choice === undefined) return tooOld(member);
      if (choice.remember !== undefined) records.members.remember(member, choice.remember);
      return answer(settle(open.exchange, choice.settle));
    },
    async fill(exchangeId, member, text) {
      const open = openQuestion(exchangeId, member);
      if (open?.question.typed === undefined) return tooOld(member);
      return answer(settle(open.exchange, { options: { [open.question.typed.option]: text } }));
    },
    recall: (exchangeId, member) => exchanges.find(exchangeId, member) ?? exchanges.findPublic(exchangeId),
    publish: (exchangeId, member) =>
      exchanges.publish(exchangeId, member) ? exchanges.find(exchangeId, member) : undefined,
    placed: (caseNumber, card) => records.help.setCard(caseNumber, card),
    heard(place, member) {
      try {
        records.help.heard(place, member, iso(clock()));
      } catch (error) {
        report("heard", error);
      }
    },
    raises: () => takeRaises(records.help, clock()),
    followUps: () => records.help.takeFollowUps(iso(clock())),
    keepFile(member, name, content) {
      const id = newId();
      records.uploads.keep(member, { id, name, content }, iso(clock()));
      return uploadText(id);
    },
    suggest(request, name, typed) {
      try {
        const option = findCommand(commands, request.path)?.options[name];
        if (option?.suggest === undefined) return [];
        const member = records.members.member(request.member, request.club);
        return option
          .suggest(typed, { habits: member.habits, now: clock(), member, request, records })
          .slice(0, 25);
      } catch (error) {
        report("suggest", error);
        return [];
      }
    },
  };

  function unknownCommand(path: string): Reply {
    const names = commands.map((entry) => entry.name);
    const [typed = ""] = path.split(" ");
    const family = commands.find((entry) => entry.name === typed);
    if (family !== undefined && "subcommands" in family) {
      const subs = family.subcommands.map((sub) => `/${family.name} ${sub.name}`);
      return refusal(`/${family.name} does several things`, `Say which: ${listed(subs, "or")}.`);
    }
    const close = nearest(typed, names);
    return refusal(
      "No such command",
      `${quoted(`/${path}`)} is not a command here. ${close === undefined ? "" : `Did you mean /${close}? `}/help lists them all.`,
    );
  }
}

type ReadOptions =
  | {
      readonly kind: "input";
      readonly input: Readonly<Record<string, unknown>>;
      readonly readAs: Context["readAs"];
    }
  | Question;

/** Reads every option; the first thing unreadable, unclear or missing becomes one question. */
function readOptions(command: Command, request: Request, context: ReadContext): ReadOptions {
  const unknown = Object.keys(request.options).find((name) => !Object.hasOwn(command.options, name));
  if (unknown !== undefined) {
    const names = Object.keys(command.options);
    throw new UserError(
      "bad-input",
      `/${request.path} has no ${quoted(unknown)}. ${names.length === 0 ? "It takes nothing beside its name." : `It takes ${listed(names)}.`}`,
    );
  }
  const input: Record<string, unknown> = {};
  const readAs = new Map<string, { typed: string; readAs: string }>();
  const questions: Question[] = [];
  for (const [name, option] of Object.entries(command.options)) {
    const typed = request.options[name];
    if (typed === undefined) {
      if (option.isNeeded) questions.push(missing(command, name, option));
      continue;
    }
    const read = readOne(name, option, typed, context);
    if (read.kind === "read") {
      input[name] = read.value;
      readAs.set(name, { typed, readAs: read.readAs });
    } else {
      questions.push(asked(command, name, option, read));
    }
  }
  const question = questions.find((candidate) => candidate.isMistake) ?? questions[0];
  if (question === undefined) return { kind: "input", input, readAs };
  const understood = [...readAs].map(([name, { readAs: text }]) => `${name}: ${text}`);
  return understood.length === 0
    ? question
    : { ...question, body: [`Read so far: ${understood.join("; ")}.`] };
}

function readOne(name: string, option: AnyOption, typed: string, context: ReadContext): Read<unknown> {
  const gate = option.schema.safeParse(typed);
  if (gate.success) return option.read(gate.data, context);
  const reason = gate.error.issues[0]?.message ?? "not readable";
  return {
    kind: "unreadable",
    message: `${quoted(typed)} for ${name}: ${reason}. Try ${quoted(option.example)}.`,
  };
}

function missing(command: Command, name: string, option: AnyOption): Question {
  return {
    kind: "question",
    isMistake: false,
    title: command.summary,
    text: `Still needed is ${quoted(name)}: ${option.description.slice(0, 1).toLowerCase()}${option.description.slice(1)}.`,
    body: [],
    cautions: [],
    choices: (option.choices ?? []).map((text) => ({ label: text, settle: { options: { [name]: text } } })),
    typed: { option: name, label: name, example: option.example },
    audience: "asker",
  };
}

function asked(
  command: Command,
  name: string,
  option: AnyOption,
  read: Exclude<Read<unknown>, { kind: "read" }>,
): Question {
  const isMistake = read.kind === "unreadable";
  return {
    kind: "question",
    isMistake,
    title: command.summary,
    text: read.kind === "unreadable" ? read.message : read.question,
    body: [],
    cautions: [],
    choices:
      read.kind === "unreadable"
        ? []
        : read.choices.map(({ label, text, remember }) => ({
            label,
            settle: { options: { [name]: text } },
            ...(remember === undefined ? {} : { remember }),
          })),
    typed: { option: name, label: name, example: option.example },
    audience: "asker",
  };
}

/** An answer that rests on somebody else's tank says whose it is, whichever command gave it. */
function withOwners(outcome: Outcome | Forward, input: Readonly<Record<string, unknown>>): Outcome | Forward {
  const lines = Object.values(input).flatMap((value) => (isTank(value) ? (sharedLine(value) ?? []) : []));
  return lines.length === 0 || outcome.kind !== "reply"
    ? outcome
    : { ...outcome, body: [...outcome.body, ...lines] };
}

function isTank(value: unknown): value is Tank {
  return typeof value === "object" && value !== null && "containersTyped" in value;
}

/** Longest name of a member that is kept. */
const LONGEST_NAME = 80;

/** A longer text is a file, not somebody speaking. */
const LONGEST_SENTENCE = 1_000;

/** The answer with how it was understood on top. Throws: Error when it hands over once more. */
function forwarded({ understood, path }: Forward, outcome: Outcome | Forward): Outcome {
  if (outcome.kind === "forward") throw new Error(`/${path} was handed a question and handed it on`);
  return { ...outcome, body: [...understood, ...outcome.body] };
}

function refusal(title: string, sentence: string): Reply {
  return { kind: "reply", ok: false, title, body: [sentence], cautions: [], audience: "asker" };
}

function iso(milliseconds: number): string {
  return new Date(milliseconds).toISOString();
}
