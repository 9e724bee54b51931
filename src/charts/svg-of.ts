import type { PictureSpec } from "../kit/chart.ts";
import { pumpPicture } from "./pump-picture.ts";
import { chartSvg } from "./svg.ts";
import { systemPicture } from "./system-picture.ts";

/** Each kind of picture by the hand that draws it. */
export function svgOf(spec: PictureSpec): string {
  if (!("kind" in spec)) return chartSvg(spec);
  return spec.kind === "system" ? systemPicture(spec) : pumpPicture(spec);
}
