import {
  ApplicationCommandOptionType,
  type AutocompleteInteraction,
  type ChatInputCommandInteraction,
  type Interaction,
  PermissionFlagsBits,
} from "discord.js";
import { audienceOf, SHOW } from "../kit/audience.ts";
import type { Request } from "../kit/request.ts";
import { cleaned } from "../kit/text.ts";
import type { ClubId, MemberId } from "../records/ids.ts";

export function memberOf(interaction: Interaction): MemberId {
  return `discord:${interaction.user.id}` as MemberId;
}

/** A slash command as a request: every option as the text that was typed. */
export function requestOf(interaction: ChatInputCommandInteraction | AutocompleteInteraction): Request {
  const [first] = interaction.options.data;
  const isSub = first?.type === ApplicationCommandOptionType.Subcommand;
  const given = isSub ? (first.options ?? []) : interaction.options.data;
  const texts = given.flatMap(({ name, value }) =>
    value === undefined ? [] : [[name, String(value)] as const],
  );
  const audience = audienceOf(texts.find(([name]) => name === SHOW.name)?.[1]);
  return {
    member: memberOf(interaction),
    ...(interaction.guildId === null ? {} : { club: `discord:${interaction.guildId}` as ClubId }),
    ...(interaction.guildId === null || interaction.channelId === null
      ? {}
      : { place: interaction.channelId }),
    isSteward: interaction.memberPermissions?.has(PermissionFlagsBits.ManageGuild) ?? false,
    name: cleaned(interaction.user.displayName).slice(0, 40),
    path: isSub ? `${interaction.commandName} ${first.name}` : interaction.commandName,
    options: Object.fromEntries(texts.filter(([name]) => name !== SHOW.name)),
    answers: {},
    ...(audience === undefined ? {} : { audience }),
  };
}
