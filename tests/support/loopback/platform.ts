/** A chat platform on the loopback interface: what a bot connects to, and what a test plays the members with. */

import { performance } from "node:perf_hooks";
import { flatten } from "./check-components.ts";
import {
  type FieldValue,
  NotOffered,
  type OptionValue,
  optionsAt,
  Resolved,
  writeModalFields,
  writeOptions,
  writeSelection,
} from "./client-rules.ts";
import { CommandStore } from "./command-store.ts";
import { Exchange } from "./exchange.ts";
import type { Faults } from "./faults.ts";
import { Gateway } from "./gateway.ts";
import { type Bucket, HttpSide, type LoggedRequest } from "./http-side.ts";
import { Interaction, interactionType } from "./interaction.ts";
import { type JsonObject, numberOf, textOf } from "./json.ts";
import { Message } from "./message.ts";
import { announceMessage, type Backstage } from "./routes.ts";
import { wireChannel, wireMember, wireMessage, wireUser } from "./wire.ts";
import { type Channel, type Guild, permission, type Role, type User, World } from "./world.ts";

export interface PlatformOptions {
  /** The bot token that is accepted. */
  readonly token?: string;
  readonly applicationId?: string;
  /** Delay of every event, and of every answer to a request. */
  readonly latencyMs?: number;
  /** Privileged intents switched on in the portal; none unless given. */
  readonly privilegedIntents?: number;
  readonly heartbeatMs?: number;
  /** Requests a second, interaction endpoints not counted; 50 as on the platform. */
  readonly globalPerSecond?: number;
  readonly shards?: number;
  readonly port?: number;
}

/** Who does something, and where. Without a guild it happens in a direct conversation with the bot. */
export interface Place {
  /** A name, made into a user on first mention. */
  readonly user: string | User;
  /** The platform's first guild unless given; null for none. */
  readonly guild?: Guild | null;
  readonly channel?: Channel;
  /** 0 guild, 1 conversation with the bot, 2 conversation between others. */
  readonly context?: 0 | 1 | 2;
  /** The app stands behind this only because the user installed it. */
  readonly userInstall?: boolean;
  readonly locale?: string;
}

export interface SlashCall extends Place {
  readonly command: string;
  readonly group?: string;
  readonly subcommand?: string;
  readonly options?: Readonly<Record<string, OptionValue>>;
}

interface Scene {
  readonly user: User;
  readonly guild: Guild | undefined;
  readonly channel: Channel;
  readonly context: 0 | 1 | 2;
  readonly isUserInstall: boolean;
  readonly locale: string;
}

interface Event {
  readonly type: number;
  readonly data: JsonObject;
  readonly source?: Message;
  readonly focusedType?: number;
}

export class Platform {
  readonly token: string;
  readonly applicationId: string;
  readonly world: World;
  /** The guild and channel in which things happen unless a test says otherwise. */
  readonly guild: Guild;
  readonly channel: Channel;
  readonly commands: CommandStore;
  /** How long a first response may take; the platform's own value unless a test shortens it. */
  interactionWindowMs = 3000;
  tokenLifeMs = 15 * 60_000;
  /** Holds every interaction event back, while its window is already running. */
  eventDelayMs = 0;
  readonly #http: HttpSide;
  readonly #gateway: Gateway;
  readonly #stage: Backstage;
  readonly #interactions = new Map<string, Interaction>();
  readonly #byToken = new Map<string, Interaction>();

  constructor(http: HttpSide, port: number, token: string, options: PlatformOptions) {
    this.token = token;
    this.world = new World(options.applicationId);
    this.applicationId = this.world.bot.id;
    this.commands = new CommandStore(this.world, this.applicationId);
    this.guild = this.world.addGuild("Eastmoor Aquarium Society");
    this.channel = this.world.addChannel(this.guild, "tank-talk");
    this.#http = http;
    this.#gateway = new Gateway(http.server, this.world, this.applicationId, {
      token,
      allowedPrivilegedIntents: options.privilegedIntents ?? 0,
      heartbeatMs: options.heartbeatMs ?? 41_250,
      latencyMs: options.latencyMs ?? 0,
      shards: options.shards ?? 1,
    });
    this.#stage = {
      world: this.world,
      applicationId: this.applicationId,
      commands: this.commands,
      gateway: this.#gateway,
      origin: `http://127.0.0.1:${port}`,
      shards: options.shards ?? 1,
      interactionById: (id) => this.#interactions.get(id),
      interactionByToken: (secret) => this.#byToken.get(secret),
    };
    http.serve(this.#stage);
  }

  /** For `new Client({ rest: { api } })`. */
  get apiUrl(): string {
    return `${this.#stage.origin}/api`;
  }

  get faults(): Faults {
    return this.#http.faults;
  }

  /** The WebSocket side: sessions, drops, double delivery. */
  get gateway(): Gateway {
    return this.#gateway;
  }

  /** Every request that came in, oldest first. */
  get requests(): readonly LoggedRequest[] {
    return this.#http.log;
  }

  requestsTo(route: RegExp, method?: string): LoggedRequest[] {
    return this.#http.log.filter(
      (entry) => route.test(entry.path) && (method === undefined || entry.method === method),
    );
  }

  /** Announces a rate limit in headers and enforces it. */
  limit(bucket: Bucket): void {
    this.#http.addBucket(bucket);
  }

  /** Every event reaches the bot twice. */
  get deliverTwice(): boolean {
    return this.#gateway.deliverTwice;
  }

  set deliverTwice(isTwice: boolean) {
    this.#gateway.deliverTwice = isTwice;
  }

  dropGateway(how: { code?: number; resumable?: boolean } = {}): void {
    this.#gateway.drop(how);
  }

  pauseGateway(): void {
    this.#gateway.pause();
  }

  resumeGateway(): void {
    this.#gateway.resume();
  }

  /** Moves the platform's clock forward; responses and tokens whose time is over die at once. */
  advance(ms: number): void {
    this.world.advance(ms);
    for (const interaction of this.#interactions.values()) interaction.expireIfDue();
  }

  async close(): Promise<void> {
    await this.#gateway.close();
    await this.#http.close();
  }

  /** The user of that name, made on first mention. */
  user(name: string): User {
    return this.world.user(name);
  }

  /** A message by a member, in a channel or in the conversation with the bot. */
  say(place: Place & { readonly content: string; readonly replyTo?: Message }): Message {
    const { user, channel } = this.#scene(place);
    const message = new Message(this.world, channel, user);
    message.content = place.content;
    message.replyTo = place.replyTo?.id;
    channel.messages.set(message.id, message);
    announceMessage(this.#stage, message);
    return message;
  }

  /** Types a slash command and waits for the first response.
   *  Throws: NotOffered when a client would not have sent it. */
  async slash(call: SlashCall): Promise<Exchange> {
    return this.#settled(this.sendSlash(call));
  }

  /** As `slash`, without waiting. */
  sendSlash(call: SlashCall): Exchange {
    const scene = this.#scene(call);
    const command = this.#offered(call.command, 1, scene);
    const resolved = this.#resolved(scene);
    const options = writeOptions(
      optionsAt(command, call.group, call.subcommand),
      call.options ?? {},
      resolved,
    );
    return this.#send(scene, {
      type: interactionType.command,
      data: { ...commandData(command), options: nested(call, options), ...resolvedPart(resolved) },
    });
  }

  /** Types into an option that completes. Nothing typed is checked; partial text arrives as it is.
   *  Throws: NotOffered when the option does not complete. */
  async autocomplete(call: SlashCall & { readonly focused: string }): Promise<Exchange> {
    const scene = this.#scene(call);
    const command = this.#offered(call.command, 1, scene);
    const definitions = optionsAt(command, call.group, call.subcommand);
    const focused = definitions.find((definition) => definition["name"] === call.focused);
    if (focused?.["autocomplete"] !== true) throw new NotOffered(`"${call.focused}" does not complete`);
    const typed = { [call.focused]: "", ...call.options };
    const options = Object.entries(typed).map(([name, value]): JsonObject => {
      const type = numberOf(definitions.find((definition) => definition["name"] === name)?.["type"]) ?? 3;
      const plain = typeof value === "object" ? "" : value;
      return { name, type, value: plain, ...(name === call.focused ? { focused: true } : {}) };
    });
    return this.#settled(
      this.#send(scene, {
        type: interactionType.autocomplete,
        data: { ...commandData(command), options: nested(call, options) },
        focusedType: numberOf(focused["type"]) ?? 3,
      }),
    );
  }

  /** Runs a user or message command on its target.
   *  Throws: NotOffered. */
  async contextMenu(
    call: Place & { readonly command: string; readonly target: User | Message },
  ): Promise<Exchange> {
    const scene = this.#scene(call);
    const isMessage = call.target instanceof Message;
    const command = this.#offered(call.command, isMessage ? 3 : 2, scene);
    const resolved = this.#resolved(scene);
    if (call.target instanceof Message) {
      resolved.addMessage(call.target.id, wireMessage(this.#stage.origin, call.target));
    } else {
      if (scene.guild !== undefined) this.world.member(scene.guild, call.target);
      resolved.add(call.target);
    }
    const data = { ...commandData(command), target_id: call.target.id, ...resolvedPart(resolved) };
    return this.#settled(this.#send(scene, { type: interactionType.command, data }));
  }

  /** Presses a button.
   *  Throws: NotOffered when it is not there, disabled, a link, or on a message this user cannot see. */
  async press(
    call: Omit<Place, "channel" | "guild"> & { readonly message: Message; readonly customId: string },
  ): Promise<Exchange> {
    const { scene, item } = this.#componentOf(call);
    if (item["type"] !== 2) throw new NotOffered(`"${call.customId}" is no button`);
    return this.#settled(
      this.#send(scene, {
        type: interactionType.component,
        data: { custom_id: call.customId, component_type: 2, id: item["id"] ?? 0 },
        source: call.message,
      }),
    );
  }

  /** Chooses in a select.
   *  Throws: NotOffered. */
  async select(
    call: Omit<Place, "channel" | "guild"> & {
      readonly message: Message;
      readonly customId: string;
      readonly values: readonly (string | User | Role | Channel)[];
    },
  ): Promise<Exchange> {
    const { scene, item } = this.#componentOf(call);
    const resolved = this.#resolved(scene);
    const values = writeSelection(item, call.values, resolved);
    return this.#settled(
      this.#send(scene, {
        type: interactionType.component,
        data: {
          custom_id: call.customId,
          component_type: item["type"] ?? 0,
          id: item["id"] ?? 0,
          values,
          ...resolvedPart(resolved),
        },
        source: call.message,
      }),
    );
  }

  /** Fills in and submits the modal that an exchange opened, as the same user in the same place.
   *  Throws: NotOffered. */
  async submitModal(call: {
    readonly opened: Exchange;
    readonly fields?: Readonly<Record<string, FieldValue>>;
    readonly locale?: string;
  }): Promise<Exchange> {
    const { modal, interaction } = call.opened;
    const { user, guild, channel, owners, source } = interaction.options;
    const scene = this.#scene({
      user,
      guild: guild ?? null,
      channel,
      userInstall: owners["0"] === undefined,
      ...(call.locale === undefined ? {} : { locale: call.locale }),
    });
    const resolved = this.#resolved(scene);
    const components = writeModalFields(modal, call.fields ?? {}, resolved);
    return this.#settled(
      this.#send(scene, {
        type: interactionType.modalSubmit,
        data: { custom_id: modal["custom_id"] ?? "", components, ...resolvedPart(resolved) },
        ...(source === undefined ? {} : { source }),
      }),
    );
  }

  /** Waits until a bot is connected and has been given its guilds. */
  async connected(timeoutMs = 10_000): Promise<void> {
    await this.until(() => this.#gateway.connections > 0, timeoutMs);
  }

  /** Waits until the platform has come to a state. */
  async until(isSo: () => boolean, timeoutMs = 5000): Promise<void> {
    const end = performance.now() + timeoutMs;
    while (!isSo()) {
      if (performance.now() > end) throw new Error(`Not come to pass within ${timeoutMs} ms`);
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  }

  /** Forgets what is over, so that a long load run does not grow without bound. */
  forgetFinished(): void {
    for (const [id, interaction] of this.#interactions) {
      if (!interaction.isAnswered && !interaction.isExpired) continue;
      this.#interactions.delete(id);
      this.#byToken.delete(interaction.token);
      for (const message of [interaction.original, ...interaction.followUps]) {
        message?.channel.messages.delete(message.id);
        for (const attachment of message?.attachments ?? []) this.world.files.delete(attachment.path);
      }
    }
  }

  #scene(place: Place): Scene {
    const user = typeof place.user === "string" ? this.user(place.user) : place.user;
    const isUserInstall = place.userInstall ?? false;
    const isOutsideGuild = place.guild === null || (place.context ?? 0) !== 0;
    const given = place.channel?.guild ?? place.guild ?? undefined;
    const guild =
      place.channel !== undefined ? place.channel.guild : isOutsideGuild ? undefined : (given ?? this.guild);
    const locale = place.locale ?? user.locale;
    if (guild === undefined) {
      const context = place.context ?? (place.channel?.isBotInside === false ? 2 : 1);
      const between = () => this.world.dmBetween(user, this.user("a-friend"));
      const channel = place.channel ?? (context === 2 ? between() : this.world.dmWithBot(user));
      return { user, guild, channel, context: context === 0 ? 1 : context, isUserInstall, locale };
    }
    this.world.member(guild, user);
    const channel = place.channel ?? (guild === this.guild ? this.channel : this.world.channelsOf(guild)[0]);
    if (channel === undefined) throw new NotOffered("The guild has no channel to write in");
    return { user, guild, channel, context: 0, isUserInstall, locale };
  }

  /** The command as this member would find it in this place.
   *  Throws: NotOffered. */
  #offered(name: string, type: number, scene: Scene): JsonObject {
    const { guild, context, isUserInstall, user } = scene;
    if (scene.channel.thread?.archived === true)
      throw new NotOffered("Commands do not work in an archived thread");
    const command = this.commands.find(name, type, guild?.isBotMember === true ? guild.id : undefined);
    if (command === undefined)
      throw new NotOffered(`No command "${name}" of type ${type} is registered here`);
    if (command["guild_id"] !== undefined) return command;
    const contexts = Array.isArray(command["contexts"]) ? command["contexts"] : [0, 1, 2];
    const installs = Array.isArray(command["integration_types"]) ? command["integration_types"] : [0];
    if (!contexts.includes(context)) throw new NotOffered(`"${name}" is not offered in context ${context}`);
    if (!installs.includes(isUserInstall ? 1 : 0))
      throw new NotOffered(`"${name}" is not offered to this install`);
    if (context === 2 && !isUserInstall) throw new NotOffered("Between others only a user install works");
    if (guild !== undefined && !guild.isBotMember && !isUserInstall) {
      throw new NotOffered("The bot is no member of this guild");
    }
    const needed = textOf(command["default_member_permissions"]);
    if (guild !== undefined && needed !== undefined) {
      const { permissions } = this.world.member(guild, user);
      const isAdministrator = (permissions & permission.administrator) !== 0n;
      const bits = BigInt(needed);
      if (!isAdministrator && (bits === 0n || (permissions & bits) !== bits)) {
        throw new NotOffered(`"${name}" is hidden from this member`);
      }
    }
    return command;
  }

  #componentOf(
    call: Omit<Place, "channel" | "guild"> & { readonly message: Message; readonly customId: string },
  ): {
    scene: Scene;
    item: JsonObject;
  } {
    const { message, customId } = call;
    const { channel, origin } = message;
    if (message.isDeleted) throw new NotOffered("The message is gone");
    if (channel.thread?.archived === true)
      throw new NotOffered("Components do not work in an archived thread");
    const userInstall = call.userInstall ?? (origin !== undefined && origin.owners["0"] === undefined);
    const scene = this.#scene({ ...call, userInstall, channel, guild: channel.guild ?? null });
    if (message.isEphemeral && origin?.user !== scene.user)
      throw new NotOffered("Only its reader sees this message");
    const item = flatten(message.components).find((candidate) => candidate["custom_id"] === customId);
    if (item === undefined) throw new NotOffered(`The message has no component "${customId}"`);
    if (item["disabled"] === true) throw new NotOffered(`"${customId}" is disabled`);
    return { scene, item };
  }

  #resolved(scene: Scene): Resolved {
    return new Resolved(this.world, this.#stage.origin, scene.guild, scene.channel.id);
  }

  #send(scene: Scene, event: Event): Exchange {
    const { user, guild, channel, isUserInstall } = scene;
    const owners: JsonObject = isUserInstall ? { "1": user.id } : { "0": guild?.id ?? "0" };
    const member = guild === undefined ? undefined : this.world.member(guild, user);
    const mayUseExternal = member === undefined || (member.permissions & permission.useExternalApps) !== 0n;
    const interaction = new Interaction({
      world: this.world,
      type: event.type,
      user,
      guild,
      channel,
      owners,
      isForcedEphemeral: isUserInstall && !mayUseExternal,
      windowMs: this.interactionWindowMs,
      tokenLifeMs: this.tokenLifeMs,
      ...(event.source === undefined ? {} : { source: event.source }),
      ...(event.focusedType === undefined ? {} : { focusedType: event.focusedType }),
    });
    this.#interactions.set(interaction.id, interaction);
    this.#byToken.set(interaction.token, interaction);

    const appPermissions = guild?.isBotMember === false ? 0n : this.world.botPermissionsIn(channel);
    const data: JsonObject = {
      id: interaction.id,
      application_id: this.applicationId,
      type: event.type,
      token: interaction.token,
      version: 1,
      data: event.data,
      channel: wireChannel(channel),
      channel_id: channel.id,
      locale: scene.locale,
      context: scene.context,
      authorizing_integration_owners: owners,
      entitlements: [],
      attachment_size_limit: 10 * 1024 * 1024,
      app_permissions: String(appPermissions),
      ...(event.source === undefined ? {} : { message: wireMessage(this.#stage.origin, event.source) }),
      ...(guild === undefined || member === undefined
        ? { user: wireUser(user) }
        : {
            guild_id: guild.id,
            guild_locale: guild.locale,
            guild: { id: guild.id, locale: guild.locale, features: [] },
            member: wireMember(member),
          }),
    };
    const deliver = () =>
      this.#gateway.dispatch({
        name: "INTERACTION_CREATE",
        data,
        // Where the bot is no member the event has no guild of any shard: the first one gets it.
        guildId: guild?.isBotMember === true ? guild.id : undefined,
        onSent: () => {
          interaction.sentAt ??= performance.now();
        },
      });
    if (this.eventDelayMs > 0) setTimeout(deliver, this.eventDelayMs);
    else deliver();
    return new Exchange(interaction);
  }

  /** Waits for the first response, or for the end of the window. */
  async #settled(exchange: Exchange): Promise<Exchange> {
    const { interaction } = exchange;
    const timer = setTimeout(() => interaction.expireIfDue(), this.interactionWindowMs + 5);
    try {
      await exchange.until(
        () => interaction.isAnswered || interaction.isExpired,
        this.interactionWindowMs + 2000,
      );
    } finally {
      clearTimeout(timer);
    }
    return exchange;
  }
}

function commandData(command: JsonObject): JsonObject {
  return {
    id: command["id"] ?? "",
    name: command["name"] ?? "",
    type: command["type"] ?? 1,
    ...(command["guild_id"] === undefined ? {} : { guild_id: command["guild_id"] }),
  };
}

function nested(call: { group?: string; subcommand?: string }, options: JsonObject[]): JsonObject[] {
  let inner = options;
  if (call.subcommand !== undefined) inner = [{ name: call.subcommand, type: 1, options: inner }];
  if (call.group !== undefined) inner = [{ name: call.group, type: 2, options: inner }];
  return inner;
}

function resolvedPart(resolved: Resolved): JsonObject {
  const parts = resolved.toJson();
  return Object.keys(parts).length === 0 ? {} : { resolved: parts };
}

/** Opens a platform on a free port of 127.0.0.1. */
export async function startPlatform(options: PlatformOptions = {}): Promise<Platform> {
  const token = options.token ?? "loopback-bot-token";
  const http = new HttpSide(token, options.latencyMs ?? 0, options.globalPerSecond ?? 50);
  const port = await http.listen(options.port ?? 0);
  return new Platform(http, port, token, options);
}
