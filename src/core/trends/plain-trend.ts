import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { Direction } from "./direction.ts";
import { driftSlope, type Slope, straightLine } from "./drift-slope.ts";
import { mannKendall } from "./kendall.ts";
import { type Look, middleOf, type TrendEvent, type TrendReading } from "./readings.ts";
import { SETTINGS } from "./settings.ts";
import { stepChange } from "./step-change.ts";
import { median } from "./theil-sen.ts";
import { recentLooks } from "./timeline.ts";

export interface PlainQuestion {
  readonly readings: readonly TrendReading[];
  readonly events: readonly TrendEvent[];
  readonly now: number;
  /** Where the keeper wants it. */
  readonly target?: { readonly low: number; readonly high: number } | undefined;
}

/** A straight drift of something that has no balance to keep: hardness, pH, temperature, salinity. */
export interface PlainTrend {
  readonly readings: number;
  readonly fromDaysAgo: number;
  /** The instrument the drift is read from; others are set beside it, never joined. */
  readonly instrument: string;
  readonly slopePerDay: Slope;
  /** The ordinary straight line, for instruments that show figures. */
  readonly line: ReturnType<typeof straightLine>;
  readonly direction: Direction;
  /** Middle of the last readings, on the drift line. */
  readonly levelNow: number;
  readonly target:
    | {
        readonly low: number;
        readonly high: number;
        readonly place: "below" | "inside" | "above";
        /** Days until the line, and the fastest line four in five times believable, leave the target;
         *  Infinity when they do not head out. Zero when outside already. */
        readonly leavesInDays: number;
        readonly leavesEarliestDays: number;
      }
    | undefined;
  /** A jump rather than a drift, with the middle readings before and after it. */
  readonly step:
    | {
        readonly daysAgo: number;
        readonly before: number;
        readonly after: number;
        readonly what: readonly string[];
      }
    | undefined;
  /** Other instruments: how much more they read than this one, from tests within a few days of each other. */
  readonly offsets: readonly {
    readonly instrument: string;
    readonly difference: number;
    readonly pairs: number;
  }[];
}

const LEAST_READINGS = 3;
const LEVEL_FROM_LAST = 5;
const NEIGHBOUR_DAYS = 4;
/** Two-sided chances behind "is" and "is probably"; a jump needs the first of them. Assumption. */
const SURE_P = 0.05;
const PROBABLE_P = 0.2;

/** Drift of a record without a balance, by ranks and middle slopes, which a few bad readings cannot pull. */
export function plainTrend(question: PlainQuestion): Answer<PlainTrend> | NoAnswer {
  const { now, events, target } = question;
  const times = events.map((e) => e.at).sort((a, b) => a - b);
  const all = recentLooks(question.readings, times, now);
  const last = all.at(-1);
  if (!last) return noAnswer("trend-no-readings", {});
  const own = all.filter((l) => l.instrument.id === last.instrument.id);
  const first = own[0] as Look;
  const days = last.at - first.at;
  if (days === 0) return noAnswer("trend-one-time", { readings: own.length });
  if (own.length < LEAST_READINGS)
    return noAnswer("trend-too-few", { readings: own.length, days, waitDays: 7 });

  const t = own.map((l) => l.at - now);
  const y = own.map(middleOf);
  const slope = driftSlope(own, now);
  const test = mannKendall(y);
  const levelNow = levelOnLine(t, y, slope.best);
  const cautions: Caution[] = [];
  if (events.some((e) => e.kind === "water change" && e.at > first.at))
    cautions.push(caution("trend-sawtooth", {}, "note"));
  const value: PlainTrend = {
    readings: own.length,
    fromDaysAgo: now - first.at,
    instrument: last.instrument.id,
    slopePerDay: slope,
    line: straightLine(own, now),
    direction: directionFrom(test.s, test.pTwoSided),
    levelNow,
    target: target && { ...target, ...againstTarget(levelNow, slope, target) },
    step: jump(own, y, all, events, now),
    offsets: offsets(all, last.instrument.id),
  };
  return {
    kind: "answer",
    value,
    method: "Middle slope between tests (for colour steps, a line fitted to the intervals), with a rank test",
    working: [
      "slope of figures: middle of (later − earlier) ÷ (days between), over every pair of tests",
      "slope of colour steps: the line that makes every test's interval most likely",
      "direction: pairs that rise against pairs that fall, ties counted",
      "jump: the split of the record whose halves differ most by rank, the search allowed for",
    ],
    constants: [
      { name: "chance behind “is rising”", value: `1 in ${1 / SURE_P}`, source: "assumption" },
      { name: "chance behind “is probably rising”", value: `1 in ${1 / PROBABLE_P}`, source: "assumption" },
    ],
    sources: [
      "theil-1950",
      "sen-1968",
      "gilbert-1987",
      "mann-1945",
      "kendall-1975",
      "pettitt-1979",
      "assumption",
    ],
    assumptions: [
      "tests are independent of each other but for the drift",
      `only the last ${SETTINGS.windowDays} days, or the last ${SETTINGS.windowReadings} tests where those reach further`,
      "a colour step stands for the middle of what it may mean",
    ],
    cautions,
  };
}

function directionFrom(s: number, p: number): Direction {
  const chanceRising = s > 0 ? 1 - p / 2 : p / 2;
  const way = s > 0 ? "rising" : "falling";
  if (p <= SURE_P) return { way, firmness: "is", chanceRising };
  if (p <= PROBABLE_P) return { way, firmness: "probably", chanceRising };
  return { way: "unclear", firmness: "cannot tell", chanceRising: s === 0 ? 0.5 : chanceRising };
}

/** The last few readings carried along the slope to now. */
function levelOnLine(t: readonly number[], y: readonly number[], slope: number): number {
  const carried = y.slice(-LEVEL_FROM_LAST).map((value, i, part) => {
    const at = t[t.length - part.length + i] as number;
    return value - slope * at;
  });
  return median(Float64Array.from(carried).sort());
}

function againstTarget(level: number, slope: Slope, band: { low: number; high: number }) {
  const place = level < band.low ? "below" : level > band.high ? "above" : "inside";
  const leaves = (rate: number) => {
    if (place !== "inside") return 0;
    if (rate === 0) return Number.POSITIVE_INFINITY;
    return ((rate > 0 ? band.high : band.low) - level) / rate;
  };
  return {
    place,
    leavesInDays: leaves(slope.best),
    leavesEarliestDays: Math.min(leaves(slope.low80), leaves(slope.high80)),
  } as const;
}

function jump(
  own: readonly Look[],
  y: readonly number[],
  all: readonly Look[],
  events: readonly TrendEvent[],
  now: number,
): PlainTrend["step"] {
  const found = stepChange(y);
  if (!found || found.p > SURE_P) return undefined;
  const before = own[found.index - 1] as Look;
  const after = own[found.index] as Look;
  const between = (at: number) => at >= before.at && at <= after.at;
  const what = events.filter((e) => between(e.at)).map((e) => (e.kind === "other" ? e.what : `a ${e.kind}`));
  if (all.some((l) => l.instrument.id !== after.instrument.id && between(l.at)))
    what.push("another instrument in use");
  return {
    daysAgo: now - after.at,
    before: median(Float64Array.from(y.slice(0, found.index)).sort()),
    after: median(Float64Array.from(y.slice(found.index)).sort()),
    what,
  };
}

function offsets(all: readonly Look[], id: string): PlainTrend["offsets"] {
  const others = [...new Set(all.map((l) => l.instrument.id))].filter((other) => other !== id);
  return others.map((instrument) => {
    const differences = all
      .filter((l) => l.instrument.id === instrument)
      .flatMap((look) => {
        const near = all
          .filter((l) => l.instrument.id === id && Math.abs(l.at - look.at) <= NEIGHBOUR_DAYS)
          .sort((a, b) => Math.abs(a.at - look.at) - Math.abs(b.at - look.at))[0];
        return near ? [middleOf(look) - middleOf(near)] : [];
      });
    const difference = differences.length > 0 ? median(Float64Array.from(differences).sort()) : Number.NaN;
    return { instrument, difference, pairs: differences.length };
  });
}
