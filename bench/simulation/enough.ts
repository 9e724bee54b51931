import { chartCells } from "../../src/core/trends/chart-cells.ts";
import { isAtBottom, isAtTop, type Look, looks } from "../../src/core/trends/readings.ts";
import type { SimulatedRecord } from "./world.ts";

/** A production that lifts the level by less than one colour step in a month does not matter. */
export function rateThatMatters(level: number, firstStep: number): number {
  return Math.max(firstStep, 0.75 * level) / 30;
}

/**
 * Whether a record holds enough to tell its production, judged from the truth and never from an engine:
 * three looks on two days over five days or more, not all in the lowest cell and not mostly at the top, the last one fresh; and an
 * observer who knows the true path and every spread, and lacks only level and production, would know the
 * production (four times in five) to within itself or the smallest rate that matters.
 */
export function hasEnough(record: SimulatedRecord): boolean {
  const found = looks(record.readings);
  const first = found[0];
  const last = found.at(-1);
  if (!first || !last || found.length < 3 || last.at - first.at < 5) return false;
  if (found.every(isAtBottom)) return false;
  if (isAtTop(last) && found.filter(isAtTop).length > 0.85 * found.length) return false;
  if (record.now - last.at > Math.max(30, last.at - first.at)) return false;
  const halfWidth = 1.2816 * idealSd(record, found);
  const { truth } = record;
  const instrument = last.instrument;
  const firstStep = instrument.kind === "chart" ? (instrument.steps.find((s) => s > 0) ?? 1) : 1;
  return halfWidth <= Math.max(Math.abs(truth.netPerDay), rateThatMatters(truth.levelNow, firstStep));
}

/** Spread of production left after the record, for the observer above. */
function idealSd(record: SimulatedRecord, found: readonly Look[]): number {
  const { truth, now } = record;
  const production = Math.abs(truth.netPerDay + truth.uptakePerDay * truth.levelNow);
  // Covariance of level and production, before any reading as wide as the spread of all tanks.
  let cc = 60 ** 2;
  let cp = 0;
  let pp = 3 ** 2;
  let time = found[0]?.at ?? now;
  const grow = (until: number) => {
    const h = until - time;
    const q = (truth.drift * production) ** 2;
    const kept = Math.exp(-truth.uptakePerDay * h);
    cc =
      kept * kept * cc +
      2 * kept * h * cp +
      h * h * pp +
      (truth.feedingSpread * production) ** 2 * h +
      (q * h ** 3) / 3;
    cp = kept * cp + h * pp + (q * h * h) / 2;
    pp += q * h;
    time = until;
  };
  const all = [
    ...found.map((look) => ({ at: look.at, look })),
    ...record.events.map((event) => ({ at: event.at, event })),
  ].sort((a, b) => a.at - b.at);
  for (const step of all) {
    if (step.at < time) continue;
    grow(step.at);
    if ("event" in step) {
      if (step.event.kind === "water change") {
        const f = step.event.fraction;
        cc = cc * (1 - f) ** 2 + (0.1 * f * truth.levelAt(step.at - 0.01)) ** 2;
        cp *= 1 - f;
      } else pp += (0.4 * production) ** 2;
    } else {
      const level = truth.levelAt(step.at - 1e-6);
      // “At least” says something of a level near the edge, and nothing of one far above.
      if (isAtTop(step.look) && level > 2 * step.look.low) continue;
      const scatter = truth.readerFirstStep ** 2 + (truth.readerLevel * level) ** 2;
      const variance = scatter + cellWidth(step.look) ** 2 / 12;
      const share = 1 / (cc + variance);
      pp -= cp * cp * share;
      cp -= cp * cc * share;
      cc -= cc * cc * share;
    }
  }
  grow(now);
  return Math.sqrt(pp);
}

function cellWidth(look: Look): number {
  if (look.instrument.kind === "meter") return 0;
  if (isAtTop(look)) return look.low;
  const cell = chartCells(look.instrument.steps).find((c) => c.high >= look.high);
  return (cell?.high ?? look.high) - Math.max(0, cell?.low ?? look.low);
}
