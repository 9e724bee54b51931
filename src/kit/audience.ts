import type { Audience } from "./reply.ts";

/** Every command takes this word beside its own options: who shall see the answer. */
export const SHOW = {
  name: "show",
  description: "Who sees the answer",
  choices: ["only me", "everyone here"],
} as const;

/** The audience a member asked for; undefined when they left it to the command. */
export function audienceOf(text: string | undefined): Audience | undefined {
  if (text === undefined) return undefined;
  return text.trim().toLowerCase() === "everyone here" ? "channel" : "asker";
}
