import { type Band, bandOf } from "../../src/core/trends/draws.ts";
import { normalBetween, normalDensity } from "../../src/core/trends/normal.ts";
import { type Look, middleOf } from "../../src/core/trends/readings.ts";
import { SETTINGS } from "../../src/core/trends/settings.ts";
import type { Timeline } from "../../src/core/trends/timeline.ts";
import { type Random, seeded } from "./random.ts";

const COUNT = 12_000;

/** Many possible tanks at once, one per place of each array. */
interface Crowd {
  readonly level: Float64Array;
  readonly production: Float64Array;
  readonly uptake: Float64Array;
  readonly feeding: Float64Array;
  readonly change: Float64Array;
  readonly drift: Float64Array;
  readonly reader: Float64Array;
}

/**
 * The same beliefs as the engine's, followed by brute force: thousands of possible tanks are carried through
 * the record and drawn anew by how well they foretell each reading. No bell curves are assumed on the way, so
 * it shows what the engine's bells cost. For one instrument that shows colours, and no dated events.
 * Source: Gordon, Salmond & Smith (1993), the bootstrap filter.
 */
export function particleProduction(timeline: Timeline, seed: number): Band {
  const random = seeded(seed);
  const crowd = startingCrowd(timeline, random);
  let weights = new Float64Array(COUNT).fill(1);
  let time = timeline.looks[0]?.at ?? timeline.now;
  const grow = (at: number) => {
    const days = at - time;
    time = at;
    if (days > 0) growAll(crowd, days, random);
  };
  for (const step of timeline.steps) {
    grow(step.at);
    if (step.kind === "change") {
      for (let i = 0; i < COUNT; i += 1) {
        const fraction = step.fraction * (1 + (crowd.change[i] as number) * random.normal());
        const newWater = step.newWater * (1 + SETTINGS.newWaterSpread * random.normal());
        const level = crowd.level[i] as number;
        crowd.level[i] = Math.max(0, level - fraction * (level - newWater));
      }
    } else if (step.kind === "look") {
      for (let i = 0; i < COUNT; i += 1) weights[i] = (weights[i] as number) * chanceOf(step.look, crowd, i);
      if (effectiveCount(weights) < COUNT / 2) {
        redraw(crowd, weights, random);
        weights = new Float64Array(COUNT).fill(1);
      }
    }
  }
  grow(timeline.now);
  redraw(crowd, weights, random);
  return bandOf(
    Float64Array.from(crowd.level, (level, i) => {
      const scale = 1 / (1 + SETTINGS.kitSpread * random.normal());
      return ((crowd.production[i] as number) - (crowd.uptake[i] as number) * level) * scale;
    }),
  );
}

function startingCrowd(timeline: Timeline, random: Random): Crowd {
  const first = timeline.looks[0] as Look;
  const middle = Math.max(middleOf(first), first.least);
  const { typicalLevel, usualProduction } = timeline;
  const many = (make: (i: number) => number) => Float64Array.from({ length: COUNT }, (_, i) => make(i));
  const uptake = many(() => weighted(SETTINGS.uptakes, random).perDay);
  const keepers = Array.from({ length: COUNT }, () => weighted(SETTINGS.keepers, random));
  return {
    uptake,
    level: many(() => positive(() => middle * (1 + 1.5 * random.normal()))),
    production: many((i) => {
      const bell = weighted(SETTINGS.productionBells, random);
      const held = (uptake[i] as number) * typicalLevel;
      const spread = Math.hypot(bell.spread * usualProduction, 0.5 * held);
      return positive(() => bell.centre * usualProduction + held + spread * random.normal());
    }),
    feeding: many((i) => keepers[i]?.feedingSpread ?? 0),
    change: many((i) => keepers[i]?.changeSpread ?? 0),
    drift: many(() => random.pick(SETTINGS.drifts)),
    reader: many(() => random.pick(SETTINGS.readerLevelShares)),
  };
}

function weighted<T extends { readonly belief: number }>(choices: readonly T[], random: Random): T {
  let left = random.uniform() * choices.reduce((sum, c) => sum + c.belief, 0);
  for (const choice of choices) {
    left -= choice.belief;
    if (left <= 0) return choice;
  }
  return choices.at(-1) as T;
}

function positive(draw: () => number): number {
  for (;;) {
    const value = draw();
    if (value > 0) return value;
  }
}

function growAll(crowd: Crowd, days: number, random: Random): void {
  const root = Math.sqrt(days);
  for (let i = 0; i < COUNT; i += 1) {
    const k = crowd.uptake[i] as number;
    const production = crowd.production[i] as number;
    const kept = Math.exp(-k * days);
    const gained = k === 0 ? days : (1 - kept) / k;
    const luck = (crowd.feeding[i] as number) * production * root * random.normal();
    crowd.level[i] = Math.max(0, (crowd.level[i] as number) * kept + production * gained + luck);
    crowd.production[i] = production * Math.exp((crowd.drift[i] as number) * root * random.normal());
  }
}

function chanceOf(look: Look, crowd: Crowd, i: number): number {
  const level = crowd.level[i] as number;
  const sd = Math.hypot(SETTINGS.readerFirstStepShare * look.least, (crowd.reader[i] as number) * level);
  const sound =
    look.low === look.high
      ? normalDensity((look.low - level) / sd) / sd
      : normalBetween((look.low - level) / sd, (look.high - level) / sd);
  return (1 - SETTINGS.misreadChance) * sound + SETTINGS.misreadChance / look.cells;
}

function effectiveCount(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const w of weights) {
    sum += w;
    squares += w * w;
  }
  return (sum * sum) / squares;
}

/** Draws the crowd anew, each tank as often as its weight deserves. */
function redraw(crowd: Crowd, weights: Float64Array, random: Random): void {
  const share = weights.reduce((sum, w) => sum + w, 0) / COUNT;
  const chosen = new Int32Array(COUNT);
  let mark = random.uniform() * share;
  let passed = 0;
  let j = 0;
  for (let i = 0; i < COUNT; i += 1) {
    while (passed + (weights[j] as number) < mark && j < COUNT - 1) {
      passed += weights[j] as number;
      j += 1;
    }
    chosen[i] = j;
    mark += share;
  }
  for (const values of Object.values(crowd) as Float64Array[]) {
    const before = values.slice();
    for (let i = 0; i < COUNT; i += 1) values[i] = before[chosen[i] as number] as number;
  }
}
