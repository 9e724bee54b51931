import { type Belief, COMPARISON, LEVEL, PRODUCTION } from "./balance-filter.ts";
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
  readonly drift: number;
  /** Place in the table of even points, for what has yet to happen. */
  readonly point: number;
}

const POINTS = 2048;
const DIMENSIONS = 7;

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
export const FUTURE_DIMENSION = 4;

/** Draws from the weighted beliefs, with the calibration error of the last instrument on top; ways with a
 *  level or production below zero are left out. */
export function drawsFrom(beliefs: readonly Belief[]): readonly Draw[] {
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  const weights = beliefs.map((b) => Math.exp(b.logWeight - best));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const draws: Draw[] = [];
  let reached = 0;
  let point = 0;
  beliefs.forEach((belief, index) => {
    reached += ((weights[index] as number) / total) * POINTS;
    const root = rootOf(belief);
    for (; point + 0.5 < reached && point < POINTS; point += 1) {
      const a = evenNormal(point, 0);
      const b = evenNormal(point, 1);
      const c = evenNormal(point, 2);
      const scale = 1 / (1 + SETTINGS.kitSpread * evenNormal(point, 3));
      const level = ((belief.mean[LEVEL] as number) + root[0] * a) * scale;
      const production = ((belief.mean[PRODUCTION] as number) + root[1] * a + root[2] * b) * scale;
      const comparison =
        ((belief.mean[COMPARISON] as number) + root[3] * a + root[4] * b + root[5] * c) * scale;
      if (level < 0 || production < 0) continue;
      const { uptakePerDay, feedingSpread, drift } = belief;
      draws.push({ level, production, comparison, uptakePerDay, feedingSpread, drift, point });
    }
  });
  return draws;
}

/** Triangular root of the first three rows and columns of the covariance. */
function rootOf({
  covariance: P,
  size: n,
}: Belief): readonly [number, number, number, number, number, number] {
  const l00 = Math.sqrt(Math.max(P[0] as number, 0));
  const l10 = l00 > 0 ? (P[n] as number) / l00 : 0;
  const l11 = Math.sqrt(Math.max((P[n + 1] as number) - l10 * l10, 0));
  const l20 = l00 > 0 ? (P[2 * n] as number) / l00 : 0;
  const l21 = l11 > 0 ? ((P[2 * n + 1] as number) - l20 * l10) / l11 : 0;
  const l22 = Math.sqrt(Math.max((P[2 * n + 2] as number) - l20 * l20 - l21 * l21, 0));
  return [l00, l10, l11, l20, l21, l22];
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
