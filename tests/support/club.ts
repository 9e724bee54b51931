import { commands } from "../../commands/index.ts";
import { type App, createApp, type Told } from "../../src/app.ts";
import { parseLine } from "../../src/console/parse-line.ts";
import { allCommands } from "../../src/kit/command.ts";
import type { Outcome, Question, Reply } from "../../src/kit/reply.ts";
import type { ClubId, MemberId } from "../../src/records/ids.ts";
import { openStore, type Store } from "../../src/sqlite/index.ts";

/** The real app on a database in memory (or a file), with a clock the test sets. */
export interface Club {
  readonly app: App;
  readonly store: Store;
  readonly defects: unknown[];
  now: number;
  /** Types a line as a member would in the terminal; a defect fails the test. */
  say(line: string, as?: string): Promise<Outcome>;
  /** The same, where a plain reply is expected. */
  ask(line: string, as?: string): Promise<Reply>;
  /** Takes a choice of the last question, by label or number. */
  pick(choice: string | number, as?: string): Promise<Outcome>;
  /** Answers the last question in words. */
  fill(text: string, as?: string): Promise<Outcome>;
  readonly last: Told | undefined;
}

export const HOME_CLUB = "test:club" as ClubId;

/** Noon on a Wednesday, UTC. */
export const START = Date.UTC(2026, 2, 4, 12, 0, 0);

export function memberId(name: string): MemberId {
  return `test:${name}` as MemberId;
}

export function openClub(file = ":memory:", start = START): Club {
  const store = openStore(file, new Date(start).toISOString());
  const defects: unknown[] = [];
  let ids = 0;
  const told = new Map<string, Told>();
  const app = createApp({
    commands,
    records: store.records,
    exchanges: store.exchanges,
    clock: () => club.now,
    newId: () => `id${ids++}`,
    report: (_, error) => defects.push(error),
  });
  const club: Club = {
    app,
    store,
    defects,
    now: start,
    async say(line, as = "ines") {
      return keep(as, await app.answer({ ...asked(as), ...parseLine(line, commands) }));
    },
    async ask(line, as) {
      const outcome = await club.say(line, as);
      if (outcome.kind !== "reply") throw new Error(`expected a reply, was asked: ${outcome.text}`);
      return outcome;
    },
    async pick(choice, as = "ines") {
      const { id, question } = open(as);
      const index =
        typeof choice === "number"
          ? choice - 1
          : question.choices.findIndex(({ label }) => label.includes(choice));
      if (question.choices[index] === undefined)
        throw new Error(`no choice ${choice} in: ${JSON.stringify(question.choices)}`);
      return keep(as, await app.choose(id, memberId(as), index));
    },
    async fill(text, as = "ines") {
      return keep(as, await app.fill(open(as).id, memberId(as), text));
    },
    get last() {
      return told.get("ines");
    },
  };
  function keep(as: string, answer: Told): Outcome {
    told.set(as, answer);
    if (defects.length > 0)
      throw new Error(`the bot failed on that: ${String(defects[0])}`, { cause: defects[0] });
    return answer.outcome;
  }
  function open(as: string): { readonly id: string; readonly question: Question } {
    const answer = told.get(as);
    if (answer?.outcome.kind !== "question") throw new Error(`nothing was asked of ${as}`);
    return { id: answer.id, question: answer.outcome };
  }
  return club;
}

function asked(as: string) {
  return { member: memberId(as), club: HOME_CLUB, isSteward: false, answers: {} };
}

/** All a reply says, as one text. */
export function textOf(outcome: Outcome): string {
  return outcome.kind === "reply"
    ? [
        outcome.title,
        outcome.headline ?? "",
        ...outcome.body,
        ...(outcome.table?.rows.map((row) => row.join(" | ")) ?? []),
        ...outcome.cautions.map(({ text }) => text),
        outcome.basis ?? "",
      ].join("\n")
    : [
        outcome.title,
        outcome.text,
        ...outcome.body,
        ...outcome.choices.map(({ label }) => label),
        ...outcome.cautions.map(({ text }) => text),
      ].join("\n");
}

export const allPaths = allCommands(commands);
