import { audienceOf, SHOW } from "../kit/audience.ts";
import { type Command, type CommandEntry, isFamily } from "../kit/command.ts";
import { nearest } from "../kit/nearest.ts";
import type { Audience } from "../kit/reply.ts";
import { listed, quoted } from "../kit/text.ts";
import { UserError } from "../kit/user-error.ts";

/** A typed line taken apart: which command, and the text of each option. */
export interface ParsedLine {
  readonly path: string;
  readonly options: Readonly<Record<string, string>>;
  /** Who shall see the answer, when the line says. */
  readonly audience?: Audience;
}

/**
 * `/salt mix volume:200 L salinity:35 ppt` → path and option texts. A value runs to the next option's
 * name; words before the first option name belong to the command's first option.
 * Throws: UserError for an option named twice or misspelt.
 */
export function parseLine(line: string, commands: readonly CommandEntry[]): ParsedLine {
  const text = line.trim().replace(/^\//, "");
  const [name = "", ...rest] = text.split(/\s+/);
  const entry = commands.find((candidate) => candidate.name === name.toLowerCase());
  if (entry === undefined) return { path: name.toLowerCase(), options: {} };
  let body = text.slice(name.length).trim();
  if (!isFamily(entry)) return { path: entry.name, ...parseOptions(body, entry) };
  const sub = entry.subcommands.find((candidate) => candidate.name === rest[0]?.toLowerCase());
  if (sub === undefined) {
    if (rest[0] === undefined) return { path: entry.name, options: {} };
    const names = entry.subcommands.map((candidate) => candidate.name);
    const close = nearest(rest[0], names);
    throw new UserError(
      "bad-input",
      `/${entry.name} has no ${quoted(rest[0])}. ${close === undefined ? `It has ${listed(names)}.` : `Did you mean /${entry.name} ${close}?`}`,
    );
  }
  body = body.slice(rest[0]?.length ?? 0).trim();
  return { path: `${entry.name} ${sub.name}`, ...parseOptions(body, sub) };
}

function parseOptions(body: string, command: Command): Pick<ParsedLine, "options" | "audience"> {
  const own = Object.keys(command.options);
  const names = [...own, SHOW.name];
  const texts: Record<string, string[]> = {};
  const leading: string[] = [];
  let words = leading;
  for (const word of body.split(/\s+/).filter(Boolean)) {
    const [, label, first = ""] = /^([A-Za-z][A-Za-z-]*):(.*)$/s.exec(word) ?? [];
    const name = names.find((candidate) => candidate === label?.toLowerCase());
    if (name === undefined) {
      refuseMisspelt(label, names);
      words.push(word);
      continue;
    }
    if (Object.hasOwn(texts, name))
      throw new UserError("bad-input", `${quoted(name)} stands there twice. Give it once.`);
    words = first === "" ? [] : [first];
    texts[name] = words;
  }
  const [main] = own;
  if (leading.length > 0) {
    if (main === undefined)
      throw new UserError(
        "bad-input",
        `/${command.name} takes nothing beside its name; ${quoted(body)} was not used.`,
      );
    if (Object.hasOwn(texts, main))
      throw new UserError(
        "bad-input",
        `${quoted(leading.join(" "))} and ${quoted(`${main}:`)} both give the ${main}. Give it once.`,
      );
    texts[main] = leading;
  }
  const options = Object.fromEntries(
    own.flatMap((name) => (texts[name] === undefined ? [] : [[name, texts[name].join(" ")] as const])),
  );
  const audience = audienceOf(texts[SHOW.name]?.join(" "));
  return { options, ...(audience === undefined ? {} : { audience }) };
}

function refuseMisspelt(label: string | undefined, names: readonly string[]): void {
  if (label === undefined || label.length < 3) return;
  const close = nearest(label, names);
  if (close !== undefined)
    throw new UserError("bad-input", `There is no ${quoted(`${label}:`)} here. Did you mean ${close}:?`);
}
