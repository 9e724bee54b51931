import type { CommandEntry } from "../src/kit/command.ts";

/** What a member can type, in the order of /help. */
export const commands: readonly CommandEntry[] = [];
