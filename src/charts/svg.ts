import { CustomChart, type CustomSeriesOption } from "echarts/charts";
import {
  GraphicComponent,
  type GraphicComponentOption,
  GridComponent,
  type GridComponentOption,
} from "echarts/components";
import { type ComposeOption, init, use } from "echarts/core";
import { SVGRenderer } from "echarts/renderers";
import type { ChartPanel, ChartSpec } from "../kit/chart.ts";
import { dayTicks, tickText, type ValueAxis, valueAxis } from "./axes.ts";
import { type Box, boxesFor, labelledEvents } from "./layout.ts";
import { legend, legendHeight } from "./legend.ts";
import { colourAt, FONT_FAMILY, HEIGHT, LOOK, SMALL_PX, TEXT_PX, WIDTH } from "./look.ts";
import { type Axes, area, band, label, marks, rule } from "./shapes.ts";

use([CustomChart, GridComponent, GraphicComponent, SVGRenderer]);

type Option = ComposeOption<CustomSeriesOption | GridComponentOption | GraphicComponentOption>;
type XAxis = Extract<NonNullable<Option["xAxis"]>, readonly unknown[]>[number];
type YAxis = Extract<NonNullable<Option["yAxis"]>, readonly unknown[]>[number];

/** The chart as SVG text; the same spec gives the same picture. */
export function chartSvg(spec: ChartSpec): string {
  const chart = init(null, null, { renderer: "svg", ssr: true, width: WIDTH, height: HEIGHT });
  try {
    chart.setOption(optionFor(spec));
    return chart.renderToSVGString();
  } finally {
    chart.dispose();
  }
}

function optionFor(spec: ChartSpec): Option {
  const isSmall = spec.panels.length > 1;
  const boxes = boxesFor(spec.panels.length, legendHeight(spec));
  const panels = spec.panels.flatMap((panel, index) => {
    const box = boxes[index];
    if (box === undefined) return [];
    const values = valueAxis(panel, isSmall ? 3 : 5);
    const axes: Axes = { index, from: spec.from, until: spec.until, min: values.min, max: values.max };
    return [{ panel, box, values, axes }];
  });
  return {
    animation: false,
    backgroundColor: LOOK.paper,
    textStyle: { fontFamily: FONT_FAMILY, fontSize: TEXT_PX, color: LOOK.ink },
    grid: panels.map(({ box }) => ({ ...box })),
    xAxis: panels.map(({ box }, index) => dayAxis(spec, index, box)),
    yAxis: panels.map(({ panel, values }, index) => levelAxis(panel, values, index)),
    series: panels.flatMap(({ panel, axes, box }) => panelSeries(spec, panel, axes, box, isSmall)),
    graphic: [...legend(spec)],
  };
}

function dayAxis(spec: ChartSpec, index: number, box: Box): XAxis {
  const ticks = dayTicks(spec.from, spec.until, spec.zone, Math.max(2, Math.floor(box.width / 75)));
  const texts = new Map(ticks.map(({ at, text }) => [at, text]));
  const at = ticks.map((tick) => tick.at);
  return {
    type: "value",
    gridIndex: index,
    min: spec.from,
    max: spec.until,
    axisLine: { onZero: false, lineStyle: { color: LOOK.faint } },
    axisTick: { show: true, customValues: at, lineStyle: { color: LOOK.faint } },
    axisLabel: {
      customValues: at,
      color: LOOK.ink,
      fontSize: SMALL_PX,
      hideOverlap: true,
      formatter: (value: number) => texts.get(value) ?? "",
    },
    splitLine: { show: false },
  };
}

function levelAxis(panel: ChartPanel, { min, max, step }: ValueAxis, index: number): YAxis {
  return {
    type: "value",
    gridIndex: index,
    min,
    max,
    interval: step,
    name: panel.axisTitle,
    nameLocation: "end",
    nameGap: 10,
    nameTextStyle: {
      align: "left",
      padding: [0, 0, 0, -42],
      color: LOOK.ink,
      fontSize: TEXT_PX,
      fontFamily: FONT_FAMILY,
    },
    axisLine: { show: true, onZero: false, lineStyle: { color: LOOK.faint } },
    axisLabel: { color: LOOK.ink, fontSize: SMALL_PX, formatter: (value: number) => tickText(value, step) },
    splitLine: { lineStyle: { color: LOOK.grid } },
  };
}

/** Everything on one panel, from the back to the front. */
function panelSeries(
  spec: ChartSpec,
  panel: ChartPanel,
  axes: Axes,
  box: Box,
  isSmall: boolean,
): CustomSeriesOption[] {
  const { from, until, min, max } = axes;
  const isAhead = spec.now < until;
  const labelled = new Set(isSmall ? [] : labelledEvents(spec.events, from, until, box.width));
  return [
    ...(isAhead ? [area(axes, 1, [spec.now, min], [until, max], LOOK.toCome)] : []),
    ...targetSeries(panel, axes),
    ...spec.events.flatMap((event) => [
      rule(axes, 3, [event.at, min], [event.at, max], { stroke: LOOK.event, lineWidth: 1, lineDash: [2, 3] }),
      ...(labelled.has(event) ? [label(axes, 9, [event.at, max], event.label, 2, LOOK.event)] : []),
    ]),
    ...(isAhead
      ? [rule(axes, 3, [spec.now, min], [spec.now, max], { stroke: LOOK.faint, lineWidth: 1 })]
      : []),
    ...(panel.fitted === undefined ? [] : band(axes, 4, panel.fitted, LOOK.fitted)),
    ...panel.forecasts.flatMap((forecast, index) =>
      band(axes, 4, forecast, colourAt(LOOK.forecasts, index), [6, 4]),
    ),
    ...(panel.limit === undefined
      ? []
      : [
          rule(axes, 6, [from, panel.limit], [until, panel.limit], {
            stroke: LOOK.limit,
            lineWidth: 1.4,
            lineDash: [8, 4],
          }),
        ]),
    ...panel.series.map((each, index) => marks(axes, 8, each.marks, colourAt(LOOK.marks, index), isSmall)),
  ];
}

function targetSeries({ target }: ChartPanel, axes: Axes): CustomSeriesOption[] {
  if (target === undefined) return [];
  const { from, until, min, max } = axes;
  const low = Math.max(target.low ?? min, min);
  const high = Math.min(target.high ?? max, max);
  const edges = [target.low, target.high].filter(
    (edge): edge is number => edge !== undefined && edge >= min && edge <= max,
  );
  return [
    ...(high > low ? [area(axes, 2, [from, low], [until, high], LOOK.target)] : []),
    ...edges.map((edge) =>
      rule(axes, 2, [from, edge], [until, edge], { stroke: LOOK.targetEdge, lineWidth: 1 }),
    ),
  ];
}
