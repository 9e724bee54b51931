import type { MemberId } from "./ids.ts";

/** Where a member wants one parameter of one tank; an open end is left out. */
export interface Target {
  /** Catalogue id of the parameter, e.g. "nitrate". */
  readonly parameter: string;
  /** In the parameter's canonical unit. */
  readonly low?: number;
  readonly high?: number;
  /** As the member wrote it. */
  readonly typed: string;
}

export interface TargetRecords {
  of(owner: MemberId, tankId: number): readonly Target[];
  /** Replaces an earlier one of that parameter. Throws: UserError when the tank is not theirs. */
  put(owner: MemberId, tankId: number, target: Target): void;
  /** False when there was none. */
  drop(owner: MemberId, tankId: number, parameter: string): boolean;
}
