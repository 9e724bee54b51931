import { type Command, type CommandEntry, isFamily } from "../kit/command.ts";
import { nearest } from "../kit/nearest.ts";
import { listed, quoted } from "../kit/text.ts";
import { UserError } from "../kit/user-error.ts";

/** A typed line taken apart: which command, and the text of each option. */
export interface ParsedLine {
  readonly path: string;
  readonly options: Readonly<Record<string, string>>;
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
  if (!isFamily(entry)) return { path: entry.name, options: parseOptions(body, entry) };
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
  return { path: `${entry.name} ${sub.name}`, options: parseOptions(body, sub) };
}

function parseOptions(body: string, command: Command): Readonly<Record<string, string>> {
  const names = Object.keys(command.options);
  const options: Record<string, string> = {};
  let current = names[0];
  let isLeading = true;
  let value: string[] = [];
  const close = (): void => {
    const text = value.join(" ").trim();
    if (current !== undefined && (text !== "" || !isLeading)) options[current] = text;
    value = [];
  };
  for (const word of body.split(/\s+/)) {
    const [, label, first = ""] = /^([A-Za-z][A-Za-z-]*):(.*)$/s.exec(word) ?? [];
    const name = names.find((candidate) => candidate === label?.toLowerCase());
    if (name === undefined) {
      refuseMisspelt(label, names);
      value.push(word);
      continue;
    }
    close();
    if (Object.hasOwn(options, name)) throw new UserError("bad-input", `${quoted(name)} stands there twice. Give it once.`);
    current = name;
    isLeading = false;
    value.push(first);
  }
  close();
  if (names.length === 0 && body !== "")
    throw new UserError("bad-input", `/${command.name} takes nothing beside its name; ${quoted(body)} was not used.`);
  return options;
}

function refuseMisspelt(label: string | undefined, names: readonly string[]): void {
  if (label === undefined || label.length < 3) return;
  const close = nearest(label, names);
  if (close !== undefined) throw new UserError("bad-input", `There is no ${quoted(`${label}:`)} here. Did you mean ${close}:?`);
}
