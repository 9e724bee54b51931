import type { Random } from "./random.ts";

export const REGIMES = [
  "steady",
  "rising",
  "saw-tooth",
  "intervention",
  "kit at top step",
  "sparse",
  "uptake",
  "kit change",
  "five years",
] as const;
export type Regime = (typeof REGIMES)[number];

/** How a record is kept: its length, and how often tests and changes come. */
export interface Shape {
  readonly days: number;
  readonly testGap: number;
  readonly changeGap: number;
  readonly changeShare: number;
  readonly testBeforeChange: boolean;
}

export function shapeOf(regime: Regime, random: Random): Shape {
  const share = random.between(0.15, 0.5);
  const none = { changeGap: Number.POSITIVE_INFINITY, changeShare: share, testBeforeChange: false };
  switch (regime) {
    case "steady":
      return {
        days: random.between(50, 160),
        testGap: random.between(4, 10),
        changeGap: random.between(10, 25),
        changeShare: share,
        testBeforeChange: false,
      };
    case "rising":
      return { days: random.between(20, 80), testGap: random.between(3, 9), ...none };
    case "saw-tooth":
      return {
        days: random.between(40, 160),
        testGap: random.between(4, 9),
        changeGap: random.pick([7, 7, 10, 14]),
        changeShare: share,
        testBeforeChange: random.uniform() < 0.4,
      };
    case "intervention":
      return {
        days: random.between(60, 160),
        testGap: random.between(4, 8),
        changeGap: random.pick([7, 10, 14]),
        changeShare: share,
        testBeforeChange: false,
      };
    case "kit at top step":
      return {
        days: random.between(30, 120),
        testGap: random.between(4, 9),
        changeGap: random.between(7, 30),
        changeShare: share,
        testBeforeChange: false,
      };
    case "sparse":
      return {
        days: random.between(4, 90),
        testGap: random.between(6, 40),
        changeGap: random.between(7, 30),
        changeShare: share,
        testBeforeChange: false,
      };
    case "uptake":
      return {
        days: random.between(40, 160),
        testGap: random.between(4, 9),
        changeGap: random.uniform() < 0.3 ? 1e9 : random.between(10, 30),
        changeShare: share,
        testBeforeChange: false,
      };
    case "kit change":
      return {
        days: random.between(60, 160),
        testGap: random.between(4, 9),
        changeGap: random.between(7, 20),
        changeShare: share,
        testBeforeChange: false,
      };
    case "five years":
      return {
        days: 1826,
        testGap: 7,
        changeGap: random.pick([7, 14]),
        changeShare: share,
        testBeforeChange: random.uniform() < 0.3,
      };
  }
}

/** Times with gaps spread about a mean, some tests skipped. */
export function irregularTimes(random: Random, days: number, gap: number, first: number): number[] {
  const times: number[] = [];
  let at = first;
  while (at <= days) {
    times.push(at);
    at += gap * Math.max(0.15, 1 + 0.45 * random.normal()) * (random.uniform() < 0.08 ? 2.5 : 1);
  }
  return times;
}
