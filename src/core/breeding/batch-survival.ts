import type { Days, Grams } from "../quantity/units.ts";
import { as } from "../quantity/units.ts";
import { type Answer, type Caution, caution } from "../result.ts";
import { feedConversion, specificGrowth } from "./body-growth.ts";
import { type Day, dayAfter, daysBetween } from "./calendar.ts";
import type { Batch } from "./ledger/state.ts";
import { wilsonInterval } from "./proportion.ts";
import {
  dailyMortality,
  logInterval,
  medianSurvival,
  type SurvivalStep,
  stepAt,
  survivalCurve,
} from "./survival-curve.ts";

export interface SurvivalPoint {
  readonly day: Day;
  readonly low: number;
  readonly best: number;
  readonly high: number;
}

export interface BatchSurvival {
  readonly start: number;
  readonly points: readonly SurvivalPoint[];
  readonly now: SurvivalPoint;
  readonly days: number;
  /** Share lost a day, had it been the same every day. */
  readonly lossPerDay?: number;
  readonly medianDay?: Day;
  readonly hatch?: {
    readonly best: number;
    readonly low: number;
    readonly high: number;
    readonly isExact: boolean;
  };
  readonly growth?: { readonly percentPerDay: number; readonly days: number };
  readonly feedConversion?: { readonly economic?: number; readonly biological?: number };
}

/** How a batch fared since it was first counted; those given away, moved or split off are not dead.
 *  Undefined before the first count after hatching. */
export function batchSurvival(batch: Batch, today: Day): Answer<BatchSurvival> | undefined {
  const { start } = batch;
  if (start === undefined || start.count.best <= 0) return undefined;
  const began = Math.round(start.count.best);
  const rows = batch.rows
    .filter(([day]) => day >= start.day)
    .map(([day, deaths, leftAlive, joined, missing]) => ({
      time: daysBetween(start.day, day),
      deaths: deaths + missing,
      leftAlive,
      joined,
    }));
  const steps = survivalCurve(began, settled(began, rows));
  const isFirm = batch.counts.every(({ day, count }) => day < start.day || count.how === "exact");
  // Where the numbers are samples or guesses, their own ranges widen the curve at both ends.
  const startReach = {
    low: start.count.best / Math.max(start.count.high, 1),
    high: start.count.best / Math.max(start.count.low, 1),
  };
  const { alive } = batch;
  const aliveReach =
    alive === undefined || alive.best <= 0
      ? { low: 1, high: 1 }
      : { low: alive.low / alive.best, high: alive.high / alive.best };
  const point = (day: Day, step: SurvivalStep | undefined): SurvivalPoint => {
    if (step === undefined) return { day, low: 1, best: 1, high: 1 };
    const range = logInterval(step);
    return {
      day,
      best: step.survival,
      low: isFirm ? range.low : Math.min(range.low, step.survival * startReach.low * aliveReach.low),
      high: isFirm
        ? range.high
        : Math.min(1, Math.max(range.high, step.survival * startReach.high * aliveReach.high)),
    };
  };
  const last = daysBetween(start.day, today);
  const points = [
    point(start.day, undefined),
    ...steps.flatMap((step, index) => [
      point(dayAfter(start.day, step.time), steps[index - 1]),
      point(dayAfter(start.day, step.time), step),
    ]),
    point(today, steps.at(-1)),
  ];
  const now = point(today, stepAt(steps, last));
  const median = medianSurvival(steps);
  const cautions: Caution[] = [
    caution("breeding-not-independent", {}, "note"),
    ...(isFirm ? [] : [caution("breeding-survival-rests-on-estimates", {}, "note")]),
  ];
  return {
    kind: "answer",
    value: {
      start: began,
      points,
      now,
      days: last,
      ...(last > 0 && now.best > 0
        ? { lossPerDay: 1 - dailyMortality(now.best, as<Days>(last)).dailySurvival }
        : {}),
      ...(median === undefined ? {} : { medianDay: dayAfter(start.day, median) }),
      ...hatchOf(batch),
      ...growthOf(batch),
    },
    method:
      "Share alive after each death, of those there at the time (Kaplan–Meier); given away and split off count as alive",
    working: [
      `${began} at the start on ${start.day}`,
      ...steps
        .slice(-5)
        .map(
          ({ time, survival, atRisk }) =>
            `day ${time}: ${Math.round(atRisk)} at risk, ${(100 * survival).toFixed(1)} % alive`,
        ),
      "range: Greenwood's error on the scale of the logarithm, cut at 100 %",
    ],
    constants: [],
    sources: ["kaplan-meier-1958", "greenwood-1926"],
    assumptions: [
      "what is missing at a count died by then",
      ...(isFirm ? [] : ["the ranges of the counts widen the curve"]),
    ],
    cautions,
  };
}

/** Rows made to fit what is there: more gone than reckoned means more had been there, found out that day. */
function settled<R extends { time: number; deaths: number; leftAlive: number; joined: number }>(
  began: number,
  rows: readonly R[],
): R[] {
  let there = began;
  return rows.map((row) => {
    const gone = row.deaths + row.leftAlive;
    const room = Math.min(1, gone === 0 ? 1 : there / gone);
    const fitted =
      room < 1
        ? {
            ...row,
            deaths: row.deaths * room,
            leftAlive: row.leftAlive * room,
            joined: Math.max(0, row.joined - gone * (1 - room)),
          }
        : row;
    there += fitted.joined - fitted.deaths - fitted.leftAlive;
    return fitted;
  });
}

function hatchOf({ eggs, start, spawns, hatchDay }: Batch): Pick<BatchSurvival, "hatch"> {
  if (eggs === undefined || start === undefined || start.day !== hatchDay || spawns.length !== 1) return {};
  const [laid, hatched] = [Math.round(eggs.best), Math.round(start.count.best)];
  if (laid <= 0 || hatched > laid) return {};
  const isExact = eggs.how === "exact" && start.count.how === "exact";
  const range = isExact
    ? wilsonInterval(hatched, laid)
    : {
        low: start.count.low / Math.max(eggs.high, 1),
        high: Math.min(1, start.count.high / Math.max(eggs.low, 1)),
      };
  return { hatch: { best: hatched / laid, ...range, isExact } };
}

function growthOf({ sizes }: Batch): Pick<BatchSurvival, "growth" | "feedConversion"> {
  const [before, after] = sizes.slice(-2);
  if (before === undefined || after === undefined) return {};
  const days = daysBetween(before.day, after.day);
  if (days <= 0) return {};
  const died = Math.max(0, after.deadSince - before.deadSince);
  const conversion =
    after.feedG > 0 && before.aliveThen > 0 && after.aliveThen > 0
      ? feedConversion(
          as<Grams>(after.feedG),
          as<Grams>(before.aliveThen * before.meanG),
          as<Grams>(after.aliveThen * after.meanG),
          as<Grams>((died * (before.meanG + after.meanG)) / 2),
        )
      : undefined;
  return {
    growth: {
      percentPerDay: specificGrowth(before.meanG, after.meanG, as<Days>(days)).percentPerDay,
      days,
    },
    ...(conversion === undefined ? {} : { feedConversion: conversion }),
  };
}
