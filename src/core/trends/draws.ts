import { type Belief, COMPARISON, FIRST_CALIBRATION, LEVEL, PRODUCTION } from "./belief.ts";
import { normalQuantile } from "./normal.ts";
import { SETTINGS } from "./settings.ts";

/** Equally likely ways the tank may stand now. */
export interface Draw {
  readonly level: number;
  /** Production per day before uptake. */
  readonly production: number;
  /** Mean level of the last stretch less that of the one before. */
  readonly comparison: number;
  readonly uptakePerDay: number;
  readonly feedingSpread: number;
  readonly changeSpread: number;
  readonly drift: number;
  /** Place in the table of even points, for what has yet to happen. */
  readonly point: number;
}

const POINTS = 640;
const DIMENSIONS = 8;

/**
 * A fixed table of normal values that fills the space evenly, so that one question always has one answer
 * and no dice are needed.
 * Source: roberts-2018 (additive sequence from a generalised golden ratio).
 */
const NORMALS = evenNormals();

function evenNormals(): Float64Array {
  let ratio = 1.5;
  for (let i = 0; i < 60; i += 1) ratio = (1 + ratio) ** (1 / (DIMENSIONS + 1));
  const table = new Float64Array(POINTS * DIMENSIONS);
  for (let j = 0; j < DIMENSIONS; j += 1) {
    const stride = ratio ** -(j + 1);
    for (let i = 0; i < POINTS; i += 1) {
      const u = (0.5 + stride * (i + 1)) % 1;
      table[i * DIMENSIONS + j] = normalQuantile(Math.min(Math.max(u, 1e-9), 1 - 1e-9));
    }
  }
  return table;
}

/** Normal value `dimension` of even point `point`; both wrap round. */
export function evenNormal(point: number, dimension: number): number {
  return NORMALS[(point % POINTS) * DIMENSIONS + (dimension % DIMENSIONS)] as number;
}

/** First dimension free for what has yet to happen. */
export const FUTURE_DIMENSION = 5;

/**
 * Draws from the weighted beliefs. Ways with a level or production below zero are left out; when that leaves
 * hardly any, the record contradicts itself, and they are kept at zero. The calibration
 * error of the last instrument comes on top: with one instrument it cannot be learnt, and with several, all
 * equally good, the truth most likely lies at the mean of them.
 */
export function drawsFrom(beliefs: readonly Belief[]): {
  readonly draws: readonly Draw[];
  readonly isContradicted: boolean;
} {
  const all = allDraws(beliefs);
  const possible = all.filter((d) => d.level >= 0 && d.production >= 0);
  if (possible.length >= SETTINGS.leastPossible * POINTS) return { draws: possible, isContradicted: false };
  const draws = all.map((d) => ({
    ...d,
    level: Math.max(0, d.level),
    production: Math.max(0, d.production),
  }));
  return { draws, isContradicted: true };
}

function allDraws(beliefs: readonly Belief[]): Draw[] {
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  const weights = beliefs.map((b) => Math.exp(b.logWeight - best));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const draws: Draw[] = [];
  let reached = 0;
  let point = 0;
  beliefs.forEach((belief, index) => {
    reached += ((weights[index] as number) / total) * POINTS;
    const root = rootOf(belief);
    const kits = 1 + belief.calibrations;
    for (; point + 0.5 < reached && point < POINTS; point += 1) {
      const a = evenNormal(point, 0);
      const b = evenNormal(point, 1);
      const c = evenNormal(point, 2);
      const d = evenNormal(point, 3);
      const othersHigher = root[6] + root[7] * a + root[8] * b + root[9] * c + root[10] * d;
      const own = (SETTINGS.kitSpread / Math.sqrt(kits)) * evenNormal(point, 4);
      const scale = 1 / Math.max(0.5, 1 + own - othersHigher / kits);
      const level = ((belief.mean[LEVEL] as number) + root[0] * a) * scale;
      const production = ((belief.mean[PRODUCTION] as number) + root[1] * a + root[2] * b) * scale;
      const comparison =
        ((belief.mean[COMPARISON] as number) + root[3] * a + root[4] * b + root[5] * c) * scale;
      const { uptakePerDay, feedingSpread, changeSpread, drift } = belief;
      draws.push({ level, production, comparison, uptakePerDay, feedingSpread, changeSpread, drift, point });
    }
  });
  return draws;
}

type Six = readonly [number, number, number, number, number, number];
type Root = readonly [...Six, number, number, number, number, number];

/** Triangular root, row by row, of the covariance of level, production and comparison (six figures); then the
 *  mean of the sum of the other instruments' calibrations, and that sum's own row of the root (four). */
function rootOf({ covariance: P, mean, size: n, calibrations }: Belief): Root {
  const l00 = Math.sqrt(Math.max(P[0] as number, 0));
  const l10 = over(P[n] as number, l00);
  const l11 = Math.sqrt(Math.max((P[n + 1] as number) - l10 * l10, 0));
  const l20 = over(P[2 * n] as number, l00);
  const l21 = over((P[2 * n + 1] as number) - l20 * l10, l11);
  const l22 = Math.sqrt(Math.max((P[2 * n + 2] as number) - l20 * l20 - l21 * l21, 0));
  let sum = 0;
  let withLevel = 0;
  let withProduction = 0;
  let withComparison = 0;
  let withItself = 0;
  const end = FIRST_CALIBRATION + calibrations;
  for (let i = FIRST_CALIBRATION; i < end; i += 1) {
    sum += mean[i] as number;
    withLevel += P[i * n] as number;
    withProduction += P[i * n + 1] as number;
    withComparison += P[i * n + 2] as number;
    for (let j = FIRST_CALIBRATION; j < end; j += 1) withItself += P[i * n + j] as number;
  }
  const l30 = over(withLevel, l00);
  const l31 = over(withProduction - l30 * l10, l11);
  const l32 = over(withComparison - l30 * l20 - l31 * l21, l22);
  const l33 = Math.sqrt(Math.max(withItself - l30 * l30 - l31 * l31 - l32 * l32, 0));
  return [l00, l10, l11, l20, l21, l22, sum, l30, l31, l32, l33];
}

function over(value: number, by: number): number {
  return by > 0 ? value / by : 0;
}

/** A figure's middle with the ranges that should hold it four times in five, and nineteen in twenty. */
export interface Band {
  readonly best: number;
  readonly low80: number;
  readonly high80: number;
  readonly low95: number;
  readonly high95: number;
}

export function bandOf(values: Float64Array): Band {
  const sorted = values.slice().sort();
  return {
    best: quantile(sorted, 0.5),
    low80: quantile(sorted, 0.1),
    high80: quantile(sorted, 0.9),
    low95: quantile(sorted, 0.025),
    high95: quantile(sorted, 0.975),
  };
}

/** Value below which a share q of sorted values lies; infinite values are kept as they are. */
export function quantile(sorted: Float64Array, q: number): number {
  const place = q * (sorted.length - 1);
  const below = Math.floor(place);
  const lower = sorted[below] ?? Number.NaN;
  const upper = sorted[Math.min(below + 1, sorted.length - 1)] ?? Number.NaN;
  return place === below || lower === upper ? lower : lower + (place - below) * (upper - lower);
}
