import { type Belief, FIRST_CALIBRATION } from "./belief.ts";
import { type Band, bandOf, evenNormal } from "./draws.ts";
import type { Timeline } from "./timeline.ts";

/** How another instrument reads against the last one used: 1.1 is ten per cent more. */
export interface KitDifference {
  readonly instrument: string;
  readonly against: string;
  readonly ratio: Band;
}

const POINTS = 512;

/** One entry per instrument in the record but the last used. */
export function kitDifferences(timeline: Timeline, beliefs: readonly Belief[]): readonly KitDifference[] {
  const [against = "", ...others] = timeline.instruments;
  const best = Math.max(...beliefs.map((b) => b.logWeight));
  const weights = beliefs.map((b) => Math.exp(b.logWeight - best));
  const total = weights.reduce((sum, w) => sum + w, 0);
  return others.map((instrument, i) => {
    const place = FIRST_CALIBRATION + i;
    const values: number[] = [];
    let reached = 0;
    beliefs.forEach(({ mean, covariance, size }, index) => {
      reached += ((weights[index] as number) / total) * POINTS;
      const sd = Math.sqrt(Math.max(covariance[place * size + place] as number, 0));
      while (values.length + 0.5 < reached && values.length < POINTS) {
        values.push(1 + (mean[place] as number) + sd * evenNormal(values.length, 0));
      }
    });
    return { instrument, against, ratio: bandOf(Float64Array.from(values)) };
  });
}
