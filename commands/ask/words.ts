import { parameter } from "../../src/core/log/parameters.ts";
import type { Intent, Meaning } from "../../src/core/questions/meaning.ts";

const SUBJECT: Readonly<Record<Intent, string>> = {
  trend: "which way it is going",
  effect: "what a change did",
  until: "when a level is reached",
  "last-event": "when it was last done",
  value: "what was logged then",
  latest: "the latest reading",
  "salt-mix": "salt to mix",
  "salt-convert": "one salinity in other scales",
  "salt-adjust": "moving the salinity",
  "change-plan": "water changes to reach a level",
  "change-effect": "what a water change does",
  "top-off": "evaporation and top-off",
  dilute: "a dilution",
  "stocking-load": "the load of the stock",
  "stocking-add": "room for one more animal",
  volume: "net water of the system",
  ammonia: "how harmful the ammonia is",
  "oxygen-full": "oxygen the water can hold",
  "oxygen-reading": "what an oxygen reading means",
  "oxygen-budget": "how long the oxygen lasts",
  convert: "one unit in another",
  log: "something to log",
  help: "what can be asked",
  decline: "something for a specialist",
};

/** What was understood, in a few words: "which way it is going: nitrate, Lagoon, since added the trigger". */
export function sayMeaning(meaning: Meaning): string {
  const { intent, event, about, since, at, limit, tank, quantities } = meaning;
  if (intent === "decline" && meaning.who === "people") return "somebody is hurt";
  const details = [
    meaning.parameter === undefined ? undefined : parameter(meaning.parameter).name,
    event === undefined ? undefined : about === undefined ? event : `${event} (${about})`,
    ...Object.entries(quantities ?? {}).map(([name, text]) =>
      name === "line" ? `“${text}”` : `${name} ${text}`,
    ),
    limit === undefined ? undefined : `limit ${limit}`,
    since === undefined ? undefined : `since ${since}`,
    at,
    tank,
  ].filter((detail) => detail !== undefined);
  return details.length === 0 ? SUBJECT[intent] : `${SUBJECT[intent]}: ${details.join(", ")}`;
}

/** A request as it would be typed. */
export function sayRequest(path: string, options: Readonly<Record<string, string>>): string {
  return [`/${path}`, ...Object.entries(options).map(([name, text]) => `${name}:${text}`)].join(" ");
}
