/** The HTTP endpoints a bot uses, version 10. */

import { commandRoutes } from "./command-routes.ts";
import { type Backstage, found, ok, type Route, route } from "./endpoint.ts";
import { interactionRoutes } from "./interaction-routes.ts";
import type { JsonObject } from "./json.ts";
import { messageRoutes } from "./message-routes.ts";
import { refuse } from "./refusals.ts";
import { threadRoutes } from "./thread-routes.ts";
import { wireMember, wireUser } from "./wire.ts";
import type { Guild, World } from "./world.ts";

export const routes: readonly Route[] = [
  route("GET", "/gateway/bot", ({ gateway, shards }) =>
    ok({
      url: gateway.url,
      shards,
      session_start_limit: {
        total: 1000,
        remaining: 1000 - gateway.identifies,
        reset_after: 0,
        max_concurrency: 1,
      },
    }),
  ),
  route("GET", "/gateway", ({ gateway }) => ok({ url: gateway.url }), false),
  route("GET", "/users/@me", ({ world }) => ok(wireUser(world.bot))),
  route("GET", "/users/:id", ({ world }, _request, id) =>
    ok(wireUser(found(world.users.get(id ?? ""), refuse.unknownUser))),
  ),
  route("GET", "/applications/@me", (stage) => ok(wireApplication(stage))),
  route("PATCH", "/applications/@me", (stage) => ok(wireApplication(stage))),
  route("GET", "/oauth2/applications/@me", (stage) => ok(wireApplication(stage))),

  route("GET", "/guilds/:id/members/:id", ({ world }, _request, guildId, userId) => {
    const guild = guildOf(world, guildId);
    return ok(wireMember(found(guild.members.get(userId ?? ""), refuse.unknownMember)));
  }),
  ...commandRoutes,
  ...interactionRoutes,
  ...messageRoutes,
  ...threadRoutes,
];

function wireApplication({ world, applicationId }: Backstage): JsonObject {
  return {
    id: applicationId,
    name: world.bot.username,
    icon: null,
    description: "",
    bot_public: true,
    bot_require_code_grant: false,
    verify_key: "",
    flags: 0,
    team: null,
    approximate_guild_count: world.guilds.size,
    approximate_user_install_count: 0,
    integration_types_config: { "0": {}, "1": {} },
  };
}

function guildOf(world: World, id: string | undefined): Guild {
  const guild = found(world.guilds.get(id ?? ""), refuse.unknownGuild);
  if (!guild.isBotMember) throw refuse.missingAccess();
  return guild;
}
