import { describe, expect, it } from "vitest";
import { filterTrain } from "../../../../src/core/nitrogen/filter-train.ts";
import type { FilterTrain, TrainBox } from "../../../../src/core/nitrogen/filter-train-sum.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as, type Quantity } from "../../../../src/core/quantity/units.ts";

const q = <Q extends Quantity<string>>(value: number): Q => as<Q>(value);
const main: TrainBox["path"] = { kind: "main", bypass: exactly(q(0)) };

const brush: TrainBox = {
  label: "brush box",
  purpose: "solids",
  waterL: exactly(q(200)),
  isAerated: false,
  path: main,
};
const bed: TrainBox = {
  label: "moving bed",
  purpose: "nitrifying",
  waterL: exactly(q(300)),
  media: { kind: "moving bed", litres: exactly(q(250)) },
  isAerated: false,
  crossSectionM2: exactly(q(0.5)),
  path: main,
};
const drum: TrainBox = {
  label: "drum",
  purpose: "low oxygen",
  waterL: exactly(q(110)),
  isAerated: false,
  wasteDemand: exactly(q(2)),
  path: main,
};

/** An invented system: 2.592 g ammonia nitrogen a day, 6.5 mg/L oxygen leaving the tank. */
function train(flow: number, boxes: readonly TrainBox[]): FilterTrain {
  return {
    flow: exactly(q(flow)),
    salinity: exactly(q(34)),
    temperatureC: exactly(q(26)),
    ammonia: { kind: "load", gPerDay: exactly(q(2.592)) },
    tankOxygen: exactly(q(6.5)),
    boxes,
  };
}

function answered(given: FilterTrain) {
  const result = filterTrain(given);
  if (result.kind === "no-answer") throw new Error(`refused: ${result.reason.code}`);
  return { ...result, codes: result.cautions.map((each) => each.code) };
}

describe("a filter train", () => {
  // Source: mass balance, 2.592 · 4.57 = 11.85 g O₂ a day over the flow.
  it.each([
    [13_500, 0.037],
    [8_000, 0.062],
    [2_700, 0.183],
    [700, 0.71],
  ])("loses little oxygen in the nitrifying box at %d L/h: %d mg/L", (flow, drop) => {
    const { value } = answered(train(flow, [bed]));
    const box = value.boxes[0];
    expect(value.isOverloaded).toBe(false);
    expect((box?.oxygenIn.best ?? 0) - (box?.oxygenOut.best ?? 0)).toBeCloseTo(drop, 2);
    expect(box?.nitrifiedGPerDay.best).toBeCloseTo(2.592, 3);
  });

  it("gives residence and velocity by division", () => {
    const box = answered(train(3000, [bed])).value.boxes[0];
    expect(box?.residenceMin.best).toBeCloseTo(6, 9);
    expect(box?.velocityMPerH?.best).toBeCloseTo(6, 9);
  });

  it("says that a box in the main flow cannot run low on oxygen, and what side stream could", () => {
    const { value, cautions, codes } = answered(train(8000, [brush, bed, drum]));
    expect(value.boxes.map((box) => box.state)).toEqual(["oxic", "oxic", "oxic"]);
    expect(codes).toContain("main-flow-stays-oxic");
    const told = cautions.find((each) => each.code === "low-oxygen-needs-side-stream");
    // Source: mass balance, 2 g/d over (6.5 − 0.5) mg/L is 13.9 L/h; other bacteria at 0.5 mg/L run at 0.5/0.7 of full speed.
    const figures = told?.code === "low-oxygen-needs-side-stream" ? told.figures : undefined;
    expect(figures?.sideLPerH).toBeGreaterThan(9);
    expect(figures?.sideLPerH).toBeLessThanOrEqual(13.9);
  });

  it("names no flow at which nitrifying alone would use up the oxygen", () => {
    const box = answered(train(8000, [bed])).value.boxes[0];
    // 4.57 mg/L of oxygen per mg/L of ammonia nitrogen: at the tank's level that is never 6 mg/L.
    expect(box?.anoxicBelowLPerH).toBeUndefined();
  });

  it("finds the same drum anoxic in a side stream slower than that, with a warning of sulphide", () => {
    const slow: TrainBox = { ...drum, path: { kind: "side stream", flow: exactly(q(5)) } };
    const { value, cautions } = answered(train(8000, [bed, slow]));
    expect(value.boxes[1]?.state).toBe("anoxic");
    expect(cautions.find((each) => each.code === "anoxic-box-may-make-sulphide")?.level).toBe("danger");
  });

  it("finds a side stream a little too fast", () => {
    const { codes } = answered(
      train(8000, [{ ...drum, path: { kind: "side stream", flow: exactly(q(30)) } }, bed]),
    );
    expect(codes).toContain("side-stream-too-fast");
  });

  it("says when a side stream has nothing to use its oxygen", () => {
    const { wasteDemand: _none, ...idle } = drum;
    const { codes } = answered(
      train(8000, [bed, { ...idle, path: { kind: "side stream", flow: exactly(q(5)) } }]),
    );
    expect(codes).toContain("side-stream-needs-food");
  });

  it("admits that a filter without film cannot take the load", () => {
    const { value, codes } = answered(train(8000, [brush]));
    expect(value.isOverloaded).toBe(true);
    expect(value.tankTan).toBeUndefined();
    expect(codes).toContain("filter-cannot-take-load");
  });

  it("lets part of the flow by, and mixes it back", () => {
    const half = answered(train(8000, [{ ...bed, path: { kind: "main", bypass: exactly(q(0.5)) } }]));
    expect(half.value.boxes[0]?.flow.best).toBeCloseTo(4000, 6);
    expect(half.value.nitrifiedGPerDay.best).toBeCloseTo(2.592, 3);
  });

  it("advises on the order of stages", () => {
    const skimmer: TrainBox = { ...brush, label: "skimmer", purpose: "skimmer", isAerated: true };
    const aeratedBed = { ...bed, isAerated: true };
    const { codes } = answered(train(8000, [aeratedBed, drum, brush, skimmer]));
    expect(codes).toContain("solids-belong-first");
    expect(codes).toContain("aeration-before-slow-box");
    expect(codes).toContain("skimmer-belongs-before-media");
    const good = answered(train(8000, [brush, skimmer, aeratedBed])).codes;
    for (const code of ["solids-belong-first", "skimmer-belongs-before-media"])
      expect(good).not.toContain(code);
  });

  it("needs a box", () => {
    const result = filterTrain(train(8000, []));
    expect(result.kind === "no-answer" && result.reason.code).toBe("no-filter-boxes");
  });
});
