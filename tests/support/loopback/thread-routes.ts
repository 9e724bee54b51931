/** Endpoints for threads, forum posts and the settings of a channel. */

import {
  type ApiAnswer,
  type ApiRequest,
  asObject,
  type Backstage,
  channelOf,
  demand,
  done,
  messageIn,
  ok,
  type Route,
  route,
} from "./endpoint.ts";
import { Field } from "./field.ts";
import { intent } from "./gateway.ts";
import { type JsonObject, textsOf } from "./json.ts";
import { writeNew } from "./message-routes.ts";
import { Problems, refuse } from "./refusals.ts";
import { wireChannel, wireMessage } from "./wire.ts";
import { type Channel, channelType, permission } from "./world.ts";

const ARCHIVE_MINUTES = [60, 1440, 4320, 10_080];

export const threadRoutes: readonly Route[] = [
  route("PATCH", "/channels/:id", changeChannel),
  route("POST", "/channels/:id/threads", startThread),
  route("POST", "/channels/:id/messages/:id/threads", startThreadFromMessage),
  route("PUT", "/channels/:id/thread-members/:id", (stage, _request, id) => {
    if (channelOf(stage, id).thread?.archived === true) throw refuse.archivedThread();
    return done;
  }),
];

function checkThread(
  body: JsonObject,
  isForum: boolean,
): { name: string; minutes: number; type: number; tags: string[] } {
  const problems = new Problems();
  const root = new Field(body, [], problems);
  const name = root.key("name").requiredText(1, 100) ?? "";
  const minutes = root.key("auto_archive_duration").choice(ARCHIVE_MINUTES) ?? 4320;
  const type = root.key("type").choice([channelType.publicThread, channelType.privateThread]);
  root.key("applied_tags").items(0, 5);
  if (isForum) root.key("message").required();
  problems.throwIfAny();
  const otherwise = isForum ? channelType.publicThread : channelType.privateThread;
  return {
    name,
    minutes,
    type: isForum ? otherwise : (type ?? otherwise),
    tags: textsOf(body["applied_tags"]),
  };
}

function startThread(stage: Backstage, { json, files }: ApiRequest, id?: string): ApiAnswer {
  const parent = channelOf(stage, id);
  const isForum = parent.type === channelType.forum;
  const body = asObject(json);
  const { name, minutes, type, tags } = checkThread(body, isForum);
  if (isForum) {
    demand(stage, parent, permission.sendMessages);
    if (parent.requiresTag && tags.length === 0) throw refuse.forumTagRequired();
  } else {
    const isPrivate = type === channelType.privateThread;
    demand(stage, parent, isPrivate ? permission.createPrivateThreads : permission.createPublicThreads);
  }
  const thread = stage.world.addThread(parent, name, type, minutes);
  if (!isForum) return { status: 201, body: announceThread(stage, thread) };

  thread.thread?.appliedTags.push(...tags);
  try {
    const message = writeNew(stage, thread, asObject(body["message"]), files, thread.id);
    return {
      status: 201,
      body: { ...announceThread(stage, thread), message: wireMessage(stage.origin, message) },
    };
  } catch (error) {
    stage.world.channels.delete(thread.id);
    throw error;
  }
}

/** A thread from a message shares its id, so there is one per message. */
function startThreadFromMessage(
  stage: Backstage,
  { json }: ApiRequest,
  channelId?: string,
  id?: string,
): ApiAnswer {
  const parent = channelOf(stage, channelId);
  const message = messageIn(parent, id);
  demand(stage, parent, permission.createPublicThreads);
  if (stage.world.channels.has(message.id)) throw refuse.threadExists();
  const { name, minutes } = checkThread(asObject(json), false);
  const thread = stage.world.addThread(parent, name, channelType.publicThread, minutes, message.id);
  return { status: 201, body: announceThread(stage, thread) };
}

function announceThread({ gateway }: Backstage, thread: Channel): JsonObject {
  const wire = wireChannel(thread);
  const data = { ...wire, newly_created: true };
  gateway.dispatch({ name: "THREAD_CREATE", guildId: thread.guild?.id, intents: intent.guilds, data });
  return wire;
}

function changeChannel(stage: Backstage, { json }: ApiRequest, id?: string): ApiAnswer {
  const channel = channelOf(stage, id);
  const problems = new Problems();
  const root = new Field(json, [], problems);
  const name = root.key("name").text(1, 100);
  const minutes = root.key("auto_archive_duration").choice(ARCHIVE_MINUTES);
  const isArchived = root.key("archived").boolean();
  const isLocked = root.key("locked").boolean();
  const tags = root.key("applied_tags").items(0, 5);
  problems.throwIfAny();

  const { thread } = channel;
  const isOnlyReopening = isArchived === false;
  if (thread?.archived === true && !isOnlyReopening) throw refuse.archivedThread();
  if (name !== undefined) channel.name = name;
  if (thread !== undefined) {
    if (minutes !== undefined) thread.autoArchiveMinutes = minutes;
    if (isArchived !== undefined) thread.archived = isArchived;
    if (isLocked !== undefined) thread.locked = isLocked;
    if (tags.length > 0) thread.appliedTags = tags.map((tag) => String(tag.value));
  }
  const wire = wireChannel(channel);
  const event = thread === undefined ? "CHANNEL_UPDATE" : "THREAD_UPDATE";
  stage.gateway.dispatch({ name: event, guildId: channel.guild?.id, intents: intent.guilds, data: wire });
  return ok(wire);
}
