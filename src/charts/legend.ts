import type { ChartMark, ChartSpec } from "../kit/chart.ts";
import { colourAt, FONT_FAMILY, HEIGHT, LOOK, SMALL_PX, textWidth, WIDTH } from "./look.ts";
import { arrow } from "./shapes.ts";

type Sample = "dot" | "bar" | "arrow" | "band" | "dashed band" | "block" | "line";

interface Entry {
  readonly sample: Sample;
  readonly colour: string;
  readonly text: string;
}

const KINDS: readonly {
  readonly kind: readonly ChartMark["kind"][];
  readonly sample: Sample;
  readonly text: string;
}[] = [
  { kind: ["point"], sample: "dot", text: "reading" },
  { kind: ["interval"], sample: "bar", text: "span of the colour read" },
  { kind: ["at least", "below"], sample: "arrow", text: "open end" },
];

const ROW_PX = 18;
const SAMPLE_PX = 22;
const GAP_PX = 16;
const LEFT_PX = 16;

function entriesOf(spec: ChartSpec): readonly Entry[] {
  const [panel] = spec.panels;
  if (panel === undefined) return [];
  const many = panel.series.length > 1;
  const kinds = new Set(
    spec.panels.flatMap(({ series }) => series.flatMap(({ marks }) => marks.map(({ kind }) => kind))),
  );
  const usesTarget = spec.panels.some(({ target }) => target !== undefined);
  return [
    ...KINDS.filter(({ kind }) => kind.some((each) => kinds.has(each))).map(({ sample, text }) => ({
      sample,
      text,
      colour: many ? LOOK.faint : colourAt(LOOK.marks, 0),
    })),
    ...(many
      ? panel.series.map(({ name }, index) => ({
          sample: "dot" as const,
          text: name,
          colour: colourAt(LOOK.marks, index),
        }))
      : []),
    ...(panel.fitted === undefined
      ? []
      : [{ sample: "band" as const, text: panel.fitted.name, colour: LOOK.fitted }]),
    ...panel.forecasts.map(({ name }, index) => ({
      sample: "dashed band" as const,
      text: name,
      colour: colourAt(LOOK.forecasts, index),
    })),
    ...(usesTarget ? [{ sample: "block" as const, text: "target range", colour: LOOK.target }] : []),
    ...(spec.panels.some(({ limit }) => limit !== undefined)
      ? [{ sample: "line" as const, text: "limit", colour: LOOK.limit }]
      : []),
  ];
}

interface Placed extends Entry {
  readonly x: number;
  readonly row: number;
}

function placed(spec: ChartSpec): readonly Placed[] {
  let x = LEFT_PX;
  let row = 0;
  return entriesOf(spec).map((entry) => {
    const width = SAMPLE_PX + textWidth(entry.text, SMALL_PX) + GAP_PX;
    if (x + width > WIDTH && x > LEFT_PX) {
      x = LEFT_PX;
      row += 1;
    }
    const place = { ...entry, x, row };
    x += width;
    return place;
  });
}

/** Height the legend takes at the foot of the picture, px. */
export function legendHeight(spec: ChartSpec): number {
  return 8 + ROW_PX * (1 + Math.max(0, ...placed(spec).map(({ row }) => row)));
}

/** What each shape means, along the foot of the picture. */
export function legend(spec: ChartSpec): readonly object[] {
  const top = HEIGHT - legendHeight(spec) + 4;
  return placed(spec).flatMap(({ sample, colour, text, x, row }) => {
    const y = top + row * ROW_PX;
    return [
      ...samplesOf(sample, colour, x, y),
      {
        type: "text",
        silent: true,
        style: { text, x: x + SAMPLE_PX, y, fill: LOOK.ink, fontSize: SMALL_PX, fontFamily: FONT_FAMILY },
      },
    ];
  });
}

function samplesOf(sample: Sample, colour: string, x: number, y: number): readonly object[] {
  const middle = y + 6;
  const block = (fill: string, opacity: number) => ({
    type: "rect",
    silent: true,
    shape: { x, y: y + 1, width: 16, height: 10 },
    style: { fill, opacity },
  });
  const stroke = (dash: boolean, lineWidth: number) => ({
    type: "line",
    silent: true,
    shape: { x1: x, y1: middle, x2: x + 16, y2: middle },
    style: { stroke: colour, lineWidth, ...(dash ? { lineDash: [4, 3] } : {}) },
  });
  switch (sample) {
    case "dot":
      return [
        { type: "circle", silent: true, shape: { cx: x + 8, cy: middle, r: 4 }, style: { fill: colour } },
      ];
    case "bar":
      return [
        {
          type: "rect",
          silent: true,
          shape: { x: x + 5, y, width: 6, height: 12, r: 2 },
          style: { fill: colour, opacity: 0.6 },
        },
      ];
    case "arrow":
      return [
        {
          type: "polygon",
          silent: true,
          shape: { points: arrow(x + 8, y + 13, 3, -1, true) },
          style: { fill: colour },
        },
      ];
    case "band":
      return [block(colour, 0.22), stroke(false, 1.6)];
    case "dashed band":
      return [block(colour, 0.22), stroke(true, 1.6)];
    case "block":
      return [block(colour, 1)];
    case "line":
      return [stroke(true, 1.4)];
  }
}
