/** Whom a message would notify.
 *  Source: Discord's documentation, page Message Resource, Allowed Mentions, as of July–August 2026. */

import { component, flatten } from "./check-components.ts";
import { isObject, type JsonObject, textOf, textsOf } from "./json.ts";

export interface Pings {
  readonly users: readonly string[];
  readonly roles: readonly string[];
  readonly everyone: boolean;
}

export const noPings: Pings = { users: [], roles: [], everyone: false };

export interface PingContext {
  readonly isInteractionResponse: boolean;
  /** The bot holds MENTION_EVERYONE in this place. */
  readonly mayMentionEveryone: boolean;
  readonly isRoleMentionable: (roleId: string) => boolean;
  /** Author of the message replied to, if any. */
  readonly repliedTo?: string;
}

/** Mentions count in content and in text displays, embeds do not notify. Markup inside code spans is counted
 *  too, so the answer errs towards more pings. */
export function pingsOf(body: JsonObject, components: readonly JsonObject[], context: PingContext): Pings {
  const texts = [textOf(body["content"]) ?? ""];
  for (const item of flatten(components)) {
    if (item["type"] === component.text) texts.push(textOf(item["content"]) ?? "");
  }
  const text = texts.join("\n");
  const mentionedUsers = [...text.matchAll(/<@!?(\d+)>/g)].map((match) => match[1] ?? "");
  const mentionedRoles = [...text.matchAll(/<@&(\d+)>/g)].map((match) => match[1] ?? "");
  const mentionsEveryone = /@(everyone|here)/.test(text);

  const allowed = isObject(body["allowed_mentions"]) ? body["allowed_mentions"] : undefined;
  const parse =
    allowed === undefined ? defaultParse(context.isInteractionResponse) : textsOf(allowed["parse"]);
  const listedUsers = textsOf(allowed?.["users"]);
  const listedRoles = textsOf(allowed?.["roles"]);

  const users = mentionedUsers.filter((id) => parse.includes("users") || listedUsers.includes(id));
  const roles = mentionedRoles
    .filter((id) => parse.includes("roles") || listedRoles.includes(id))
    .filter((id) => context.isRoleMentionable(id) || context.mayMentionEveryone);
  const isReplyPinged = allowed === undefined || allowed["replied_user"] === true;
  if (context.repliedTo !== undefined && isReplyPinged) users.push(context.repliedTo);

  return {
    users: [...new Set(users)],
    roles: [...new Set(roles)],
    everyone: mentionsEveryone && parse.includes("everyone") && context.mayMentionEveryone,
  };
}

function defaultParse(isInteractionResponse: boolean): readonly string[] {
  return isInteractionResponse ? ["users"] : ["users", "roles", "everyone"];
}
