import type { Instrument } from "../../src/core/trends/readings.ts";
import type { Random } from "./random.ts";

export const CHARTS = [
  [0, 5, 10, 20, 40, 80, 160],
  [0, 5, 10, 25, 50, 100, 250],
  [0, 2, 5, 10, 20, 40, 80],
  [0, 10, 25, 50, 100, 250],
] as const;
export const LOW_CHARTS = [
  [0, 5, 10, 20, 40],
  [0, 2, 5, 10, 20],
] as const;
/** A test kit as it is, and as its maker says it is. */
export interface Kit {
  readonly instrument: Instrument;
  readonly gain: number;
  readonly edges: readonly number[];
  readonly firstStep: number;
  readonly readerLevel: number;
}

export function kitOf(
  random: Random,
  id: string,
  charts: readonly (readonly number[])[],
  spread: number,
): Kit {
  const gain = Math.exp(spread * random.normal());
  if (charts !== LOW_CHARTS && random.uniform() < 0.12) {
    const levelSd = random.between(0.04, 0.12);
    const instrument: Instrument = { id, kind: "meter", fixedSd: 1, levelSd: 0.08 };
    return { instrument, gain, edges: [], firstStep: 1, readerLevel: levelSd };
  }
  const steps = random.pick(charts);
  // An eye may cut between two shades lower than half-way.
  const towardsGeometric = random.between(0, 0.5);
  const edges = steps.slice(1).map((step, i) => {
    const below = steps[i] as number;
    const middle = (below + step) / 2;
    return below === 0 ? middle : middle + towardsGeometric * (Math.sqrt(below * step) - middle);
  });
  return {
    instrument: { id, kind: "chart", steps },
    gain,
    edges,
    firstStep: random.between(0.05, 0.3) * (steps[1] as number),
    readerLevel: random.between(0.05, 0.25),
  };
}

export function read(random: Random, kit: Kit, level: number, misreads: number): number {
  const seen = kit.gain * level;
  const { instrument } = kit;
  if (instrument.kind === "meter") {
    const value = seen + random.normal() * Math.hypot(kit.firstStep, kit.readerLevel * seen);
    return Math.max(
      0,
      Math.round((random.uniform() < misreads ? value * random.between(0.2, 3) : value) * 2) / 2,
    );
  }
  const shown = seen + random.normal() * Math.hypot(kit.firstStep, kit.readerLevel * seen);
  const index = kit.edges.filter((edge) => shown >= edge).length;
  const last = instrument.steps.length - 1;
  if (random.uniform() >= misreads) return instrument.steps[index] as number;
  const slipped =
    random.uniform() < 0.5 ? index + random.pick([-1, 1]) : Math.floor(random.uniform() * (last + 1));
  return instrument.steps[Math.min(Math.max(slipped, 0), last)] as number;
}
