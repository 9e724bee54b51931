import type { App } from "../app.ts";
import { findCommand, isFamily } from "../kit/command.ts";
import type { MemberId } from "../records/ids.ts";
import { CONSOLE_CLUB } from "./conversation.ts";

/** What Tab offers: whole lines that go on from what is typed, and the part they replace. */
export function complete(line: string, app: App, member: MemberId): readonly [string[], string] {
  if (!line.startsWith("/")) return [[], line];
  const words = line.slice(1).split(/\s+/);
  const [name = "", sub = ""] = words;
  const entry = app.commands.find((candidate) => candidate.name === name);
  if (words.length === 1 || entry === undefined)
    return [app.commands.map((each) => `/${each.name} `).filter((each) => each.startsWith(line)), line];
  if (isFamily(entry) && words.length === 2)
    return [
      entry.subcommands.map((each) => `/${name} ${each.name} `).filter((each) => each.startsWith(line)),
      line,
    ];
  const path = isFamily(entry) ? `${name} ${sub}` : name;
  const command = findCommand(app.commands, path);
  if (command === undefined) return [[], line];
  const names = Object.keys(command.options);
  const start = line.lastIndexOf(" ") + 1;
  const typedNames = names.filter((option) => !line.slice(0, start).includes(` ${option}:`));
  const optionNames = typedNames
    .map((option) => `${option}:`)
    .filter((option) => option.startsWith(line.slice(start)));
  const value = new RegExp(`(?:^|\\s)(${names.join("|")}):([^:]*)$`).exec(line);
  const [, option, typed = ""] = value ?? [];
  if (option !== undefined) {
    const request = { member, club: CONSOLE_CLUB, isSteward: true, path, options: {}, answers: {} };
    const texts = app.suggest(request, option, typed);
    if (texts.length > 0) return [texts.map((text) => `${text} `), typed];
  }
  return [optionNames, line.slice(start)];
}
