import {
  as,
  type Fraction,
  type GramsPerHour,
  type Hours,
  type Litres,
  type LitresPerHour,
  type MgPerL,
} from "../quantity/units.ts";
import type { Minutes } from "./plant-units.ts";

/** Time water spends in a volume on average; over a media bed, its empty-bed contact time.
 *  Source: levenspiel-1999, empty-bed-contact-time. Throws: RangeError for a flow not above 0. */
export function residenceTime(volume: Litres, flow: LitresPerHour): Minutes {
  requireFlow(flow);
  return as<Minutes>((volume / flow) * 60);
}

/** Times a volume passes per hour. Source: levenspiel-1999. Throws: RangeError for a volume not above 0. */
export function turnover(volume: Litres, flow: LitresPerHour): number {
  if (!(volume > 0)) throw new RangeError("a volume has to be above 0");
  return flow / volume;
}

/** Speed of the water through a section, cm/s. Source: first-principles. Throws: RangeError for a section not above 0. */
export function superficialVelocity(flow: LitresPerHour, sectionCm2: number): number {
  if (!(sectionCm2 > 0)) throw new RangeError("a section has to be above 0");
  return (flow * 1000) / 3600 / sectionCm2;
}

/** Share of what was there that is left in one well-mixed volume through which new water runs.
 *  Source: levenspiel-1999. Throws: RangeError for a volume not above 0. */
export function leftAfterFlushing(volume: Litres, flow: LitresPerHour, hours: Hours): Fraction {
  return as<Fraction>(Math.exp(-turnover(volume, flow) * hours));
}

/** Time until a share of it is exchanged; the inverse of `leftAfterFlushing`.
 *  Throws: RangeError for a flow not above 0, or a share outside 0–1. */
export function flushingTime(volume: Litres, flow: LitresPerHour, exchanged: Fraction): Hours {
  requireFlow(flow);
  requireShare(exchanged);
  return as<Hours>((-Math.log(1 - exchanged) * volume) / flow);
}

/** Time until two well-mixed volumes joined in a loop have come within a share of their common mean.
 *  Source: levenspiel-1999; the difference falls with rate Q·(1/V1 + 1/V2). */
export function closedLoopTime(v1: Litres, v2: Litres, flow: LitresPerHour, share: Fraction): Hours {
  requireFlow(flow);
  requireShare(share);
  return as<Hours>(-Math.log(1 - share) / (turnover(v1, flow) + turnover(v2, flow)));
}

/** Share of the first filling left in `n` equal tanks in a row after `theta` times their whole residence.
 *  Source: levenspiel-1999. Throws: RangeError unless n is a whole number of 1 or more, and theta 0 or more. */
export function leftInTankRow(n: number, theta: number): Fraction {
  if (!(Number.isInteger(n) && n >= 1 && theta >= 0))
    throw new RangeError("a row has tanks, and time runs forward");
  const x = n * theta;
  let term = 1;
  let sum = 1;
  for (let j = 1; j < n; j++) {
    term *= x / j;
    sum += term;
  }
  return as<Fraction>(Math.exp(-x) * sum);
}

/** How much richer water is at one end of a loop than at the other. Source: mass-balance. */
export function concentrationStep(load: GramsPerHour, flow: LitresPerHour): MgPerL {
  requireFlow(flow);
  return as<MgPerL>((load * 1000) / flow);
}

function requireFlow(flow: LitresPerHour): void {
  if (!(flow > 0)) throw new RangeError("a flow has to be above 0");
}

function requireShare(share: Fraction): void {
  if (!(share >= 0 && share < 1)) throw new RangeError("a share lies between 0 and 1");
}
