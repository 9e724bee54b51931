import type { ChartEvent } from "../kit/chart.ts";
import { HEIGHT, SMALL_PX, textWidth, WIDTH } from "./look.ts";

/** The plotting area of one panel, px. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

const LEFT_PX = 58;
const RIGHT_PX = 18;
const TITLE_PX = 30;
const DAYS_PX = 24;

/** One panel takes the picture; more stand in two columns, in reading order. */
export function boxesFor(count: number, footPx: number): readonly Box[] {
  const columns = count > 1 ? 2 : 1;
  const rows = Math.max(1, Math.ceil(count / columns));
  const width = WIDTH / columns;
  const height = (HEIGHT - footPx) / rows;
  return Array.from({ length: count }, (_, index) => ({
    left: (index % columns) * width + LEFT_PX,
    top: Math.floor(index / columns) * height + TITLE_PX,
    width: width - LEFT_PX - RIGHT_PX,
    height: height - TITLE_PX - DAYS_PX,
  }));
}

/** Events whose words have room: one that would run into another's word or line keeps its line alone. */
export function labelledEvents(
  events: readonly ChartEvent[],
  from: number,
  until: number,
  widthPx: number,
): readonly ChartEvent[] {
  const inOrder = [...events].sort((a, b) => a.at - b.at);
  const placeOf = ({ at }: ChartEvent): number => ((at - from) / (until - from)) * widthPx;
  return inOrder.filter((event, index) => {
    const next = inOrder[index + 1];
    const end = placeOf(event) + textWidth(event.label, SMALL_PX) + 6;
    return event.at >= from && end <= Math.min(widthPx, next === undefined ? widthPx : placeOf(next));
  });
}
