/** What an endpoint is, and what all of them lean on. */

import type { CommandStore } from "./command-store.ts";
import type { Gateway } from "./gateway.ts";
import type { Interaction } from "./interaction.ts";
import { isObject, type Json, type JsonObject } from "./json.ts";
import type { Message } from "./message.ts";
import type { UploadedFile } from "./multipart.ts";
import { refuse } from "./refusals.ts";
import { type Channel, permission, type World } from "./world.ts";

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

export interface Route {
  readonly method: string;
  readonly path: RegExp;
  /** Needs the bot's token; the interaction endpoints carry their own. */
  readonly needsBot: boolean;
  readonly handle: (stage: Backstage, request: ApiRequest, ...ids: string[]) => ApiAnswer;
}

const ID = "(\\d{15,20})";

export function route(method: string, path: string, handle: Route["handle"], needsBot = true): Route {
  const pattern = path
    .replaceAll(":id", ID)
    .replaceAll(":token", "([^/]+)")
    .replaceAll(":message", "(@original|\\d{15,20})");
  return { method, path: new RegExp(`^${pattern}$`), needsBot, handle };
}

export const ok = (body: Json): ApiAnswer => ({ status: 200, body });
export const done: ApiAnswer = { status: 204 };

export function found<T>(value: T | undefined, otherwise: () => Error): T {
  if (value === undefined) throw otherwise();
  return value;
}

export function asObject(json: Json | undefined): JsonObject {
  return isObject(json) ? json : {};
}

/** Throws: Refusal 10003, and 50001 where the bot cannot see the channel. */
export function channelOf(stage: Backstage, id: string | undefined): Channel {
  const channel = found(stage.world.channels.get(id ?? ""), refuse.unknownChannel);
  if ((stage.world.botPermissionsIn(channel) & permission.viewChannel) === 0n) throw refuse.missingAccess();
  return channel;
}

export function demand({ world }: Backstage, channel: Channel, bits: bigint): void {
  if ((world.botPermissionsIn(channel) & bits) !== bits) throw refuse.missingPermission();
}

/** SEND_MESSAGES has no effect in threads: another bit decides there. */
export function demandSend(stage: Backstage, channel: Channel): void {
  demand(stage, channel, channel.thread === undefined ? permission.sendMessages : permission.sendInThreads);
}

export function messageIn(channel: Channel, id: string | undefined): Message {
  const message = channel.messages.get(id ?? "");
  if (message === undefined || message.isEphemeral) throw refuse.unknownMessage();
  return message;
}
