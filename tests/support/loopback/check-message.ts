/** Whether the platform would accept a message's body.
 *  Source: Discord's documentation, pages Message Resource and API Reference, as of July–August 2026. */

import { checkMediaUrl, checkMessageComponents } from "./check-components.ts";
import { Field } from "./field.ts";
import { isObject, type JsonObject, objectsOf, textOf } from "./json.ts";
import type { UploadedFile } from "./multipart.ts";
import { Problems, refuse } from "./refusals.ts";

export const flag = {
  suppressEmbeds: 4,
  ephemeral: 64,
  loading: 128,
  silent: 4096,
  componentsV2: 32768,
} as const;

export const FILE_BYTES = 10 * 1024 * 1024;
const EMBED_CHARACTERS = 6000;
const EMBED_IMAGE = /\.(jpe?g|png|webp|gif)$/i;

export interface BodyContext {
  readonly files: readonly UploadedFile[];
  /** What the message being edited already holds; absent for a new one. */
  readonly existing?: {
    readonly flags: number;
    readonly content: string;
    readonly embeds: readonly JsonObject[];
    readonly components: readonly JsonObject[];
    readonly attachments: readonly { readonly id: string; readonly filename: string }[];
  };
  /** The interaction response's flags differ from those of a channel message. */
  readonly mayBeEphemeral: boolean;
}

/** Throws: Refusal 400/50035 with the fields at fault, 400/50006 for an empty message, 413/40005 for a large file. */
export function checkMessage(body: JsonObject, context: BodyContext): void {
  const { files, existing } = context;
  if (files.some((file) => file.bytes.length > FILE_BYTES)) throw refuse.requestTooLarge();

  const problems = new Problems();
  const root = new Field(body, [], problems);
  const flags = root.key("flags").number(0, 2 ** 31 - 1) ?? 0;
  const isV2 = ((flags | (existing?.flags ?? 0)) & flag.componentsV2) !== 0;
  if ((flags & flag.ephemeral) !== 0 && !context.mayBeEphemeral && existing === undefined) {
    root.key("flags").wrong("MESSAGE_FLAGS", "Only interaction responses can be ephemeral");
  }

  root.key("content").text(0, 2000);
  root.key("tts").boolean();
  const nonce = root.key("nonce");
  if (typeof nonce.value !== "number") nonce.text(0, 25);
  else nonce.number(-Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER);
  checkAllowedMentions(root.key("allowed_mentions"));
  const fileNames = checkAttachments(root, context);
  const isFileKnown = (name: string) => fileNames.has(name);
  checkEmbeds(root.key("embeds"), isFileKnown);
  checkMessageComponents(root.key("components"), isV2, isFileKnown);
  if (isV2) checkOnlyComponents(root, existing);
  problems.throwIfAny();

  if (isEmptyMessage(body, context)) throw refuse.emptyMessage();
}

/** With components v2, content and embeds are refused; an edit that turns it on must clear what is there. */
function checkOnlyComponents(root: Field, existing: BodyContext["existing"]): void {
  const content =
    root.object["content"] ?? (root.object["content"] === null ? "" : (existing?.content ?? ""));
  const embeds = root.object["embeds"] ?? (root.object["embeds"] === null ? [] : (existing?.embeds ?? []));
  if (content !== "") {
    root
      .key("content")
      .wrong("MESSAGE_CANNOT_USE_LEGACY_FIELDS_WITH_COMPONENTS_V2", "Not with IS_COMPONENTS_V2");
  }
  if (Array.isArray(embeds) && embeds.length > 0) {
    root
      .key("embeds")
      .wrong("MESSAGE_CANNOT_USE_LEGACY_FIELDS_WITH_COMPONENTS_V2", "Not with IS_COMPONENTS_V2");
  }
  for (const key of ["poll", "sticker_ids"]) {
    if (!root.key(key).isAbsent) {
      root.key(key).wrong("MESSAGE_CANNOT_USE_LEGACY_FIELDS_WITH_COMPONENTS_V2", "Not with IS_COMPONENTS_V2");
    }
  }
}

function isEmptyMessage(body: JsonObject, { files, existing }: BodyContext): boolean {
  const left = <T>(key: string, before: T | undefined): unknown =>
    body[key] === undefined ? before : body[key];
  const isFilled = (value: unknown) =>
    Array.isArray(value) ? value.length > 0 : typeof value === "string" && value.trim() !== "";
  return !(
    files.length > 0 ||
    isFilled(left("content", existing?.content)) ||
    isFilled(left("embeds", existing?.embeds)) ||
    isFilled(left("components", existing?.components)) ||
    (existing !== undefined && isFilled(left("attachments", existing.attachments))) ||
    isFilled(body["sticker_ids"]) ||
    isObject(body["poll"])
  );
}

function checkAllowedMentions(mentions: Field): void {
  if (mentions.isAbsent) return;
  const parse = mentions.key("parse").items(0, 3);
  for (const item of parse) item.choice(["roles", "users", "everyone"]);
  for (const kind of ["users", "roles"]) {
    const ids = mentions.key(kind).items(0, 100);
    for (const id of ids) id.snowflake();
    if (ids.length > 0 && parse.some((item) => item.value === kind)) {
      mentions.wrong(
        "MESSAGE_ALLOWED_MENTIONS_PARSE_EXCLUSIVE",
        `parse:["${kind}"] and ${kind}: [ids...] are mutually exclusive.`,
      );
    }
  }
  mentions.key("replied_user").boolean();
}

/** The names a body may refer to by `attachment://`: files of this request, and those an edit keeps. */
function checkAttachments(root: Field, { files, existing }: BodyContext): Set<string> {
  const list = root.key("attachments");
  if (files.length > 10) list.wrong("BASE_TYPE_MAX_LENGTH", "Must be 10 or fewer in length.");
  const names = new Set(files.map((file) => file.name));
  if (list.value === undefined) {
    for (const attachment of existing?.attachments ?? []) names.add(attachment.filename);
    return names;
  }
  for (const item of list.items(0, 10)) {
    item.key("description").text(0, 1024);
    const id = item.object["id"];
    const kept = existing?.attachments.find((attachment) => attachment.id === id);
    const uploaded = files.find((file) => String(id) === file.index);
    if (kept !== undefined) names.add(kept.filename);
    else if (uploaded === undefined)
      item.key("id").wrong("ATTACHMENT_NOT_FOUND", `No file for the id ${String(id)}`);
  }
  return names;
}

function checkEmbeds(list: Field, isFileKnown: (name: string) => boolean): void {
  const embeds = list.items(0, 10);
  for (const embed of embeds) checkEmbed(embed, isFileKnown);
  const characters = objectsOf(list.value).reduce((sum, embed) => sum + embedCharacters(embed), 0);
  if (characters > EMBED_CHARACTERS) {
    list.wrong("MAX_EMBED_SIZE_EXCEEDED", `Embed size exceeds maximum size of ${EMBED_CHARACTERS}`);
  }
}

function checkEmbed(embed: Field, isFileKnown: (name: string) => boolean): void {
  if (!isObject(embed.value)) {
    embed.wrong("MODEL_TYPE_CONVERT", "Only dictionaries may be used in a ModelType");
    return;
  }
  embed.key("title").text(0, 256);
  embed.key("description").text(0, 4096);
  embed.key("color").number(0, 0xffffff);
  const timestamp = embed.key("timestamp");
  if (!timestamp.isAbsent && Number.isNaN(Date.parse(textOf(timestamp.value) ?? ""))) {
    timestamp.wrong("DATE_TIME_TYPE_PARSE", "Could not parse it. Should be ISO 8601.");
  }
  if (!embed.key("footer").isAbsent) embed.key("footer").key("text").requiredText(1, 2048);
  if (!embed.key("author").isAbsent) embed.key("author").key("name").requiredText(1, 256);
  for (const field of embed.key("fields").items(0, 25)) {
    for (const [key, max] of [
      ["name", 256],
      ["value", 1024],
    ] as const) {
      const text = field.key(key).requiredText(1, max);
      if (text !== undefined && text !== "" && text.trim() === "") {
        field.key(key).wrong("BASE_TYPE_REQUIRED", "This field is required");
      }
    }
    field.key("inline").boolean();
  }
  for (const [key, inner] of [
    ["image", "url"],
    ["thumbnail", "url"],
    ["author", "icon_url"],
    ["footer", "icon_url"],
  ] as const) {
    const url = embed.key(key).key(inner);
    if (url.isAbsent) {
      if (inner === "url" && !embed.key(key).isAbsent) url.required();
      continue;
    }
    checkMediaUrl(url, isFileKnown, false);
    const name = /^attachment:\/\/(.*)$/.exec(textOf(url.value) ?? "")?.[1];
    if (name !== undefined && !EMBED_IMAGE.test(name))
      url.wrong("URL_TYPE_INVALID", `Not a picture: "${name}"`);
  }
  if (!embed.key("url").isAbsent) checkMediaUrl(embed.key("url"), () => false, false);
}

function embedCharacters(embed: JsonObject): number {
  const length = (text: unknown) => (typeof text === "string" ? text.trim().length : 0);
  const footer = isObject(embed["footer"]) ? length(embed["footer"]["text"]) : 0;
  const author = isObject(embed["author"]) ? length(embed["author"]["name"]) : 0;
  const fields = objectsOf(embed["fields"]).reduce(
    (sum, field) => sum + length(field["name"]) + length(field["value"]),
    0,
  );
  return length(embed["title"]) + length(embed["description"]) + footer + author + fields;
}
