import type { App, Told } from "../app.ts";
import { peopleFirst } from "../core/questions/people-first.ts";
import { findCommand } from "../kit/command.ts";
import type { Outcome, Question, Reply } from "../kit/reply.ts";
import { UserError } from "../kit/user-error.ts";
import type { ClubId, MemberId } from "../records/ids.ts";
import { isCommandLine } from "./command-line.ts";
import { type ParsedLine, parseLine } from "./parse-line.ts";
import { readFileFrom } from "./read-file.ts";

/** The terminal is one club of its own, and whoever sits at it looks after it. */
export const CONSOLE_CLUB = "console" as ClubId;

export type Said =
  | { readonly kind: "outcome"; readonly outcome: Outcome }
  | { readonly kind: "working"; readonly reply: Reply }
  | { readonly kind: "remark"; readonly text: string; readonly ok: boolean }
  | { readonly kind: "end" };

/** Whoever sits at the terminal under that name. */
export function consoleMember(name: string): MemberId {
  return `console:${name.toLowerCase()}` as MemberId;
}

/** One terminal's talk with the app: who is speaking, what was last said, what stands open. */
export class Conversation {
  readonly #app: App;
  #name: string;
  #last: Told | undefined;

  readonly #readFile: typeof readFileFrom;

  constructor(app: App, name: string, readFile = readFileFrom) {
    this.#app = app;
    this.#readFile = readFile;
    this.#name = name;
  }

  get name(): string {
    return this.#name;
  }

  get member(): MemberId {
    return consoleMember(this.#name);
  }

  get openQuestion(): Question | undefined {
    return this.#last?.outcome.kind === "question" ? this.#last.outcome : undefined;
  }

  /** Takes one typed line. Throws nothing a line could cause. */
  async take(line: string): Promise<Said> {
    const text = line.trim();
    try {
      if (text.startsWith("/")) return await this.#command(text);
      const word = text.toLowerCase();
      if (word === "quit" || word === "exit") return { kind: "end" };
      if (word === "working") return this.#working();
      const [, name] = /^as\s+([\p{L}\p{N}_.-]{1,32})$/u.exec(text) ?? [];
      if (name !== undefined) return this.#become(name);
      if (this.openQuestion !== undefined && this.#last !== undefined)
        return await this.#reply(this.#last, text);
      if (isCommandLine(text, this.#app.commands)) return await this.#command(`/${text}`);
      return await this.#ask(text);
    } catch (error) {
      if (error instanceof UserError) return { kind: "remark", ok: false, text: error.message };
      throw error;
    }
  }

  async #command(line: string): Promise<Said> {
    const parsed = this.#withFiles(parseLine(line, this.#app.commands));
    return this.#told(
      await this.#app.answer({
        member: this.member,
        club: CONSOLE_CLUB,
        isSteward: true,
        name: this.#name,
        ...parsed,
        answers: {},
      }),
    );
  }

  /** Where an option takes a file, what was typed is its path: the file is handed over in its place. */
  #withFiles(parsed: ParsedLine): ParsedLine {
    const options = findCommand(this.#app.commands, parsed.path)?.options ?? {};
    const given = Object.entries(parsed.options).map(([name, text]): readonly [string, string] => {
      if (options[name]?.kind !== "file" || text === "") return [name, text];
      const file = this.#readFile(text);
      return [name, this.#app.keepFile(this.member, file.name, file.content)];
    });
    return { ...parsed, options: Object.fromEntries(given) };
  }

  /** What begins like no command is a question in plain words. */
  async #ask(question: string): Promise<Said> {
    return this.#told(
      await this.#app.answer({
        member: this.member,
        club: CONSOLE_CLUB,
        isSteward: true,
        name: this.#name,
        path: "ask",
        options: { question },
        answers: {},
      }),
    );
  }

  async #reply(last: Told, text: string): Promise<Said> {
    const question = this.openQuestion;
    const choices = question?.choices ?? [];
    const byNumber = /^\d{1,2}$/.test(text) ? Number(text) - 1 : -1;
    const byLabel = choices.findIndex(({ label }) => label.toLowerCase() === text.toLowerCase());
    const index = choices[byNumber] === undefined ? byLabel : byNumber;
    if (index >= 0) return this.#told(await this.#app.choose(last.id, this.member, index));
    if (question?.typed === undefined && peopleFirst(text)?.certainty === "certain") return this.#ask(text);
    if (question?.typed === undefined)
      return {
        kind: "remark",
        ok: false,
        text: `Please type a number from 1 to ${choices.length}, or a new command.`,
      };
    return this.#told(await this.#app.fill(last.id, this.member, text));
  }

  #working(): Said {
    const outcome = this.#last?.outcome;
    return outcome?.kind === "reply" && outcome.working !== undefined
      ? { kind: "working", reply: outcome }
      : { kind: "remark", ok: false, text: "There is no computed answer yet whose working could be shown." };
  }

  #become(name: string): Said {
    this.#name = name;
    this.#last = undefined;
    return { kind: "remark", ok: true, text: `You are now ${name}.` };
  }

  #told(told: Told): Said {
    this.#last = told;
    return { kind: "outcome", outcome: told.outcome };
  }
}
