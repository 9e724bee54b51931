/** What the member's own client would refuse to send, so that a test cannot ask a bot the impossible.
 *  Source: Discord's documentation, pages Application Commands and Component Reference, as of July–August 2026. */

import { optionType } from "./check-command.ts";
import { component, SELECTS } from "./check-components.ts";
import { isObject, type Json, type JsonObject, numberOf, objectsOf, textOf } from "./json.ts";
import { storeFile } from "./message.ts";
import { wireAttachment, wireChannel, wireResolvedMember, wireRole, wireUser } from "./wire.ts";
import type { Channel, Guild, Role, User, World } from "./world.ts";

/** The member's client would not have sent this. */
export class NotOffered extends Error {
  override readonly name = "NotOffered";
}

export interface FileInput {
  readonly name: string;
  readonly data: Uint8Array | string;
  readonly contentType?: string;
}

export type OptionValue = string | number | boolean | User | Role | Channel | FileInput;

/** Collects the `resolved` part of an interaction's data. */
export class Resolved {
  readonly #world: World;
  readonly #origin: string;
  readonly #guild: Guild | undefined;
  readonly #channelId: string;
  readonly #parts: Record<string, JsonObject> = {};

  constructor(world: World, origin: string, guild: Guild | undefined, channelId: string) {
    this.#world = world;
    this.#origin = origin;
    this.#guild = guild;
    this.#channelId = channelId;
  }

  add(value: User | Role | Channel | FileInput): string {
    if ("username" in value) {
      this.#part("users")[value.id] = wireUser(value);
      const member = this.#guild?.members.get(value.id);
      if (member !== undefined) this.#part("members")[value.id] = wireResolvedMember(member);
      return value.id;
    }
    if ("mentionable" in value) {
      this.#part("roles")[value.id] = wireRole(value);
      return value.id;
    }
    if ("data" in value) {
      const bytes = typeof value.data === "string" ? new TextEncoder().encode(value.data) : value.data;
      const contentType = value.contentType ?? "application/octet-stream";
      const file = storeFile(this.#world, this.#channelId, { name: value.name, contentType, bytes });
      this.#part("attachments")[file.id] = { ...wireAttachment(this.#origin, file), ephemeral: true };
      return file.id;
    }
    this.#part("channels")[value.id] = { ...wireChannel(value), permissions: String(2n ** 40n - 1n) };
    return value.id;
  }

  addMessage(id: string, message: JsonObject): void {
    this.#part("messages")[id] = message;
  }

  toJson(): JsonObject {
    return { ...this.#parts };
  }

  #part(name: string): JsonObject {
    const part = this.#parts[name] ?? {};
    this.#parts[name] = part;
    return part;
  }
}

/** The options of the command, group or subcommand asked for.
 *  Throws: NotOffered. */
export function optionsAt(
  command: JsonObject,
  group: string | undefined,
  subcommand: string | undefined,
): JsonObject[] {
  let options = objectsOf(command["options"]);
  for (const [name, type] of [
    [group, optionType.group],
    [subcommand, optionType.subcommand],
  ] as const) {
    if (name === undefined) continue;
    const found = options.find((option) => option["name"] === name && option["type"] === type);
    if (found === undefined) throw new NotOffered(`${textOf(command["name"])} has no ${name}`);
    options = objectsOf(found["options"]);
  }
  const isNested = options.some(({ type }) => type === optionType.subcommand || type === optionType.group);
  if (isNested) throw new NotOffered(`${textOf(command["name"])} cannot be used without a subcommand`);
  return options;
}

/** Puts typed values into the form of `data.options`, with the checks a client makes before sending.
 *  Throws: NotOffered. */
export function writeOptions(
  definitions: readonly JsonObject[],
  values: Readonly<Record<string, OptionValue>>,
  resolved: Resolved,
): JsonObject[] {
  for (const name of Object.keys(values)) {
    if (!definitions.some((definition) => definition["name"] === name))
      throw new NotOffered(`no option "${name}"`);
  }
  const written: JsonObject[] = [];
  for (const definition of definitions) {
    const name = textOf(definition["name"]) ?? "";
    const value = values[name];
    if (value === undefined) {
      if (definition["required"] === true) throw new NotOffered(`option "${name}" is required`);
      continue;
    }
    const type = numberOf(definition["type"]) ?? 0;
    const sent = typeof value === "object" ? resolved.add(value) : value;
    checkValue(definition, name, type, sent, value);
    written.push({ name, type, value: sent });
  }
  return written;
}

const PLAIN_TYPES: Readonly<Record<number, string>> = {
  [optionType.string]: "string",
  [optionType.integer]: "number",
  [optionType.number]: "number",
  [optionType.boolean]: "boolean",
};

function checkValue(
  definition: JsonObject,
  name: string,
  type: number,
  sent: Json,
  value: OptionValue,
): void {
  const plain = PLAIN_TYPES[type];
  const isFitting = plain === undefined ? typeof value === "object" : typeof value === plain;
  if (!isFitting || (type === optionType.attachment) !== (typeof value === "object" && "data" in value)) {
    throw new NotOffered(`option "${name}" of type ${type} cannot hold ${JSON.stringify(sent)}`);
  }
  if (type === optionType.integer && !Number.isInteger(value))
    throw new NotOffered(`"${name}" must be whole`);
  const choices = objectsOf(definition["choices"]);
  if (choices.length > 0 && !choices.some((choice) => choice["value"] === sent)) {
    throw new NotOffered(`${JSON.stringify(sent)} is no choice of "${name}"`);
  }
  const size = typeof value === "string" ? value.length : typeof value === "number" ? value : 0;
  const unit = type === optionType.string ? "length" : "value";
  const min = numberOf(definition[`min_${unit}`]) ?? (type === optionType.string ? 1 : -Infinity);
  const max = numberOf(definition[`max_${unit}`]) ?? (type === optionType.string ? 6000 : Infinity);
  if ((type === optionType.string || plain === "number") && (size < min || size > max)) {
    throw new NotOffered(`"${name}" must be between ${min} and ${max} in ${unit}`);
  }
}

/** The submitted state of a modal's inputs. File uploads take files, selects and groups lists, the rest text.
 *  Throws: NotOffered. */
export type FieldValue = string | boolean | readonly string[] | readonly FileInput[];

export function writeModalFields(
  modal: JsonObject,
  values: Readonly<Record<string, FieldValue>>,
  resolved: Resolved,
): JsonObject[] {
  const used = new Set<string>();
  const write = (input: JsonObject): JsonObject => {
    const customId = textOf(input["custom_id"]) ?? "";
    used.add(customId);
    return {
      ...modalValue(input, customId, values[customId], resolved),
      id: input["id"] ?? 0,
      custom_id: customId,
    };
  };
  const written = objectsOf(modal["components"]).map((item, index) => {
    const common: JsonObject = { type: item["type"] ?? 0, id: item["id"] ?? index + 1 };
    if (item["type"] === component.row)
      return { ...common, components: objectsOf(item["components"]).map(write) };
    const inner = item["component"];
    return isObject(inner) ? { ...common, component: write(inner) } : common;
  });
  for (const name of Object.keys(values)) {
    if (!used.has(name)) throw new NotOffered(`the modal has no input "${name}"`);
  }
  return written;
}

function modalValue(
  input: JsonObject,
  name: string,
  value: FieldValue | undefined,
  resolved: Resolved,
): JsonObject {
  const type = numberOf(input["type"]) ?? 0;
  const isRequired = input["required"] !== false;
  if (type === component.checkbox) return { type, value: value === true };
  if (type === component.textInput || type === component.radioGroup) {
    const text = typeof value === "string" ? value : (textOf(input["value"]) ?? "");
    if (isRequired && text === "") throw new NotOffered(`"${name}" is required`);
    if (type === component.radioGroup) return { type, value: text === "" ? null : text };
    const min = numberOf(input["min_length"]) ?? 0;
    const max = numberOf(input["max_length"]) ?? 4000;
    if (text !== "" && (text.length < min || text.length > max)) {
      throw new NotOffered(`"${name}" must be between ${min} and ${max} in length`);
    }
    return { type, value: text };
  }
  const items = Array.isArray(value) ? value : [];
  checkCount(input, name, items.length, isRequired);
  const listed: string[] = items.map((item: string | FileInput) =>
    typeof item === "string" ? item : resolved.add(item),
  );
  if (type === component.stringSelect || type === component.checkboxGroup) checkListed(input, name, listed);
  return { type, values: listed };
}

/** The values of a select as submitted.
 *  Throws: NotOffered. */
export function writeSelection(
  select: JsonObject,
  values: readonly (string | User | Role | Channel)[],
  resolved: Resolved,
): string[] {
  const type = numberOf(select["type"]) ?? 0;
  const name = textOf(select["custom_id"]) ?? "";
  if (!SELECTS.includes(type)) throw new NotOffered(`"${name}" is no select`);
  checkCount(select, name, values.length, numberOf(select["min_values"]) !== 0);
  const listed = values.map((value) => (typeof value === "string" ? value : resolved.add(value)));
  if (type === component.stringSelect) checkListed(select, name, listed);
  return listed;
}

function checkCount(input: JsonObject, name: string, count: number, isRequired: boolean): void {
  if (!isRequired && count === 0) return;
  const min = numberOf(input["min_values"]) ?? 1;
  const max = numberOf(input["max_values"]) ?? (input["type"] === component.checkboxGroup ? 10 : 1);
  if (count < min || count > max)
    throw new NotOffered(`"${name}" takes ${min} to ${max} values, not ${count}`);
}

function checkListed(input: JsonObject, name: string, values: readonly string[]): void {
  const offered = objectsOf(input["options"]).map((option) => option["value"]);
  const foreign = values.find((value) => !offered.includes(value));
  if (foreign !== undefined) throw new NotOffered(`"${foreign}" is no option of "${name}"`);
}
