/** How the platform says no: an HTTP status, its own numeric code, and for a bad body the fields at fault. */

import type { Json, JsonObject } from "./json.ts";

export class Refusal extends Error {
  override readonly name = "Refusal";
  readonly status: number;
  readonly code: number;
  readonly errors: JsonObject | undefined;
  readonly headers: Readonly<Record<string, string>>;
  readonly extra: JsonObject;

  constructor(
    status: number,
    code: number,
    message: string,
    more: { errors?: JsonObject; headers?: Record<string, string>; extra?: JsonObject } = {},
  ) {
    super(message);
    this.status = status;
    this.code = code;
    this.errors = more.errors;
    this.headers = more.headers ?? {};
    this.extra = more.extra ?? {};
  }

  body(): JsonObject {
    const body: JsonObject = { message: this.message, code: this.code, ...this.extra };
    if (this.errors !== undefined) body["errors"] = this.errors;
    return body;
  }
}

/** The answers a bot meets, with the codes of the page Opcodes and Status Codes. */
export const refuse = {
  unauthorized: () => new Refusal(401, 0, "401: Unauthorized"),
  unknownRoute: () => new Refusal(404, 0, "404: Not Found"),
  wrongMethod: () => new Refusal(405, 0, "405: Method Not Allowed"),
  unknownChannel: () => new Refusal(404, 10003, "Unknown Channel"),
  unknownGuild: () => new Refusal(404, 10004, "Unknown Guild"),
  unknownMember: () => new Refusal(404, 10007, "Unknown Member"),
  unknownMessage: () => new Refusal(404, 10008, "Unknown Message"),
  unknownUser: () => new Refusal(404, 10013, "Unknown User"),
  unknownWebhook: () => new Refusal(404, 10015, "Unknown Webhook"),
  unknownInteraction: () => new Refusal(404, 10062, "Unknown interaction"),
  unknownCommand: () => new Refusal(404, 10063, "Unknown application command"),
  tooManyCreations: () =>
    new Refusal(400, 30034, "Max number of daily application command creates has been reached (200)"),
  requestTooLarge: () => new Refusal(413, 40005, "Request entity too large"),
  noDirectForumMessages: () =>
    new Refusal(400, 40058, "Cannot message this channel until after post is created"),
  alreadyAcknowledged: () => new Refusal(400, 40060, "Interaction has already been acknowledged."),
  forumTagRequired: () => new Refusal(400, 40067, "A tag is required to create a forum post in this channel"),
  tooManyFollowUps: () => new Refusal(400, 40094, "This interaction has reached its follow-up limit"),
  missingAccess: () => new Refusal(403, 50001, "Missing Access"),
  notYourMessage: () => new Refusal(403, 50005, "Cannot edit a message authored by another user"),
  emptyMessage: () => new Refusal(400, 50006, "Cannot send an empty message"),
  noDirectMessages: () => new Refusal(403, 50007, "Cannot send messages to this user"),
  missingPermission: () => new Refusal(403, 50013, "Missing Permissions"),
  deadToken: () => new Refusal(401, 50027, "Invalid Webhook Token"),
  badBody: (errors: JsonObject) => new Refusal(400, 50035, "Invalid Form Body", { errors }),
  archivedThread: () => new Refusal(400, 50083, "Thread is archived"),
  badJson: () => new Refusal(400, 50109, "The request body contains invalid JSON."),
  threadExists: () => new Refusal(400, 160004, "A thread has already been created for this message"),
};

type Path = readonly (string | number)[];

/** Collects what is wrong with a body, field by field, in the nested form the platform answers with. */
export class Problems {
  readonly #tree: JsonObject = {};
  #count = 0;

  add(path: Path, code: string, message: string): void {
    this.#count += 1;
    let node = this.#tree;
    for (const step of path) {
      const next = node[step];
      if (typeof next === "object" && next !== null && !Array.isArray(next)) {
        node = next;
      } else {
        const fresh: JsonObject = {};
        node[step] = fresh;
        node = fresh;
      }
    }
    const found = node["_errors"];
    const list: Json[] = Array.isArray(found) ? found : [];
    list.push({ code, message });
    node["_errors"] = list;
  }

  get found(): boolean {
    return this.#count > 0;
  }

  /** Throws: Refusal 400/50035 when anything was added. */
  throwIfAny(): void {
    if (this.found) throw refuse.badBody(this.#tree);
  }
}
