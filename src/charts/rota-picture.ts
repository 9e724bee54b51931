import type { RotaSpec } from "../kit/system-spec.ts";
import { FONT_FAMILY, LOOK } from "./look.ts";
import { cutTo, escapedText } from "./svg-words.ts";

const WIDTH = 800;
const NAME_PX = 150;
const ROW_PX = 52;
const HEAD_PX = 46;
const MARGIN = 16;
const MOST_ROWS = 14;

const FILL = {
  planned: "#cfe3e6",
  done: "#dcecd9",
  open: "#f3d9c6",
  away: "#e4e0d5",
  free: LOOK.paper,
} as const;
/** Said in words, too: colour alone tells nobody anything. */
const SIGN = { planned: "", done: "done", open: "open", away: "away", free: "" } as const;

/** The week's duties as a table: who, which day, what, and whether it is done. */
export function rotaPicture(spec: RotaSpec): string {
  const rows = spec.rows.slice(0, MOST_ROWS);
  const height = 2 * MARGIN + HEAD_PX + Math.max(1, rows.length) * ROW_PX;
  const columnPx = (WIDTH - 2 * MARGIN - NAME_PX) / Math.max(1, spec.days.length);
  const place = (column: number): number => MARGIN + NAME_PX + column * columnPx;
  const write = (x: number, y: number, size: number, ink: string, content: string, width: number): string =>
    `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" font-size="${size}" fill="${ink}">${escapedText(cutTo(content, width, size))}</text>`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" font-family="${FONT_FAMILY}, sans-serif">`,
    `<title>${escapedText(spec.altText)}</title>`,
    `<rect width="${WIDTH}" height="${height}" fill="${LOOK.paper}"/>`,
    ...spec.days.flatMap((day, column) => {
      const [weekday = "", ...date] = day.split(" ");
      return [
        write(place(column) + 6, MARGIN + 18, 15, LOOK.ink, weekday, columnPx - 8),
        write(place(column) + 6, MARGIN + 36, 13, LOOK.faint, date.join(" "), columnPx - 8),
      ];
    }),
    ...rows.flatMap(({ name, cells }, index) => {
      const top = MARGIN + HEAD_PX + index * ROW_PX;
      return [
        write(MARGIN, top + 30, 17, LOOK.ink, name, NAME_PX - 10),
        ...cells.flatMap(({ text, state }, column) => [
          `<rect data-state="${state}" x="${(place(column) + 2).toFixed(1)}" y="${top + 2}" width="${(columnPx - 4).toFixed(1)}" height="${ROW_PX - 4}" rx="4" fill="${FILL[state]}" stroke="${LOOK.grid}"/>`,
          ...(text === "" ? [] : [write(place(column) + 7, top + 23, 14, LOOK.ink, text, columnPx - 12)]),
          ...(SIGN[state] === ""
            ? []
            : [write(place(column) + 7, top + 42, 12, LOOK.faint, SIGN[state], columnPx - 12)]),
        ]),
      ];
    }),
    "</svg>",
  ].join("\n");
}
