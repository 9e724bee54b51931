import type { Band } from "../../src/core/trends/draws.ts";
import type { Judged, Method } from "./evaluate.ts";

/** Width, and for a miss the distance times 2/α: small only for a range that is narrow and right.
 *  Source: Gneiting & Raftery (2007), the interval score. */
export function intervalScore(truth: number, low: number, high: number, alpha: number): number {
  return high - low + (2 / alpha) * (Math.max(0, low - truth) + Math.max(0, truth - high));
}

/** Mean scores of a method: production and forecast, each for its 80 % and its 95 % range. */
export interface Scores {
  readonly net80: number;
  readonly net95: number;
  readonly forecast80: number;
  readonly forecast95: number;
}

/** What a refusal is charged: the mean score of quoting, for every record, the range that holds 80 % (95 %)
 *  of all tanks. The same for every method and every record. */
export function chargeOf(rows: readonly Judged[]): Scores {
  const net = spreadOf(rows.map((row) => row.netTruth));
  const forecast = spreadOf(rows.map((row) => row.levelTruth));
  return mean(rows.map((row) => scoresOf({ net, forecast }, row)));
}

/** Mean scores of a method over the records, its refusals charged. */
export function meanScores(rows: readonly Judged[], method: Method, charge: Scores): Scores {
  return mean(
    rows.map((row) => {
      const estimate = row.estimates[method];
      return estimate ? scoresOf(estimate, row) : charge;
    }),
  );
}

function scoresOf({ net, forecast }: { net: Band; forecast: Band }, row: Judged): Scores {
  return {
    net80: intervalScore(row.netTruth, net.low80, net.high80, 0.2),
    net95: intervalScore(row.netTruth, net.low95, net.high95, 0.05),
    forecast80: intervalScore(row.levelTruth, forecast.low80, forecast.high80, 0.2),
    forecast95: intervalScore(row.levelTruth, forecast.low95, forecast.high95, 0.05),
  };
}

function mean(scores: readonly Scores[]): Scores {
  const of = (key: keyof Scores) => scores.reduce((sum, s) => sum + s[key], 0) / scores.length;
  return {
    net80: of("net80"),
    net95: of("net95"),
    forecast80: of("forecast80"),
    forecast95: of("forecast95"),
  };
}

function spreadOf(truths: readonly number[]): Band {
  const sorted = [...truths].sort((a, b) => a - b);
  const at = (q: number) => sorted[Math.round(q * (sorted.length - 1))] ?? Number.NaN;
  return { best: at(0.5), low80: at(0.1), high80: at(0.9), low95: at(0.025), high95: at(0.975) };
}
