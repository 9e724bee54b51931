/** A message as the platform keeps it: its latest state, and what a test wants to read off it. */

import { component, flatten } from "./check-components.ts";
import { checkMessage, flag } from "./check-message.ts";
import { isObject, type JsonObject, objectsOf, textOf } from "./json.ts";
import { noPings, type Pings, pingsOf } from "./mentions.ts";
import type { UploadedFile } from "./multipart.ts";
import { type Channel, permission, type User, type World } from "./world.ts";

export interface Attachment {
  readonly id: string;
  readonly filename: string;
  readonly contentType: string;
  readonly description: string | undefined;
  readonly bytes: Uint8Array;
  /** Path below the platform's own file host. */
  readonly path: string;
}

export interface Button {
  readonly label: string;
  readonly customId: string | undefined;
  readonly url: string | undefined;
  readonly isDisabled: boolean;
}

/** The interaction a message answers. */
export interface MessageOrigin {
  readonly interactionId: string;
  readonly interactionType: number;
  readonly user: User;
  readonly owners: JsonObject;
}

export class Message {
  readonly id: string;
  readonly channel: Channel;
  readonly author: User;
  readonly createdAt: number;
  readonly origin: MessageOrigin | undefined;
  content = "";
  embeds: JsonObject[] = [];
  components: JsonObject[] = [];
  attachments: Attachment[] = [];
  flags = 0;
  editedAt: number | undefined;
  editCount = 0;
  nonce: string | number | undefined;
  replyTo: string | undefined;
  /** Whom this message would have notified, over its whole life: a ping in any version counts. */
  pings: Pings = noPings;
  isDeleted = false;

  constructor(world: World, channel: Channel, author: User, origin?: MessageOrigin, id?: string) {
    this.id = id ?? world.snowflake();
    this.channel = channel;
    this.author = author;
    this.origin = origin;
    this.createdAt = world.now();
  }

  get isEphemeral(): boolean {
    return (this.flags & flag.ephemeral) !== 0;
  }

  /** A deferred response that shows the loading state. */
  get isLoading(): boolean {
    return (this.flags & flag.loading) !== 0;
  }

  /** All text a reader sees, in the order of the screen; buttons left out. */
  get text(): string {
    const parts = [this.content];
    for (const embed of this.embeds) parts.push(...embedTexts(embed));
    for (const item of flatten(this.components)) {
      if (item["type"] === component.text) parts.push(textOf(item["content"]) ?? "");
    }
    return parts.filter((part) => part !== "").join("\n");
  }

  get buttons(): Button[] {
    return flatten(this.components)
      .filter((item) => item["type"] === component.button)
      .map((item) => ({
        label: textOf(item["label"]) ?? "",
        customId: textOf(item["custom_id"]),
        url: textOf(item["url"]),
        isDisabled: item["disabled"] === true,
      }));
  }

  delete(): void {
    this.isDeleted = true;
    this.channel.messages.delete(this.id);
  }
}

function embedTexts(embed: JsonObject): string[] {
  const inner = (key: string, field: string) =>
    isObject(embed[key]) ? textOf(embed[key][field]) : undefined;
  const texts = [inner("author", "name"), textOf(embed["title"]), textOf(embed["description"])];
  for (const field of objectsOf(embed["fields"])) texts.push(textOf(field["name"]), textOf(field["value"]));
  texts.push(inner("footer", "text"));
  return texts.filter((text) => text !== undefined);
}

export interface WriteOptions {
  readonly mayBeEphemeral: boolean;
  readonly isInteractionResponse: boolean;
  readonly isEdit: boolean;
}

/** Checks a body and writes it into the message: the first time as a whole, later field by field.
 *  Throws: Refusal, and the message is left as it was. */
export function writeMessage(
  world: World,
  message: Message,
  body: JsonObject,
  files: readonly UploadedFile[],
  options: WriteOptions,
): void {
  const existing = options.isEdit
    ? {
        flags: message.flags & flag.componentsV2,
        content: message.content,
        embeds: message.embeds,
        components: message.components,
        attachments: message.attachments,
      }
    : undefined;
  checkMessage(body, {
    files,
    mayBeEphemeral: options.mayBeEphemeral,
    ...(existing === undefined ? {} : { existing }),
  });

  if (body["content"] !== undefined) message.content = textOf(body["content"]) ?? "";
  if (body["embeds"] !== undefined) message.embeds = objectsOf(body["embeds"]);
  if (body["components"] !== undefined) message.components = numbered(objectsOf(body["components"]));
  const nonce = body["nonce"];
  if (typeof nonce === "string" || typeof nonce === "number") message.nonce = nonce;
  const reference = isObject(body["message_reference"])
    ? textOf(body["message_reference"]["message_id"])
    : undefined;
  if (reference !== undefined) message.replyTo = reference;
  writeFlags(message, typeof body["flags"] === "number" ? body["flags"] : 0, options);
  writeAttachments(world, message, body, files);

  const repliedTo = message.replyTo === undefined ? undefined : world.message(message.replyTo)?.author.id;
  const { guild } = message.channel;
  const pings = pingsOf({ ...body, content: message.content }, message.components, {
    isInteractionResponse: options.isInteractionResponse,
    mayMentionEveryone: (world.botPermissionsIn(message.channel) & permission.mentionEveryone) !== 0n,
    isRoleMentionable: (id) => guild?.roles.get(id)?.mentionable === true,
    ...(repliedTo === undefined || options.isEdit ? {} : { repliedTo }),
  });
  message.pings = {
    users: [...new Set([...message.pings.users, ...pings.users])],
    roles: [...new Set([...message.pings.roles, ...pings.roles])],
    everyone: message.pings.everyone || pings.everyone,
  };
}

/** Whether a response is ephemeral is settled by the first one; components v2 can be added, never removed. */
function writeFlags(message: Message, given: number, options: WriteOptions): void {
  const settable =
    flag.suppressEmbeds | flag.componentsV2 | (options.isEdit ? 0 : flag.ephemeral | flag.silent);
  message.flags =
    ((options.isEdit ? message.flags & ~flag.loading : message.flags) | (given & settable)) >>> 0;
}

function writeAttachments(
  world: World,
  message: Message,
  body: JsonObject,
  files: readonly UploadedFile[],
): void {
  const listed = body["attachments"] === undefined ? undefined : objectsOf(body["attachments"]);
  const kept =
    listed === undefined
      ? message.attachments
      : message.attachments.filter((attachment) => listed.some((item) => item["id"] === attachment.id));
  const added = files.map((file) => {
    const entry = listed?.find((item) => String(item["id"]) === file.index);
    return storeFile(world, message.channel.id, file, textOf(entry?.["description"]));
  });
  message.attachments = [...kept, ...added];
}

/** Keeps a file on the platform's file host. */
export function storeFile(
  world: World,
  channelId: string,
  file: Pick<UploadedFile, "name" | "contentType" | "bytes">,
  description?: string,
): Attachment {
  const id = world.snowflake();
  const path = `/cdn/attachments/${channelId}/${id}/${encodeURIComponent(file.name)}`;
  world.files.set(path, { bytes: file.bytes, contentType: file.contentType });
  return { id, filename: file.name, contentType: file.contentType, description, bytes: file.bytes, path };
}

/** Components without an id get one, counted through the tree. */
function numbered(components: JsonObject[]): JsonObject[] {
  const copies = structuredClone(components);
  const all = flatten(copies);
  const taken = new Set(all.map((item) => item["id"]));
  let next = 1;
  for (const item of all) {
    if (item["id"] !== undefined && item["id"] !== 0) continue;
    while (taken.has(next)) next += 1;
    item["id"] = next;
    taken.add(next);
  }
  return copies;
}
