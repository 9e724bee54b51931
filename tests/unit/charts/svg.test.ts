import { describe, expect, it } from "vitest";
import { LOOK } from "../../../src/charts/look.ts";
import { chartSvg } from "../../../src/charts/svg.ts";
import type { ChartMark, ChartPanel, ChartSpec } from "../../../src/kit/chart.ts";
import { EXAMPLE, NOW } from "../../support/charts.ts";

const DAY_MS = 86_400_000;

/** The words of the picture, in reading order of the file. */
function textsOf(svg: string): readonly string[] {
  return [...svg.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text = ""]) => text);
}

/** The data's own shapes of one colour: samples in the legend belong to no series. */
function filledWith(svg: string, colour: string): readonly string[] {
  return [...svg.matchAll(/<(?:path|circle|polygon) [^>]*>/g)].flatMap(([shape]) =>
    shape.includes(`fill="${colour}"`) && shape.includes("ecmeta_series_index") ? [shape] : [],
  );
}

function withPanel(change: Partial<ChartPanel>): ChartSpec {
  const [panel] = EXAMPLE.panels;
  if (panel === undefined) throw new Error("the example has no panel");
  return { ...EXAMPLE, panels: [{ ...panel, ...change }] };
}

function withMarks(marks: readonly ChartMark[]): ChartSpec {
  return withPanel({ series: [{ name: "readings", marks }], forecasts: [] });
}

describe("a chart", () => {
  const svg = chartSvg(EXAMPLE);
  const words = textsOf(svg);

  it("measures 800 × 450", () => {
    expect(svg).toMatch(/^<svg width="800" height="450"/);
  });

  it("names its axis with the unit", () => {
    expect(words).toContain("nitrate, mg/L as NO₃");
  });

  it("shows the days of the member's own calendar", () => {
    // 4 March 2026 is a Wednesday, and so 26 January a Monday (calendar); ISO 8601 weeks begin there.
    expect(words).toEqual(expect.arrayContaining(["26 Jan", "9 Feb", "23 Feb"]));
  });

  it("has one mark for each reading", () => {
    expect(filledWith(svg, LOOK.marks[0])).toHaveLength(5);
    const more = Array.from({ length: 40 }, (_, i) => ({
      kind: "point" as const,
      at: NOW - i * DAY_MS,
      value: 10 + i,
    }));
    expect(filledWith(chartSvg(withMarks(more)), LOOK.marks[0])).toHaveLength(40);
    expect(filledWith(chartSvg(withMarks([])), LOOK.marks[0])).toHaveLength(0);
  });

  it("draws the target, the fitted band and what is to come", () => {
    expect(filledWith(svg, LOOK.target)).toHaveLength(1);
    expect(filledWith(svg, LOOK.fitted)).toHaveLength(1);
    expect(filledWith(svg, LOOK.forecasts[0])).toHaveLength(1);
    expect(filledWith(svg, LOOK.toCome)).toHaveLength(1);
    const { fitted, target, ...bare } = EXAMPLE.panels[0] ?? { fitted: undefined, target: undefined };
    expect([fitted, target]).not.toContain(undefined);
    const plain = chartSvg({ ...EXAMPLE, until: NOW, panels: [{ ...(bare as ChartPanel), forecasts: [] }] });
    for (const colour of [LOOK.target, LOOK.fitted, LOOK.forecasts[0], LOOK.toCome])
      expect(filledWith(plain, colour)).toHaveLength(0);
  });

  it("marks the events and says what each shape means", () => {
    expect(words).toEqual(
      expect.arrayContaining(["30 %", "25 %", "span of the colour read", "open end", "target range"]),
    );
  });

  it("keeps the words of crowded events apart", () => {
    const events = Array.from({ length: 30 }, (_, i) => ({ at: NOW - i * DAY_MS, label: "30 %" }));
    const said = textsOf(chartSvg({ ...EXAMPLE, events })).filter((word) => word === "30 %");
    expect(said.length).toBeLessThan(5);
    expect(chartSvg({ ...EXAMPLE, events }).match(new RegExp(`stroke="${LOOK.event}"`, "g"))).toHaveLength(
      30,
    );
  });

  it("is the same picture every time", () => {
    const bare = (text: string): string => text.replace(/zr\d*-(?:cls-\d+)?/g, "zr-");
    expect(bare(chartSvg(EXAMPLE))).toBe(bare(svg));
  });
});

describe("odd records", () => {
  it.each([
    ["one reading", [{ kind: "point", at: NOW, value: 8.1 }]],
    ["nothing but zero", [{ kind: "point", at: NOW, value: 0 }]],
    ["an open top alone", [{ kind: "at least", at: NOW, low: 120 }]],
    ["an open end below zero", [{ kind: "below", at: NOW, high: 0 }]],
    ["cold water", [{ kind: "point", at: NOW, value: -1.8 }]],
    ["very small levels", [{ kind: "point", at: NOW, value: 1e-7 }]],
    ["very large ones", [{ kind: "point", at: NOW, value: 3e9 }]],
  ] as const)("%s can be drawn", (_, marks) => {
    const svg = chartSvg(withMarks([...marks]));
    expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    expect(filledWith(svg, LOOK.marks[0])).toHaveLength(1);
  });

  it("a tank with nothing to draw gives an empty frame", () => {
    const svg = chartSvg(withPanel({ series: [], forecasts: [] }));
    expect(svg).not.toMatch(/NaN|Infinity/);
    expect(chartSvg({ ...EXAMPLE, panels: [] })).toContain("<svg");
  });

  it("many panels each name their own axis", () => {
    const [panel] = EXAMPLE.panels;
    const titles = ["temperature, °C", "pH", "calcium, mg/L", "salinity, PSS-78", "phosphate, mg/L as PO₄"];
    const panels = titles.map((axisTitle) => ({ ...(panel as ChartPanel), axisTitle }));
    expect(textsOf(chartSvg({ ...EXAMPLE, panels }))).toEqual(expect.arrayContaining(titles));
  });
});
