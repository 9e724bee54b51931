import { createRequire } from "node:module";
import { inflateSync } from "node:zlib";
import { afterAll, afterEach, describe, expect, it } from "vitest";
import { type ChartRoom, openChartRoom } from "../../../src/charts/index.ts";
import { pngOf } from "../../../src/charts/png.ts";
import { chartSvg } from "../../../src/charts/svg.ts";
import type { ChartSpec } from "../../../src/kit/chart.ts";
import { EXAMPLE } from "../../support/charts.ts";

const FONT = "data/fonts/NotoSans-Regular.ttf";

/** The picture's points, four bytes each (PNG, second edition, W3C 2003: sections 9 and 11). */
function pixelsOf(png: Uint8Array): {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
} {
  const bytes = Buffer.from(png);
  expect(bytes.subarray(1, 4).toString("latin1")).toBe("PNG");
  const width = bytes.readUInt32BE(16);
  const height = bytes.readUInt32BE(20);
  expect([bytes[24], bytes[25], bytes[28]]).toEqual([8, 6, 0]);
  const data: Buffer[] = [];
  for (let at = 8; at < bytes.length; ) {
    const length = bytes.readUInt32BE(at);
    if (bytes.toString("latin1", at + 4, at + 8) === "IDAT")
      data.push(bytes.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  const raw = inflateSync(Buffer.concat(data));
  const stride = width * 4;
  const rgba = new Uint8Array(height * stride);
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)] ?? 0;
    for (let x = 0; x < stride; x++) {
      const left = x < 4 ? 0 : (rgba[y * stride + x - 4] ?? 0);
      const above = y === 0 ? 0 : (rgba[(y - 1) * stride + x] ?? 0);
      const corner = x < 4 || y === 0 ? 0 : (rgba[(y - 1) * stride + x - 4] ?? 0);
      const guess = [0, left, above, (left + above) >> 1, paeth(left, above, corner)][filter] ?? 0;
      rgba[y * stride + x] = (raw[y * (stride + 1) + 1 + x] ?? 0) + guess;
    }
  }
  return { width, height, rgba };
}

function paeth(a: number, b: number, c: number): number {
  const p = a + b - c;
  const [pa, pb, pc] = [Math.abs(p - a), Math.abs(p - b), Math.abs(p - c)];
  return pa <= pb && pa <= pc ? a : pb <= pc ? b : c;
}

/** How many points of a part of the picture (in its own 800 × 450) are dark. */
function darkPoints(png: Uint8Array, part: { x: number; y: number; width: number; height: number }): number {
  const { width, rgba } = pixelsOf(png);
  let dark = 0;
  for (let y = Math.round(part.y * 1.5); y < Math.round((part.y + part.height) * 1.5); y++)
    for (let x = Math.round(part.x * 1.5); x < Math.round((part.x + part.width) * 1.5); x++)
      if ((rgba[(y * width + x) * 4] ?? 255) < 120) dark += 1;
  return dark;
}

const AXIS_TITLE = { x: 10, y: 4, width: 200, height: 20 };
const LEVELS = { x: 20, y: 40, width: 32, height: 330 };
const DAYS = { x: 100, y: 385, width: 650, height: 16 };

describe("the picture", () => {
  it("is 1200 × 675 points, with words where words belong", () => {
    const png = pngOf(chartSvg(EXAMPLE), FONT);
    expect(pixelsOf(png)).toMatchObject({ width: 1200, height: 675 });
    for (const part of [AXIS_TITLE, LEVELS, DAYS]) expect(darkPoints(png, part)).toBeGreaterThan(100);
  });

  it("would be without words if the font were missing: that test can fail", () => {
    const png = pngOf(chartSvg(EXAMPLE), "data/fonts/no-such-font.ttf");
    expect(darkPoints(png, AXIS_TITLE)).toBe(0);
  });

  it("has a glyph for every sign our words use", () => {
    const { Resvg } = createRequire(import.meta.url)("@resvg/resvg-js") as typeof import("@resvg/resvg-js");
    const drawn = (sign: string): string => {
      const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="30" height="30"><text x="5" y="22" font-size="20">${sign}</text></svg>`;
      const font = { fontFiles: [FONT], loadSystemFonts: false, defaultFontFamily: "Noto Sans" };
      return Buffer.from(new Resvg(svg, { font }).render().pixels).toString("base64");
    };
    const unknown = drawn("\u{10ffff}");
    for (const sign of "₂₃₄⁺µ°%–−×·/üñłžΑж") expect([sign, drawn(sign)]).not.toEqual([sign, unknown]);
  });
});

describe("the chart room", { timeout: 60_000 }, () => {
  const faults: unknown[] = [];
  const room = openChartRoom({ fontFile: FONT, report: (error) => faults.push(error), mostWaiting: 7 });
  let other: ChartRoom | undefined;
  afterEach(() => other?.close());
  afterAll(() => room.close());

  it("draws on another thread: this one goes on meanwhile", async () => {
    await room.draw(EXAMPLE);
    let turns = 0;
    const turning = setInterval(() => {
      turns += 1;
    }, 1);
    const pictures = await Promise.all(Array.from({ length: 8 }, () => room.draw(EXAMPLE)));
    clearInterval(turning);
    expect(faults).toEqual([]);
    for (const picture of pictures) expect(picture?.svg).toContain("nitrate, mg/L as NO₃");
    expect(darkPoints(pictures[7]?.png ?? new Uint8Array(), AXIS_TITLE)).toBeGreaterThan(100);
    expect(turns).toBeGreaterThan(20);
  });

  it("takes only so many at once, and leaves the rest undrawn", async () => {
    const pictures = await Promise.all(Array.from({ length: 11 }, () => room.draw(EXAMPLE)));
    // One being drawn, seven waiting.
    expect(pictures.map((picture) => picture !== undefined)).toEqual([
      ...Array(8).fill(true),
      ...Array(3).fill(false),
    ]);
  });

  it("reports what it cannot draw, and draws the next on a fresh thread", async () => {
    const broken = { ...EXAMPLE, panels: undefined } as unknown as ChartSpec;
    expect(await room.draw(broken)).toBeUndefined();
    expect(faults).toHaveLength(1);
    expect(await room.draw(EXAMPLE)).toBeDefined();
  });

  it("gives up on a chart that takes too long", async () => {
    const late: unknown[] = [];
    other = openChartRoom({ fontFile: FONT, report: (error) => late.push(error), patienceMs: 1 });
    expect(await other.draw(EXAMPLE)).toBeUndefined();
    expect(String(late[0])).toContain("longer than 1 ms");
  });

  it("starts anew after a quiet while, and answers everyone when it closes", async () => {
    other = openChartRoom({ fontFile: FONT, report: () => {}, idleMs: 1 });
    expect(await other.draw(EXAMPLE)).toBeDefined();
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(await other.draw(EXAMPLE)).toBeDefined();
    const last = other.draw(EXAMPLE);
    await other.close();
    expect(await last).toBeUndefined();
  });

  it("says so at once when the font is not there", () => {
    expect(() => openChartRoom({ fontFile: "nowhere.ttf", report: () => {} })).toThrow("nowhere.ttf");
  });
});
