/** The event that tells a bot of an interaction. */

import { FILE_BYTES } from "./check-message.ts";
import type { Resolved } from "./client-rules.ts";
import type { Interaction } from "./interaction.ts";
import type { JsonObject } from "./json.ts";
import type { Scene } from "./scene.ts";
import { wireChannel, wireMember, wireMessage, wireUser } from "./wire.ts";
import type { World } from "./world.ts";

/** The body of INTERACTION_CREATE. */
export function interactionEvent(
  world: World,
  origin: string,
  scene: Scene,
  interaction: Interaction,
  data: JsonObject,
): JsonObject {
  const { user, guild, channel } = scene;
  const { source, type, owners } = interaction.options;
  return {
    id: interaction.id,
    application_id: world.bot.id,
    type,
    token: interaction.token,
    version: 1,
    data,
    channel: wireChannel(channel),
    channel_id: channel.id,
    locale: scene.locale,
    context: scene.context,
    authorizing_integration_owners: owners,
    entitlements: [],
    attachment_size_limit: FILE_BYTES,
    app_permissions: String(world.botPermissionsIn(channel)),
    ...(source === undefined ? {} : { message: wireMessage(origin, source) }),
    ...(guild === undefined
      ? { user: wireUser(user) }
      : {
          guild_id: guild.id,
          guild_locale: guild.locale,
          guild: { id: guild.id, locale: guild.locale, features: [] },
          member: wireMember(world.member(guild, user)),
        }),
  };
}

/** The head of a command's `data`. */
export function commandData(command: JsonObject): JsonObject {
  return {
    id: command["id"] ?? "",
    name: command["name"] ?? "",
    type: command["type"] ?? 1,
    ...(command["guild_id"] === undefined ? {} : { guild_id: command["guild_id"] }),
  };
}

/** Wraps options into their subcommand and group. */
export function nested(call: { group?: string; subcommand?: string }, options: JsonObject[]): JsonObject[] {
  let inner = options;
  if (call.subcommand !== undefined) inner = [{ name: call.subcommand, type: 1, options: inner }];
  if (call.group !== undefined) inner = [{ name: call.group, type: 2, options: inner }];
  return inner;
}

export function resolvedPart(resolved: Resolved): JsonObject {
  const parts = resolved.toJson();
  return Object.keys(parts).length === 0 ? {} : { resolved: parts };
}
