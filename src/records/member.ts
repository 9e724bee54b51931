import type { Habits } from "../core/quantity/read.ts";
import type { ClubId, MemberId } from "./ids.ts";

/** What is known of a member: how they write and measure, and where their clock stands. */
export interface Member {
  readonly id: MemberId;
  readonly habits: Habits;
  /** IANA zone, e.g. "Europe/Lisbon"; UTC until said. */
  readonly zone: string;
  /** What others may call them, when a front has told. */
  readonly name?: string;
}

export interface MemberRecords {
  /** The member, made on first sight; a club's own defaults fill habits the member has not set. */
  member(id: MemberId, club: ClubId | undefined): Member;
  remember(id: MemberId, habits: Habits): void;
  forgetHabits(id: MemberId): void;
  setName(id: MemberId, name: string): void;
  setZone(id: MemberId, zone: string): void;
  /** Adds to the club's defaults; returns all of them. */
  setClubHabits(club: ClubId, habits: Habits): Habits;
  /** Removes the member and all that hangs on them; returns how many tanks and readings went. */
  erase(id: MemberId): { readonly tanks: number; readonly readings: number };
}
