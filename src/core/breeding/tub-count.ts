import type { Litres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import {
  CLUMPED_BELOW,
  countNeeded,
  type Density,
  densityFromScoops,
  dispersionOf,
} from "./counted-sample.ts";

export interface TubCount {
  readonly perML: Density;
  /** In the whole tank; absent when its litres are not known. */
  readonly total?: Density;
  readonly counted: number;
  readonly isClumped: boolean;
  /** Chance of so much scatter between evenly filled scoops; absent for a single scoop. */
  readonly chance?: number;
}

const ML_PER_L = 1000;
const ROUGH = 0.2;

/** How many are in a tank, from scoops counted out: density, the exact interval, and whether they stand clumped. */
export function tubCount(
  counts: readonly number[],
  scoopML: number,
  tankL: Litres | undefined,
): Answer<TubCount> | NoAnswer {
  if (counts.length === 0 || !(scoopML > 0) || counts.some((count) => !Number.isInteger(count) || count < 0))
    return noAnswer("breeding-no-scoops", {});
  const perML = densityFromScoops(counts, scoopML);
  const counted = counts.reduce((sum, count) => sum + count, 0);
  const chance = counts.length > 1 && counted > 0 ? dispersionOf(counts).chance : undefined;
  const isClumped = chance !== undefined && chance < CLUMPED_BELOW;
  const needed = countNeeded(ROUGH);
  const cautions: Caution[] = [
    ...(isClumped ? [caution("breeding-clumped", { chance })] : []),
    ...(counted < needed ? [caution("breeding-few-counted", { counted, needed }, "note")] : []),
  ];
  const times = (factor: number): Density => ({
    best: perML.best * factor,
    low: perML.low * factor,
    high: perML.high * factor,
  });
  return {
    kind: "answer",
    value: {
      perML,
      ...(tankL === undefined ? {} : { total: times(tankL * ML_PER_L) }),
      counted,
      isClumped,
      ...(chance === undefined ? {} : { chance }),
    },
    method: "All scoops together over their volume, with the exact interval of a count (19 times in 20)",
    working: [
      `${counts.join(" + ")} = ${counted} in ${counts.length} × ${scoopML} mL`,
      `${counted} ÷ ${counts.length * scoopML} mL = ${perML.best.toPrecision(3)} per mL (${perML.low.toPrecision(3)}–${perML.high.toPrecision(3)})`,
      ...(chance === undefined
        ? ["one scoop alone cannot show clumping"]
        : [`scatter between scoops against chance: p = ${chance.toPrecision(2)}`]),
    ],
    constants: [{ name: "clumped below p", value: String(CLUMPED_BELOW), source: "common-practice" }],
    sources: ["garwood-1936", "fisher-1925", "press-2007"],
    assumptions: ["the water was stirred before each scoop", "the scoops are a small part of the tank"],
    cautions,
    ...(counted === 0 ? {} : { driver: { input: "how many were counted", share: 1 } }),
  };
}
