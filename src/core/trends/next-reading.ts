import { chartCells } from "./chart-cells.ts";
import { normalBetween } from "./normal.ts";
import type { Instrument } from "./readings.ts";
import { SETTINGS } from "./settings.ts";

/** A step of the chart, and the chance that the next test reads it. */
export interface StepChance {
  readonly value: number;
  readonly chance: number;
}

/** Every how many values are looked at: chances of steps need no more. */
const EVERY = 4;

/** What a chart will show for a level told by equally likely values: always wider than the level itself, and
 *  always in steps. Likeliest first; steps with less than one chance in fifty are left out. */
export function nextReading(
  levels: Float64Array,
  instrument: Extract<Instrument, { kind: "chart" }>,
): readonly StepChance[] {
  const firstStep = instrument.steps.find((step) => step > 0) ?? 1;
  const [fine, coarse] = SETTINGS.readerLevelShares;
  const cells = chartCells(instrument.steps);
  const chances = cells.map(() => 0);
  const used = levels.filter((_, i) => i % EVERY === 0);
  for (const level of used) {
    const sd = Math.hypot(SETTINGS.readerFirstStepShare * firstStep, ((fine + coarse) / 2) * level);
    cells.forEach((cell, i) => {
      const inside = normalBetween((cell.low - level) / sd, (cell.high - level) / sd);
      chances[i] = (chances[i] as number) + inside / used.length;
    });
  }
  return instrument.steps
    .map((value, i) => ({ value, chance: chances[i] as number }))
    .filter(({ chance }) => chance >= 0.02)
    .sort((a, b) => b.chance - a.chance);
}
