import type { Context } from "./context.ts";
import type { AnyOption, InputOf } from "./option.ts";
import type { Forward, Outcome } from "./reply.ts";

export interface CommandSpec<Options extends Readonly<Record<string, AnyOption>>> {
  readonly name: string;
  /** At most 100 characters. */
  readonly summary: string;
  readonly options: Options;
  /** Lines a member could type, for help and for the tests: `/salt mix volume:200 L salinity:35 ppt`. */
  readonly examples: readonly string[];
  /** Answers with nothing private in them may start in the channel; the default is the asker alone. */
  readonly audience?: "asker" | "channel";
  /** May take longer than a second: a front says at once that it is at work. */
  readonly isSlow?: boolean;
  run(input: InputOf<Options>, context: Context): Outcome | Forward | Promise<Outcome | Forward>;
}

/** A command ready to be listed, with its option types folded away. */
export interface Command {
  readonly name: string;
  readonly summary: string;
  readonly options: Readonly<Record<string, AnyOption>>;
  readonly examples: readonly string[];
  readonly audience: "asker" | "channel";
  readonly isSlow: boolean;
  run(
    input: Readonly<Record<string, unknown>>,
    context: Context,
  ): Outcome | Forward | Promise<Outcome | Forward>;
}

export interface CommandFamily {
  readonly name: string;
  readonly summary: string;
  readonly subcommands: readonly Command[];
}

export type CommandEntry = Command | CommandFamily;

export function defineCommand<const Options extends Readonly<Record<string, AnyOption>>>(
  spec: CommandSpec<Options>,
): Command {
  return {
    name: spec.name,
    summary: spec.summary,
    options: spec.options,
    examples: spec.examples,
    audience: spec.audience ?? "asker",
    isSlow: spec.isSlow ?? false,
    run: (input, context) => spec.run(input as InputOf<Options>, context),
  };
}

export function defineFamily(family: CommandFamily): CommandFamily {
  return family;
}

export function isFamily(entry: CommandEntry): entry is CommandFamily {
  return "subcommands" in entry;
}

/** The command a path names: "log", or "salt mix". */
export function findCommand(entries: readonly CommandEntry[], path: string): Command | undefined {
  const [name, sub] = path.split(" ");
  const entry = entries.find((candidate) => candidate.name === name);
  if (entry === undefined) return undefined;
  if (!isFamily(entry)) return sub === undefined ? entry : undefined;
  return entry.subcommands.find((candidate) => candidate.name === sub);
}

/** Every runnable path with its command, in order. */
export function allCommands(
  entries: readonly CommandEntry[],
): readonly { readonly path: string; readonly command: Command }[] {
  return entries.flatMap((entry) =>
    isFamily(entry)
      ? entry.subcommands.map((command) => ({ path: `${entry.name} ${command.name}`, command }))
      : [{ path: entry.name, command: entry }],
  );
}
