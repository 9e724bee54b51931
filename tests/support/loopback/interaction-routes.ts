/** Endpoints that an interaction's own token opens. */

import {
  type ApiAnswer,
  type ApiRequest,
  asObject,
  type Backstage,
  done,
  found,
  ok,
  type Route,
  route,
} from "./endpoint.ts";
import { callbackAnswer, type Interaction } from "./interaction.ts";
import { refuse } from "./refusals.ts";
import { wireMessage } from "./wire.ts";

export const interactionRoutes: readonly Route[] = [
  route("POST", "/interactions/:id/:token/callback", respondToInteraction, false),
  route(
    "POST",
    "/webhooks/:id/:token",
    (stage, { json, files }, _app, token) => {
      const message = byToken(stage, token).followUp(asObject(json), files);
      return ok(wireMessage(stage.origin, message));
    },
    false,
  ),
  route(
    "GET",
    "/webhooks/:id/:token/messages/:message",
    (stage, _request, _app, token, id) =>
      ok(wireMessage(stage.origin, byToken(stage, token).messageOf(id ?? ""))),
    false,
  ),
  route(
    "PATCH",
    "/webhooks/:id/:token/messages/:message",
    (stage, { json, files }, _app, token, id) =>
      ok(wireMessage(stage.origin, byToken(stage, token).edit(id ?? "", asObject(json), files))),
    false,
  ),
  route(
    "DELETE",
    "/webhooks/:id/:token/messages/:message",
    (stage, _request, _app, token, id) => {
      byToken(stage, token).delete(id ?? "");
      return done;
    },
    false,
  ),
];

function respondToInteraction(
  stage: Backstage,
  { json, files, query, receivedAt }: ApiRequest,
  id?: string,
  token?: string,
): ApiAnswer {
  const interaction = stage.interactionById(id ?? "");
  if (interaction === undefined || interaction.token !== token) throw refuse.unknownInteraction();
  interaction.respond(asObject(json), files, receivedAt);
  if (query.get("with_response") !== "true") return done;
  const { original } = interaction;
  return ok(
    callbackAnswer(interaction, original === undefined ? undefined : wireMessage(stage.origin, original)),
  );
}

function byToken(stage: Backstage, token: string | undefined): Interaction {
  return found(stage.interactionByToken(token ?? ""), refuse.deadToken);
}
