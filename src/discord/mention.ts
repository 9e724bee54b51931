import { ActionRowBuilder, ButtonBuilder, ButtonStyle, type Message } from "discord.js";
import type { Told } from "../app.ts";
import type { Request } from "../kit/request.ts";
import { cleaned } from "../kit/text.ts";
import type { ClubId, MemberId } from "../records/ids.ts";
import { buttonId } from "./button-id.ts";
import { type Message as Rendered, renderOutcome, renderRemark } from "./render.ts";
import type { Shown } from "./respond.ts";

const LONGEST_NAME = 40;

/**
 * A message to the bot as a request: in a direct conversation, or where the bot is named. Undefined for
 * everything else: bots, and messages in which it is only among everyone.
 */
export function questionOf(message: Message, botId: string): Request | undefined {
  const { author, content, guildId } = message;
  if (author.bot || message.system || message.webhookId !== null) return undefined;
  const isNamed = content.includes(`<@${botId}>`) || content.includes(`<@!${botId}>`);
  if (guildId !== null && !isNamed) return undefined;
  const text = cleaned(content.replaceAll(new RegExp(`<@!?${botId}>`, "g"), " ").replace(/\s+/g, " "));
  return {
    member: `discord:${author.id}` as MemberId,
    ...(guildId === null ? {} : { club: `discord:${guildId}` as ClubId, isAloud: true }),
    // A question sets nothing for a club.
    isSteward: false,
    name: cleaned(author.displayName).slice(0, LONGEST_NAME),
    path: "ask",
    options: { question: text === "" ? "help" : text },
    answers: {},
  };
}

/** Answers below the message. Among others, what rests on a record waits behind a button of the asker's. */
export async function answerBelow(message: Message, shown: Shown): Promise<void> {
  const { outcome, id, picture } = shown;
  const isOpen = message.guildId === null || outcome.audience === "channel";
  await message.reply({
    ...(isOpen ? renderOutcome(outcome, id, false, picture) : behindButton(shown)),
    allowedMentions: { parse: [], repliedUser: false },
    failIfNotExists: false,
  });
}

function behindButton({ id, outcome }: Told): Rendered {
  const show = new ButtonBuilder()
    .setCustomId(buttonId("show", id))
    .setLabel("Show me (only you)")
    .setStyle(ButtonStyle.Primary);
  return {
    ...renderRemark(
      outcome.kind === "question"
        ? "I have one question about that first."
        : "The answer is ready. It may rest on your own record, so only you can open it.",
    ),
    components: [new ActionRowBuilder<ButtonBuilder>().addComponents(show)],
  } as Rendered;
}
