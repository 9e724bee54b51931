import type { Band } from "../../src/core/trends/draws.ts";
import { isAtBottom, isAtTop, type Look, looks } from "../../src/core/trends/readings.ts";
import type { SimulatedRecord } from "./world.ts";

/** What a yardstick says of one record. */
export interface Estimated {
  readonly net: Band;
  readonly forecast: Band;
}

const WINDOW_DAYS = 120;
const LEAST_READINGS = 12;
export const FORECAST_DAYS = 14;

/** The stretch both yardsticks look at: the last 120 days, and at least 12 readings. */
export function recent(record: SimulatedRecord): readonly Look[] {
  const found = looks(record.readings);
  let from = found.length;
  while (
    from > 0 &&
    (record.now - (found[from - 1] as Look).at <= WINDOW_DAYS || found.length - from < LEAST_READINGS)
  ) {
    from -= 1;
  }
  return found.slice(from);
}

/** What both yardsticks refuse: too little, all at one end, or too old. */
export function isTooLittle(found: readonly Look[], now: number): boolean {
  const first = found[0];
  const last = found.at(-1);
  if (!first || !last || found.length < 3 || last.at - first.at < 5) return true;
  if (found.every(isAtTop) || found.every(isAtBottom)) return true;
  return now - last.at > Math.max(30, last.at - first.at);
}

export function firstStepOf(look: Look): number {
  return look.instrument.kind === "chart"
    ? (look.instrument.steps.find((s) => s > 0) ?? 1)
    : look.instrument.fixedSd;
}

export function scatterAt(look: Look, level: number, share: number): number {
  if (look.instrument.kind === "meter")
    return Math.hypot(look.instrument.fixedSd, look.instrument.levelSd * level);
  return Math.hypot(0.15 * firstStepOf(look), share * level);
}
