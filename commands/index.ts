import type { CommandEntry } from "../src/kit/command.ts";
import change from "./change/index.ts";
import dose from "./dose/index.ts";
import help from "./help.ts";
import salt from "./salt/index.ts";
import stocking from "./stocking/index.ts";
import tank from "./tank/index.ts";

/** What a member can type, in the order of /help. */
export const commands: readonly CommandEntry[] = [salt, dose, change, stocking, tank, help];
