/** The platform's things in the form they travel in. */

import { isObject, type Json, type JsonObject } from "./json.ts";
import type { Attachment, Message } from "./message.ts";
import {
  type Channel,
  channelType,
  type Guild,
  type Member,
  type Role,
  type User,
  type World,
} from "./world.ts";

export function wireUser(user: User): JsonObject {
  return {
    id: user.id,
    username: user.username,
    discriminator: "0",
    global_name: user.isBot ? null : user.username,
    avatar: null,
    bot: user.isBot,
    public_flags: 0,
  };
}

export function wireRole(role: Role): JsonObject {
  return {
    id: role.id,
    name: role.name,
    color: 0,
    colors: { primary_color: 0, secondary_color: null, tertiary_color: null },
    hoist: false,
    icon: null,
    unicode_emoji: null,
    position: 1,
    permissions: "0",
    managed: false,
    mentionable: role.mentionable,
    flags: 0,
  };
}

/** Members in `resolved` lack their user, deaf and mute. */
export function wireResolvedMember(member: Member): JsonObject {
  return {
    roles: member.roles.map((role) => role.id),
    permissions: String(member.permissions),
    joined_at: "2024-03-01T10:00:00.000000+00:00",
    nick: null,
    avatar: null,
    banner: null,
    premium_since: null,
    pending: false,
    communication_disabled_until: null,
    flags: 0,
  };
}

export function wireMember(member: Member): JsonObject {
  return { ...wireResolvedMember(member), user: wireUser(member.user), deaf: false, mute: false };
}

export function wireChannel(channel: Channel): JsonObject {
  const common: JsonObject = { id: channel.id, type: channel.type, flags: channel.requiresTag ? 16 : 0 };
  const lastMessageId = [...channel.messages.keys()].at(-1) ?? null;
  if (channel.guild === undefined) {
    return { ...common, recipients: channel.recipients.map(wireUser), last_message_id: lastMessageId };
  }
  const inGuild: JsonObject = {
    ...common,
    guild_id: channel.guild.id,
    name: channel.name,
    parent_id: channel.parent?.id ?? null,
    last_message_id: lastMessageId,
    rate_limit_per_user: 0,
  };
  if (channel.thread !== undefined) {
    return {
      ...inGuild,
      owner_id: channel.guild.id,
      message_count: channel.messages.size,
      member_count: 1,
      total_message_sent: channel.messages.size,
      applied_tags: [...channel.thread.appliedTags],
      thread_metadata: {
        archived: channel.thread.archived,
        locked: channel.thread.locked,
        auto_archive_duration: channel.thread.autoArchiveMinutes,
        archive_timestamp: new Date(channel.thread.createdAt).toISOString(),
        create_timestamp: new Date(channel.thread.createdAt).toISOString(),
      },
    };
  }
  return {
    ...inGuild,
    position: 0,
    nsfw: false,
    topic: null,
    permission_overwrites: [],
    ...(channel.type === channelType.forum
      ? {
          available_tags: channel.tags.map((tag) => ({
            ...tag,
            moderated: false,
            emoji_id: null,
            emoji_name: null,
          })),
          default_reaction_emoji: null,
          default_sort_order: null,
          default_forum_layout: 0,
        }
      : {}),
  };
}

export function wireAttachment(origin: string, attachment: Attachment): JsonObject {
  const url = `${origin}${attachment.path}`;
  return {
    id: attachment.id,
    filename: attachment.filename,
    size: attachment.bytes.length,
    url,
    proxy_url: url,
    content_type: attachment.contentType,
    ...(attachment.description === undefined ? {} : { description: attachment.description }),
  };
}

export function wireMessage(origin: string, message: Message): JsonObject {
  const urls = new Map(
    message.attachments.map((file) => [`attachment://${file.filename}`, `${origin}${file.path}`]),
  );
  const { origin: source } = message;
  return {
    id: message.id,
    channel_id: message.channel.id,
    type: source !== undefined && source.interactionType === 2 ? 20 : message.replyTo === undefined ? 0 : 19,
    author: wireUser(message.author),
    content: message.content,
    embeds: message.embeds.map((embed) => ({ type: "rich", ...withUrls(embed, urls) })),
    components: message.components.map((item) => withUrls(item, urls)),
    attachments: message.attachments.map((attachment) => wireAttachment(origin, attachment)),
    flags: message.flags,
    timestamp: new Date(message.createdAt).toISOString(),
    edited_timestamp: message.editedAt === undefined ? null : new Date(message.editedAt).toISOString(),
    tts: false,
    pinned: false,
    mention_everyone: message.pings.everyone,
    mentions: [],
    mention_roles: [...message.pings.roles],
    ...(message.nonce === undefined ? {} : { nonce: message.nonce }),
    ...(message.replyTo === undefined
      ? {}
      : { message_reference: { type: 0, channel_id: message.channel.id, message_id: message.replyTo } }),
    ...(source === undefined ? {} : wireOrigin(message.author, source)),
  };
}

function wireOrigin(author: User, origin: NonNullable<Message["origin"]>): JsonObject {
  return {
    application_id: author.id,
    webhook_id: author.id,
    interaction_metadata: {
      id: origin.interactionId,
      type: origin.interactionType,
      user: wireUser(origin.user),
      authorizing_integration_owners: origin.owners,
    },
  };
}

/** `attachment://name` becomes the address of the stored file. */
function withUrls(part: JsonObject, urls: ReadonlyMap<string, string>): JsonObject {
  const swap = (value: Json): Json => {
    if (typeof value === "string") return urls.get(value) ?? value;
    if (Array.isArray(value)) return value.map(swap);
    return isObject(value) ? withUrls(value, urls) : value;
  };
  return Object.fromEntries(
    Object.entries(part).map(([key, value]) => [key, key === "custom_id" ? value : swap(value)]),
  );
}

/** A guild as GUILD_CREATE brings it. */
export function wireGuild(world: World, guild: Guild): JsonObject {
  const everyone: Role = { id: guild.id, name: "@everyone", mentionable: false };
  return {
    id: guild.id,
    name: guild.name,
    icon: null,
    splash: null,
    discovery_splash: null,
    banner: null,
    description: null,
    vanity_url_code: null,
    owner_id: guild.id,
    application_id: null,
    afk_channel_id: null,
    afk_timeout: 300,
    system_channel_id: null,
    system_channel_flags: 0,
    rules_channel_id: null,
    public_updates_channel_id: null,
    safety_alerts_channel_id: null,
    verification_level: 0,
    default_message_notifications: 1,
    explicit_content_filter: 0,
    mfa_level: 0,
    nsfw_level: 0,
    premium_tier: 0,
    premium_subscription_count: 0,
    premium_progress_bar_enabled: false,
    preferred_locale: guild.locale,
    features: [],
    emojis: [],
    stickers: [],
    roles: [everyone, ...guild.roles.values()].map((role) => ({
      ...wireRole(role),
      ...(role === everyone ? { permissions: String(guild.botPermissions), position: 0 } : {}),
    })),
    channels: world
      .channelsOf(guild)
      .filter((channel) => channel.thread === undefined)
      .map(wireChannel),
    threads: world
      .threadsOf(guild)
      .filter((channel) => channel.thread?.archived === false)
      .map(wireChannel),
    members: [wireMember(world.member(guild, world.bot))],
    member_count: guild.members.size,
    joined_at: "2024-03-01T10:00:00.000000+00:00",
    large: false,
    unavailable: false,
    max_members: 500_000,
    presences: [],
    voice_states: [],
    stage_instances: [],
    guild_scheduled_events: [],
    soundboard_sounds: [],
  };
}
