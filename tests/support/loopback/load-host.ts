/** A process of its own that hosts the platform and generates load, so that the bot under measurement has its
 *  processor to itself. Started by `measureBot`, spoken to over the process channel. */

import type { JsonObject } from "./json.ts";
import { type LoadPlan, type LoadResult, runLoad } from "./load.ts";
import { type Platform, startPlatform } from "./platform.ts";

export type HostOrder =
  | { readonly kind: "register"; readonly commands: JsonObject[] }
  | { readonly kind: "await-bot"; readonly timeoutMs: number }
  | { readonly kind: "run"; readonly plan: LoadPlan }
  | { readonly kind: "close" };

export type HostReport =
  | { readonly kind: "listening"; readonly apiUrl: string; readonly token: string }
  | { readonly kind: "done" }
  | { readonly kind: "result"; readonly result: LoadResult }
  | { readonly kind: "failed"; readonly reason: string };

async function obey(platform: Platform, order: HostOrder): Promise<HostReport> {
  if (order.kind === "register") platform.commands.replaceAll(order.commands);
  if (order.kind === "await-bot") await platform.connected(order.timeoutMs);
  if (order.kind === "run") return { kind: "result", result: await runLoad(platform, order.plan) };
  if (order.kind === "close") await platform.close();
  return { kind: "done" };
}

const platform = await startPlatform();
const report = (what: HostReport) => process.send?.(what);
process.on("message", (order: HostOrder) => {
  obey(platform, order)
    .catch((error: unknown): HostReport => ({ kind: "failed", reason: String(error) }))
    .then((outcome) => {
      report(outcome);
      if (order.kind === "close") process.disconnect();
    });
});
report({ kind: "listening", apiUrl: platform.apiUrl, token: platform.token });
