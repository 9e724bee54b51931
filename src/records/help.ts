import type { FactField } from "../core/help/facts.ts";
import type { ClubId, MemberId } from "./ids.ts";

/** Where a case's card stands: a thread or channel of a chat platform, and the message in it. */
export interface CardPlace {
  readonly place: string;
  readonly messageId: string;
}

/** One newcomer's question, with all that was told and done about it. Times UTC, ISO 8601. */
export interface HelpCase {
  readonly id: number;
  /** The newcomer: it is theirs, and goes with them. */
  readonly owner: MemberId;
  /** Absent when it was opened in a private talk: then nobody else sees it. */
  readonly club?: ClubId;
  readonly card?: CardPlace;
  readonly state: "open" | "closed";
  /** To whom it was handed, and what that member is called. */
  readonly helper?: { readonly id: MemberId; readonly name?: string };
  /** When somebody else first answered. */
  readonly answeredAt?: string;
  readonly openedAt: string;
  readonly closedAt?: string;
  /** What worked, as said at the end. */
  readonly worked?: string;
  /** The first tank record made of it. */
  readonly tankId?: number;
}

export type HelpEntryKind = "fact" | "step" | "done";

/** One thing told, advised or done in a case. */
export interface HelpEntry {
  readonly id: number;
  readonly kind: HelpEntryKind;
  readonly by: MemberId;
  /** Of a fact. */
  readonly field?: FactField;
  readonly text: string;
  /** Of a step: its number within the case, and when it is to be looked at again. */
  readonly number?: number;
  readonly followUpAt?: string;
  readonly isSettled: boolean;
  readonly at: string;
}

export interface NewHelpEntry {
  readonly kind: HelpEntryKind;
  readonly field?: FactField;
  readonly text: string;
  readonly followUpAt?: string;
}

/** Who looks: their own cases, and those of the club they ask from. */
export interface HelpViewer {
  readonly member: MemberId;
  readonly club: ClubId | undefined;
}

/** A case nobody has answered, and the helper on duty who may be told. */
export interface WaitingHelp {
  readonly id: number;
  readonly card?: CardPlace;
  readonly openedAt: string;
  readonly helper: MemberId;
  readonly zone: string;
  /** Minutes from midnight by the helper's clock. */
  readonly quietFrom: number;
  readonly quietUntil: number;
}

/** A step to look at again, and where its case stands. */
export interface FollowUp {
  readonly caseNumber: number;
  readonly step: number;
  readonly card?: CardPlace;
}

export interface HelpRecords {
  /** Throws: UserError beyond the most one member may have open. */
  open(owner: MemberId, club: ClubId | undefined, facts: readonly NewHelpEntry[], now: string): HelpCase;
  find(viewer: HelpViewer, id: number): HelpCase | undefined;
  /** The case whose card stands in that place. */
  inPlace(viewer: HelpViewer, place: string): HelpCase | undefined;
  /** Open ones first, newest first. */
  visible(viewer: HelpViewer): readonly HelpCase[];
  /** Oldest first. */
  entries(caseId: number): readonly HelpEntry[];
  /** Marks it as answered when somebody else than its owner adds. Throws: UserError beyond the most a case holds. */
  add(caseId: number, by: MemberId, entry: NewHelpEntry, now: string): void;
  /** Takes what was told in one field away and puts this in its place. */
  correct(caseId: number, by: MemberId, entry: NewHelpEntry, now: string): void;
  /** False when there is no such open step. */
  settleStep(caseId: number, number: number): boolean;
  hand(caseId: number, helper: MemberId, now: string): void;
  close(caseId: number, worked: string | undefined, now: string): void;
  reopen(caseId: number): void;
  setTank(caseId: number, tankId: number): void;
  /** Deletes it with all in it. */
  remove(caseId: number): void;
  setCard(caseId: number, card: CardPlace): void;
  /** Somebody wrote in the place of a case's card: an answer, when it is not its owner. */
  heard(place: string, by: MemberId, now: string): void;
  /** The cards that go when this member is erased. */
  cardsOf(owner: MemberId): readonly CardPlace[];
  /** The channel or forum in which a club opens its help threads; undefined for wherever it is asked. */
  home(club: ClubId): string | undefined;
  setHome(club: ClubId, place: string | undefined): void;
  /** Puts a member on duty in a club, or off. */
  setDuty(club: ClubId, member: MemberId, isOn: boolean): void;
  onDuty(club: ClubId): readonly MemberId[];
  /** Open cases without an answer, opened before then and never raised, each with its club's helper on duty. */
  waiting(openedBefore: string): readonly WaitingHelp[];
  /** Open steps whose day to look again has come, marked as told. */
  takeFollowUps(now: string): readonly FollowUp[];
  /** True the first time: whoever gets it raises the case, nobody else. */
  raise(caseId: number, now: string): boolean;
}
