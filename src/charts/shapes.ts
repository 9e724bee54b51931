import type { CustomSeriesOption } from "echarts/charts";
import type { ChartBand, ChartMark } from "../kit/chart.ts";
import { FONT_FAMILY, LOOK, SMALL_PX } from "./look.ts";

type RenderItem = NonNullable<CustomSeriesOption["renderItem"]>;
type Place = readonly [number, number];

/** What a shape is drawn on: the axes of one panel. */
export interface Axes {
  readonly index: number;
  readonly from: number;
  readonly until: number;
  readonly min: number;
  readonly max: number;
}

/** Half the width of an interval's bar, and the length of an open end, px. */
const BAR_PX = 3.5;
const ARROW_PX = 26;
const HEAD_PX = 5;

function series(
  axes: Axes,
  z: number,
  data: readonly Place[],
  renderItem: RenderItem,
  clip = true,
): CustomSeriesOption {
  return {
    type: "custom",
    xAxisIndex: axes.index,
    yAxisIndex: axes.index,
    data: data.map((place) => [...place]),
    renderItem,
    clip,
    silent: true,
    animation: false,
    z,
  };
}

type Coord = (place: Place) => readonly [number, number];

/** Where a place of the axes lies in the picture. */
function coordOf(api: Parameters<RenderItem>[1]): Coord {
  return (place) => {
    const [x = 0, y = 0] = api.coord?.([...place]) ?? [];
    return [x, y];
  };
}

/** A rectangle from one corner of the axes to another. */
export function area(axes: Axes, z: number, a: Place, b: Place, fill: string): CustomSeriesOption {
  return series(axes, z, [[a[0], Math.min(a[1], b[1])]], (_, api) => {
    const coord = coordOf(api);
    const [x1, y1] = coord(a);
    const [x2, y2] = coord(b);
    return {
      type: "rect",
      shape: {
        x: Math.min(x1, x2),
        y: Math.min(y1, y2),
        width: Math.abs(x2 - x1),
        height: Math.abs(y2 - y1),
      },
      style: { fill },
    };
  });
}

/** A straight line from one place to another. */
export function rule(
  axes: Axes,
  z: number,
  a: Place,
  b: Place,
  style: { readonly stroke: string; readonly lineWidth: number; readonly lineDash?: number[] },
): CustomSeriesOption {
  return series(axes, z, [a], (_, api) => {
    const coord = coordOf(api);
    const [x1, y1] = coord(a);
    const [x2, y2] = coord(b);
    return { type: "line", shape: { x1, y1, x2, y2 }, style: { ...style } };
  });
}

/** The range as a tinted shape, its middle as a line. */
export function band(
  axes: Axes,
  z: number,
  { levels }: ChartBand,
  colour: string,
  dash?: number[],
): CustomSeriesOption[] {
  const [first] = levels;
  if (first === undefined) return [];
  const start: Place = [first.at, first.middle];
  return [
    series(axes, z, [start], (_, api) => {
      const coord = coordOf(api);
      const top = levels.map(({ at, high }) => coord([at, Math.min(high, axes.max)]));
      const bottom = levels.map(({ at, low }) => coord([at, Math.max(low, axes.min)])).reverse();
      return {
        type: "polygon",
        shape: { points: [...top, ...bottom].map(([x, y]) => [x, y]) },
        style: { fill: colour, opacity: 0.22 },
      };
    }),
    series(axes, z + 1, [start], (_, api) => {
      const coord = coordOf(api);
      return {
        type: "polyline",
        shape: { points: levels.map(({ at, middle }) => coord([at, middle])).map(([x, y]) => [x, y]) },
        style: {
          fill: "none",
          stroke: colour,
          lineWidth: 1.6,
          ...(dash === undefined ? {} : { lineDash: dash }),
        },
      };
    }),
  ];
}

/** One shape for each reading: a dot for a figure, a bar for a span, a bar with an arrow for an open end. */
export function marks(
  axes: Axes,
  z: number,
  found: readonly ChartMark[],
  colour: string,
  isSmall: boolean,
): CustomSeriesOption {
  const places = found.map((mark): Place => [mark.at, anchorOf(mark)]);
  // A mark at the edge is shown whole.
  return series(
    axes,
    z,
    places,
    ({ dataIndex }, api) => {
      const mark = found[dataIndex];
      if (mark === undefined) return null;
      const coord = coordOf(api);
      const half = isSmall ? BAR_PX * 0.6 : BAR_PX;
      const [x, y] = coord([mark.at, anchorOf(mark)]);
      const style = { fill: colour, stroke: LOOK.paper, lineWidth: 0.6 };
      switch (mark.kind) {
        case "point":
          return { type: "circle", shape: { cx: x, cy: y, r: half + 0.5 }, style };
        case "interval": {
          const [, bottom] = coord([mark.at, Math.max(mark.low, axes.min)]);
          const height = Math.max(bottom - y, 2);
          return {
            type: "rect",
            shape: { x: x - half, y, width: 2 * half, height, r: 2 },
            style: { ...style, opacity: 0.6 },
          };
        }
        case "at least":
          return { type: "polygon", shape: { points: arrow(x, y, half, -1, isSmall) }, style };
        case "below": {
          const [, floor] = coord([mark.at, axes.min]);
          return { type: "polygon", shape: { points: arrow(x, y, half, 1, isSmall, floor - y) }, style };
        }
      }
    },
    false,
  );
}

function anchorOf(mark: ChartMark): number {
  switch (mark.kind) {
    case "point":
      return mark.value;
    case "interval":
    case "below":
      return mark.high;
    case "at least":
      return mark.low;
  }
}

/** A foot on the known end, a shaft and a head the way the open end lies: −1 is up. */
export function arrow(
  x: number,
  y: number,
  half: number,
  way: -1 | 1,
  isSmall: boolean,
  roomPx = ARROW_PX,
): number[][] {
  const length = Math.min(isSmall ? ARROW_PX / 2 : ARROW_PX, Math.max(roomPx, 3 * HEAD_PX));
  const head = isSmall ? HEAD_PX * 0.6 : HEAD_PX;
  const neck = y + way * (length - head);
  const foot = y + way * 2;
  return [
    [x - half - 1, y],
    [x + half + 1, y],
    [x + half + 1, foot],
    [x + 1, foot],
    [x + 1, neck],
    [x + head, neck],
    [x, y + way * length],
    [x - head, neck],
    [x - 1, neck],
    [x - 1, foot],
    [x - half - 1, foot],
  ];
}

/** A short text beside a place. */
export function label(
  axes: Axes,
  z: number,
  place: Place,
  text: string,
  offsetY: number,
  colour: string,
): CustomSeriesOption {
  return series(axes, z, [place], (_, api) => {
    const [x, y] = coordOf(api)(place);
    return {
      type: "text",
      style: { text, x: x + 3, y: y + offsetY, fill: colour, fontSize: SMALL_PX, fontFamily: FONT_FAMILY },
    };
  });
}
