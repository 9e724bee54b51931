/** Size of a chart, before it is scaled. */
export const WIDTH = 800;
export const HEIGHT = 450;
export const SCALE = 1.5;

export const FONT_FAMILY = "Noto Sans";
export const TEXT_PX = 13;
export const SMALL_PX = 11;

/** One look for light and dark screens: the picture brings its own paper, and all ink on it is dark. */
export const LOOK = {
  paper: "#fbfaf6",
  ink: "#22313a",
  faint: "#5c6b73",
  grid: "#dedbd1",
  target: "#dcecd9",
  targetEdge: "#7fa37a",
  limit: "#a8452f",
  toCome: "#efece2",
  event: "#8a6d3b",
  fitted: "#1f5f6b",
  forecasts: ["#b0651f", "#6b4b8a"],
  /** Instruments, told apart by colour and never by colour alone: the legend names them. */
  marks: ["#0b3954", "#8f2d56", "#4c6b1f"],
} as const;

/** About how wide a text will be; the server can only estimate. */
export function textWidth(text: string, px: number): number {
  return [...text].length * px * 0.56;
}

/** An item of a cycle of colours. */
export function colourAt(colours: readonly string[], index: number): string {
  return colours[index % colours.length] ?? LOOK.ink;
}
