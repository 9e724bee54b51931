import type { PlannedChange } from "../../src/core/trends/future.ts";
import type { TrendEvent, TrendReading } from "../../src/core/trends/readings.ts";
import { CHARTS, type Kit, kitOf, LOW_CHARTS, read } from "./kits.ts";
import { seeded } from "./random.ts";
import { irregularTimes, REGIMES, type Regime, shapeOf } from "./shapes.ts";

/** A made-up tank, what its keeper wrote down, and what was true. */
export interface SimulatedRecord {
  readonly regime: Regime;
  readonly index: number;
  readonly readings: readonly TrendReading[];
  readonly events: readonly TrendEvent[];
  readonly now: number;
  /** Changes the keeper says he will make; none when he plans none. */
  readonly planned: readonly PlannedChange[];
  readonly truth: Truth;
}

export interface Truth {
  /** Production less uptake at the present level, feeding's day-to-day spread left out, per day. */
  readonly netPerDay: number;
  readonly levelNow: number;
  /** Level 14 days on, with the planned changes as they will in fact be made. */
  readonly levelIn14: number;
  /** Mean level over the last days less that over as many before, for stretches of up to 28 days. */
  readonly meanBetween: (from: number, to: number) => number;
  /** Production after the dated event over production before it. */
  readonly eventRatio: number;
  readonly readerFirstStep: number;
  readonly readerLevel: number;
  readonly feedingSpread: number;
  readonly drift: number;
  readonly uptakePerDay: number;
  readonly levelAt: (day: number) => number;
}

const PER_DAY = 4;
const FORECAST_DAYS = 14;

/** One record, made from its seed, regime and number and from nothing else. */
export function simulate(seed: number, regime: Regime, index: number): SimulatedRecord {
  const random = seeded(seed * 1_000_003 + REGIMES.indexOf(regime) * 10_007 + index * 101);
  const shape = shapeOf(regime, random);
  const isTop = regime === "kit at top step";
  const end = shape.days;
  const now = end + random.between(0, regime === "sparse" && random.uniform() < 0.2 ? 60 : 4);

  const uptakePerDay =
    regime === "uptake" ? random.between(0.01, 0.08) : random.uniform() < 0.15 ? random.between(0, 0.02) : 0;
  const production = isTop
    ? (random.between(8, 60) * shape.changeShare) / shape.changeGap
    : Math.exp(Math.log(1.4) + 0.75 * random.normal());
  const drift = random.between(0.003, 0.03);
  const feeding = random.between(0.25, 0.7);
  const skip = random.between(0, 0.25);
  const newWater = random.uniform() < 0.3 ? 0 : random.between(1, 12);
  const misreads = random.between(0.01, 0.03);

  // Dated events: one in an intervention record, some of no effect; a filter cleaned now and then elsewhere.
  const events: TrendEvent[] = [];
  let eventRatio = 1;
  let eventAt = Number.POSITIVE_INFINITY;
  if (regime === "intervention" || (regime !== "five years" && random.uniform() < 0.15)) {
    eventAt = end * random.between(0.35, 0.75);
    if (regime === "intervention" && random.uniform() < 0.7)
      eventRatio = random.pick([0.35, 0.5, 0.65, 1.5, 2, 2.6]);
    events.push({ kind: "other", at: eventAt, what: random.pick(["new fish", "less food", "filter media"]) });
  }

  // Changes of water: as logged, and as made.
  const made: { at: number; fraction: number; newWater: number }[] = [];
  const phase = random.between(1, Math.min(shape.changeGap, 20));
  const changeTimes: number[] = [];
  for (let at = phase; at <= now - 0.3; at += shape.changeGap * Math.max(0.4, 1 + 0.15 * random.normal()))
    changeTimes.push(Math.ceil(at * PER_DAY) / PER_DAY);
  const change = (at: number, share: number) => ({
    at,
    fraction: Math.min(0.95, share * Math.max(0.2, 1 + 0.1 * random.normal())),
    newWater: newWater * Math.max(0, 1 + 0.1 * random.normal()),
  });
  for (const at of changeTimes) {
    const share = Math.round(shape.changeShare * (random.uniform() < 0.15 ? 1.3 : 1) * 20) / 20;
    made.push(change(at, share));
    if (random.uniform() >= 0.015) events.push({ kind: "water change", at, fraction: share, newWater });
  }
  const planned: PlannedChange[] = [];
  if (Number.isFinite(shape.changeGap) && shape.changeGap < 100 && random.uniform() < 0.6) {
    const gap = Math.round(shape.changeGap);
    for (
      let at = Math.ceil(Math.max(now + 0.5, (changeTimes.at(-1) ?? now) + gap) * PER_DAY) / PER_DAY;
      at <= now + 200;
      at += gap
    ) {
      planned.push({ at, fraction: Math.round(shape.changeShare * 20) / 20, newWater });
    }
  }
  const future = planned.map((p) => change(p.at, p.fraction));

  // The true path, quarter day by quarter day.
  const ticks = Math.ceil((now + FORECAST_DAYS) * PER_DAY) + 2;
  const path = new Float64Array(ticks);
  const rate = new Float64Array(ticks);
  const settled = Number.isFinite(shape.changeGap) && shape.changeGap < 100;
  let level =
    settled && !isTop
      ? newWater + (production * Math.min(shape.changeGap, 60) * random.between(0.5, 1)) / shape.changeShare
      : random.between(isTop ? 2 : 0, 15) + (isTop ? 8 : 0);
  if (uptakePerDay > 0.005) level = Math.min(level, (production / uptakePerDay) * random.between(0.4, 1.1));
  level = Math.min(level, isTop ? 40 : 110);
  let logDrift = 0;
  let feedToday = 1;
  const allMade = [...made, ...future].sort((a, b) => a.at - b.at);
  let nextChange = 0;
  for (let tick = 0; tick < ticks; tick += 1) {
    const day = tick / PER_DAY;
    while (nextChange < allMade.length && (allMade[nextChange]?.at ?? 0) <= day) {
      const done = allMade[nextChange] as (typeof allMade)[number];
      level = (1 - done.fraction) * level + done.fraction * done.newWater;
      nextChange += 1;
    }
    path[tick] = level;
    const base = production * Math.exp(logDrift) * (day >= eventAt ? eventRatio : 1);
    rate[tick] = base - uptakePerDay * level;
    if (tick % PER_DAY === 0) {
      const isSkipped = random.uniform() < skip;
      feedToday = isSkipped ? 0 : Math.exp(feeding * random.normal() - (feeding * feeding) / 2) / (1 - skip);
      logDrift += drift * random.normal();
      // Five years of free drift would leave every tank; a keeper pulls back towards his habits.
      logDrift *= 0.998;
    }
    level += (base * feedToday - uptakePerDay * level) / PER_DAY;
  }
  const levelAt = (day: number) =>
    path[Math.min(Math.max(Math.floor(day * PER_DAY), 0), ticks - 1)] as number;

  // Tests.
  const charts = isTop ? LOW_CHARTS : CHARTS;
  const kits = [kitOf(random, "kit A", charts, 0.05)];
  let secondFrom = Number.POSITIVE_INFINITY;
  if (regime === "kit change" || (regime === "five years" && random.uniform() < 0.7)) {
    kits.push(kitOf(random, "kit B", charts, 0.08));
    secondFrom = regime === "five years" ? end - random.between(20, 400) : end * random.between(0.3, 0.8);
  }
  const hasBothOnOneDay = random.uniform() < 0.4;
  const readings: TrendReading[] = [];
  const test = (kit: Kit, at: number) => {
    readings.push({ at, value: read(random, kit, levelAt(at - 1e-6), misreads), instrument: kit.instrument });
  };
  const beforeChange = shape.testBeforeChange
    ? changeTimes.map((at) => at - 0.02).filter((at) => at <= end)
    : [];
  const times = shape.testBeforeChange
    ? beforeChange
    : irregularTimes(random, end, shape.testGap, random.between(0, 3));
  let isFirstOfSecond = true;
  for (const at of times) {
    const first = kits[0] as Kit;
    const second = kits[1];
    if (second && at >= secondFrom) {
      if (isFirstOfSecond && hasBothOnOneDay) test(first, at);
      isFirstOfSecond = false;
      test(second, at);
    } else test(first, at);
  }

  const kit = kits.at(-1) as Kit;
  const meanBetween = (from: number, to: number) => {
    let sum = 0;
    let count = 0;
    for (let tick = Math.ceil(from * PER_DAY); tick < to * PER_DAY; tick += 1) {
      sum += path[tick] ?? 0;
      count += 1;
    }
    return sum / Math.max(1, count);
  };
  return {
    regime,
    index,
    readings,
    events,
    now,
    planned,
    truth: {
      netPerDay: rate[Math.floor(now * PER_DAY)] as number,
      levelNow: levelAt(now),
      levelIn14: levelAt(now + FORECAST_DAYS),
      meanBetween,
      eventRatio,
      readerFirstStep: kit.firstStep,
      readerLevel: kit.readerLevel,
      feedingSpread: Math.sqrt(Math.exp(feeding * feeding) / (1 - skip) - 1),
      drift,
      uptakePerDay,
      levelAt,
    },
  };
}
