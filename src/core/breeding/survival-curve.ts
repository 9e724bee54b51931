import { normalQuantile } from "../trends/normal.ts";
import { type Interval, USUAL_LEVEL } from "./counted-sample.ts";

/** What happened at one time: deaths come first, then those who left alive, then those who came. */
export interface SurvivalRow {
  readonly time: number;
  readonly deaths: number;
  /** Given away, moved out or still alive when the record ends: not dead. */
  readonly leftAlive: number;
  /** Joined late; at risk from just after this time. */
  readonly joined: number;
}

export interface SurvivalStep {
  readonly time: number;
  readonly survival: number;
  /** Greenwood's sum, the variance of the logarithm of survival. */
  readonly logVariance: number;
  readonly standardError: number;
  readonly atRisk: number;
}

/** The share alive after each time with deaths, of those at risk then.
 *  Source: kaplan-meier-1958; its error: greenwood-1926. Throws: RangeError when more go than are there. */
export function survivalCurve(start: number, rows: readonly SurvivalRow[]): readonly SurvivalStep[] {
  let atRisk = start;
  let survival = 1;
  let logVariance = 0;
  const steps: SurvivalStep[] = [];
  for (const { time, deaths, leftAlive, joined } of [...rows].sort((a, b) => a.time - b.time)) {
    if (deaths + leftAlive > atRisk + 1e-9)
      throw new RangeError(`at ${time} more go (${deaths + leftAlive}) than are there (${atRisk})`);
    if (deaths > 0) {
      survival *= 1 - deaths / atRisk;
      logVariance += deaths === atRisk ? 0 : deaths / (atRisk * (atRisk - deaths));
      steps.push({ time, survival, logVariance, standardError: survival * Math.sqrt(logVariance), atRisk });
    }
    atRisk += joined - deaths - leftAlive;
  }
  return steps;
}

/** One row for each time, from single animals: when each was last seen, and whether it was then dead. */
export function rowsFromAnimals(times: readonly number[], died: readonly boolean[]): readonly SurvivalRow[] {
  const at = new Map<number, { deaths: number; leftAlive: number }>();
  times.forEach((time, index) => {
    const row = at.get(time) ?? { deaths: 0, leftAlive: 0 };
    if (died[index] === true) row.deaths += 1;
    else row.leftAlive += 1;
    at.set(time, row);
  });
  return [...at].sort(([a], [b]) => a - b).map(([time, row]) => ({ time, ...row, joined: 0 }));
}

/** The step in force at a time; undefined while all are alive. */
export function stepAt(steps: readonly SurvivalStep[], time: number): SurvivalStep | undefined {
  return steps.filter((step) => step.time <= time).at(-1);
}

/** The interval on the scale of the logarithm, cut at 1: what statistical software gives by default.
 *  After the last one died, the upper end is that of none alive among those then at risk (exact binomial). */
export function logInterval(step: SurvivalStep, level: number = USUAL_LEVEL): Interval {
  if (step.survival <= 0) return { low: 0, high: 1 - ((1 - level) / 2) ** (1 / Math.max(1, step.atRisk)) };
  const reach = normalQuantile(0.5 + level / 2) * Math.sqrt(step.logVariance);
  return {
    low: step.survival * Math.exp(-reach),
    high: Math.min(1, step.survival * Math.exp(reach)),
  };
}

/** The interval on the scale of log(−log): never beyond 0 or 1. Range: 0 < survival < 1. */
export function logLogInterval(step: SurvivalStep, level: number = USUAL_LEVEL): Interval {
  if (!(step.survival > 0 && step.survival < 1))
    throw new RangeError("log(−log) needs a share between 0 and 1");
  const log = Math.log(step.survival);
  const reach = (normalQuantile(0.5 + level / 2) * Math.sqrt(step.logVariance)) / log;
  const end = (by: number): number => Math.exp(-Math.exp(Math.log(-log) + by));
  const [a, b] = [end(reach), end(-reach)];
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

const HALF = 0.5;
const SAME = 1e-9;

/** The first time by which half are dead; where the curve lies flat on one half, the middle of that stretch.
 *  Undefined while more than half are alive. */
export function medianSurvival(steps: readonly SurvivalStep[]): number | undefined {
  const index = steps.findIndex((step) => step.survival <= HALF + SAME);
  const step = steps[index];
  if (step === undefined) return undefined;
  const next = steps[index + 1];
  return Math.abs(step.survival - HALF) < SAME && next !== undefined
    ? (step.time + next.time) / 2
    : step.time;
}

/** Deaths per day of a steady rate that leaves this share after so many days, and the share that lives a day.
 *  Range: 0 < survival ≤ 1, days > 0. Throws: RangeError outside it. */
export function dailyMortality(
  survival: number,
  days: number,
): { readonly ratePerDay: number; readonly dailySurvival: number } {
  if (!(survival > 0 && survival <= 1 && days > 0)) throw new RangeError(`${survival} over ${days} days`);
  const ratePerDay = -Math.log(survival) / days;
  return { ratePerDay: ratePerDay === 0 ? 0 : ratePerDay, dailySurvival: Math.exp(-ratePerDay) };
}

/** Shares from one stage to the next, and over them all, from the numbers at each. Throws: RangeError at zero. */
export function stageChain(numbers: readonly number[]): {
  readonly shares: readonly number[];
  readonly overall: number;
} {
  const shares = numbers.slice(1).map((number, index) => {
    const before = numbers[index] ?? 0;
    if (!(before > 0)) throw new RangeError("nothing was left to survive");
    return number / before;
  });
  return { shares, overall: shares.reduce((product, share) => product * share, 1) };
}
