import type { ClubId, MemberId } from "../records/ids.ts";

/** What a member asked, before anything is read. Plain data: it can be kept and run again. */
export interface Request {
  readonly member: MemberId;
  /** Absent in a direct message, where nothing is shared with a club. */
  readonly club?: ClubId;
  /** The channel or thread it was asked in, where reminders may be sent. */
  readonly place?: string;
  /** May set the club's own defaults. */
  readonly isSteward: boolean;
  /** What the place calls the member. */
  readonly name?: string;
  /** "salt mix": the command and, where it has them, its subcommand. */
  readonly path: string;
  readonly options: Readonly<Record<string, string>>;
  /** Answers to confirmations asked along the way. */
  readonly answers: Readonly<Record<string, string>>;
  /** Asked where all can read it and nothing can be hidden: only what rests on no record is answered there. */
  readonly isAloud?: true;
  /** Set when the member asked for it; otherwise the command's own habit holds. */
  readonly audience?: "asker" | "channel";
}
