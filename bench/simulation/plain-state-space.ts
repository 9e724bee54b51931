import { gainDays, waterChange } from "../../src/core/trends/balance.ts";
import { bandOf } from "../../src/core/trends/draws.ts";
import { normalBetween, normalDensity } from "../../src/core/trends/normal.ts";
import { isAtTop, type Look, middleOf } from "../../src/core/trends/readings.ts";
import { rateThatMatters } from "./enough.ts";
import { seeded } from "./random.ts";
import type { SimulatedRecord } from "./world.ts";
import { type Estimated, FORECAST_DAYS, firstStepOf, isTooLittle, recent, scatterAt } from "./yardstick.ts";

/** What the state-space yardstick is told of production before any reading. */
export interface ProductionView {
  readonly mean: number;
  readonly sd: number;
}

/** No view: wider than any tank here. */
export const NO_VIEW: ProductionView = { mean: 0, sd: 10 };
/** The simulator's own centre and spread, which no program meeting a new tank would have. */
export const SIMULATORS_VIEW: ProductionView = { mean: 2, sd: 3 };

/**
 * The usual state-space form, step by step as commonly written: normal belief over level and production,
 * exact cut-normal moments, a small grid over uptake, scatter, feeding and drift, calibration on top.
 */
export function plainStateSpace(
  record: SimulatedRecord,
  view: ProductionView,
  refusesVague: boolean,
): Estimated | undefined {
  const found = recent(record);
  if (isTooLittle(found, record.now)) return undefined;
  const start = found[0]?.at ?? 0;
  const lastKit = found.at(-1)?.instrument.id;
  const steps = [
    ...found.map((look) => ({ at: look.at, order: 0, look, event: undefined })),
    ...record.events
      .filter((e) => e.at >= start)
      .map((event) => ({ at: event.at, order: 1, look: undefined, event })),
  ].sort((a, b) => a.at - b.at || a.order - b.order);
  const states = [];
  const first = found[0] as Look;
  for (const k of [0, 0.003, 0.007, 0.016, 0.037, 0.086, 0.2]) {
    for (const b of [0.05, 0.15, 0.3]) {
      for (const feed2 of [0.05, 0.25, 1]) {
        for (const drift of [0.003, 0.01, 0.03]) {
          // Level, production, calibration of the other kit.
          const m = [middleOf(first), view.mean, 0];
          const width = isAtTop(first) ? 2 * first.low : first.high - Math.max(0, first.low);
          const P = [
            [width ** 2 / 12 + scatterAt(first, middleOf(first), b) ** 2, 0, 0],
            [0, view.sd ** 2, 0],
            [0, 0, 0.01],
          ];
          let l = Math.log(k === 0 ? 0.5 : 0.5 / 6);
          let time = start;
          const grow = (at: number) => {
            const h = at - time;
            time = at;
            const e = Math.exp(-k * h);
            const g = gainDays(k, h);
            m[0] = e * (m[0] as number) + g * (m[1] as number);
            const [c = [], p = [], y = []] = P;
            const [cc = 0, cp = 0, cy = 0] = c;
            const pp = p[1] as number;
            const py = p[2] as number;
            const rate2 = (m[1] as number) ** 2;
            P[0] = [
              e * e * cc + 2 * e * g * cp + g * g * pp + feed2 * rate2 * h,
              e * cp + g * pp,
              e * cy + g * py,
            ];
            P[1] = [P[0][1] as number, pp + drift * drift * rate2 * h, py];
            P[2] = [P[0][2] as number, py, y[2] as number];
          };
          for (const { at, look, event } of steps) {
            grow(at);
            if (event?.kind === "water change") {
              const kept = 1 - event.fraction;
              const before = m[0] as number;
              m[0] = waterChange(before, event.fraction, event.newWater);
              const row = P[0] as number[];
              const noise =
                (0.1 * event.fraction * (before - event.newWater)) ** 2 +
                (0.1 * event.fraction * event.newWater) ** 2;
              P[0] = [
                (row[0] as number) * kept * kept + noise,
                (row[1] as number) * kept,
                (row[2] as number) * kept,
              ];
              (P[1] as number[])[0] = P[0][1] as number;
              (P[2] as number[])[0] = P[0][2] as number;
            } else if (event?.kind === "other") {
              (P[1] as number[])[1] = (P[1]?.[1] as number) + (0.5 * (m[1] as number)) ** 2;
            } else if (look && look !== first) {
              const isOther = look.instrument.id !== lastKit;
              const level = m[0] as number;
              const h = [isOther ? 1 + (m[2] as number) : 1, 0, isOther ? level : 0];
              const c = P.map((row) => row.reduce((sum, v, j) => sum + v * (h[j] as number), 0));
              const s = scatterAt(look, Math.max(0, level), b);
              const v = c.reduce((sum, x, j) => sum + x * (h[j] as number), 0) + s * s;
              const sd = Math.sqrt(v);
              const shown = level * (h[0] as number);
              let z: number;
              let d1: number;
              let d2: number;
              let slip: number;
              if (look.low === look.high) {
                const u = (look.low - shown) / sd;
                z = normalDensity(u) / sd;
                d1 = -u;
                d2 = 1;
                slip = 0.02 / 160;
              } else {
                const a = (look.low - shown) / sd;
                const bb = (look.high - shown) / sd;
                z = Math.max(normalBetween(a, bb), 1e-300);
                const fa = Number.isFinite(a) ? normalDensity(a) : 0;
                const fb = Number.isFinite(bb) ? normalDensity(bb) : 0;
                d1 = (fb - fa) / z;
                d2 = d1 * d1 + ((fb && bb * fb) - (fa && a * fa)) / z;
                slip = 0.02 / look.cells;
              }
              const w = (0.98 * z) / (0.98 * z + slip);
              l += Math.log(0.98 * z + slip);
              for (let i = 0; i < 3; i += 1) {
                m[i] = (m[i] as number) - (w * d1 * (c[i] as number)) / sd;
                for (let j = 0; j < 3; j += 1) {
                  const cij = (c[i] as number) * (c[j] as number);
                  const row = P[i] as number[];
                  row[j] = (row[j] as number) - (w * d2 * cij) / v + (w * (1 - w) * d1 * d1 * cij) / v;
                }
              }
            }
          }
          grow(record.now);
          states.push({ m, P, l, k, feed2 });
        }
      }
    }
  }
  const best = Math.max(...states.map((s) => s.l));
  const weights = states.map((s) => Math.exp(s.l - best));
  const total = weights.reduce((a, b) => a + b, 0);
  const random = seeded(record.index + 17);
  const nets: number[] = [];
  const forecasts: number[] = [];
  for (let tries = 0; nets.length < 2000 && tries < 40_000; tries += 1) {
    let u = random.uniform() * total;
    let i = 0;
    while (i < weights.length - 1 && u > (weights[i] as number)) {
      u -= weights[i] as number;
      i += 1;
    }
    const { m, P, k, feed2 } = states[i] as (typeof states)[number];
    const l00 = Math.sqrt(Math.max(P[0]?.[0] as number, 0));
    const l10 = l00 > 0 ? (P[1]?.[0] as number) / l00 : 0;
    const l11 = Math.sqrt(Math.max((P[1]?.[1] as number) - l10 * l10, 0));
    const z = random.normal();
    const gain = 1 + 0.05 * random.normal();
    let level = ((m[0] as number) + l00 * z) * gain;
    const p = ((m[1] as number) + l10 * z + l11 * random.normal()) * gain;
    if (level < 0 || p < 0) continue;
    nets.push(p - k * level);
    let time = record.now;
    const grow = (at: number) => {
      const h = at - time;
      time = at;
      level = level * Math.exp(-k * h) + p * gainDays(k, h) + Math.sqrt(feed2 * h) * p * random.normal();
    };
    for (const change of record.planned) {
      if (change.at > record.now + FORECAST_DAYS) break;
      grow(change.at);
      const f = change.fraction * (1 + 0.1 * random.normal());
      level = waterChange(level, f, change.newWater * (1 + 0.1 * random.normal()));
    }
    grow(record.now + FORECAST_DAYS);
    forecasts.push(Math.max(0, level));
  }
  if (nets.length < 100) return undefined;
  const net = bandOf(Float64Array.from(nets));
  const last = found.at(-1) as Look;
  // Its own rule for a range too wide to be worth saying, which may be left out to compare ranges alone.
  const matters = rateThatMatters(middleOf(last), firstStepOf(last));
  if (refusesVague && (net.high80 - net.low80) / 2 > Math.max(Math.abs(net.best), matters)) return undefined;
  return { net, forecast: bandOf(Float64Array.from(forecasts)) };
}
