/** Who does something, where, and what they are offered there. */

import { flatten } from "./check-components.ts";
import { NotOffered, type OptionValue } from "./client-rules.ts";
import type { CommandStore } from "./command-store.ts";
import { type JsonObject, textOf } from "./json.ts";
import type { Message } from "./message.ts";
import { type Channel, type Guild, permission, type User, type World } from "./world.ts";

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

/** The use of a component: the place is its message's. */
export type ComponentCall = Omit<Place, "channel" | "guild"> & {
  readonly message: Message;
  readonly customId: string;
};

/** What a scene is set from. */
export interface Stage {
  readonly world: World;
  readonly commands: CommandStore;
  /** Where things happen unless a call says otherwise. */
  readonly guild: Guild;
  readonly channel: Channel;
}

export interface Scene {
  readonly user: User;
  readonly guild: Guild | undefined;
  readonly channel: Channel;
  readonly context: 0 | 1 | 2;
  readonly isUserInstall: boolean;
  readonly locale: string;
}

/** Throws: NotOffered. */
export function sceneOf({ world, guild: usualGuild, channel: usualChannel }: Stage, place: Place): Scene {
  const user = typeof place.user === "string" ? world.user(place.user) : place.user;
  const isUserInstall = place.userInstall ?? false;
  const isOutsideGuild = place.guild === null || (place.context ?? 0) !== 0;
  const given = place.channel?.guild ?? place.guild ?? undefined;
  const guild =
    place.channel !== undefined ? place.channel.guild : isOutsideGuild ? undefined : (given ?? usualGuild);
  const locale = place.locale ?? user.locale;
  if (guild === undefined) {
    const context = place.context ?? (place.channel?.isBotInside === false ? 2 : 1);
    const between = () => world.dmBetween(user, world.user("a-friend"));
    const channel = place.channel ?? (context === 2 ? between() : world.dmWithBot(user));
    return { user, guild, channel, context: context === 0 ? 1 : context, isUserInstall, locale };
  }
  world.member(guild, user);
  const channel = place.channel ?? (guild === usualGuild ? usualChannel : world.channelsOf(guild)[0]);
  if (channel === undefined) throw new NotOffered("The guild has no channel to write in");
  return { user, guild, channel, context: 0, isUserInstall, locale };
}

/** The command as this member would find it in this place.
 *  Throws: NotOffered. */
export function offered({ world, commands }: Stage, name: string, type: number, scene: Scene): JsonObject {
  const { guild, context, isUserInstall, user } = scene;
  if (scene.channel.thread?.archived === true)
    throw new NotOffered("Commands do not work in an archived thread");
  const command = commands.find(name, type, guild?.isBotMember === true ? guild.id : undefined);
  if (command === undefined) throw new NotOffered(`No command "${name}" of type ${type} is registered here`);
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
    const { permissions } = world.member(guild, user);
    const isAdministrator = (permissions & permission.administrator) !== 0n;
    const bits = BigInt(needed);
    if (!isAdministrator && (bits === 0n || (permissions & bits) !== bits)) {
      throw new NotOffered(`"${name}" is hidden from this member`);
    }
  }
  return command;
}

/** The component of that id, if this user could use it.
 *  Throws: NotOffered. */
export function componentOf(
  stage: Stage,
  call: ComponentCall,
): {
  scene: Scene;
  item: JsonObject;
} {
  const { message, customId } = call;
  const { channel, origin } = message;
  if (message.isDeleted) throw new NotOffered("The message is gone");
  if (channel.thread?.archived === true) throw new NotOffered("Components do not work in an archived thread");
  const userInstall = call.userInstall ?? (origin !== undefined && origin.owners["0"] === undefined);
  const scene = sceneOf(stage, { ...call, userInstall, channel, guild: channel.guild ?? null });
  if (message.isEphemeral && origin?.user !== scene.user)
    throw new NotOffered("Only its reader sees this message");
  const item = flatten(message.components).find((candidate) => candidate["custom_id"] === customId);
  if (item === undefined) throw new NotOffered(`The message has no component "${customId}"`);
  if (item["disabled"] === true) throw new NotOffered(`"${customId}" is disabled`);
  return { scene, item };
}
