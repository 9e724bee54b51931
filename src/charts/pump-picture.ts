import type { PumpSpec } from "../kit/system-spec.ts";
import { FONT_FAMILY, LOOK } from "./look.ts";

const WIDTH = 720;
const HEIGHT = 440;
const PLOT = { left: 76, right: 700, top: 56, bottom: 368 } as const;

/** A pump's curve against what its pipes ask, with the point where they meet. */
export function pumpPicture(spec: PumpSpec): string {
  const { points, meeting } = spec;
  const mostFlow = niceEnd(Math.max(1, ...points.map(({ flowLPerH }) => flowLPerH)));
  const mostHead = niceEnd(Math.max(0.1, ...points.map(({ pumpM }) => pumpM)) * 1.05);
  const x = (flow: number) => PLOT.left + (flow / mostFlow) * (PLOT.right - PLOT.left);
  const y = (head: number) => PLOT.bottom - (Math.min(head, mostHead) / mostHead) * (PLOT.bottom - PLOT.top);
  const shown = points.filter(({ systemM }) => systemM <= mostHead);
  const line = (
    of: readonly { readonly flowLPerH: number; readonly head: number }[],
    ink: string,
    dash: string,
  ) =>
    `<polyline points="${of.map((at) => `${round(x(at.flowLPerH))},${round(y(at.head))}`).join(" ")}" fill="none" stroke="${ink}" stroke-width="4"${dash}/>`;
  const steps = [0, 0.25, 0.5, 0.75, 1];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}" role="img" font-family="${FONT_FAMILY}, sans-serif">`,
    `<title>${escaped(spec.altText)}</title>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="${LOOK.paper}"/>`,
    ...steps.flatMap((share) => [
      `<line x1="${PLOT.left}" x2="${PLOT.right}" y1="${round(y(mostHead * share))}" y2="${round(y(mostHead * share))}" stroke="${LOOK.grid}" stroke-width="1.5"/>`,
      label(PLOT.left - 10, y(mostHead * share) + 6, tick(mostHead * share), "end"),
      label(x(mostFlow * share), PLOT.bottom + 26, tick(mostFlow * share), share === 1 ? "end" : "middle"),
    ]),
    line(
      points.map(({ flowLPerH, pumpM }) => ({ flowLPerH, head: pumpM })),
      LOOK.fitted,
      "",
    ),
    line(
      shown.map(({ flowLPerH, systemM }) => ({ flowLPerH, head: systemM })),
      LOOK.forecasts[0],
      ' stroke-dasharray="10 6"',
    ),
    `<circle cx="${round(x(meeting.flowLPerH))}" cy="${round(y(meeting.headM))}" r="9" fill="${LOOK.limit}"/>`,
    label(PLOT.left, 34, "head, m", "start"),
    label(PLOT.right, PLOT.bottom + 56, "flow, L/h", "end"),
    `<line x1="230" x2="270" y1="28" y2="28" stroke="${LOOK.fitted}" stroke-width="4"/>`,
    label(278, 34, "the pump lifts", "start"),
    `<line x1="450" x2="490" y1="28" y2="28" stroke="${LOOK.forecasts[0]}" stroke-width="4" stroke-dasharray="10 6"/>`,
    label(498, 34, "height and pipes ask", "start"),
    "</svg>",
  ].join("\n");
}

/** The next round end whose quarters are round as well. */
function niceEnd(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return (
    (([1, 1.2, 1.6, 2, 2.4, 3, 4, 5, 6, 8, 10] as const).find((step) => step * power >= value * 0.999) ??
      10) * power
  );
}

function tick(value: number): string {
  return String(Number(value.toPrecision(3)));
}

function label(x: number, y: number, content: string, anchor: "start" | "middle" | "end"): string {
  return `<text x="${round(x)}" y="${round(y)}" font-size="20" fill="${LOOK.ink}" text-anchor="${anchor}">${escaped(content)}</text>`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function escaped(content: string): string {
  return content.replace(/[&<>"']/g, (mark) => `&#${mark.codePointAt(0)};`);
}
