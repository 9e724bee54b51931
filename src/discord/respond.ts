import {
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  DiscordAPIError,
  type MessageContextMenuCommandInteraction,
  MessageFlags,
  type ModalSubmitInteraction,
  type StringSelectMenuInteraction,
} from "discord.js";
import type { Told } from "../app.ts";
import type { Picture } from "../kit/chart.ts";
import type { Audience } from "../kit/reply.ts";
import { type Message, renderOutcome } from "./render.ts";

export type Answerable =
  | ChatInputCommandInteraction
  | ButtonInteraction
  | StringSelectMenuInteraction
  | ModalSubmitInteraction
  | MessageContextMenuCommandInteraction;

/** What was said, with its chart drawn. */
export interface Shown extends Told {
  readonly picture?: Picture | undefined;
  /** What is shown in its place: the card of a help case, or a word about it. */
  readonly instead?: Message;
  /** Told where the message stands, once it does. */
  readonly placed?: (place: string, messageId: string) => void;
}

/** The platform wants a first sign within 3 s of the event; half of that is kept for the way there. */
const FIRST_SIGN_MS = 1_500;

/** Answers when the work is done, and says "at work" first when that takes long. */
export async function respond(
  interaction: Answerable,
  work: Promise<Shown>,
  expected: Audience,
  isSlow: boolean,
): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<"late">((resolve) => {
    timer = setTimeout(() => resolve("late"), isSlow ? 0 : FIRST_SIGN_MS);
  });
  const first = await Promise.race([work, late]);
  clearTimeout(timer);
  if (first !== "late") {
    const isPrivate = first.outcome.audience === "asker";
    await interaction.reply({
      ...(first.instead ?? renderOutcome(first.outcome, first.id, isPrivate, first.picture)),
      ...(isPrivate ? { flags: MessageFlags.Ephemeral } : {}),
    });
    return standing(interaction, first);
  }
  await interaction.deferReply(expected === "asker" ? { flags: MessageFlags.Ephemeral } : {});
  const told = await work;
  const isPrivate = told.outcome.audience === "asker";
  const message =
    told.instead ?? renderOutcome(told.outcome, told.id, isPrivate || expected === "asker", told.picture);
  if (told.placed !== undefined && expected === "asker") {
    // What was announced to the asker alone has to stand where all can see it.
    await interaction.deleteReply();
    const sent = await interaction.followUp(message);
    told.placed(sent.channelId, sent.id);
    return;
  }
  if (isPrivate && expected === "channel") {
    // What was announced to all turned out to be for the asker alone.
    await interaction.deleteReply();
    await interaction.followUp({ ...message, flags: MessageFlags.Ephemeral });
    return;
  }
  await interaction.editReply(message);
  await standing(interaction, told);
}

async function standing(interaction: Answerable, { placed }: Shown): Promise<void> {
  if (placed === undefined) return;
  const { channelId, id } = await interaction.fetchReply();
  placed(channelId, id);
}

export async function tell(interaction: Answerable, message: Message, isPrivate: boolean): Promise<void> {
  await interaction.reply({ ...message, ...(isPrivate ? { flags: MessageFlags.Ephemeral } : {}) });
}

/** The event came too late, or was already answered: nothing more can be said there. */
export function isPastAnswering(error: unknown): boolean {
  return error instanceof DiscordAPIError && [10062, 40060, 50027, 10008].includes(Number(error.code));
}
