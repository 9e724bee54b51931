import { textWidth } from "./look.ts";

/** Text for an SVG, with its own marks made harmless. */
export function escapedText(content: string): string {
  return content.replace(/[&<>"']/g, (mark) => `&#${mark.codePointAt(0)};`);
}

/** Cut with an ellipsis to about this width. */
export function cutTo(content: string, px: number, size: number): string {
  if (textWidth(content, size) <= px) return content;
  const letters = [...content];
  const most = Math.max(1, Math.floor(px / (size * 0.56)) - 1);
  return `${letters.slice(0, most).join("")}…`;
}
