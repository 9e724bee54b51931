import { Resvg } from "@resvg/resvg-js";
import { describe, expect, it } from "vitest";
import { svgOf } from "../../../src/charts/svg-of.ts";
import { systemPicture } from "../../../src/charts/system-picture.ts";
import type { PumpSpec, SystemSpec } from "../../../src/kit/system-spec.ts";

const FONT = "data/fonts/NotoSans-Regular.ttf";

function system(count: number, change: Partial<SystemSpec["containers"][number]> = {}): SystemSpec {
  return {
    kind: "system",
    altText: "The containers of an invented tank.",
    containers: Array.from({ length: count }, (_, index) => ({
      label: `drum ${index + 1}`,
      role: "filter" as const,
      isApart: false,
      litres: 100,
      volumeText: "100 L",
      ...change,
    })),
    facts: [{ name: "water in all", value: "2300 L" }],
  };
}

/** Dark pixels in a part of the picture, given in the SVG's own units. */
function inkIn(
  svg: string,
  [left, top, right, bottom]: readonly [number, number, number, number],
  font = FONT,
): number {
  const drawn = new Resvg(svg, {
    font: { fontFiles: [font], loadSystemFonts: false, defaultFontFamily: "Noto Sans" },
    logLevel: "off",
  }).render();
  const { pixels, width } = drawn;
  let dark = 0;
  for (let y = top; y < bottom; y++)
    for (let x = left; x < right; x++) {
      const at = 4 * (y * width + x);
      if ((pixels[at] ?? 255) + (pixels[at + 1] ?? 255) + (pixels[at + 2] ?? 255) < 330) dark += 1;
    }
  return dark;
}

describe("the picture of a system", () => {
  it("draws one vessel for each container, with its name, litres and figures", () => {
    const svg = systemPicture(system(5));
    expect(svg.match(/data-container=/g)).toHaveLength(5);
    expect(svg).toContain(">drum 5</text>");
    expect(svg).toContain(">100 L</text>");
    expect(svg).toContain(">2300 L</text>");
    expect(svg).toContain("<title>The containers of an invented tank.</title>");
  });

  it("joins what the water passes, turns back at the end, and leaves alone what stands apart", () => {
    expect(systemPicture(system(3)).match(/rotate\(-90/g)).toHaveLength(1);
    expect(systemPicture(system(2, { isApart: true }))).not.toContain(
      'stroke-linecap="round" stroke-linejoin="round"/><',
    );
    expect(systemPicture(system(2, { isApart: true }))).toContain("filter, apart");
  });

  it("counts what it does not draw, and grows with its rows", () => {
    const svg = systemPicture(system(60));
    expect(svg.match(/data-container=/g)).toHaveLength(18);
    expect(svg).toContain("and 42 more");
  });

  it("lets no name become markup, and shortens a long one", () => {
    const svg = systemPicture(system(1, { label: `<script>"&'${"x".repeat(80)}` }));
    expect(svg).not.toContain("<script>");
    expect(svg).toContain("&#60;");
    expect(svg).toContain("…</text>");
  });

  it("writes with the font it ships: a label's area is not blank, and is blank without the font", () => {
    const svg = systemPicture(system(1));
    const facts = [20, 300, 300, 370] as const;
    expect(inkIn(svg, facts)).toBeGreaterThan(60);
    expect(inkIn(svg, facts, "no-such-font.ttf")).toBe(0);
  });

  it("keeps text large enough for a phone held upright", () => {
    const sizes = [
      ...systemPicture(system(9, { label: "a rather long name for a settling box" })).matchAll(
        /font-size="(\d+)"/g,
      ),
    ];
    // 720 wide on a screen of 360: half the size; 16 becomes 8 px on a screen of two or three device pixels each.
    expect(Math.min(...sizes.map(([, size]) => Number(size)))).toBeGreaterThanOrEqual(16);
  });
});

describe("the picture of a pump", () => {
  const pump: PumpSpec = {
    kind: "pump",
    altText: "They meet at 10 300 L/h.",
    points: [
      { flowLPerH: 0, pumpM: 5.2, systemM: 1.7 },
      { flowLPerH: 8000, pumpM: 3.9, systemM: 2.5 },
      { flowLPerH: 15_000, pumpM: 0, systemM: 4.5 },
    ],
    meeting: { flowLPerH: 10_300, headM: 3 },
  };

  it("names both axes with their units, and draws two curves and their meeting", () => {
    const svg = svgOf(pump);
    expect(svg).toContain("head, m</text>");
    expect(svg).toContain("flow, L/h</text>");
    expect(svg.match(/<polyline/g)).toHaveLength(2);
    expect(svg.match(/<circle/g)).toHaveLength(1);
  });
});
