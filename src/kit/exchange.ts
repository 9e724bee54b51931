import type { MemberId } from "../records/ids.ts";
import type { Outcome } from "./reply.ts";
import type { Request } from "./request.ts";

/** A request and what was said to it, kept so that buttons outlive a restart. */
export interface Exchange {
  readonly id: string;
  readonly request: Request;
  readonly outcome: Outcome;
  /** UTC, ISO 8601. */
  readonly at: string;
}

/** Keeps exchanges; implemented by the database. */
export interface ExchangeRecords {
  keep(exchange: Exchange, isPublic: boolean): void;
  /** Only the member who asked can find it; undefined when it is too old and was cleared away. */
  find(id: string, member: MemberId): Exchange | undefined;
  /** One that stands in a channel for all to see: anyone there may open its working. */
  findPublic(id: string): Exchange | undefined;
  /** Marks a private answer as posted to the channel; false when it is not theirs. */
  publish(id: string, member: MemberId): boolean;
  /** Clears away what is older; returns how many. */
  clearBefore(at: string): number;
}
