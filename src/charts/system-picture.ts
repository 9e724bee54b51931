import type { DrawnContainer, SystemSpec } from "../kit/system-spec.ts";
import { FONT_FAMILY, LOOK } from "./look.ts";

/** Wide enough for three containers, narrow enough for a phone held upright: text stays readable at half size. */
const WIDTH = 720;
const COLUMNS = 3;
const CELL = { width: WIDTH / COLUMNS, height: 268 } as const;
const VESSEL = { width: 168, least: 62, most: 132, base: 196 } as const;
const FACT = { height: 76, columns: 2 } as const;
const MARGIN = 20;
/** More containers than this are counted, not drawn. */
const MOST_DRAWN = 18;
/** About how wide a letter is, as a share of its size. */
const LETTER = 0.56;

const WATER = {
  display: "#2f8f9d",
  filter: "#7c93a3",
  "algae tank": "#6f9e58",
  "pump container": "#3f6fa8",
  reservoir: "#a9c7d6",
  other: "#9aa5a0",
} as const;

/** The row of containers as SVG: each a vessel with its water, joined by arrows, figures beneath. */
export function systemPicture(spec: SystemSpec): string {
  const drawn = spec.containers.slice(0, MOST_DRAWN);
  const left = spec.containers.length - drawn.length;
  const largest = Math.max(1, ...drawn.map(({ litres }) => litres));
  const rows = Math.max(1, Math.ceil(drawn.length / COLUMNS));
  const factsTop = MARGIN + rows * CELL.height + (left > 0 ? 34 : 0);
  const height = factsTop + Math.ceil(spec.facts.length / FACT.columns) * FACT.height + MARGIN;
  const cells = drawn.map((container, index) =>
    vessel(container, index, Math.sqrt(container.litres / largest), onwardOf(container, drawn[index + 1])),
  );
  const more =
    left > 0
      ? [text(MARGIN, factsTop - 12, 22, LOOK.faint, `and ${left} more, in the words beside this picture`)]
      : [];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" font-family="${FONT_FAMILY}, sans-serif">`,
    `<title>${escaped(spec.altText)}</title>`,
    `<rect width="${WIDTH}" height="${height}" fill="${LOOK.paper}"/>`,
    ...cells,
    ...more,
    ...spec.facts.map((fact, index) => factTile(fact, index, factsTop)),
    "</svg>",
  ].join("\n");
}

/** Where the water goes from here: on to the next, back up to the display, or nowhere. */
function onwardOf(container: DrawnContainer, next: DrawnContainer | undefined): "next" | "back" | "none" {
  if (container.isApart) return "none";
  return next === undefined || next.isApart ? "back" : "next";
}

function vessel(
  container: DrawnContainer,
  index: number,
  share: number,
  onward: "next" | "back" | "none",
): string {
  const x = (index % COLUMNS) * CELL.width;
  const y = MARGIN + Math.floor(index / COLUMNS) * CELL.height;
  const middle = x + CELL.width / 2 - 8;
  const height = VESSEL.least + (VESSEL.most - VESSEL.least) * share;
  const base = y + VESSEL.base;
  const top = base - height;
  const left = middle - VESSEL.width / 2;
  const right = middle + VESSEL.width / 2;
  const surface = base - height * Math.min(1, Math.max(0.15, container.filled ?? 0.85));
  const quarter = VESSEL.width / 4;
  const below = [container.isApart ? `${container.role}, apart` : container.role, container.stayText]
    .filter((part) => part !== undefined)
    .join(" · ");
  const wave = `M ${left} ${surface} q ${quarter / 2} -6 ${quarter} 0 t ${quarter} 0 t ${quarter} 0 t ${quarter} 0 V ${base} H ${left} Z`;
  return [
    `<g data-container="${escaped(container.role)}">`,
    text(
      middle,
      top - 16,
      fitting(container.label, 24, CELL.width - 24),
      LOOK.ink,
      container.label,
      "middle",
      700,
      CELL.width - 24,
    ),
    `<path d="${wave}" fill="${WATER[container.role]}"/>`,
    `<path d="M ${left - 4} ${top} L ${left} ${base} H ${right} L ${right + 4} ${top}" fill="none" stroke="${LOOK.ink}" stroke-width="4" stroke-linejoin="round" stroke-linecap="round"/>`,
    text(
      middle,
      base + 30,
      fitting(container.volumeText, 23, CELL.width - 14),
      LOOK.ink,
      container.volumeText,
      "middle",
      400,
      CELL.width - 14,
    ),
    text(
      middle,
      base + 56,
      fitting(below, 19, CELL.width - 14),
      LOOK.faint,
      below,
      "middle",
      400,
      CELL.width - 14,
    ),
    ...(onward === "none" ? [] : [arrow(x + CELL.width - 24, base - 24, onward === "back")]),
    "</g>",
  ].join("");
}

/** To the right, or up: from the last container the pump lifts the water back to the first. */
function arrow(x: number, y: number, isUp: boolean): string {
  const turn = isUp ? ` transform="rotate(-90 ${x} ${y})"` : "";
  return `<path${turn} d="M ${x - 6} ${y} h 14 m -8 -8 l 9 8 l -9 8" fill="none" stroke="${LOOK.faint}" stroke-width="4" stroke-linecap="round" stroke-linejoin="round"/>`;
}

function factTile(
  { name, value, isAlarming }: SystemSpec["facts"][number],
  index: number,
  top: number,
): string {
  const width = (WIDTH - 2 * MARGIN) / FACT.columns;
  const x = MARGIN + (index % FACT.columns) * width;
  const y = top + Math.floor(index / FACT.columns) * FACT.height;
  const ink = isAlarming === true ? LOOK.limit : LOOK.ink;
  return [
    `<line x1="${x}" y1="${y + 4}" x2="${x + width - 16}" y2="${y + 4}" stroke="${LOOK.grid}" stroke-width="2"/>`,
    text(x, y + 30, 19, LOOK.faint, name, "start", 400, width - 16),
    text(x, y + 60, fitting(value, 26, width - 16), ink, value, "start", 700, width - 16),
  ].join("");
}

/** The size at which a text fits its width, not below what a phone can show. */
function fitting(content: string, size: number, width: number): number {
  const needed = [...content].length * size * LETTER;
  return needed <= width ? size : Math.max(16, Math.floor((size * width) / needed));
}

function text(
  x: number,
  y: number,
  size: number,
  ink: string,
  content: string,
  anchor: "start" | "middle" = "start",
  weight: 400 | 700 = 400,
  width = Number.POSITIVE_INFINITY,
): string {
  const most = Math.max(4, Math.floor(width / (size * LETTER)));
  const letters = [...content];
  const shown = letters.length > most ? `${letters.slice(0, most - 1).join("")}…` : content;
  // The font comes in one weight: a thin outline in the same ink makes it bolder.
  const bold = weight === 700 ? ` stroke="${ink}" stroke-width="0.7"` : "";
  return `<text x="${x}" y="${y}" font-size="${size}" fill="${ink}" text-anchor="${anchor}"${bold}>${escaped(shown)}</text>`;
}

function escaped(content: string): string {
  return content.replace(/[&<>"']/g, (mark) => `&#${mark.codePointAt(0)};`);
}
