import type { Fact, LedgerEvent } from "../core/breeding/ledger/facts.ts";
import type { GroupState } from "../core/breeding/ledger/state.ts";
import type { ClubId, MemberId } from "./ids.ts";

/** Who stands behind a number of the group's ledger. The ledger itself knows numbers only, so that a name can
 *  be forgotten while every total stays. */
export interface GroupPerson {
  readonly number: number;
  /** Absent once they have been forgotten. */
  readonly name?: string;
  readonly member?: MemberId;
}

/** A fact to be written. */
export interface NewFact {
  readonly fact: Fact;
  /** When it happened; UTC, ISO 8601. */
  readonly at: string;
  /** The same on the group's own calendar. */
  readonly day: string;
  /** Free words of the writer, which go when they are forgotten. */
  readonly note?: string;
}

export interface LedgerLine extends LedgerEvent {
  readonly note?: string;
}

/** The ledger as seen by one who is about to write in it: nobody else writes meanwhile. */
export interface OpenLedger {
  readonly state: GroupState;
  readonly people: readonly GroupPerson[];
  /** The number of this member, given on first sight. */
  numberOf(member: MemberId, name: string): number;
}

export interface BreedingRecords {
  /** What the club's ledger comes to; undefined while the club has no group. */
  state(club: ClubId): GroupState | undefined;
  people(club: ClubId): readonly GroupPerson[];
  /**
   * Looks and writes in one go: what `decide` sees is what its facts are written upon, whoever else writes.
   * All of its facts are kept or, when it throws, none.
   */
  write<T>(
    club: ClubId,
    by: MemberId,
    now: string,
    decide: (ledger: OpenLedger) => { readonly facts: readonly NewFact[]; readonly result: T },
  ): T;
  /** Newest first. */
  ledger(club: ClubId, limit: number, kind?: string): readonly LedgerLine[];
  event(club: ClubId, number: number): LedgerLine | undefined;
  /** Everything, oldest first. */
  everything(club: ClubId): readonly LedgerLine[];
  rename(club: ClubId, number: number, name: string): void;
  /** The member leaves every group, with their name and notes; what they counted stays. Returns how many groups. */
  forget(member: MemberId, now: string): number;
}
