import { ChannelType, DiscordAPIError, type REST, Routes } from "discord.js";
import type { App } from "../app.ts";
import type { HelpCaseNote } from "../kit/reply.ts";
import type { CardPlace } from "../records/help.ts";
import { isThreadType, renderCard, renderGoneCard } from "./case-card.ts";
import { type Message, renderRemark } from "./render.ts";
import type { Answerable, Shown } from "./respond.ts";

/** A help thread is archived after a week without a word; it opens again with the next one. */
const ARCHIVE_MINUTES = 10_080;
/** The message is gone, or too old to be edited any more, or not the bot's: a new one takes its place.
 *  Source: Discord's documentation, page Opcodes and Status Codes. */
const POST_ANEW = new Set([10008, 30046, 50005]);
/** Archived, and perhaps locked. */
const ARCHIVED = 50083;
/** No such message to begin a thread at, or it has one already. */
const STARTER_GONE = 10008;
const THREAD_EXISTS = 160004;
const TAG_NEEDED = 40067;

export interface ThreadKeeper {
  /** Brings a case's thread and card up to date, and says what its asker is told. */
  keep(interaction: Answerable, told: Shown, starter?: string): Promise<Shown>;
  /** Writes to somebody on their own; false when they take no such messages. */
  writeTo(userId: string, message: Message): Promise<boolean>;
  /** Writes where a card stands. */
  writeAt(place: string, message: Message): Promise<boolean>;
}

/** Makes threads for help cases and keeps their cards. Nothing here is remembered: a restart changes nothing. */
export function threadKeeper(parts: {
  readonly app: App;
  readonly rest: REST;
  readonly log: (line: string, error?: unknown) => void;
}): ThreadKeeper {
  const { app, rest, log } = parts;
  /** Changes of one case follow one another, so that no older card overwrites a newer one. */
  const queue = new Map<number, Promise<unknown>>();

  async function keep(interaction: Answerable, told: Shown, starter?: string): Promise<Shown> {
    const { outcome } = told;
    if (outcome.kind !== "reply") return told;
    for (const card of outcome.goneCards ?? []) await clear(card);
    const note = outcome.helpCase;
    if (note === undefined) return told;
    if (interaction.guildId === null || !interaction.inCachedGuild()) return privately(told, note);
    const before = queue.get(note.number) ?? Promise.resolve();
    const work = before.then(() =>
      note.card === undefined ? begin(interaction, told, note, starter) : renew(told, note, note.card),
    );
    const settled = work.catch(() => undefined);
    queue.set(note.number, settled);
    try {
      return await work;
    } finally {
      if (queue.get(note.number) === settled) queue.delete(note.number);
    }
  }

  /** A new thread with the card in it; where that is not allowed, the card is the answer itself. */
  async function begin(
    interaction: Answerable,
    told: Shown,
    note: HelpCaseNote,
    starter: string | undefined,
  ): Promise<Shown> {
    const { channelId, channel } = interaction;
    if (channelId === null) return privately(told, note);
    try {
      const card = await placeCard(note, channelId, channel?.type, starter);
      app.placed(note.number, card);
      return remarked(told, `${note.remark}\nIts thread: <#${card.place}>`, note);
    } catch (error) {
      if (!(error instanceof DiscordAPIError)) throw error;
      log(`no thread for case ${note.number}: ${error.message}`);
      return {
        ...told,
        outcome: { ...told.outcome, audience: "channel" },
        instead: renderCard(note),
        placed: (place, messageId) => app.placed(note.number, { place, messageId }),
      };
    }
  }

  async function placeCard(
    note: HelpCaseNote,
    channelId: string,
    type: ChannelType | undefined,
    starter: string | undefined,
  ): Promise<CardPlace> {
    if (starter === undefined && note.home !== undefined) {
      try {
        return await newThread(note, note.home);
      } catch (error) {
        if (!(error instanceof DiscordAPIError)) throw error;
        log(`the home of help threads cannot be used: ${error.message}`);
      }
    }
    // Within a thread or a forum post that one is the help thread.
    if (type !== undefined && isThreadType(type))
      return { place: channelId, messageId: await post(channelId, renderCard(note)) };
    if (starter !== undefined) {
      try {
        const place = await threadAt(note, channelId, starter);
        return { place, messageId: await post(place, renderCard(note)) };
      } catch (error) {
        if (codeOf(error) !== STARTER_GONE) throw error;
      }
    }
    return newThread(note, channelId);
  }

  async function threadAt(note: HelpCaseNote, channelId: string, starter: string): Promise<string> {
    try {
      return idOf(
        await rest.post(Routes.threads(channelId, starter), {
          body: { name: note.threadName, auto_archive_duration: ARCHIVE_MINUTES },
        }),
      );
    } catch (error) {
      // A thread begun at a message bears the message's own id.
      if (codeOf(error) === THREAD_EXISTS) return starter;
      throw error;
    }
  }

  /** A forum's post, or a public thread of a text channel. */
  async function newThread(note: HelpCaseNote, channelId: string): Promise<CardPlace> {
    const channel = (await rest.get(Routes.channel(channelId))) as {
      readonly type: ChannelType;
      readonly available_tags?: readonly { readonly id: string }[];
    };
    const name = note.threadName;
    if (channel.type === ChannelType.GuildForum || channel.type === ChannelType.GuildMedia) {
      const body = { name, auto_archive_duration: ARCHIVE_MINUTES, message: bodyOf(renderCard(note)) };
      const post = async (tags: readonly string[]): Promise<CardPlace> => {
        const made = await rest.post(Routes.threads(channelId), {
          body: tags.length === 0 ? body : { ...body, applied_tags: tags },
        });
        const id = idOf(made);
        const { message } = made as { readonly message?: { readonly id: string } };
        return { place: id, messageId: message?.id ?? id };
      };
      try {
        return await post([]);
      } catch (error) {
        const [first] = channel.available_tags ?? [];
        if (codeOf(error) !== TAG_NEEDED || first === undefined) throw error;
        return post([first.id]);
      }
    }
    const place = idOf(
      await rest.post(Routes.threads(channelId), {
        body: { name, auto_archive_duration: ARCHIVE_MINUTES, type: ChannelType.PublicThread },
      }),
    );
    return { place, messageId: await post(place, renderCard(note)) };
  }

  /** The card brought up to date where it stands. */
  async function renew(told: Shown, note: HelpCaseNote, card: CardPlace): Promise<Shown> {
    try {
      await edit(card, renderCard(note), (messageId) =>
        app.placed(note.number, { place: card.place, messageId }),
      );
      if (note.isNewAlarm) await post(card.place, { ...renderCard(note), components: [] });
      return remarked(told, note.remark, note);
    } catch (error) {
      if (!(error instanceof DiscordAPIError)) throw error;
      log(`the card of case ${note.number} cannot be reached: ${error.message}`);
      return {
        ...privately(told, note),
        ...(codeOf(error) === ARCHIVED ? { instead: lockedRemark(note) } : {}),
      };
    }
  }

  async function edit(
    card: CardPlace,
    message: Message,
    anew: (messageId: string) => void,
    isReopened = false,
  ): Promise<void> {
    try {
      await patch(card, message);
    } catch (error) {
      const code = codeOf(error);
      if (code === ARCHIVED && !isReopened) {
        await reopen(card.place);
        return edit(card, message, anew, true);
      }
      if (code === undefined || !POST_ANEW.has(code)) throw error;
      anew(await post(card.place, message));
    }
  }

  /** Throws: DiscordAPIError (50083) when the thread is locked. */
  async function reopen(place: string): Promise<void> {
    const channel = (await rest.get(Routes.channel(place))) as {
      readonly thread_metadata?: { readonly locked?: boolean; readonly archived?: boolean };
    };
    if (channel.thread_metadata?.locked === true) throw lockedError(place);
    await rest.patch(Routes.channel(place), { body: { archived: false } });
  }

  async function clear(card: CardPlace): Promise<void> {
    try {
      await edit(card, renderGoneCard(), () => undefined);
    } catch (error) {
      if (!(error instanceof DiscordAPIError)) throw error;
      log(`a deleted case's card could not be cleared: ${error.message}`);
    }
  }

  async function patch({ place, messageId }: CardPlace, message: Message): Promise<void> {
    await rest.patch(Routes.channelMessage(place, messageId), { body: bodyOf(message) });
  }

  async function post(place: string, message: Message): Promise<string> {
    return idOf(await rest.post(Routes.channelMessages(place), { body: bodyOf(message) }));
  }

  async function reached(work: Promise<unknown>): Promise<boolean> {
    try {
      await work;
      return true;
    } catch (error) {
      if (error instanceof DiscordAPIError) return false;
      throw error;
    }
  }

  return {
    keep,
    writeTo: (userId, message) =>
      reached(
        rest
          .post(Routes.userChannels(), { body: { recipient_id: userId } })
          .then((channel) => post(idOf(channel), message)),
      ),
    writeAt: (place, message) => reached(post(place, message)),
  };
}

/** Outside a club's own channels the card is for the asker alone. */
function privately(told: Shown, note: HelpCaseNote): Shown {
  return { ...told, outcome: { ...told.outcome, audience: "asker" }, instead: renderCard(note) };
}

/** A short word to the one who typed; what presses is said to them again. */
function remarked(told: Shown, remark: string, { next, isOpen }: HelpCaseNote): Shown {
  const asked = next === undefined || !isOpen ? "" : `\nAsked next: ${next.text}`;
  const message = renderRemark(`${remark}${asked}`);
  return {
    ...told,
    outcome: { ...told.outcome, audience: "asker" },
    // The mention of the thread is the bot's own and stays one.
    instead: {
      ...message,
      embeds: message.embeds.map((embed) => ({
        ...embed,
        description: (embed.description ?? "").replace(/\\<#(\d+)\\>/g, "<#$1>"),
      })),
    },
  };
}

function lockedRemark(note: HelpCaseNote): Message {
  return renderRemark(
    `${note.remark} The thread is locked, so its card stays as it is; /case show case:${note.number} shows what is kept.`,
  );
}

/** In the platform's own spelling, for requests that the library's builders do not write. */
function bodyOf({ embeds, components }: Message) {
  return {
    embeds,
    components: components.map((row) => row.toJSON()),
    allowed_mentions: { parse: [] },
  };
}

function lockedError(place: string): DiscordAPIError {
  return new DiscordAPIError(
    { code: ARCHIVED, message: "Thread is locked" },
    ARCHIVED,
    400,
    "PATCH",
    Routes.channel(place),
    {},
  );
}

function codeOf(error: unknown): number | undefined {
  return error instanceof DiscordAPIError ? Number(error.code) : undefined;
}

function idOf(answer: unknown): string {
  return (answer as { readonly id: string }).id;
}
