import { isPossible, type ParameterId, parameter, unitText } from "./parameters.ts";
import { type SlipHypothesis, slipHypotheses } from "./slip-hypotheses.ts";

export interface PastValue {
  /** In the parameter's canonical unit. */
  readonly value: number;
  /** UTC, ISO 8601. */
  readonly at: string;
}

export interface NewValue extends PastValue {
  readonly parameter: ParameterId;
  /** Share of the water known to have been changed since the newest past value. */
  readonly replacedSince?: number;
}

/** Another tank of the same member, with its record of the same parameter. */
export interface OtherTank {
  readonly name: string;
  readonly recent: readonly PastValue[];
}

export type SlipChoice =
  | { readonly kind: "keep"; readonly label: string }
  | { readonly kind: "value"; readonly label: string; readonly value: number; readonly what: string }
  | { readonly kind: "tank"; readonly label: string; readonly tank: string };

export interface SlipQuestion {
  readonly question: string;
  /** Best-fitting correction first; keeping what was typed is always the last. */
  readonly choices: readonly SlipChoice[];
}

/** Fewest past values from which anything is suspected. Source: assumption. */
const FEWEST = 3;
/** Past values looked at: the newest, and not older. Source: assumption. */
const NEWEST = 10;
const OLDEST_DAYS = 180;
/** How much likelier (natural log) a slip must make the value before it is asked about: about 55
 *  times, where slips come perhaps once in fifty lines. Source: assumption, tuned on the simulated
 *  records of tests/unit/core/log/slips.test.ts. */
const CLEARLY = 4;
/** A corrected value must lie this near the record's band, in standard deviations. Source: assumption. */
const FITS_WITHIN = 1.5;

/**
 * Whether a new value is better explained by a slip (unit, decimal mark, wrong tank) than by the tank.
 * The record gives a band: its lowest to highest value, stretched by its own mean rise or fall over
 * the time since, and downward by a known water change. A value inside it is never questioned. Outside,
 * each slip is undone in turn, and asked about only when the corrected value lies in the band and
 * the likelihood ratio against the value as it stands is beyond `CLEARLY`.
 * Returns undefined when there is nothing to ask: fewer than three past values, or no slip that fits.
 * Source: assumption (a likelihood ratio under normal scatter), tuned on simulated records.
 */
export function looksLikeSlip(
  reading: NewValue,
  recent: readonly PastValue[],
  otherTanks: readonly OtherTank[] = [],
): SlipQuestion | undefined {
  if (!Number.isFinite(reading.value)) return undefined;
  const own = bandOf(reading, recent, reading.replacedSince ?? 0);
  if (own === undefined) return undefined;
  const asIs = distance(own, reading.value);
  if (asIs === 0) return undefined;

  const found: { choice: SlipChoice; away: number }[] = [];
  const clearly = (away: number) => away <= FITS_WITHIN && (asIs ** 2 - away ** 2) / 2 >= CLEARLY;
  const subject = parameter(reading.parameter);
  if (own.hasLevel) {
    for (const hypothesis of slipHypotheses(reading.parameter)) {
      const value = hypothesis.correct(reading.value);
      if (value === undefined || !isPossible(subject, value)) continue;
      const away = distance(own, value);
      if (clearly(away)) found.push({ choice: correction(hypothesis, value, unitText(subject)), away });
    }
  }
  for (const { name, recent: theirs } of otherTanks) {
    const band = bandOf(reading, theirs, 0);
    if (band === undefined) continue;
    const away = distance(band, reading.value);
    if (clearly(away))
      found.push({ choice: { kind: "tank", label: `It was for ${name}`, tank: name }, away });
  }
  if (found.length === 0) return undefined;
  const corrections = found.sort((a, b) => a.away - b.away).slice(0, 3);
  const now = `${shown(reading.value)} ${unitText(subject)}`.trim();
  const lately = own.min === own.max ? shown(own.min) : `${shown(own.min)} to ${shown(own.max)}`;
  return {
    question: `${subject.name} ${now} is far from this tank's last readings (${lately}). Is it right?`,
    choices: [...corrections.map(({ choice }) => choice), { kind: "keep", label: `Yes, ${now}` }],
  };
}

interface Band {
  readonly scale: Scale;
  /** Of the past values, as they are. */
  readonly min: number;
  readonly max: number;
  /** On the scale, stretched for the time since. */
  readonly low: number;
  readonly high: number;
  readonly sd: number;
  /** Whether the record shows an amount at all: near nothing, ratios mean nothing. */
  readonly hasLevel: boolean;
}

function bandOf(reading: NewValue, record: readonly PastValue[], replaced: number): Band | undefined {
  const atDays = days(reading.at);
  const past = record
    .map(({ value, at }) => ({ value, atDays: days(at) }))
    .filter(
      ({ value, atDays: then }) => Number.isFinite(value) && then <= atDays && atDays - then <= OLDEST_DAYS,
    )
    .sort((a, b) => a.atDays - b.atDays)
    .slice(-NEWEST);
  const first = past[0];
  const last = past.at(-1);
  if (past.length < FEWEST || first === undefined || last === undefined) return undefined;
  const values = past.map(({ value }) => value);
  const min = Math.min(...values);
  const max = Math.max(...values);

  let rise = 0;
  let fall = 0;
  for (const [i, value] of values.entries()) {
    const step = value - (values[i - 1] ?? value);
    rise += Math.max(0, step);
    fall += Math.max(0, -step);
  }
  const spanDays = Math.max(1, last.atDays - first.atDays);
  const sinceDays = atDays - last.atDays;
  const stretchedMax = Math.max(max, last.value + (rise / spanDays) * sinceDays);
  const lowest = Math.min(min, last.value * (1 - replaced));
  const stretchedMin = Math.min(lowest, Math.max(lowest / 2, last.value - (fall / spanDays) * sinceDays));

  const scale = scaleOf(reading.parameter, min);
  const sd = scatter(scale, values) * Math.sqrt(1 + FEWEST / past.length);
  const median = [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;
  return {
    scale,
    min,
    max,
    low: scale.at(stretchedMin),
    high: scale.at(stretchedMax),
    sd,
    hasLevel: median > scale.nothingBelow,
  };
}

/** How far a value lies outside the band, in standard deviations; 0 inside. */
function distance({ scale, low, high, sd }: Band, value: number): number {
  const at = scale.at(value);
  return Math.max(0, low - at, at - high) / sd;
}

/** A longer record that hardly moves, and was not read off a chart, shows its own scatter. */
function scatter(scale: Scale, values: readonly number[]): number {
  const stepped = isStepped(values);
  if (stepped || values.length < 2 * FEWEST) return scale.noise(stepped);
  const halfRange = (scale.at(Math.max(...values)) - scale.at(Math.min(...values))) / 2;
  return Math.min(scale.noise(false), Math.max(scale.noise(false) / 10, halfRange));
}

interface Scale {
  readonly at: (value: number) => number;
  /** Scatter of a single reading on this scale. */
  readonly noise: (isStepped: boolean) => number;
  readonly nothingBelow: number;
}

/** Scatter of readings beyond a record's own band, chart steps included; a share where amounts are
 *  compared as ratios, else in the parameter's unit. Source: assumption. */
function scaleOf(id: ParameterId, lowest: number): Scale {
  const linear = (noise: number): Scale => ({
    at: (value) => value,
    noise: () => noise,
    nothingBelow: Number.NEGATIVE_INFINITY,
  });
  const ratio = (nothingBelow: number, noise: number, steppedNoise: number): Scale => {
    // Ratios to nothing are endless: where the record comes near it, small amounts count alike.
    const softBelow = lowest < nothingBelow ? nothingBelow : nothingBelow / 4;
    return {
      at: (value) => Math.log(Math.max(0, value) + softBelow),
      noise: (isStepped) => (isStepped ? steppedNoise : noise),
      nothingBelow,
    };
  };
  switch (id) {
    case "temperature":
      return linear(1);
    case "ph":
      return linear(0.3);
    case "redox":
      return linear(60);
    case "salinity":
      return linear(1.5);
    case "alkalinity":
      return ratio(0.2, 0.08, 0.12);
    case "calcium":
    case "magnesium":
      return ratio(20, 0.06, 0.08);
    case "oxygen":
    case "hardness":
      return ratio(0.5, 0.1, 0.15);
    case "ammonia":
    case "nitrite":
      // A filter that is starting or failing multiplies these in days.
      return ratio(parameter(id).notDetectedBelow ?? 0, 0.35, 0.35);
    case "nitrate":
    case "phosphate":
      return ratio(parameter(id).notDetectedBelow ?? 0, 0.15, 0.22);
  }
}

/** A record whose values repeat was read off a chart. */
function isStepped(values: readonly number[]): boolean {
  return new Set(values).size <= values.length / 2 + 1;
}

function correction({ what }: SlipHypothesis, value: number, unit: string): SlipChoice {
  const label = `${shown(value)} ${unit}`.trim();
  return { kind: "value", label: `${label} (${what})`, value, what };
}

function shown(value: number): string {
  return String(Number(value.toPrecision(3)));
}

function days(at: string): number {
  return Date.parse(at) / 86_400_000;
}
