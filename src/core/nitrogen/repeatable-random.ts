import type { Random } from "./cycling-ensemble.ts";

/**
 * Numbers evenly spread over 0 ≤ u < 1, the same for the same seed, so that one question has one answer.
 * A linear congruential generator: next = 1664525 × last + 1013904223, modulo 2³².
 */
export function repeatableRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}
