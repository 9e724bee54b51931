import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import {
  datedChanges,
  type PlanNeeded,
  planNeeded,
  presentPlan,
  type WaterChangePlan,
} from "./change-plan.ts";
import { type Direction, directionOf } from "./direction.ts";
import { type Band, bandOf } from "./draws.ts";
import { type ChangeEffect, changeEffect, type EventEffect, eventEffect } from "./event-effect.ts";
import { levelsAt } from "./future.ts";
import { type KitDifference, kitDifferences } from "./kit-difference.ts";
import { type Crossing, crossingOnPlan, crossingWithoutChanges } from "./limit-crossing.ts";
import { nextReading, type StepChance } from "./next-reading.ts";
import { type Production, productionNow, type RateRefusal, rateThatMatters } from "./production.ts";
import { isAtTop, type Look, type TrendEvent, type TrendReading } from "./readings.ts";
import { SETTINGS } from "./settings.ts";
import { unitSlip } from "./unit-slip.ts";
import { unloggedChange } from "./unlogged-change.ts";

export interface TrendQuestion {
  /** In any order. Times are days since any fixed moment, hours as parts of a day. */
  readonly readings: readonly TrendReading[];
  readonly events: readonly TrendEvent[];
  readonly now: number;
  /** A level not to be passed. */
  readonly limit?: number | undefined;
  /** What the keeper means to do; left out, the habit his log shows is taken and said so. */
  readonly plan?: WaterChangePlan | undefined;
  readonly forecastDays?: number | undefined;
}

/** What a record of tests says about a tank. Levels in the readings' unit, rates in it per day. */
export interface TrendAnswer {
  readonly basis: {
    readonly readings: number;
    readonly fromDaysAgo: number;
    readonly changes: number;
    readonly instruments: readonly string[];
  };
  /** Made per day less what is taken up at the present level: how the level moves if left alone. */
  readonly productionPerDay: Band;
  /** Made per day before anything is taken up, and the chance that something is, in proportion to the level. */
  readonly madePerDay: Band;
  readonly chanceOfUptake: number;
  /** Which way the level goes if left alone. */
  readonly leftAlone: Direction;
  /** Which way the level went, changes of water included: the last stretch against the one before it. */
  readonly level: Direction & { readonly stretchDays: number };
  readonly levelNow: Band;
  readonly forecast: {
    readonly days: number;
    readonly withoutChanges: Band;
    /** Undefined with no plan. */
    readonly onPlan: Band | undefined;
    /** What the next test on the last chart used will read then, on the plan where there is one. */
    readonly reading: readonly StepChance[];
  };
  readonly plan: WaterChangePlan | undefined;
  readonly limit:
    | {
        readonly value: number;
        readonly withoutChanges: Crossing;
        readonly onPlan: Crossing | undefined;
        /** The changes that keep it under the limit; undefined with no plan to start from. */
        readonly needed: PlanNeeded | undefined;
      }
    | undefined;
  readonly kits: readonly KitDifference[];
}

/** Fills in everything but the question's own words: see `TrendAnswer`. Never throws for what a member types. */
export function trendAnswer(question: TrendQuestion): Answer<TrendAnswer> | NoAnswer {
  const { readings, events, now, limit } = question;
  const found = productionNow(readings, events, now);
  if (!found) return noAnswer("trend-no-readings", {});
  const cautions = recordCautions(found, now);
  if (found.refusal) return refused(found, found.refusal, cautions);

  const { timeline, draws } = found;
  const plan = question.plan ?? presentPlan(events, now);
  if (plan && !question.plan) {
    const percent = plan.fraction * 100;
    cautions.push(caution("trend-plan-assumed", { everyDays: plan.everyDays, percent }, "note"));
  }
  if (plan && limit !== undefined && plan.newWater >= limit) {
    cautions.push(caution("trend-new-water-above-limit", { newWater: plan.newWater, limit }));
  }
  const days = question.forecastDays ?? SETTINGS.forecastDays;
  const changes = plan ? datedChanges(plan, now, now + Math.max(days, SETTINGS.horizonDays)) : [];
  const without = levelsAt(draws, now, now + days, []);
  const onPlan = plan ? levelsAt(draws, now, now + days, changes) : undefined;
  const instrument = (timeline.looks.at(-1) as Look).instrument;
  const matters = rateThatMatters(timeline);
  const value: TrendAnswer = {
    basis: {
      readings: timeline.looks.length,
      fromDaysAgo: now - (timeline.looks[0] as Look).at,
      changes: timeline.steps.filter((s) => s.kind === "change").length,
      instruments: timeline.instruments,
    },
    productionPerDay: found.net,
    madePerDay: bandOf(Float64Array.from(draws, (d) => d.production)),
    chanceOfUptake: draws.filter((d) => d.uptakePerDay > 0).length / draws.length,
    leftAlone: directionOf(
      Float64Array.from(draws, (d) => d.production - d.uptakePerDay * d.level),
      matters,
    ),
    level: {
      ...directionOf(
        Float64Array.from(draws, (d) => d.comparison),
        matters * timeline.halfSpanDays,
      ),
      stretchDays: timeline.halfSpanDays,
    },
    levelNow: found.level,
    forecast: {
      days,
      withoutChanges: bandOf(without),
      onPlan: onPlan && bandOf(onPlan),
      reading: instrument.kind === "chart" ? nextReading(onPlan ?? without, instrument) : [],
    },
    plan,
    limit:
      limit === undefined
        ? undefined
        : {
            value: limit,
            withoutChanges: crossingWithoutChanges(draws, limit, SETTINGS.horizonDays),
            onPlan: plan && crossingOnPlan(draws, limit, SETTINGS.horizonDays, now, changes),
            needed: plan && planNeeded(draws, plan, limit),
          },
    kits: kitDifferences(timeline, found.beliefs),
  };
  return { kind: "answer", value, cautions, ...evidence(found) };
}

/** Whether one dated event mattered, with everything else that changed that week. */
export function eventAnswer(
  question: TrendQuestion,
  event: Exclude<TrendEvent, { kind: "dose" }>,
): Answer<EventEffect | ChangeEffect> | NoAnswer {
  const found = productionNow(question.readings, question.events, question.now);
  if (!found) return noAnswer("trend-no-readings", {});
  const { timeline } = found;
  const cautions = recordCautions(found, question.now);
  const effect =
    event.kind === "water change"
      ? changeEffect(timeline, question.events, event)
      : eventEffect(timeline, question.events, event);
  if (effect && effect.kind !== "too little beside it") {
    return { kind: "answer", value: effect, cautions, ...evidence(found) };
  }
  const what = event.kind === "other" ? event.what : event.kind;
  const { looksBefore, looksAfter } = effect ?? { looksBefore: 0, looksAfter: 0 };
  return noAnswer("trend-event-too-little", { what, looksBefore, looksAfter }, cautions);
}

function refused({ net, level, timeline }: Production, refusal: RateRefusal, cautions: Caution[]): NoAnswer {
  // Waiting until the level has moved by a colour step tells most.
  const stepDays = (rateThatMatters(timeline) * SETTINGS.stepDays) / Math.max(Math.abs(net.best), 1e-12);
  const waitDays = Math.min(Math.max(stepDays, 3), 30);
  switch (refusal.why) {
    case "too few":
      return noAnswer(
        "trend-too-few",
        { readings: refusal.readings, days: refusal.days, waitDays },
        cautions,
      );
    case "at top":
      return noAnswer("trend-at-top", { atLeast: refusal.atLeast }, cautions);
    case "all at bottom":
      return noAnswer("trend-at-bottom", { below: refusal.below, productionUnder: net.high95 }, cautions);
    case "too old":
      return noAnswer("trend-too-old", { days: refusal.days }, cautions);
    case "contradictory":
      return noAnswer("trend-contradictory", { readings: refusal.readings }, cautions);
    case "too vague":
      return noAnswer(
        "trend-too-vague",
        { low: refusal.low, high: refusal.high, levelLow: level.low80, levelHigh: level.high80, waitDays },
        cautions,
      );
  }
}

/** What should be said about the record itself, whatever is asked of it. */
function recordCautions(found: Production, now: number): Caution[] {
  const { timeline, meetings, beliefs, logEvidence } = found;
  const cautions: Caution[] = [];
  const doubted = meetings.filter((m) => m.soundChance < SETTINGS.doubtedBelow);
  if (doubted.length > 0) {
    const figures = doubted.map(({ look }) => ({ value: look.value, daysAgo: now - look.at }));
    cautions.push(caution("trend-readings-doubted", { readings: figures }, "note"));
  }
  const unlogged = unloggedChange(timeline, meetings, logEvidence);
  if (unlogged) {
    const figures = { fromDaysAgo: now - unlogged.from, toDaysAgo: now - unlogged.to };
    cautions.push(caution("trend-unlogged-change", figures));
  }
  const slip = unitSlip(timeline.looks);
  if (slip) cautions.push(caution("trend-unit-slip", slip));
  for (const { instrument, against, ratio } of kitDifferences(timeline, beliefs)) {
    if (ratio.low80 > 1 || ratio.high80 < 1) {
      const percentLow = (ratio.low80 - 1) * 100;
      const percentHigh = (ratio.high80 - 1) * 100;
      cautions.push(caution("trend-kits-differ", { instrument, against, percentLow, percentHigh }, "note"));
    }
  }
  const last = timeline.looks.at(-1);
  if (last && isAtTop(last)) cautions.push(caution("trend-last-at-top", { atLeast: last.low }));
  return cautions;
}

function evidence({ timeline }: Production): Omit<Answer<unknown>, "kind" | "value" | "cautions"> {
  const percent = (share: number) => `${Number((share * 100).toPrecision(3))} %`;
  return {
    method:
      "Mass balance between the logged events, weighed against every test as the interval it stands for",
    working: [
      "between events: level changes by (production − uptake × level) each day",
      "water change: level ← (1 − share) × level + share × level of the new water",
      "a chart step counts as half-way to its neighbours; the top step counts as at least that",
      `${timeline.looks.length} tests weighed production, level, uptake, feeding and reader scatter together`,
      "ranges: hold the true figure 4 times in 5, and 19 times in 20",
    ],
    constants: [
      {
        name: "calibration spread of one instrument",
        value: percent(SETTINGS.kitSpread),
        source: "assumption",
      },
      { name: "chance of a misread test", value: percent(SETTINGS.misreadChance), source: "assumption" },
      {
        name: "spread of a change's logged share",
        value: SETTINGS.keepers.map((k) => percent(k.changeSpread)).join(" to "),
        source: "assumption",
      },
      {
        name: "uneven feeding, one day's spread",
        value: SETTINGS.keepers.map((k) => percent(k.feedingSpread)).join(" to "),
        source: "assumption",
      },
      {
        name: "slow drift of production, per root day",
        value: SETTINGS.drifts.map(percent).join(" to "),
        source: "assumption",
      },
    ],
    sources: ["mass-balance", "johnson-kotz-1994", "tobin-1958", "assumption"],
    assumptions: [
      "every water change, dose and change of stock, food or filter is logged",
      "a test and a change at the same moment: the test came first",
      "colour edges lie half-way between the printed steps",
      `only the last ${SETTINGS.windowDays} days, or the last ${SETTINGS.windowReadings} tests where those reach further`,
    ],
  };
}
