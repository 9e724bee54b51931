import { filterRecord, type Meeting } from "./balance-filter.ts";
import { SETTINGS } from "./settings.ts";
import type { Timeline, TimelineStep } from "./timeline.ts";

/** A fall that no logged event explains: something to ask about, never to put into the record unasked. */
export interface UnloggedChange {
  readonly from: number;
  readonly to: number;
}

/** A forgotten change may have been of any usual size. */
const FORGOTTEN = { fraction: 0.45, spread: 0.2 } as const;

/** The one gap between tests where a change of unknown size would explain the record far better.
 *  Only the deepest fall is tried, so that the search itself does not find one. */
export function unloggedChange(
  timeline: Timeline,
  meetings: readonly Meeting[],
  logEvidence: number,
): UnloggedChange | undefined {
  let deepest = 0;
  meetings.forEach((meeting, i) => {
    if (i > 1 && meeting.deviation < (meetings[deepest] as Meeting).deviation) deepest = i;
  });
  const fall = meetings[deepest];
  const before = meetings[deepest - 1];
  if (!fall || !before || fall.deviation > -SETTINGS.deepFall) return undefined;
  const at = (before.look.at + fall.look.at) / 2;
  const newWater = timeline.steps.find((s) => s.kind === "change")?.newWater ?? 0;
  const change: TimelineStep = { kind: "change", at, newWater, ...FORGOTTEN };
  const index = timeline.steps.findIndex((s) => s.at > at);
  const steps = [...timeline.steps.slice(0, index), change, ...timeline.steps.slice(index)];
  const gain = 2 * (filterRecord({ ...timeline, steps }).logEvidence - logEvidence);
  return gain > SETTINGS.unloggedGain ? { from: before.look.at, to: fall.look.at } : undefined;
}
