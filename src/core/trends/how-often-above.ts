import { type Answer, type NoAnswer, noAnswer } from "../result.ts";
import type { TrendReading } from "./readings.ts";
import { looks } from "./readings.ts";
import { turnbullShares } from "./turnbull.ts";

/** How much of a stretch's tests lay above a level, as far as the tests can tell. */
export interface HowOftenAbove {
  readonly level: number;
  readonly readings: number;
  /** Share that was above for certain, and share that may have been: a colour step may straddle the level. */
  readonly atLeast: number;
  readonly atMost: number;
}

/** How often a level was passed between two moments. Counts tests, not days: test at even intervals. */
export function howOftenAbove(
  readings: readonly TrendReading[],
  level: number,
  from: number,
  to: number,
): Answer<HowOftenAbove> | NoAnswer {
  const found = looks(readings.filter((r) => r.at >= from && r.at <= to));
  if (found.length === 0) return noAnswer("trend-no-readings", {});
  const shares = turnbullShares(found);
  const sum = (isCounted: (s: { low: number; high: number }) => boolean) =>
    shares.reduce((total, s) => (isCounted(s) ? total + s.share : total), 0);
  return {
    kind: "answer",
    value: {
      level,
      readings: found.length,
      atLeast: sum((s) => s.low >= level && s.high > level),
      atMost: sum((s) => s.high > level),
    },
    method: "Likeliest spread of the tests, each taken as the interval it stands for",
    working: [
      "each test is shared out over the levels it may mean, again and again, until the shares stay put",
      "above for certain: stretches that begin at the level or higher",
      "may have been above: those and the stretch that the level cuts",
    ],
    constants: [],
    sources: ["turnbull-1976"],
    assumptions: [
      "the tests were made at even intervals",
      "colour edges lie half-way between the printed steps",
    ],
    cautions: [],
  };
}
