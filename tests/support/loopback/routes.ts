/** The HTTP endpoints a bot uses, version 10. */

import type { CommandStore } from "./command-store.ts";
import { Field } from "./field.ts";
import type { Gateway } from "./gateway.ts";
import { intent } from "./gateway.ts";
import { callbackAnswer, type Interaction } from "./interaction.ts";
import { isObject, type Json, type JsonObject, textOf, textsOf } from "./json.ts";
import { Message, writeMessage } from "./message.ts";
import type { UploadedFile } from "./multipart.ts";
import { Problems, refuse } from "./refusals.ts";
import { wireChannel, wireMember, wireMessage, wireUser } from "./wire.ts";
import { type Channel, channelType, type Guild, permission, type World } from "./world.ts";

/** What the endpoints work on. */
export interface Backstage {
  readonly world: World;
  readonly applicationId: string;
  readonly commands: CommandStore;
  readonly gateway: Gateway;
  readonly origin: string;
  readonly shards: number;
  interactionById(id: string): Interaction | undefined;
  interactionByToken(token: string): Interaction | undefined;
}

export interface ApiRequest {
  readonly json: Json | undefined;
  readonly files: readonly UploadedFile[];
  readonly query: URLSearchParams;
  /** Monotonic time at which the whole request had come in. */
  readonly receivedAt: number;
}

export interface ApiAnswer {
  readonly status: number;
  readonly body?: Json;
}

interface Route {
  readonly method: string;
  readonly path: RegExp;
  /** Needs the bot's token; the interaction endpoints carry their own. */
  readonly needsBot: boolean;
  readonly handle: (stage: Backstage, request: ApiRequest, ...ids: string[]) => ApiAnswer;
}

const ID = "(\\d{15,20})";

function route(method: string, path: string, handle: Route["handle"], needsBot = true): Route {
  const pattern = path
    .replaceAll(":id", ID)
    .replaceAll(":token", "([^/]+)")
    .replaceAll(":message", "(@original|\\d{15,20})");
  return { method, path: new RegExp(`^${pattern}$`), needsBot, handle };
}

const ok = (body: Json): ApiAnswer => ({ status: 200, body });
const done: ApiAnswer = { status: 204 };

export const routes: readonly Route[] = [
  route("GET", "/gateway/bot", ({ gateway, shards }) =>
    ok({
      url: gateway.url,
      shards,
      session_start_limit: {
        total: 1000,
        remaining: 1000 - gateway.identifies,
        reset_after: 0,
        max_concurrency: 1,
      },
    }),
  ),
  route("GET", "/gateway", ({ gateway }) => ok({ url: gateway.url }), false),
  route("GET", "/users/@me", ({ world }) => ok(wireUser(world.bot))),
  route("GET", "/users/:id", ({ world }, _request, id) =>
    ok(wireUser(found(world.users.get(id ?? ""), refuse.unknownUser))),
  ),
  route("GET", "/applications/@me", (stage) => ok(wireApplication(stage))),
  route("PATCH", "/applications/@me", (stage) => ok(wireApplication(stage))),
  route("GET", "/oauth2/applications/@me", (stage) => ok(wireApplication(stage))),

  ...["/applications/:id/commands", "/applications/:id/guilds/:id/commands"].flatMap((path) => [
    route("GET", path, ({ commands }, _request, _app, guildId) => ok([...commands.list(guildId)])),
    route("PUT", path, (stage, { json }, app, guildId) => {
      demandScope(stage, app, guildId);
      return ok(stage.commands.replaceAll(json, guildId));
    }),
    route("POST", path, (stage, { json }, app, guildId) => {
      demandScope(stage, app, guildId);
      const { command, isNew } = stage.commands.put(json, guildId);
      return { status: isNew ? 201 : 200, body: command };
    }),
  ]),
  route("GET", "/applications/:id/commands/:id", ({ commands }, _r, _app, id) => ok(commands.get(id ?? ""))),
  route("PATCH", "/applications/:id/commands/:id", ({ commands }, { json }, _app, id) =>
    ok(commands.change(id ?? "", json)),
  ),
  route("DELETE", "/applications/:id/commands/:id", ({ commands }, _r, _app, id) => {
    commands.delete(id ?? "");
    return done;
  }),
  route("GET", "/applications/:id/guilds/:id/commands/:id", ({ commands }, _r, _app, guildId, id) =>
    ok(commands.get(id ?? "", guildId)),
  ),
  route("PATCH", "/applications/:id/guilds/:id/commands/:id", ({ commands }, { json }, _app, guildId, id) =>
    ok(commands.change(id ?? "", json, guildId)),
  ),
  route("DELETE", "/applications/:id/guilds/:id/commands/:id", ({ commands }, _r, _app, guildId, id) => {
    commands.delete(id ?? "", guildId);
    return done;
  }),

  route("POST", "/interactions/:id/:token/callback", respondToInteraction, false),
  route(
    "POST",
    "/webhooks/:id/:token",
    (stage, { json, files }, _app, token) => {
      const message = byToken(stage, token).followUp(asObject(json), files);
      return ok(wireMessage(stage.origin, message));
    },
    false,
  ),
  route(
    "GET",
    "/webhooks/:id/:token/messages/:message",
    (stage, _request, _app, token, id) =>
      ok(wireMessage(stage.origin, byToken(stage, token).messageOf(id ?? ""))),
    false,
  ),
  route(
    "PATCH",
    "/webhooks/:id/:token/messages/:message",
    (stage, { json, files }, _app, token, id) =>
      ok(wireMessage(stage.origin, byToken(stage, token).edit(id ?? "", asObject(json), files))),
    false,
  ),
  route(
    "DELETE",
    "/webhooks/:id/:token/messages/:message",
    (stage, _request, _app, token, id) => {
      byToken(stage, token).delete(id ?? "");
      return done;
    },
    false,
  ),

  route("GET", "/channels/:id", (stage, _request, id) => ok(wireChannel(channelOf(stage, id)))),
  route("PATCH", "/channels/:id", changeChannel),
  route("POST", "/channels/:id/typing", (stage, _request, id) => {
    demandSend(stage, channelOf(stage, id));
    return done;
  }),
  route("GET", "/channels/:id/messages", (stage, { query }, id) => {
    const channel = channelOf(stage, id);
    demand(stage, channel, permission.readHistory);
    const before = query.get("before");
    const visible = [...channel.messages.values()].filter(
      (message) => !message.isEphemeral && !message.isLoading,
    );
    return ok(
      visible
        .filter((message) => before === null || BigInt(message.id) < BigInt(before))
        .slice(-Number(query.get("limit") ?? 50))
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
  route("POST", "/channels/:id/threads", startThread),
  route("POST", "/channels/:id/messages/:id/threads", startThreadFromMessage),
  route("PUT", "/channels/:id/thread-members/:id", (stage, _request, id) => {
    if (channelOf(stage, id).thread?.archived === true) throw refuse.archivedThread();
    return done;
  }),
  route("GET", "/guilds/:id/members/:id", ({ world }, _request, guildId, userId) => {
    const guild = guildOf(world, guildId);
    return ok(wireMember(found(guild.members.get(userId ?? ""), refuse.unknownMember)));
  }),
];

function found<T>(value: T | undefined, otherwise: () => Error): T {
  if (value === undefined) throw otherwise();
  return value;
}

function asObject(json: Json | undefined): JsonObject {
  return isObject(json) ? json : {};
}

function wireApplication({ world, applicationId }: Backstage): JsonObject {
  return {
    id: applicationId,
    name: world.bot.username,
    icon: null,
    description: "",
    bot_public: true,
    bot_require_code_grant: false,
    verify_key: "",
    flags: 0,
    team: null,
    approximate_guild_count: world.guilds.size,
    approximate_user_install_count: 0,
    integration_types_config: { "0": {}, "1": {} },
  };
}

function demandScope(
  { world, applicationId }: Backstage,
  app: string | undefined,
  guildId: string | undefined,
): void {
  if (app !== applicationId) throw refuse.missingAccess();
  if (guildId !== undefined && world.guilds.get(guildId)?.isBotMember !== true) throw refuse.missingAccess();
}

function respondToInteraction(
  stage: Backstage,
  { json, files, query, receivedAt }: ApiRequest,
  id?: string,
  token?: string,
): ApiAnswer {
  const interaction = stage.interactionById(id ?? "");
  if (interaction === undefined || interaction.token !== token) throw refuse.unknownInteraction();
  interaction.respond(asObject(json), files, receivedAt);
  if (query.get("with_response") !== "true") return done;
  const { original } = interaction;
  return ok(
    callbackAnswer(interaction, original === undefined ? undefined : wireMessage(stage.origin, original)),
  );
}

function byToken(stage: Backstage, token: string | undefined): Interaction {
  return found(stage.interactionByToken(token ?? ""), refuse.deadToken);
}

function guildOf(world: World, id: string | undefined): Guild {
  const guild = found(world.guilds.get(id ?? ""), refuse.unknownGuild);
  if (!guild.isBotMember) throw refuse.missingAccess();
  return guild;
}

/** Throws: Refusal 10003, and 50001 where the bot cannot see the channel. */
function channelOf(stage: Backstage, id: string | undefined): Channel {
  const channel = found(stage.world.channels.get(id ?? ""), refuse.unknownChannel);
  if ((stage.world.botPermissionsIn(channel) & permission.viewChannel) === 0n) throw refuse.missingAccess();
  return channel;
}

function demand({ world }: Backstage, channel: Channel, bits: bigint): void {
  if ((world.botPermissionsIn(channel) & bits) !== bits) throw refuse.missingPermission();
}

/** SEND_MESSAGES has no effect in threads: another bit decides there. */
function demandSend(stage: Backstage, channel: Channel): void {
  demand(stage, channel, channel.thread === undefined ? permission.sendMessages : permission.sendInThreads);
}

function messageIn(channel: Channel, id: string | undefined): Message {
  const message = channel.messages.get(id ?? "");
  if (message === undefined || message.isEphemeral) throw refuse.unknownMessage();
  return message;
}

function postMessage(stage: Backstage, { json, files }: ApiRequest, id?: string): ApiAnswer {
  const { world } = stage;
  const channel = channelOf(stage, id);
  if (channel.type === channelType.forum) throw refuse.noDirectForumMessages();
  demandSend(stage, channel);
  if (channel.recipients.some((user) => user.refusesDms)) throw refuse.noDirectMessages();
  const body = asObject(json);
  if (body["enforce_nonce"] === true && body["nonce"] !== undefined) {
    const earlier = [...channel.messages.values()].find(
      (message) => message.author === world.bot && message.nonce === body["nonce"],
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

function writeNew(
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
    data: { ...wireMessage(stage.origin, message), ...(guildId === undefined ? {} : { guild_id: guildId }) },
    shape: (data, intents) => {
      const isReadable =
        isOwn || guildId === undefined || mentionsBot || (intents & intent.messageContent) !== 0;
      return isReadable ? data : { ...data, content: "", embeds: [], attachments: [], components: [] };
    },
  });
}

const ARCHIVE_MINUTES = [60, 1440, 4320, 10_080];

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
