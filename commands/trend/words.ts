import type { Parameter, ParameterId } from "../../src/core/log/parameters.ts";
import { type Estimate, mapEstimate } from "../../src/core/quantity/estimate.ts";
import { showNumber } from "../../src/core/quantity/show.ts";
import type { Direction } from "../../src/core/trends/direction.ts";
import type { Band } from "../../src/core/trends/draws.ts";
import { counted } from "../../src/kit/index.ts";

/** What a tank makes of its food, and water changes take away. The rest only drifts. */
export const BALANCED: ReadonlySet<ParameterId> = new Set(["nitrate", "phosphate"]);

/** The range that should hold a figure four times in five. */
export function likely({ low80, best, high80 }: Band): Estimate {
  return { low: low80, best, high: high80 };
}

/** "33 mg/L (26–37)"; the unit without its basis: the title says of what. */
export function showLevel(level: Estimate, { unit }: Parameter): string {
  return showRough(level, unit === "pH" ? "" : unit);
}

/** A weighed figure never has more than two digits, and one when its range is wider than half of it. */
export function showRough({ low, best, high }: Estimate, unit: string): string {
  const figures = high - low > Math.abs(best) / 2 ? 1 : 2;
  const suffix = unit === "" ? "" : ` ${unit}`;
  const [from, to] = [showNumber(low, 2), showNumber(high, 2)];
  const text = `${showNumber(best, figures)}${suffix}`;
  return from === to ? text : `${text} (${from}${low < 0 ? " to " : "–"}${to})`;
}

/** "Rising about 1.1 mg/L a day (0.9–1.3)", as firmly as the record allows. */
export function sayRate(
  perDay: Estimate,
  direction: Direction,
  span: "a day" | "a week",
  subject: Parameter,
): string {
  const rate = span === "a week" ? mapEstimate(perDay, (each) => each * 7) : perDay;
  const unit = `${subject.unit === "pH" ? "" : subject.unit} ${span}`.trim();
  const { way, firmness } = direction;
  if (way === "rising" || way === "falling") {
    const size = way === "rising" ? rate : mapEstimate(rate, (each) => -each);
    const verb = firmness === "probably" ? `Probably ${way}` : way === "rising" ? "Rising" : "Falling";
    return `${verb} about ${showRough(size, unit)}`;
  }
  const between = `between ${signed(rate.low)} and ${signed(rate.high)} ${unit}`;
  return way === "steady" ? `Steady: ${between}` : `No direction can be told yet: ${between}`;
}

function signed(value: number): string {
  const text = showNumber(Math.abs(value), 2);
  return text === "0" ? "0" : value < 0 ? `−${text}` : `+${text}`;
}

/** "in about 13 days, perhaps as early as 9". */
export function sayDays(middleDays: number, earlyDays: number): string {
  const early = Math.floor(earlyDays);
  const middle = Math.round(middleDays);
  if (middle <= 1) return "within a day or so";
  return `in about ${middle} days${early < middle ? `, perhaps as early as ${early < 1 ? "today" : early}` : ""}`;
}

/** "3 in 10": a chance as a member would say it. */
export function sayChance(chance: number): string {
  const tenths = Math.round(chance * 10);
  return tenths < 1
    ? "less than 1 chance in 10"
    : tenths > 9
      ? "more than 9 chances in 10"
      : `${counted(tenths, "chance")} in 10`;
}
