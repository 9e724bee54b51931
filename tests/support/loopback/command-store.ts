/** The registered commands, per scope: global ones and each guild's own.
 *  Source: Discord's documentation, page Application Commands, as of July–August 2026. */

import { checkCommand, checkCommandList } from "./check-command.ts";
import { isObject, type Json, type JsonObject, numberOf, objectsOf, textOf } from "./json.ts";
import { refuse } from "./refusals.ts";
import type { World } from "./world.ts";

const CREATIONS_PER_DAY = 200;
const GLOBAL = "global";

export class CommandStore {
  readonly #world: World;
  readonly #applicationId: string;
  readonly #scopes = new Map<string, JsonObject[]>();
  readonly #creations = new Map<string, number>();

  constructor(world: World, applicationId: string) {
    this.#world = world;
    this.#applicationId = applicationId;
  }

  list(guildId?: string): JsonObject[] {
    return this.#scopes.get(guildId ?? GLOBAL) ?? [];
  }

  /** The command a member of that guild would see under the name; a guild's own goes first. */
  find(name: string, type: number, guildId?: string): JsonObject | undefined {
    const own = guildId === undefined ? [] : this.list(guildId);
    return [...own, ...this.list()].find((command) => command["name"] === name && command["type"] === type);
  }

  /** PUT: replaces the whole list of the scope, of all types; known names keep their ids. */
  replaceAll(body: Json | undefined, guildId?: string): JsonObject[] {
    checkCommandList(body);
    const next = objectsOf(body).map((command) => this.#stored(command, guildId));
    this.#scopes.set(guildId ?? GLOBAL, next);
    return next;
  }

  /** POST: adds one, or updates the one of that name and type. */
  put(body: Json | undefined, guildId?: string): { command: JsonObject; isNew: boolean } {
    const given = isObject(body) ? body : {};
    checkCommand(given);
    const known = this.#namesake(given, guildId);
    const command = this.#stored(given, guildId);
    const next = [...this.list(guildId).filter((other) => other !== known), command];
    checkCommandList(next);
    this.#scopes.set(guildId ?? GLOBAL, next);
    return { command, isNew: known === undefined };
  }

  /** PATCH: changes the fields given. */
  change(id: string, body: Json | undefined, guildId?: string): JsonObject {
    const known = this.get(id, guildId);
    const merged = { ...known, ...(isObject(body) ? body : {}), id, version: this.#world.snowflake() };
    const next = this.list(guildId).map((other) => (other === known ? merged : other));
    checkCommandList(next);
    this.#scopes.set(guildId ?? GLOBAL, next);
    return merged;
  }

  /** Throws: Refusal 10063. */
  get(id: string, guildId?: string): JsonObject {
    const command = this.list(guildId).find((candidate) => candidate["id"] === id);
    if (command === undefined) throw refuse.unknownCommand();
    return command;
  }

  delete(id: string, guildId?: string): void {
    const command = this.get(id, guildId);
    this.#scopes.set(
      guildId ?? GLOBAL,
      this.list(guildId).filter((other) => other !== command),
    );
  }

  #namesake(command: JsonObject, guildId?: string): JsonObject | undefined {
    const type = numberOf(command["type"]) ?? 1;
    return this.list(guildId).find((other) => other["name"] === command["name"] && other["type"] === type);
  }

  #stored(command: JsonObject, guildId?: string): JsonObject {
    const known = this.#namesake(command, guildId);
    if (known === undefined) this.#countCreation(guildId ?? GLOBAL);
    return {
      default_member_permissions: null,
      nsfw: false,
      description: "",
      ...(guildId === undefined ? { contexts: null, integration_types: [0] } : {}),
      ...command,
      ...(guildId === undefined ? {} : { guild_id: guildId }),
      type: numberOf(command["type"]) ?? 1,
      id: textOf(known?.["id"]) ?? this.#world.snowflake(),
      application_id: this.#applicationId,
      version: this.#world.snowflake(),
    };
  }

  #countCreation(scope: string): void {
    const count = (this.#creations.get(scope) ?? 0) + 1;
    if (count > CREATIONS_PER_DAY) throw refuse.tooManyCreations();
    this.#creations.set(scope, count);
  }
}
