import { DateTime, type DurationLike } from "luxon";
import type { ChartBand, ChartMark, ChartPanel } from "../kit/chart.ts";

const DAY_MS = 86_400_000;

export interface Tick {
  readonly at: number;
  readonly text: string;
}

interface Stride {
  readonly days: number;
  readonly step: DurationLike;
  readonly from: "hour" | "day" | "week" | "month" | "quarter" | "year";
  readonly format: string;
}

/** Distances between ticks that a calendar knows, shortest first. */
const STRIDES: readonly Stride[] = [
  { days: 0.25, step: { hours: 6 }, from: "day", format: "d MMM HH:mm" },
  { days: 1, step: { days: 1 }, from: "day", format: "d MMM" },
  { days: 2, step: { days: 2 }, from: "day", format: "d MMM" },
  { days: 7, step: { weeks: 1 }, from: "week", format: "d MMM" },
  { days: 14, step: { weeks: 2 }, from: "week", format: "d MMM" },
  { days: 30, step: { months: 1 }, from: "month", format: "MMM yyyy" },
  { days: 91, step: { months: 3 }, from: "quarter", format: "MMM yyyy" },
  { days: 365, step: { years: 1 }, from: "year", format: "yyyy" },
  { days: 3650, step: { years: 10 }, from: "year", format: "yyyy" },
];

/** Ticks at the member's own midnights, weeks or months; at most `most`, and a few more at odd edges. */
export function dayTicks(from: number, until: number, zone: string, most: number): readonly Tick[] {
  const span = (until - from) / DAY_MS;
  const stride = STRIDES.find(({ days }) => span / days <= most) ?? STRIDES[STRIDES.length - 1];
  if (stride === undefined) return [];
  const ticks: Tick[] = [];
  let at = DateTime.fromMillis(from, { zone }).startOf(stride.from);
  while (at.toMillis() <= until && ticks.length <= 2 * most) {
    if (at.toMillis() >= from)
      ticks.push({ at: at.toMillis(), text: at.toFormat(stride.format, { locale: "en" }) });
    at = at.plus(stride.step);
  }
  return ticks;
}

export interface ValueAxis {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/** How much of the axis an open end is given to point along. */
const ROOM_FOR_ARROW = 0.15;
/** Levels that never come near nothing are shown without it. */
const NEAR_NOTHING = 0.4;

/** An axis with round ticks that holds every reading and band, the limit, and the near edge of the target. */
export function valueAxis(panel: ChartPanel, ticks: number): ValueAxis {
  const bands: readonly ChartBand[] = [
    ...(panel.fitted === undefined ? [] : [panel.fitted]),
    ...panel.forecasts,
  ];
  const shown = [
    ...panel.series.flatMap(({ marks }) => marks.flatMap(endsOf)),
    ...bands.flatMap(({ levels }) => levels.flatMap(({ low, high }) => [low, high])),
    ...(panel.limit === undefined ? [] : [panel.limit]),
  ].filter(Number.isFinite);
  const { low: targetLow, high: targetHigh } = panel.target ?? {};
  let low = Math.min(...shown);
  let high = Math.max(...shown);
  if (shown.length === 0) [low, high] = [targetLow ?? 0, targetHigh ?? 1];
  if (targetLow !== undefined && high < targetLow) high = targetLow;
  if (targetHigh !== undefined && low > targetHigh) low = targetHigh;
  const arrows = panel.series.flatMap(({ marks }) => marks);
  const span = Math.max(high - low, Math.abs(high) * 0.02, 1e-9);
  if (arrows.some(({ kind }) => kind === "at least")) high += ROOM_FOR_ARROW * span;
  if (low >= 0 && low < NEAR_NOTHING * high) low = 0;
  else if (arrows.some(({ kind }) => kind === "below")) low -= ROOM_FOR_ARROW * span;
  if (high - low < 1e-9) [low, high] = [low - span, high + span];
  const step = roundStep((high - low) / ticks);
  const min = Math.floor(low / step + 1e-9) * step;
  return { min, max: Math.max(Math.ceil(high / step - 1e-9) * step, min + step), step };
}

function endsOf(mark: ChartMark): readonly number[] {
  switch (mark.kind) {
    case "point":
      return [mark.value];
    case "interval":
      return [mark.low, mark.high];
    case "at least":
      return [mark.low];
    case "below":
      return [mark.high];
  }
}

/** The next 1, 2 or 5 times a power of ten. */
function roundStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(rough));
  const factor = [1, 2, 5, 10].find((each) => each * power >= rough * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** A tick's figure with the digits its step needs. */
export function tickText(value: number, step: number): string {
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return (Math.abs(value) < step / 1e6 ? 0 : value).toFixed(digits);
}
