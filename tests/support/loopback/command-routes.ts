/** Endpoints for registering commands. */

import { type Backstage, done, ok, type Route, route } from "./endpoint.ts";
import { refuse } from "./refusals.ts";

export const commandRoutes: readonly Route[] = [
  ...["/applications/:id/commands", "/applications/:id/guilds/:id/commands"].flatMap((path) => [
    route("GET", path, ({ commands }, _request, _app, guildId) => ok([...commands.list(guildId)])),
    route("PUT", path, (stage, { json }, app, guildId) => {
      demandScope(stage, app, guildId);
      return ok(stage.commands.replaceAll(json, guildId));
    }),
    route("POST", path, (stage, { json }, app, guildId) => {
      demandScope(stage, app, guildId);
      const { command, isNew } = stage.commands.put(json, guildId);
      return { status: isNew ? 201 : 200, body: command };
    }),
  ]),
  route("GET", "/applications/:id/commands/:id", ({ commands }, _r, _app, id) => ok(commands.get(id ?? ""))),
  route("PATCH", "/applications/:id/commands/:id", ({ commands }, { json }, _app, id) =>
    ok(commands.change(id ?? "", json)),
  ),
  route("DELETE", "/applications/:id/commands/:id", ({ commands }, _r, _app, id) => {
    commands.delete(id ?? "");
    return done;
  }),
  route("GET", "/applications/:id/guilds/:id/commands/:id", ({ commands }, _r, _app, guildId, id) =>
    ok(commands.get(id ?? "", guildId)),
  ),
  route("PATCH", "/applications/:id/guilds/:id/commands/:id", ({ commands }, { json }, _app, guildId, id) =>
    ok(commands.change(id ?? "", json, guildId)),
  ),
  route("DELETE", "/applications/:id/guilds/:id/commands/:id", ({ commands }, _r, _app, guildId, id) => {
    commands.delete(id ?? "", guildId);
    return done;
  }),
];

function demandScope(
  { world, applicationId }: Backstage,
  app: string | undefined,
  guildId: string | undefined,
): void {
  if (app !== applicationId) throw refuse.missingAccess();
  if (guildId !== undefined && world.guilds.get(guildId)?.isBotMember !== true) throw refuse.missingAccess();
}
