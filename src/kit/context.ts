import type { Habits } from "../core/quantity/read.ts";
import type { Records } from "../records/index.ts";
import type { Member } from "../records/member.ts";
import type { CommandEntry } from "./command.ts";
import type { Audience } from "./reply.ts";
import type { Request } from "./request.ts";

/** What a command is given beside its input. */
export interface Context {
  /** Who will see the reply, as the member asked or as the command is used to. */
  readonly audience: Audience;
  /** Milliseconds since 1970, UTC; the only clock a command has. */
  readonly now: number;
  readonly member: Member;
  readonly request: Request;
  readonly records: Records;
  /** All commands there are, for help. */
  readonly commands: readonly CommandEntry[];
  /** How each given option was understood, by option name. */
  readonly readAs: ReadonlyMap<string, { readonly typed: string; readonly readAs: string }>;
}

/** What reading an option's text may depend on. */
export interface ReadContext {
  readonly habits: Habits;
  readonly now: number;
  readonly member: Member;
  readonly request: Request;
  readonly records: Records;
}
