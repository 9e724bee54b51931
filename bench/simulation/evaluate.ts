import { type Band, bandOf } from "../../src/core/trends/draws.ts";
import { eventEffect } from "../../src/core/trends/event-effect.ts";
import { levelsAt } from "../../src/core/trends/future.ts";
import { type Production, productionNow } from "../../src/core/trends/production.ts";
import { SETTINGS } from "../../src/core/trends/settings.ts";
import { hasEnough } from "./enough.ts";
import { plainLikelihood } from "./plain-likelihood.ts";
import { NO_VIEW, plainStateSpace, SIMULATORS_VIEW } from "./plain-state-space.ts";
import { REGIMES, type Regime } from "./shapes.ts";
import { type SimulatedRecord, simulate } from "./world.ts";
import { type Estimated, FORECAST_DAYS } from "./yardstick.ts";

export const METHODS = [
  "engine",
  "likelihood",
  "state space",
  "state space, all answered",
  "state space, informed",
] as const;
export type Method = (typeof METHODS)[number];

/** One simulated record with what each method made of it; undefined where it refused. */
export interface Judged {
  readonly regime: Regime;
  readonly hasEnough: boolean;
  readonly netTruth: number;
  readonly levelTruth: number;
  readonly estimates: Readonly<Record<Method, Estimated | undefined>>;
  /** Directions the engine called for certain, and how many of them were the wrong way round. */
  readonly called: number;
  readonly opposite: number;
  readonly event: "none" | "found" | "missed" | "false call" | "rightly silent" | "wrong way";
}

/** Every regime in turn; without the yardsticks, which take most of the time, only the engine is judged. */
export function judgeAll(seed: number, perRegime: number, withYardsticks: boolean): readonly Judged[] {
  return REGIMES.flatMap((regime) =>
    Array.from({ length: perRegime }, (_, index) => judge(simulate(seed, regime, index), withYardsticks)),
  );
}

function judge(record: SimulatedRecord, withYardsticks: boolean): Judged {
  const found = productionNow(record.readings, record.events, record.now);
  const forecast =
    found && bandOf(levelsAt(found.draws, record.now, record.now + FORECAST_DAYS, record.planned));
  const isAnswered = found !== undefined && found.refusal === undefined;
  const { truth } = record;
  return {
    regime: record.regime,
    hasEnough: hasEnough(record),
    netTruth: truth.netPerDay,
    levelTruth: truth.levelIn14,
    estimates: {
      engine: isAnswered && forecast ? { net: found.net, forecast } : undefined,
      ...(withYardsticks ? yardsticks(record) : NONE),
    },
    ...(isAnswered ? directions(record, found) : { called: 0, opposite: 0 }),
    event: isAnswered ? eventVerdict(record, found) : "none",
  };
}

const NONE = {
  likelihood: undefined,
  "state space": undefined,
  "state space, all answered": undefined,
  "state space, informed": undefined,
};

/** The state-space form three times: as written, with its own rule for ranges too vague to say; without that
 *  rule, so that ranges are compared alone; and told the simulator's own spread of productions besides. */
function yardsticks(record: SimulatedRecord): Omit<Judged["estimates"], "engine"> {
  return {
    likelihood: plainLikelihood(record),
    "state space": plainStateSpace(record, NO_VIEW, true),
    "state space, all answered": plainStateSpace(record, NO_VIEW, false),
    "state space, informed": plainStateSpace(record, SIMULATORS_VIEW, false),
  };
}

/** Both directions the engine may call: left alone, and over the last weeks with the changes in. */
function directions(
  { truth, now }: SimulatedRecord,
  found: Production,
): { called: number; opposite: number } {
  const half = found.timeline.halfSpanDays;
  const moved = truth.meanBetween(now - half, now) - truth.meanBetween(now - 2 * half, now - half);
  const share = (values: readonly number[]) => values.filter((v) => v > 0).length / values.length;
  const pairs = [
    { up: share(found.draws.map((d) => d.production - d.uptakePerDay * d.level)), truth: truth.netPerDay },
    { up: share(found.draws.map((d) => d.comparison)), truth: moved },
  ];
  const calls = pairs.filter(({ up }) => Math.max(up, 1 - up) > SETTINGS.sureChance);
  return { called: calls.length, opposite: calls.filter(({ up, truth: t }) => up > 0.5 !== t > 0).length };
}

function eventVerdict(record: SimulatedRecord, found: Production): Judged["event"] {
  const event = record.events.find((e) => e.kind === "other");
  if (event?.kind !== "other") return "none";
  const effect = eventEffect(found.timeline, record.events, event);
  if (effect?.kind !== "event") return "none";
  const ratio = record.truth.eventRatio;
  if (effect.verdict === "not shown") return ratio === 1 ? "rightly silent" : "missed";
  if (ratio === 1) return "false call";
  return (effect.verdict === "raised") === ratio > 1 ? "found" : "wrong way";
}

export interface Cover {
  readonly net80: number;
  readonly net95: number;
  readonly forecast80: number;
  readonly forecast95: number;
}

/** Share of truths inside the ranges, over the records the method answered. */
export function coverOf(rows: readonly Judged[], method: Method): Cover {
  const answered = rows.flatMap((row) => {
    const estimate = row.estimates[method];
    return estimate ? [{ row, estimate }] : [];
  });
  const share = (test: (a: (typeof answered)[number]) => boolean) =>
    answered.filter(test).length / Math.max(1, answered.length);
  const in80 = (band: Band, truth: number) => truth >= band.low80 && truth <= band.high80;
  const in95 = (band: Band, truth: number) => truth >= band.low95 && truth <= band.high95;
  return {
    net80: share(({ row, estimate }) => in80(estimate.net, row.netTruth)),
    net95: share(({ row, estimate }) => in95(estimate.net, row.netTruth)),
    forecast80: share(({ row, estimate }) => in80(estimate.forecast, row.levelTruth)),
    forecast95: share(({ row, estimate }) => in95(estimate.forecast, row.levelTruth)),
  };
}
