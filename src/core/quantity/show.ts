import type { Estimate } from "./estimate.ts";
import { mapEstimate } from "./estimate.ts";
import type { Habits } from "./read.ts";
import { CANONICAL_UNIT, convert, fromCanonical, UNITS, type Unit, type UnitKind } from "./unit-table.ts";
import type { Litres } from "./units.ts";

const RANGE_FIGURES = 2;
const MOST_FIGURES = 6;

/** A number for reading: rounded to significant figures, no exponent, no group marks, no idle zeros. */
export function showNumber(value: number, significant = 4): string {
  if (!Number.isFinite(value)) {
    return String(value);
  }
  return withDecimals(value, significant - 1 - magnitude(value))
    .replace(/(\.\d*?)0+$/, "$1")
    .replace(/\.$/, "");
}

export interface ShowOptions {
  /** Figures for a value without a range; 4 by default. */
  readonly significant?: number;
}

/** "3.6 kg (3.4–3.9)"; an exact value stands alone. The width of the range decides how many figures mean anything. */
export function showEstimate(estimate: Estimate, unit: string, options: ShowOptions = {}): string {
  const { best, low, high } = estimate;
  const suffix = unit === "" ? "" : ` ${unit}`;
  const [lowText, bestText, highText] = showFigures([low, best, high], options.significant);
  if (low === high || lowText === highText) {
    return `${showNumber(best, options.significant)}${suffix}`;
  }
  return `${bestText}${suffix} (${lowText}${low < 0 ? " to " : "–"}${highText})`;
}

/** Hours in the unit a keeper would say them in: minutes under two hours, days from three on. */
export function showHours(hours: Estimate): string {
  const [unit, times] = hours.high < 2 ? ["minutes", 60] : hours.low >= 72 ? ["days", 1 / 24] : ["h", 1];
  return showEstimate(
    mapEstimate(hours, (value) => value * times),
    unit,
    { significant: 2 },
  );
}

/** In one of the units of a kind: showIn(estimate, "mass", "lb"). */
export function showIn(
  estimate: Estimate,
  kind: UnitKind,
  unitId: string,
  options: ShowOptions = {},
): string {
  const unit = unitOf(kind, unitId);
  return showEstimate(unit === undefined ? estimate : fromCanonicalEstimate(estimate, unit), unitId, options);
}

/** Litres, and the member's own unit beside them when it is another: "379 L (100 US gal)". */
export function showVolume(estimate: Estimate<Litres>, preference: Habits | string = {}): string {
  const unitId = typeof preference === "string" ? preference : gallonOf(preference);
  const litres = showEstimate(estimate, "L", { significant: 3 });
  const unit = unitId === undefined || unitId === "L" ? undefined : unitOf("volume", unitId);
  if (unit === undefined) {
    return litres;
  }
  const own = showEstimate(fromCanonicalEstimate(estimate, unit), unit.id, { significant: 3 });
  return estimate.low === estimate.high ? `${litres} (${own})` : `${litres}, which is ${own}`;
}

/** An estimate in a unit of a kind, from the canonical unit. Undefined for a unit the kind has not. */
export function convertFor(estimate: Estimate, kind: UnitKind, unitId: string): Estimate | undefined {
  return convert(1, CANONICAL_UNIT[kind], unitId) === undefined
    ? undefined
    : mapEstimate(estimate, (value) => convert(value, CANONICAL_UNIT[kind], unitId) ?? value);
}

function fromCanonicalEstimate(estimate: Estimate, unit: Unit): Estimate {
  return mapEstimate(estimate, (value) => fromCanonical(value, unit));
}

function unitOf(kind: UnitKind, id: string): Unit | undefined {
  const units: readonly Unit[] = UNITS[kind];
  return units.find((unit) => unit.id === id);
}

function gallonOf(habits: Habits): string | undefined {
  return habits.gallon === undefined ? undefined : habits.gallon === "US" ? "US gal" : "imp gal";
}

/** Low, best and high with as many decimals as two figures of the width need, at most six figures in all,
 *  or one more than the figures asked for. */
function showFigures(
  [low, best, high]: readonly [number, number, number],
  significant = MOST_FIGURES - 1,
): readonly [string, string, string] {
  const width = high - low;
  if (!Number.isFinite(width) || width === 0) {
    return [showNumber(low), showNumber(best), showNumber(high)];
  }
  const wanted = RANGE_FIGURES - 1 - magnitude(width);
  const decimals = Math.min(wanted, significant - magnitude(Math.max(Math.abs(low), Math.abs(high))));
  const texts = [low, best, high].map((value) => withDecimals(value, decimals));
  const idle = Math.min(...texts.map((text) => /\.\d*?(0*)$/.exec(text)?.[1]?.length ?? 0));
  const [a = "", b = "", c = ""] = texts.map((text) => text.slice(0, text.length - idle).replace(/\.$/, ""));
  return [a, b, c];
}

/** The power of ten of the first figure; 0 for zero. */
function magnitude(value: number): number {
  return value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
}

/** Rounds to a number of decimals, which may be negative, and never writes "-0". */
function withDecimals(value: number, decimals: number): string {
  const places = Math.min(100, Math.max(0, decimals));
  const step = 10 ** Math.max(0, -decimals);
  const rounded = Math.round(value / step) * step;
  const text = decimals < 0 ? wholeText(rounded) : value.toFixed(places);
  return /^-0\.?0*$/.test(text) ? text.slice(1) : text;
}

function wholeText(value: number): string {
  return Math.abs(value) < 1e21 ? value.toFixed(0) : String(value);
}
