import { type Look, middleOf } from "./readings.ts";

/** Nitrate as N times this is nitrate as NO₃; nitrite likewise: ratios of molar masses. Source: definition. */
const FACTORS = [4.4268, 3.2845] as const;
const CLOSE = 1.12;
const NEIGHBOUR_DAYS = 4;

export interface UnitSlip {
  readonly instrument: string;
  readonly other: string;
  readonly factor: number;
}

/** Two instruments that differ again and again by the factor between "as N" and "as the ion": one of them is
 *  most likely read in the other unit. Undefined with no such pair of neighbours, or with pairs that disagree. */
export function unitSlip(looks: readonly Look[]): UnitSlip | undefined {
  const pairs = looks.flatMap((look, i) => {
    const before = looks[i - 1];
    if (!before || before.instrument.id === look.instrument.id || look.at - before.at > NEIGHBOUR_DAYS)
      return [];
    const ratio = middleOf(before) / middleOf(look);
    return ratio > 0 && Number.isFinite(ratio) ? [{ before, look, ratio }] : [];
  });
  const isNear = (ratio: number, factor: number) => Math.abs(Math.log(ratio / factor)) < Math.log(CLOSE);
  for (const factor of FACTORS) {
    const matching = pairs.filter(({ ratio }) => isNear(Math.max(ratio, 1 / ratio), factor));
    const [first] = matching;
    if (first && matching.length * 2 > pairs.length) {
      const [higher, lower] = first.ratio > 1 ? [first.before, first.look] : [first.look, first.before];
      return { instrument: lower.instrument.id, other: higher.instrument.id, factor };
    }
  }
  return undefined;
}
