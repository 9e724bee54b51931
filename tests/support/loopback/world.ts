/** What exists on the platform: users, guilds, channels, and the clock by which it all happens. */

import type { Message } from "./message.ts";

/** Permission bits. Source: Discord's documentation, page Permissions. */
export const permission = {
  administrator: 1n << 3n,
  viewChannel: 1n << 10n,
  sendMessages: 1n << 11n,
  manageMessages: 1n << 13n,
  embedLinks: 1n << 14n,
  attachFiles: 1n << 15n,
  readHistory: 1n << 16n,
  mentionEveryone: 1n << 17n,
  useCommands: 1n << 31n,
  manageThreads: 1n << 34n,
  createPublicThreads: 1n << 35n,
  createPrivateThreads: 1n << 36n,
  sendInThreads: 1n << 38n,
  useExternalApps: 1n << 50n,
} as const;

const usualPermissions =
  permission.viewChannel |
  permission.sendMessages |
  permission.embedLinks |
  permission.attachFiles |
  permission.readHistory |
  permission.useCommands |
  permission.createPublicThreads |
  permission.createPrivateThreads |
  permission.sendInThreads |
  permission.useExternalApps;

export const channelType = {
  text: 0,
  dm: 1,
  groupDm: 3,
  publicThread: 11,
  privateThread: 12,
  forum: 15,
} as const;

export interface User {
  readonly id: string;
  readonly username: string;
  readonly isBot: boolean;
  locale: string;
  /** Direct messages to this user fail with 50007. */
  refusesDms: boolean;
}

export interface Role {
  readonly id: string;
  readonly name: string;
  mentionable: boolean;
}

export interface Member {
  readonly user: User;
  roles: Role[];
  permissions: bigint;
}

export interface Guild {
  readonly id: string;
  readonly name: string;
  locale: string;
  /** False where only members installed the app for themselves: no cache, no channel posts. */
  isBotMember: boolean;
  botPermissions: bigint;
  readonly roles: Map<string, Role>;
  readonly members: Map<string, Member>;
}

export interface ThreadState {
  archived: boolean;
  locked: boolean;
  autoArchiveMinutes: number;
  appliedTags: string[];
  readonly createdAt: number;
}

export interface Channel {
  readonly id: string;
  readonly type: number;
  name: string;
  readonly guild: Guild | undefined;
  readonly parent: Channel | undefined;
  /** The people of a direct conversation, the bot left out. */
  readonly recipients: readonly User[];
  /** False for conversations between others, where the bot was only called as a user install. */
  readonly isBotInside: boolean;
  /** What the bot may not do here, on top of what the guild denies it. */
  botDenied: bigint;
  requiresTag: boolean;
  readonly tags: { readonly id: string; readonly name: string }[];
  readonly thread: ThreadState | undefined;
  readonly messages: Map<string, Message>;
}

const EPOCH_MS = 1_420_070_400_000;

export class World {
  readonly users = new Map<string, User>();
  readonly guilds = new Map<string, Guild>();
  readonly channels = new Map<string, Channel>();
  readonly files = new Map<string, { readonly bytes: Uint8Array; readonly contentType: string }>();
  readonly bot: User;
  #clockOffsetMs = 0;
  #count = 0n;

  constructor(botId: string | undefined) {
    this.bot = {
      id: botId ?? this.snowflake(),
      username: "standpipe-under-test",
      isBot: true,
      locale: "en-US",
      refusesDms: true,
    };
    this.users.set(this.bot.id, this.bot);
  }

  /** The platform's clock: the machine's, moved forward by `advance`. */
  now(): number {
    return Date.now() + this.#clockOffsetMs;
  }

  advance(ms: number): void {
    this.#clockOffsetMs += ms;
  }

  /** Ids count up in time, as the platform's do. */
  snowflake(): string {
    this.#count += 1n;
    return String((BigInt(this.now() - EPOCH_MS) << 22n) + (this.#count & 0x3fffffn));
  }

  /** The user of that name, made on first mention. */
  user(name: string): User {
    for (const user of this.users.values()) if (user.username === name) return user;
    const user: User = {
      id: this.snowflake(),
      username: name,
      isBot: false,
      locale: "en-GB",
      refusesDms: false,
    };
    this.users.set(user.id, user);
    return user;
  }

  addGuild(name: string, isBotMember = true): Guild {
    const guild: Guild = {
      id: this.snowflake(),
      name,
      locale: "en-GB",
      isBotMember,
      botPermissions: usualPermissions,
      roles: new Map(),
      members: new Map(),
    };
    this.guilds.set(guild.id, guild);
    return guild;
  }

  addRole(guild: Guild, name: string, mentionable = false): Role {
    const role: Role = { id: this.snowflake(), name, mentionable };
    guild.roles.set(role.id, role);
    return role;
  }

  /** The user's membership of the guild, made on first mention. */
  member(guild: Guild, user: User): Member {
    const found = guild.members.get(user.id);
    if (found !== undefined) return found;
    const member: Member = { user, roles: [], permissions: usualPermissions };
    guild.members.set(user.id, member);
    return member;
  }

  addChannel(guild: Guild, name: string, type: number = channelType.text): Channel {
    return this.#keep({ type, name, guild });
  }

  addThread(parent: Channel, name: string, type: number, autoArchiveMinutes: number, id?: string): Channel {
    const thread = {
      archived: false,
      locked: false,
      autoArchiveMinutes,
      appliedTags: [],
      createdAt: this.now(),
    };
    return this.#keep({
      type,
      name,
      guild: parent.guild,
      parent,
      thread,
      ...(id === undefined ? {} : { id }),
    });
  }

  /** The one conversation between the bot and this user. */
  dmWithBot(user: User): Channel {
    for (const channel of this.channels.values()) {
      if (channel.type === channelType.dm && channel.isBotInside && channel.recipients[0] === user)
        return channel;
    }
    return this.#keep({ type: channelType.dm, name: "", guild: undefined, recipients: [user] });
  }

  /** A conversation between others. */
  dmBetween(...people: User[]): Channel {
    for (const channel of this.channels.values()) {
      const { recipients, isBotInside } = channel;
      if (isBotInside || recipients.length !== people.length) continue;
      if (people.every((person) => recipients.includes(person))) return channel;
    }
    const type = people.length > 2 ? channelType.groupDm : channelType.dm;
    return this.#keep({ type, name: "", guild: undefined, recipients: people, isBotInside: false });
  }

  message(id: string): Message | undefined {
    for (const channel of this.channels.values()) {
      const message = channel.messages.get(id);
      if (message !== undefined) return message;
    }
    return undefined;
  }

  threadsOf(guild: Guild): Channel[] {
    return this.channelsOf(guild).filter((channel) => channel.thread !== undefined);
  }

  channelsOf(guild: Guild): Channel[] {
    return [...this.channels.values()].filter((channel) => channel.guild === guild);
  }

  /** What the bot may do in a channel, as a set of bits. */
  botPermissionsIn(channel: Channel): bigint {
    if (channel.guild === undefined) return channel.isBotInside ? usualPermissions : 0n;
    if (!channel.guild.isBotMember) return 0n;
    const denied = channel.botDenied | (channel.parent?.botDenied ?? 0n);
    return channel.guild.botPermissions & ~denied;
  }

  #keep(
    some: Pick<Channel, "type" | "name" | "guild"> &
      Partial<Pick<Channel, "id" | "parent" | "recipients" | "isBotInside" | "thread">>,
  ): Channel {
    const channel: Channel = {
      id: some.id ?? this.snowflake(),
      type: some.type,
      name: some.name,
      guild: some.guild,
      parent: some.parent,
      recipients: some.recipients ?? [],
      isBotInside: some.isBotInside ?? some.guild?.isBotMember ?? true,
      botDenied: 0n,
      requiresTag: false,
      tags: [],
      thread: some.thread,
      messages: new Map(),
    };
    this.channels.set(channel.id, channel);
    return channel;
  }
}
