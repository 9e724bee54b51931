import { alongPath, PATH_START } from "../../src/core/trends/balance.ts";
import type { Band } from "../../src/core/trends/draws.ts";
import { logNormalBetween, logNormalDensity } from "../../src/core/trends/normal.ts";
import { type Look, middleOf } from "../../src/core/trends/readings.ts";
import type { SimulatedRecord } from "./world.ts";
import { type Estimated, FORECAST_DAYS, firstStepOf, isTooLittle, recent, scatterAt } from "./yardstick.ts";

/**
 * Plain interval-censored likelihood: one production for the whole stretch, uptake only when it gains 2.71,
 * scatter from knowledge of the kit (15 % of the first step, 15 % of the level), profile intervals.
 */
export function plainLikelihood(record: SimulatedRecord): Estimated | undefined {
  const found = recent(record);
  if (isTooLittle(found, record.now)) return undefined;
  const events = record.events
    .filter((e) => e.kind === "water change")
    .map((e) => ({ at: e.at, fraction: e.fraction, newWaterMgPerL: e.newWater }))
    .concat(record.planned.map((p) => ({ at: p.at, fraction: p.fraction, newWaterMgPerL: p.newWater })))
    .sort((a, b) => a.at - b.at);
  const start = found[0]?.at ?? 0;
  const fitWith = (k: number) => {
    let path = PATH_START;
    let time = start;
    let next = events.findIndex((e) => e.at >= start);
    if (next < 0) next = events.length;
    const to = (at: number) => {
      for (; next < events.length && (events[next]?.at ?? 0) < at; next += 1) {
        const event = events[next] as (typeof events)[number];
        path = alongPath(path, { kind: "grow", days: event.at - time }, k);
        path = alongPath(path, { kind: "change", ...event }, k);
        time = event.at;
      }
      path = alongPath(path, { kind: "grow", days: at - time }, k);
      time = at;
      return path;
    };
    const rows = found.map((look) => ({ look, path: to(look.at) }));
    const atNow = to(record.now);
    const later = to(record.now + FORECAST_DAYS);
    const logLikelihood = (level: number, p: number) => {
      let sum = 0;
      for (const { look, path: at } of rows) {
        const c = at.start * level + at.perDay * p + at.offset;
        const s = scatterAt(look, Math.max(c, 0), 0.15);
        sum +=
          look.low === look.high
            ? logNormalDensity((look.low - c) / s) - Math.log(s)
            : logNormalBetween((look.low - c) / s, (look.high - c) / s);
      }
      return sum;
    };
    const biggest = Math.max(...found.map(middleOf), firstStepOf(found[0] as Look));
    // Two rounds of a grid over level at the start and production, the second round the top.
    let box = { level0: 0, level1: 2.5 * biggest, p0: 0, p1: biggest / 2 };
    let cells: { level: number; p: number; l: number }[] = [];
    for (let round = 0; round < 4; round += 1) {
      cells = [];
      const size = 36;
      for (let i = 0; i <= size; i += 1) {
        for (let j = 0; j <= size; j += 1) {
          const level = box.level0 + ((box.level1 - box.level0) * i) / size;
          const p = box.p0 + ((box.p1 - box.p0) * j) / size;
          cells.push({ level, p, l: logLikelihood(level, p) });
        }
      }
      const best = Math.max(...cells.map((c) => c.l));
      const inside = cells.filter((c) => 2 * (best - c.l) <= 6);
      const levels = inside.map((c) => c.level);
      const ps = inside.map((c) => c.p);
      const dl = (box.level1 - box.level0) / size;
      const dp = (box.p1 - box.p0) / size;
      box = {
        level0: Math.max(0, Math.min(...levels) - dl),
        level1: Math.max(...levels) + dl,
        p0: Math.max(0, Math.min(...ps) - dp),
        p1: Math.max(...ps) + dp,
      };
    }
    const top = cells.reduce((a, b) => (b.l > a.l ? b : a));
    const profile = (f: (level: number, p: number) => number): Band => {
      const reach = (drop: number) => {
        const values = cells.filter((c) => 2 * (top.l - c.l) <= drop).map((c) => f(c.level, c.p));
        return [Math.min(...values), Math.max(...values)] as const;
      };
      const [low80, high80] = reach(1.6424);
      const [low95, high95] = reach(3.8415);
      return { best: f(top.level, top.p), low80, high80, low95, high95 };
    };
    return {
      top: top.l,
      net: profile((level, p) => p - k * (atNow.start * level + atNow.perDay * p + atNow.offset)),
      forecast: profile((level, p) => later.start * level + later.perDay * p + later.offset),
    };
  };
  let chosen = fitWith(0);
  const without = chosen.top;
  for (const k of [0.006, 0.012, 0.025, 0.05, 0.1]) {
    const fit = fitWith(k);
    if (2 * (fit.top - without) > 2.71 && fit.top > chosen.top) chosen = fit;
  }
  return { net: chosen.net, forecast: chosen.forecast };
}
