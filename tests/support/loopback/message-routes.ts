/** Endpoints for the messages of a channel. */

import {
  type ApiAnswer,
  type ApiRequest,
  asObject,
  type Backstage,
  channelOf,
  demand,
  demandSend,
  done,
  found,
  messageIn,
  ok,
  type Route,
  route,
} from "./endpoint.ts";
import { intent } from "./gateway.ts";
import { type JsonObject, textOf } from "./json.ts";
import { Message, writeMessage } from "./message.ts";
import type { UploadedFile } from "./multipart.ts";
import { refuse } from "./refusals.ts";
import { wireChannel, wireMessage } from "./wire.ts";
import { type Channel, channelType, permission } from "./world.ts";

/** The platform remembers a nonce "for a few minutes"; how many it does not say. An assumption. */
const NONCE_LIFE_MS = 3 * 60_000;

export const messageRoutes: readonly Route[] = [
  route("GET", "/channels/:id", (stage, _request, id) => ok(wireChannel(channelOf(stage, id)))),
  route("POST", "/channels/:id/typing", (stage, _request, id) => {
    demandSend(stage, channelOf(stage, id));
    return done;
  }),
  route("GET", "/channels/:id/messages", (stage, { query }, id) => {
    const channel = channelOf(stage, id);
    demand(stage, channel, permission.readHistory);
    const before = query.get("before");
    const after = query.get("after");
    const limit = Number(query.get("limit") ?? 50);
    const visible = [...channel.messages.values()].filter(
      (message) => !message.isEphemeral && !message.isLoading,
    );
    const asked = visible.filter(
      ({ id: each }) =>
        (before === null || BigInt(each) < BigInt(before)) &&
        (after === null || BigInt(each) > BigInt(after)),
    );
    return ok(
      // With "after" the page begins at that message; either way it is told newest first.
      (after === null ? asked.slice(-limit) : asked.slice(0, limit))
        .reverse()
        .map((message) => wireMessage(stage.origin, message)),
    );
  }),
  route("POST", "/channels/:id/messages", postMessage),
  route("GET", "/channels/:id/messages/:id", (stage, _request, channelId, id) => {
    const channel = channelOf(stage, channelId);
    demand(stage, channel, permission.readHistory);
    return ok(wireMessage(stage.origin, messageIn(channel, id)));
  }),
  route("PATCH", "/channels/:id/messages/:id", (stage, { json, files }, channelId, id) => {
    const channel = channelOf(stage, channelId);
    if (channel.thread?.archived === true) throw refuse.archivedThread();
    const message = messageIn(channel, id);
    if (message.author !== stage.world.bot) throw refuse.notYourMessage();
    const how = { mayBeEphemeral: false, isInteractionResponse: message.origin !== undefined, isEdit: true };
    writeMessage(stage.world, message, asObject(json), files, how);
    message.editedAt = stage.world.now();
    message.editCount += 1;
    return ok(wireMessage(stage.origin, message));
  }),
  route("DELETE", "/channels/:id/messages/:id", (stage, _request, channelId, id) => {
    const channel = channelOf(stage, channelId);
    const message = messageIn(channel, id);
    if (message.author !== stage.world.bot) demand(stage, channel, permission.manageMessages);
    message.delete();
    return done;
  }),
  route("POST", "/users/@me/channels", ({ world }, { json }) => {
    const user = found(world.users.get(textOf(asObject(json)["recipient_id"]) ?? ""), refuse.unknownUser);
    return ok(wireChannel(world.dmWithBot(user)));
  }),
];

function postMessage(stage: Backstage, { json, files }: ApiRequest, id?: string): ApiAnswer {
  const { world } = stage;
  const channel = channelOf(stage, id);
  if (channel.type === channelType.forum) throw refuse.noDirectForumMessages();
  demandSend(stage, channel);
  if (channel.recipients.some((user) => user.refusesDms)) throw refuse.noDirectMessages();
  const body = asObject(json);
  if (body["enforce_nonce"] === true && body["nonce"] !== undefined) {
    const earlier = [...channel.messages.values()].find(
      (message) =>
        message.author === world.bot &&
        message.nonce === body["nonce"] &&
        world.now() - message.createdAt < NONCE_LIFE_MS,
    );
    if (earlier !== undefined) return ok(wireMessage(stage.origin, earlier));
  }
  unarchive(channel);
  return ok(wireMessage(stage.origin, writeNew(stage, channel, body, files)));
}

/** Sending to an archived thread opens it again, unless it is locked. */
function unarchive(channel: Channel): void {
  if (channel.thread?.archived !== true) return;
  if (channel.thread.locked) throw refuse.archivedThread();
  channel.thread.archived = false;
}

/** A message by the bot, new in a channel. */
export function writeNew(
  stage: Backstage,
  channel: Channel,
  body: JsonObject,
  files: readonly UploadedFile[],
  id?: string,
): Message {
  const { world } = stage;
  const message = new Message(world, channel, world.bot, undefined, id);
  writeMessage(world, message, body, files, {
    mayBeEphemeral: false,
    isInteractionResponse: false,
    isEdit: false,
  });
  channel.messages.set(message.id, message);
  announceMessage(stage, message);
  return message;
}

/** MESSAGE_CREATE, for sessions that asked for messages. */
export function announceMessage(
  stage: Pick<Backstage, "gateway" | "origin" | "world">,
  message: Message,
): void {
  const guildId = message.channel.guild?.id;
  const isOwn = message.author === stage.world.bot;
  const mentionsBot = message.content.includes(`<@${stage.world.bot.id}>`);
  stage.gateway.dispatch({
    name: "MESSAGE_CREATE",
    guildId,
    intents: guildId === undefined ? intent.directMessages : intent.guildMessages,
    data: {
      ...wireMessage(stage.origin, message),
      channel_type: message.channel.type,
      ...(guildId === undefined ? {} : { guild_id: guildId }),
    },
    shape: (data, intents) => {
      const isReadable =
        isOwn || guildId === undefined || mentionsBot || (intents & intent.messageContent) !== 0;
      return isReadable ? data : { ...data, content: "", embeds: [], attachments: [], components: [] };
    },
  });
}
