import type { PictureSpec } from "../kit/chart.ts";
import { pedigreePicture } from "./pedigree-picture.ts";
import { pumpPicture } from "./pump-picture.ts";
import { rotaPicture } from "./rota-picture.ts";
import { chartSvg } from "./svg.ts";
import { systemPicture } from "./system-picture.ts";

/** Each kind of picture by the hand that draws it. */
export function svgOf(spec: PictureSpec): string {
  if (!("kind" in spec)) return chartSvg(spec);
  switch (spec.kind) {
    case "system":
      return systemPicture(spec);
    case "pump":
      return pumpPicture(spec);
    case "rota":
      return rotaPicture(spec);
    case "pedigree":
      return pedigreePicture(spec);
  }
}
