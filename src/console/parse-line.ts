import { audienceOf, SHOW } from "../kit/audience.ts";
import { allCommands, type Command, type CommandEntry, isFamily } from "../kit/command.ts";
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
  const known = new Set(allCommands(commands).flatMap(({ command }) => Object.keys(command.options)));
  if (!isFamily(entry)) return { path: entry.name, ...parseOptions(body, entry, entry.name, known) };
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
  const path = `${entry.name} ${sub.name}`;
  return { path, ...parseOptions(body, sub, path, known) };
}

function parseOptions(
  body: string,
  command: Command,
  path: string,
  known: ReadonlySet<string>,
): Pick<ParsedLine, "options" | "audience"> {
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
      const isLabel = first !== "" && label !== undefined && !SPOKEN.test(path);
      const opensLine = leading.length === 0 && words === leading;
      if (isLabel && (opensLine || known.has(label.toLowerCase())))
        throw new UserError(
          "bad-input",
          `There is no ${quoted(`${label}:`)} here. /${path} takes ${listed(own.map((each) => `${each}:`))}.`,
        );
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
        `${quoted(leading.join(" "))} and ${quoted(`${main}:`)} both stand for ${main}:. Give it once.`,
      );
    texts[main] = leading;
  }
  const options = Object.fromEntries(
    own.flatMap((name) => (texts[name] === undefined ? [] : [[name, texts[name].join(" ")] as const])),
  );
  const audience = audienceOf(texts[SHOW.name]?.join(" "));
  return { options, ...(audience === undefined ? {} : { audience }) };
}

/** Commands told in a sentence, where a word with a colon is the member's own: "nitrate:20". */
const SPOKEN = /^(?:ask|log|correct|import|convert|plan|regimen|group)\b/;

function refuseMisspelt(label: string | undefined, names: readonly string[]): void {
  if (label === undefined || label.length < 3) return;
  const close = nearest(label, names);
  if (close !== undefined)
    throw new UserError("bad-input", `There is no ${quoted(`${label}:`)} here. Did you mean ${close}:?`);
}
