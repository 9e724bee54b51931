import type { EventAmount, EventKind } from "../core/log/entry.ts";
import type { Rule } from "../core/plans/recurrence.ts";
import type { RegimenId, RegimenSettings } from "../core/plans/regimens.ts";
import type { Task } from "../core/plans/task.ts";
import type { Until } from "../core/plans/until.ts";
import type { CautionLevel } from "../core/result.ts";
import type { MemberId } from "./ids.ts";
import type { NewEvent, NewReading } from "./log.ts";

export type PlanState = "running" | "paused" | "over";

/** Something to be done on a tank, once or again and again. All times UTC, ISO 8601. */
export interface Plan {
  readonly id: number;
  readonly owner: MemberId;
  readonly tankId: number;
  /** Absent for a plan that stands alone. */
  readonly regimenId?: number;
  readonly task: Task;
  readonly rule: Rule;
  readonly until?: Until;
  /** The task as typed. */
  readonly typed: string;
  readonly state: PlanState;
  /** Why it is over, or why nothing is to be done at present. */
  readonly why?: string;
  /** Absent when it waits for the log, is paused or over. */
  readonly nextAt?: string;
  /** The local day (counted from 1970) of the last due time made. */
  readonly lastDay?: number;
  readonly notBefore: string;
  readonly createdAt: string;
}

export type NewPlan = Pick<Plan, "tankId" | "task" | "rule" | "until" | "typed" | "nextAt" | "notBefore">;

/** What may change in a plan; an absent `why` or `nextAt` clears it. */
export interface PlanChange {
  readonly state: PlanState;
  readonly why?: string;
  readonly nextAt?: string;
  readonly lastDay?: number;
  readonly notBefore?: string;
  readonly rule?: Rule;
}

export interface Regimen {
  readonly id: number;
  readonly owner: MemberId;
  readonly tankId: number;
  readonly pattern: RegimenId;
  readonly settings: RegimenSettings;
  readonly state: PlanState;
  readonly why?: string;
  /** What days are counted from; a shift or a pause moves it on. */
  readonly startedAt: string;
  readonly pausedAt?: string;
}

/** "whole": one thing to do. "off" and "back": the two halves of a pair. "notice": only to be told. */
export type DutyHalf = "whole" | "off" | "back" | "notice";

/** What a duty says, settled when it falls due. */
export interface DutyWords {
  /** "water change 30 %". */
  readonly title: string;
  /** Computed amounts, one a line. */
  readonly lines: readonly string[];
  readonly cautions: readonly { readonly level: CautionLevel; readonly text: string }[];
  /** What goes into the log when it is done as planned. */
  readonly event?: {
    readonly event: EventKind;
    readonly amount?: number;
    readonly unit?: EventAmount["unit"];
    readonly text: string;
    readonly words: string;
  };
  /** Of a pair. */
  readonly device?: string;
  readonly because?: string;
  readonly hours?: number;
}

/** One due time of one plan. */
export interface Duty {
  readonly id: number;
  readonly planId: number;
  readonly owner: MemberId;
  readonly tankId: number;
  readonly half: DutyHalf;
  readonly plannedAt: string;
  readonly dueAt: string;
  readonly words: DutyWords;
  readonly state: "open" | "done" | "skipped" | "missed";
  /** When it is to be told next; absent when it has been told. */
  readonly tellAt?: string;
  readonly settledAt?: string;
  /** The other half's number. */
  readonly pairOf?: number;
}

export interface NewDuty {
  readonly half: DutyHalf;
  readonly plannedAt: string;
  readonly dueAt: string;
  readonly tellAt?: string;
  readonly words: DutyWords;
}

/** Where and when a member wants to be told. */
export interface ReminderWishes {
  /** "dm", or the id of a channel or thread. */
  readonly place: string;
  /** The channel to fall back to when direct messages are closed. */
  readonly fallback?: string;
  /** Minutes from midnight by the member's clock; the same twice means never quiet. */
  readonly quietFrom: number;
  readonly quietUntil: number;
}

/** What goes into the log beside settling a duty. */
export interface DutyEntry {
  readonly line: string;
  readonly readings: readonly NewReading[];
  readonly events: readonly NewEvent[];
}

/** Plans as their owner deals with them. */
export interface PlanRecords {
  /** Throws: UserError beyond the most one member may have. */
  add(owner: MemberId, plan: NewPlan, now: string): Plan;
  /** Running and paused ones, oldest first. */
  of(owner: MemberId): readonly Plan[];
  find(owner: MemberId, planId: number): Plan | undefined;
  /** Throws: UserError when it is not theirs. */
  change(owner: MemberId, planId: number, change: PlanChange): void;
  /**
   * Switched off at this very moment: a plan with both halves, the first settled and logged, the second to be
   * told of until it is settled. All or nothing; returns the second.
   */
  switchOff(
    owner: MemberId,
    plan: NewPlan,
    halves: readonly [NewDuty, NewDuty],
    entry: DutyEntry,
    now: string,
  ): Duty;

  startRegimen(
    owner: MemberId,
    regimen: Pick<Regimen, "tankId" | "pattern" | "settings" | "startedAt">,
    plans: readonly NewPlan[],
    now: string,
  ): Regimen;
  /** Running and paused ones, then those over, newest first. */
  regimens(owner: MemberId): readonly Regimen[];
  regimen(owner: MemberId, regimenId: number): Regimen | undefined;
  /** All plans of one regimen, over or not. */
  plansOf(owner: MemberId, regimenId: number): readonly Plan[];
  changeRegimen(
    owner: MemberId,
    regimenId: number,
    change: {
      readonly state: PlanState;
      readonly why?: string;
      readonly startedAt: string;
      readonly pausedAt?: string;
    },
  ): void;

  /** Open ones, by due time. */
  open(owner: MemberId): readonly Duty[];
  duty(owner: MemberId, dutyId: number): Duty | undefined;
  /** Settled ones of some plans since a time, by due time. */
  settled(owner: MemberId, planIds: readonly number[], since: string): readonly Duty[];
  /**
   * Settles a duty and writes what was done into the log, all or nothing. False when it was settled before,
   * unless `replaces`: then what was written at that time is taken back and written anew.
   */
  settle(
    owner: MemberId,
    dutyId: number,
    as: "done" | "skipped",
    entry: DutyEntry | undefined,
    at: string,
    now: string,
    replaces: boolean,
  ): boolean;
  /** Tells of it again at that time. */
  postpone(owner: MemberId, dutyId: number, tellAt: string): boolean;
  /** What is switched off on a tank and has to come back: the open second halves, each with its first. */
  switchedOff(tankId: number): readonly { readonly off: Duty; readonly back: Duty }[];

  wishes(owner: MemberId): ReminderWishes;
  setWishes(owner: MemberId, wishes: ReminderWishes): void;
}

/** A plan as the clockwork meets it. */
export interface RunningPlan extends Plan {
  readonly zone: string;
  readonly regimen?: Regimen;
}

/** What one look at a plan leads to. */
export interface PlanStep {
  readonly duties: readonly NewDuty[];
  readonly state: PlanState;
  readonly why?: string;
  readonly nextAt?: string;
  readonly lastDay?: number;
  /** Ends or holds the whole regimen too. */
  readonly regimen?: { readonly state: PlanState; readonly why?: string };
}

/** One message to one member. */
export interface Letter {
  readonly id: number;
  readonly owner: MemberId;
  readonly wishes: ReminderWishes;
  readonly zone: string;
  /** Unguessable, at most 25 characters: the same letter is never taken twice. */
  readonly key: string;
  readonly items: readonly LetterItem[];
  /** How often it was tried before. */
  readonly attempts: number;
  /** When it was tried first; absent the first time. */
  readonly firstTriedAt?: string;
  readonly createdAt: string;
}

export interface LetterItem {
  readonly duty: Pick<Duty, "id" | "half" | "dueAt" | "words">;
  readonly tank: string;
  /** Earlier due times of the same plan that were never told. */
  readonly missed: readonly string[];
}

/** Plans as the clockwork deals with them: everybody's, and only to make them fall due and be told. */
export interface ReminderRecords {
  /** Plans to look at now: due, or with news in the log. */
  toLookAt(now: string, most: number): readonly RunningPlan[];
  /** Puts down one look; false when the plan was changed meanwhile, and then nothing is done. */
  putStep(plan: RunningPlan, step: PlanStep, now: string): boolean;
  /**
   * Writes one letter for each member who has something to be told, at most `most`; returns how many.
   * `holdUntil` says until when a member's quiet hours hold back what is not urgent.
   */
  writeLetters(parts: {
    readonly prefix: string;
    readonly now: string;
    readonly most: number;
    readonly newKey: () => string;
    readonly holdUntil: (wishes: ReminderWishes, zone: string) => string | undefined;
    readonly isUrgent: (duty: Duty) => boolean;
    readonly tellAgainAt: (duty: Duty) => string | undefined;
  }): number;
  /**
   * Takes letters to be sent and marks each as tried before it leaves, on the disk itself. One that was taken
   * less than `leaseMs` ago by a process that has said nothing since is left alone.
   */
  claim(prefix: string, now: string, leaseMs: number, most: number): readonly Letter[];
  sent(letterId: number, place: string, messageId: string, now: string): void;
  /** Surely not delivered: its duties are told of again at that time, in a new letter. */
  refused(letterId: number, why: string, tellAgainAt: string): void;
  /** Perhaps delivered: tried again at that time, after a look whether it stands there. */
  uncertain(letterId: number, tryAt: string): void;
}
