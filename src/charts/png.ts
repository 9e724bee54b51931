import { Resvg } from "@resvg/resvg-js";
import { FONT_FAMILY, SCALE } from "./look.ts";

/** The SVG as PNG. The font comes from the file given and nowhere else: without it every word would vanish. */
export function pngOf(svg: string, fontFile: string): Uint8Array {
  const picture = new Resvg(svg, {
    fitTo: { mode: "zoom", value: SCALE },
    font: { fontFiles: [fontFile], loadSystemFonts: false, defaultFontFamily: FONT_FAMILY },
    logLevel: "off",
  });
  return picture.render().asPng();
}
