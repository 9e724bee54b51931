import {
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandOption,
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
} from "discord.js";
import { SHOW } from "../kit/audience.ts";
import { type Command, type CommandEntry, isFamily } from "../kit/command.ts";
import type { AnyOption } from "../kit/option.ts";

/** A choice list longer than this is offered while typing instead. */
const MOST_CHOICES = 25;
/** Longest text asked for; the kit's own gate says the same. */
const LONGEST_TEXT = 2000;

/** The commands as the platform wants them told: usable in servers, in direct messages, and by user install. */
export function registrationOf(
  commands: readonly CommandEntry[],
): readonly RESTPostAPIChatInputApplicationCommandsJSONBody[] {
  return commands.map((entry) => ({
    type: ApplicationCommandType.ChatInput,
    name: entry.name,
    description: entry.summary,
    integration_types: [ApplicationIntegrationType.GuildInstall, ApplicationIntegrationType.UserInstall],
    contexts: [
      InteractionContextType.Guild,
      InteractionContextType.BotDM,
      InteractionContextType.PrivateChannel,
    ],
    options: isFamily(entry)
      ? entry.subcommands.map(
          (sub): APIApplicationCommandOption => ({
            type: ApplicationCommandOptionType.Subcommand,
            name: sub.name,
            description: sub.summary,
            options: optionsOf(sub),
          }),
        )
      : optionsOf(entry),
  }));
}

/** Nothing is marked as required: what is missing is asked for, one thing at a time. */
function optionsOf(command: Command): APIApplicationCommandBasicOption[] {
  return [
    ...Object.entries(command.options).map(([name, option]) => optionOf(name, option)),
    {
      type: ApplicationCommandOptionType.String,
      name: SHOW.name,
      description: SHOW.description,
      choices: SHOW.choices.map((choice) => ({ name: choice, value: choice })),
    },
  ];
}

function optionOf(name: string, option: AnyOption): APIApplicationCommandBasicOption {
  if (option.kind === "file")
    return { type: ApplicationCommandOptionType.Attachment, name, description: option.description };
  const base = { type: ApplicationCommandOptionType.String as const, name, description: option.description };
  const { choices } = option;
  if (choices !== undefined && choices.length <= MOST_CHOICES)
    return { ...base, choices: choices.map((choice) => ({ name: choice, value: choice })) };
  return {
    ...base,
    max_length: LONGEST_TEXT,
    ...(option.suggest === undefined ? {} : { autocomplete: true }),
  };
}
