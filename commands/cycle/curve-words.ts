import type { CyclingOutlook } from "../../src/core/nitrogen/cycling.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { showNumber } from "../../src/core/quantity/show.ts";

/** mg/L. */
const KIT_SHOWS = 0.05;

/** Below what a kit shows, a level counts as nothing. */
export function cell({ best, low, high }: Estimate): string {
  const said = (level: number) => (level < KIT_SHOWS ? "0" : showNumber(level, 2));
  return said(low) === said(high) ? said(best) : `${said(best)} (${said(low)}–${said(high)})`;
}

/** The day of being ready, with its doubt; an end beyond the outlook is said as such. */
export function readyLine({ readyDay: { best, low, high }, readyShare, curve }: CyclingOutlook): string {
  const last = curve.at(-1)?.day ?? 0;
  if (!Number.isFinite(low)) return `Hardly ready within ${last} days`;
  const from = showNumber(low, 2);
  if (!Number.isFinite(best))
    return `Ready by day ${last} in ${showNumber(readyShare * 100, 2)} % of courses, at the earliest near day ${from}`;
  const to = Number.isFinite(high) ? `to ${showNumber(high, 2)}` : `to beyond ${last}`;
  return `Ready around day ${showNumber(best, 2)} (day ${from} ${to})`;
}
