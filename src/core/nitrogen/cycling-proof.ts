import type { Estimate } from "../quantity/estimate.ts";
import { PASS_BELOW_MG_PER_L } from "./cycling.ts";
import type { MgNPerL } from "./nitrogen-units.ts";

/** One trial of a filter: ammonia given, and what was left of it and its nitrite. */
export interface Trial {
  readonly day: number;
  readonly dose: MgNPerL;
  readonly hours: number;
  readonly ammonia: Estimate<MgNPerL>;
  readonly nitrite: Estimate<MgNPerL>;
}

export type TrialResult = "passed" | "failed" | "cannot tell";

export interface Proof {
  readonly results: readonly TrialResult[];
  readonly state: "ready" | "one more" | "not yet" | "cannot tell";
}

/** A card's first colour still counts as nothing left if it ends here, mg/L N. Source: common-practice. */
const FIRST_COLOUR_ENDS = 0.25;
/** A trial read later than this says nothing about one day. */
const ONE_DAY_H = 26;

/** Whether one substance is gone, as far as the kit can show. */
function isGone({ best, low, high }: Estimate): TrialResult {
  if (low >= PASS_BELOW_MG_PER_L) return "failed";
  if (best < PASS_BELOW_MG_PER_L && high <= FIRST_COLOUR_ENDS) return "passed";
  return "cannot tell";
}

function resultOf(trial: Trial, wantedDose: MgNPerL): TrialResult {
  const both = [isGone(trial.ammonia), isGone(trial.nitrite)];
  // What is still there after too long, or after too little, is not gone all the sooner.
  if (both.includes("failed")) return "failed";
  if (trial.hours > ONE_DAY_H || trial.dose < wantedDose * 0.9) return "cannot tell";
  return both.includes("cannot tell") ? "cannot tell" : "passed";
}

/** Whether a filter has taken up the wanted dose within a day twice running, by the member's own trials. */
export function proofOf(trials: readonly Trial[], wantedDose: MgNPerL): Proof {
  const results = [...trials].sort((a, b) => a.day - b.day).map((trial) => resultOf(trial, wantedDose));
  const [before, last] = results.slice(-2).length === 2 ? results.slice(-2) : [undefined, results.at(-1)];
  if (last === "passed") return { results, state: before === "passed" ? "ready" : "one more" };
  return { results, state: last === "cannot tell" ? "cannot tell" : "not yet" };
}
