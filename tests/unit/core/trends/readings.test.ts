import { describe, expect, it } from "vitest";
import { chartCells } from "../../../../src/core/trends/chart-cells.ts";
import {
  type Instrument,
  looks,
  mergedLooks,
  type TrendReading,
} from "../../../../src/core/trends/readings.ts";

const chart: Instrument = { id: "chart", kind: "chart", steps: [0, 5, 10, 20, 40, 80, 160] };
const meter: Instrument = { id: "meter", kind: "meter", fixedSd: 1, levelSd: 0.05, lowest: 2, highest: 100 };
const infinity = Number.POSITIVE_INFINITY;

function interval(reading: Omit<TrendReading, "at">, others: readonly TrendReading[] = []) {
  const [look] = looks([{ at: 0, ...reading }, ...others]);
  return look && [look.low, look.high];
}

describe("a reading as an interval", () => {
  it.each([
    { value: 0, cell: [-infinity, 2.5] },
    { value: 5, cell: [2.5, 7.5] },
    { value: 20, cell: [15, 30] },
    { value: 160, cell: [120, infinity] },
  ])(
    "takes $value on the chart as $cell (half-way between steps; the top is at least)",
    ({ value, cell }) => {
      expect(interval({ value, instrument: chart })).toEqual(cell);
    },
  );

  it("halves every cell of a member who once read between two steps", () => {
    const between: TrendReading = { at: 1, value: 15, instrument: chart };
    expect(interval({ value: 15, instrument: chart })).toEqual([12.5, 17.5]);
    expect(interval({ value: 20, instrument: chart }, [between])).toEqual([17.5, 25]);
    expect(interval({ value: 160, instrument: chart }, [between])).toEqual([140, infinity]);
  });

  it("takes “<5” as below five and “≥160” as at least the edge of that cell", () => {
    expect(interval({ value: 5, bound: "below", instrument: chart })).toEqual([-infinity, 5]);
    expect(interval({ value: 80, bound: "at least", instrument: chart })).toEqual([60, infinity]);
  });

  it("takes a meter's figure as it is within its range, and as a bound outside", () => {
    expect(interval({ value: 17, instrument: meter })).toEqual([17, 17]);
    expect(interval({ value: 1, instrument: meter })).toEqual([-infinity, 2]);
    expect(interval({ value: 100, instrument: meter })).toEqual([100, infinity]);
    expect(interval({ value: 3, bound: "below", instrument: meter })).toEqual([-infinity, 3]);
    expect(interval({ value: 50, bound: "at least", instrument: meter })).toEqual([50, infinity]);
  });

  it("has no cells for a chart whose steps do not rise", () => {
    expect(() => chartCells([5])).toThrow(RangeError);
    expect(() => chartCells([0, 5, 5])).toThrow(RangeError);
  });

  it("puts readings in order of time", () => {
    const out = looks([
      { at: 3, value: 5, instrument: chart },
      { at: 1, value: 17, instrument: meter },
      { at: 2, value: 10, instrument: chart },
    ]);
    expect(out.map((l) => l.at)).toEqual([1, 2, 3]);
  });
});

describe("several looks at one water", () => {
  const at = (hours: number, value: number, instrument: Instrument = chart): TrendReading => ({
    at: hours / 24,
    value,
    instrument,
  });

  it("count once when they agree", () => {
    const merged = mergedLooks(looks([at(0, 20), at(1, 20), at(1.5, 20)]), [], 2 / 24);
    expect(merged.map((l) => [l.low, l.high])).toEqual([[15, 30]]);
  });

  it("are taken as either when they contradict each other", () => {
    const merged = mergedLooks(looks([at(0, 20), at(1, 40)]), [], 2 / 24);
    expect(merged.map((l) => [l.low, l.high])).toEqual([[15, 60]]);
  });

  it("are averaged on a meter", () => {
    const merged = mergedLooks(looks([at(0, 20, meter), at(1, 26, meter)]), [], 2 / 24);
    expect(merged.map((l) => [l.low, l.high])).toEqual([[23, 23]]);
  });

  it("stay apart with a change of water between them, with another instrument, or hours later", () => {
    const change = [0.5 / 24];
    expect(mergedLooks(looks([at(0, 40), at(1, 20)]), change, 2 / 24)).toHaveLength(2);
    expect(mergedLooks(looks([at(0, 40), at(1, 40, meter)]), [], 2 / 24)).toHaveLength(2);
    expect(mergedLooks(looks([at(0, 40), at(3, 40)]), [], 2 / 24)).toHaveLength(2);
  });
});
