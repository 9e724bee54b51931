/** A chat platform on the loopback interface: what a bot connects to, and what a test plays the members with. */

import { performance } from "node:perf_hooks";
import {
  type FieldValue,
  NotOffered,
  optionsAt,
  Resolved,
  writeModalFields,
  writeOptions,
  writeSelection,
} from "./client-rules.ts";
import { CommandStore } from "./command-store.ts";
import type { Backstage } from "./endpoint.ts";
import { Exchange } from "./exchange.ts";
import type { Faults } from "./faults.ts";
import { Gateway } from "./gateway.ts";
import { type Bucket, HttpSide, type LoggedRequest } from "./http-side.ts";
import { Interaction, interactionType } from "./interaction.ts";
import { commandData, interactionEvent, nested, resolvedPart } from "./interaction-event.ts";
import { type JsonObject, numberOf } from "./json.ts";
import { Message } from "./message.ts";
import { announceMessage } from "./message-routes.ts";
import {
  type ComponentCall,
  componentOf,
  offered,
  type Place,
  type Scene,
  type SlashCall,
  sceneOf,
} from "./scene.ts";
import { wireMessage } from "./wire.ts";
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

interface Happening {
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
    const { user, channel } = sceneOf(this, place);
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
    const scene = sceneOf(this, call);
    const command = offered(this, call.command, 1, scene);
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
    const scene = sceneOf(this, call);
    const command = offered(this, call.command, 1, scene);
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
    const scene = sceneOf(this, call);
    const isMessage = call.target instanceof Message;
    const command = offered(this, call.command, isMessage ? 3 : 2, scene);
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
  async press(call: ComponentCall): Promise<Exchange> {
    const { scene, item } = componentOf(this, call);
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
    call: ComponentCall & { readonly values: readonly (string | User | Role | Channel)[] },
  ): Promise<Exchange> {
    const { scene, item } = componentOf(this, call);
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
    const scene = sceneOf(this, {
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

  #resolved(scene: Scene): Resolved {
    return new Resolved(this.world, this.#stage.origin, scene.guild, scene.channel.id);
  }

  #send(scene: Scene, happening: Happening): Exchange {
    const { user, guild, channel, isUserInstall } = scene;
    const owners: JsonObject = isUserInstall ? { "1": user.id } : { "0": guild?.id ?? "0" };
    const member = guild === undefined ? undefined : this.world.member(guild, user);
    const mayUseExternal = member === undefined || (member.permissions & permission.useExternalApps) !== 0n;
    const interaction = new Interaction({
      world: this.world,
      type: happening.type,
      user,
      guild,
      channel,
      owners,
      isForcedEphemeral: isUserInstall && !mayUseExternal,
      windowMs: this.interactionWindowMs,
      tokenLifeMs: this.tokenLifeMs,
      ...(happening.source === undefined ? {} : { source: happening.source }),
      ...(happening.focusedType === undefined ? {} : { focusedType: happening.focusedType }),
    });
    this.#interactions.set(interaction.id, interaction);
    this.#byToken.set(interaction.token, interaction);

    const event = interactionEvent(this.world, this.#stage.origin, scene, interaction, happening.data);
    const deliver = () =>
      this.#gateway.dispatch({
        name: "INTERACTION_CREATE",
        data: event,
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

/** Opens a platform on a free port of 127.0.0.1. */
export async function startPlatform(options: PlatformOptions = {}): Promise<Platform> {
  const token = options.token ?? "loopback-bot-token";
  const http = new HttpSide(token, options.latencyMs ?? 0, options.globalPerSecond ?? 50);
  const port = await http.listen(options.port ?? 0);
  return new Platform(http, port, token, options);
}
