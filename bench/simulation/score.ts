import type { Band } from "../../src/core/trends/draws.ts";

/** Width, and for a miss the distance times 2/α: small only for a range that is narrow and right.
 *  Source: Gneiting & Raftery (2007), the interval score. */
export function intervalScore(truth: number, low: number, high: number, alpha: number): number {
  return high - low + (2 / alpha) * (Math.max(0, low - truth) + Math.max(0, truth - high));
}

export function scoreOf(band: Band, truth: number): { readonly s80: number; readonly s95: number } {
  return {
    s80: intervalScore(truth, band.low80, band.high80, 0.2),
    s95: intervalScore(truth, band.low95, band.high95, 0.05),
  };
}

/** Share of truths inside the ranges. */
export function coverage(pairs: readonly { band: Band; truth: number }[]): { c80: number; c95: number } {
  const share = (inside: (p: { band: Band; truth: number }) => boolean) =>
    pairs.filter(inside).length / Math.max(1, pairs.length);
  return {
    c80: share(({ band, truth }) => truth >= band.low80 && truth <= band.high80),
    c95: share(({ band, truth }) => truth >= band.low95 && truth <= band.high95),
  };
}

/** What a refusal is charged: the range that holds 80 % (95 %) of all tanks, known to anyone. */
export function everyTank(truths: readonly number[]): Band {
  const sorted = [...truths].sort((a, b) => a - b);
  const at = (q: number) => sorted[Math.round(q * (sorted.length - 1))] ?? Number.NaN;
  return { best: at(0.5), low80: at(0.1), high80: at(0.9), low95: at(0.025), high95: at(0.975) };
}
