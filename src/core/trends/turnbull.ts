/** What is known of one value: above `low`, at most `high`. Equal ends mean the value itself. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** One stretch that can hold some of the values, and the share it holds. */
export interface Share extends Interval {
  readonly share: number;
}

/** Stops when no share moves by more than this. */
const SETTLED = 1e-10;
const MOST_ROUNDS = 20_000;

/**
 * How values known only as intervals are spread: the shares that make the record most likely, found
 * by sharing each reading out again and again. For "how often above 40?", never for a rate.
 * Source: turnbull-1976.
 */
export function turnbullShares(readings: readonly Interval[]): readonly Share[] {
  const stretches = innermost(readings);
  const holds = readings.map((reading) =>
    stretches.flatMap((s, j) => (s.low >= reading.low && s.high <= reading.high ? [j] : [])),
  );
  let shares = stretches.map(() => 1 / stretches.length);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const next = stretches.map(() => 0);
    for (const held of holds) {
      const total = held.reduce((sum, j) => sum + (shares[j] as number), 0);
      for (const j of held) next[j] = (next[j] as number) + (shares[j] as number) / total / readings.length;
    }
    const moved = Math.max(...next.map((share, j) => Math.abs(share - (shares[j] as number))));
    shares = next;
    if (moved < SETTLED) break;
  }
  return stretches.map((s, j) => ({ ...s, share: shares[j] as number }));
}

/** Share of values above x, where x is an end of some reading's interval. */
export function turnbullSurvival(shares: readonly Share[], x: number): number {
  return shares.reduce((sum, s) => (s.low >= x ? sum + s.share : sum), 0);
}

/** The stretches from a lower end to the next upper end with no other end between: only they can hold mass. */
function innermost(readings: readonly Interval[]): Interval[] {
  const ends = readings.flatMap(({ low, high }) =>
    low === high
      ? [
          { at: low, order: 0, opens: true },
          { at: high, order: 1, opens: false },
        ]
      : [
          { at: low, order: 2, opens: true },
          { at: high, order: 1, opens: false },
        ],
  );
  ends.sort((a, b) => a.at - b.at || a.order - b.order);
  const stretches: Interval[] = [];
  ends.forEach((end, i) => {
    const before = ends[i - 1];
    if (!end.opens && before?.opens) stretches.push({ low: before.at, high: end.at });
  });
  return stretches;
}
