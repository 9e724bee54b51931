import { describe, expect, it } from "vitest";
import { type OperatingPointInputs, operatingPoint } from "../../../../src/core/plant/operating-point.ts";
import { type BranchInputs, branchFlows } from "../../../../src/core/plant/parallel-branches.ts";
import { equivalentLength, SCHEDULE_40_BORE_MM, sumOfK } from "../../../../src/core/plant/pipe-data.ts";
import {
  darcyLoss,
  flowAtVelocity,
  frictionFactor,
  hazenWilliamsLoss,
  pipeVelocity,
  seawaterViscosity,
} from "../../../../src/core/plant/pipe-loss.ts";
import {
  lossByDarcy,
  lossByHazenWilliams,
  type PipeSegment,
  pipeRunLoss,
} from "../../../../src/core/plant/pipe-run.ts";
import { type PumpCurve, pumpHead } from "../../../../src/core/plant/pump-curve.ts";
import { exactly } from "../../../../src/core/quantity/estimate.ts";
import { as } from "../../../../src/core/quantity/units.ts";
import { answered, raised, refused } from "../../../support/answers.ts";

const riser: PipeSegment = {
  name: "the riser",
  side: "pressure",
  boreMm: SCHEDULE_40_BORE_MM["2"],
  lengthM: as(12),
  fittings: [],
  devices: [],
};
const three: PumpCurve = {
  kind: "points",
  points: [
    { flowLPerH: as(0), headM: as(5) },
    { flowLPerH: as(6000), headM: as(4) },
    { flowLPerH: as(12_000), headM: as(1) },
  ],
};

describe("water in a pipe", () => {
  // sharqawy-2010 at salinity 35, 1e-6 m²/s; 15 °C is the figure of the ITTC table (from memory).
  it.each([
    [15, 1.189],
    [20, 1.051],
    [25, 0.937],
    [28, 0.879],
  ])("at %d °C has a viscosity of %f e-6 m²/s", (celsius, viscosity) => {
    expect(seawaterViscosity(as(35), as(celsius)) * 1e6).toBeCloseTo(viscosity, 2);
  });

  // Flow at 1.5 m/s in schedule 40 pipe, area times velocity by hand, L/h.
  it.each([
    ["3/4", 1850],
    ["1", 3000],
    ["1 1/4", 5230],
    ["1 1/2", 7100],
    ["2", 11_690],
    ["3", 25_740],
  ] as const)("of %s inch runs at 1.5 m/s with %d L/h", (size, flow) => {
    expect(pipeVelocity(as(flow), SCHEDULE_40_BORE_MM[size])).toBeCloseTo(1.5, 2);
    expect(flowAtVelocity(as(1.5), SCHEDULE_40_BORE_MM[size]) / flow).toBeCloseTo(1, 2);
  });

  it("rubs as 64/Re while laminar", () => {
    expect(frictionFactor(1000, 1e-5)).toBeCloseTo(0.064, 9);
  });
  // Colebrook, 1/√f = −2 log(ε/3.7D + 2.51/(Re √f)), iterated here: Swamee–Jain is within 1 % of it.
  it.each([2e4, 5e4, 1e5])("rubs at Re %d within a hundredth of Colebrook", (re) => {
    const rough = 0.0015 / 52.5;
    let root = 0.02 ** -0.5;
    for (let step = 0; step < 50; step++) root = -2 * Math.log10(rough / 3.7 + (2.51 / re) * root);
    expect(Math.abs(frictionFactor(re, rough) * root ** 2 - 1)).toBeLessThan(0.01);
  });
  it("loses nothing standing still, and throws for no bore", () => {
    expect(darcyLoss(as(10), as(0), as(50), 5, as(1e-6))).toBe(0);
    expect(() => pipeVelocity(as(100), as(0))).toThrow(RangeError);
    expect(() => hazenWilliamsLoss(as(10), as(100), as(0))).toThrow(RangeError);
  });
});

describe("fittings", () => {
  // irc-2018-a22: K of a screwed 90° elbow 0.90, of a 45° elbow 0.42; L/D 30 and 14.
  it("are counted by K or by length", () => {
    expect(
      sumOfK([
        { fitting: "90° elbow", count: 2 },
        { fitting: "45° elbow", count: 1 },
      ]),
    ).toBeCloseTo(2.22, 9);
    expect(equivalentLength("90° elbow", as(50))).toBeCloseTo(1.5, 9);
    expect(equivalentLength("exit", as(50))).toBeUndefined();
  });
  it("are counted once by either method", () => {
    const bent: PipeSegment = {
      ...riser,
      fittings: [
        { fitting: "90° elbow", count: 4 },
        { fitting: "exit", count: 1 },
      ],
    };
    const viscosity = seawaterViscosity(as(35), as(25));
    const flow = as<never>(9000);
    // 9000 L/h in 52.5 mm: v = 1.1549 m/s, v²/2g = 0.06800 m. Elbows and exit by K: 4.6 velocity heads.
    expect(lossByDarcy([bent], flow, viscosity) - lossByDarcy([riser], flow, viscosity)).toBeCloseTo(
      0.3128,
      3,
    );
    // By length: 4 × 30 × 0.0525 m = 6.3 m more of pipe, and the exit's one velocity head.
    const expected = (0.3101 * (12 + 6.3)) / 12 + 0.068;
    expect(lossByHazenWilliams([bent], flow)).toBeCloseTo(expected, 3);
  });
});

describe("a run of pipe", () => {
  it("loses about the same by both methods in turbulent flow", () => {
    const { value } = answered(pipeRunLoss([riser], exactly(as(9000))));
    // 12 m of 52.5 mm at 9000 L/h: 0.310 m (Hazen–Williams) and 0.307 m (Darcy–Weisbach), worked apart.
    expect(value.hazenWilliamsM.best).toBeCloseTo(0.31, 3);
    expect(value.lossM.best).toBeCloseTo(0.307, 2);
  });
  it("adds a device's stated loss with the square of the flow", () => {
    const chilled: PipeSegment = {
      ...riser,
      lengthM: as(0),
      devices: [{ name: "the chiller", loss: { headM: as(0.4), atLPerH: as(3000) } }],
    };
    expect(answered(pipeRunLoss([chilled], exactly(as(6000)))).value.lossM.best).toBeCloseTo(1.6, 9);
  });
  it("speaks up for speed, slowness, suction and an unknown device", () => {
    expect(raised(pipeRunLoss([riser], exactly(as(13_000))))).toContain("pipe-too-fast");
    expect(raised(pipeRunLoss([riser], exactly(as(2000))))).toContain("pipe-too-slow");
    expect(raised(pipeRunLoss([riser], exactly(as(8000))))).toEqual([]);
    expect(raised(pipeRunLoss([{ ...riser, side: "suction" }], exactly(as(9000))))).toContain(
      "pipe-too-fast",
    );
    expect(raised(pipeRunLoss([{ ...riser, devices: [{ name: "a filter" }] }], exactly(as(8000))))).toContain(
      "device-loss-not-given",
    );
    expect(raised(pipeRunLoss([riser], exactly(as(200))))).toContain("friction-outside-turbulent");
  });
  it("refuses what no pipe can be", () => {
    expect(refused(pipeRunLoss([{ ...riser, boreMm: as(0) }], exactly(as(1000))))).toBe("unusable-figure");
    expect(refused(pipeRunLoss([{ ...riser, lengthM: as(-1) }], exactly(as(1000))))).toBe("unusable-figure");
    expect(
      refused(pipeRunLoss([{ ...riser, fittings: [{ fitting: "exit", count: -1 }] }], exactly(as(1000)))),
    ).toBe("unusable-figure");
    const broken = { name: "x", loss: { headM: as<never>(1), atLPerH: as<never>(0) } };
    expect(refused(pipeRunLoss([{ ...riser, devices: [broken] }], exactly(as(1000))))).toBe(
      "unusable-figure",
    );
  });
});

describe("a pump on its pipes", () => {
  const inputs: OperatingPointInputs = { curve: three, staticHeadM: exactly(as(1.6)), run: [riser] };

  it("runs where both curves meet", () => {
    const { value } = answered(operatingPoint(inputs));
    const flow = value.flowLPerH.best;
    const viscosity = seawaterViscosity(as(35), as(25));
    expect(pumpHead(three, flow)).toBeCloseTo(1.6 + lossByDarcy([riser], flow, viscosity), 6);
    expect(value.flowLPerH.low).toBeLessThan(flow);
    expect(value.flowLPerH.high).toBeGreaterThan(flow);
  });
  it("gives both curves for a drawing, falling and rising", () => {
    const { curves } = answered(operatingPoint(inputs)).value;
    expect(curves[0]?.flowLPerH).toBe(0);
    expect(curves.at(-1)?.flowLPerH).toBe(12_000);
    for (const [index, at] of curves.entries()) {
      const before = curves[index - 1];
      if (before === undefined) continue;
      expect(at.pumpM).toBeLessThanOrEqual(before.pumpM);
      expect(at.systemM).toBeGreaterThan(before.systemM);
      expect(at.systemHazenWilliamsM).toBeGreaterThan(before.systemHazenWilliamsM);
    }
  });
  it("is less sure of a curve known by its ends only", () => {
    const curve: PumpCurve = { kind: "two figures", shutOffHeadM: as(5), maxFlowLPerH: as(14_000) };
    const answer = answered(operatingPoint({ ...inputs, curve }));
    expect(raised(answer)).toContain("pump-curve-from-two-figures");
    expect(answer.driver?.input).toBe("pump curve");
  });
  it("says when it cannot lift, when the curve ends too soon, and when the curve makes no sense", () => {
    expect(refused(operatingPoint({ ...inputs, staticHeadM: exactly(as(5)) }))).toBe("pump-cannot-lift");
    expect(refused(operatingPoint({ ...inputs, staticHeadM: exactly(as(0)) }))).toBe("beyond-pump-curve");
    const points = three.points;
    const curve = (changed: PumpCurve) => refused(operatingPoint({ ...inputs, curve: changed }));
    expect(curve({ kind: "points", points: points.slice(0, 2) })).toBe("pump-curve-unreadable");
    expect(curve({ kind: "points", points: [...points].reverse() })).toBe("pump-curve-unreadable");
    expect(curve({ kind: "points", points: [...points, { flowLPerH: as(13_000), headM: as(2) }] })).toBe(
      "pump-curve-unreadable",
    );
    expect(curve({ kind: "points", points: [...points, { flowLPerH: as(Number.NaN), headM: as(0) }] })).toBe(
      "unusable-figure",
    );
    expect(curve({ kind: "two figures", shutOffHeadM: as(0), maxFlowLPerH: as(100) })).toBe(
      "unusable-figure",
    );
  });
  it("keeps the head of the last point beyond it, and of the first before it", () => {
    expect(pumpHead(three, as(20_000))).toBe(1);
    const late: PumpCurve = { kind: "points", points: three.points.slice(1) };
    expect(pumpHead(late, as(10))).toBe(4);
  });
});

describe("branches at a node", () => {
  const arm = (name: string, boreMm: number, staticHeadM: number) => ({
    name,
    staticHeadM: as<never>(staticHeadM),
    run: [{ ...riser, name, boreMm: as<never>(boreMm), lengthM: as<never>(2) }],
  });
  const inputs: BranchInputs = {
    curve: { kind: "two figures", shutOffHeadM: as(5), maxFlowLPerH: as(14_000) },
    common: [riser],
    branches: [arm("display", 40.9, 1.6), arm("reactor", 20.9, 0.2)],
  };

  it("share one head, and add up to what the pump delivers there", () => {
    const { value } = answered(branchFlows(inputs));
    const viscosity = seawaterViscosity(as(35), as(25));
    const sum = value.branches.reduce((total, { flowLPerH }) => total + flowLPerH.best, 0);
    expect(sum).toBeCloseTo(value.totalLPerH.best, 6);
    for (const [index, { flowLPerH }] of value.branches.entries()) {
      const branch = inputs.branches[index];
      if (branch === undefined) throw new Error("a flow without its branch");
      expect(branch.staticHeadM + lossByDarcy(branch.run, flowLPerH.best, viscosity)).toBeCloseTo(
        value.nodeHeadM.best,
        4,
      );
    }
    expect(
      pumpHead(inputs.curve, value.totalLPerH.best) - lossByDarcy([riser], value.totalLPerH.best, viscosity),
    ).toBeCloseTo(value.nodeHeadM.best, 4);
  });
  it("of one kind share evenly", () => {
    const { branches } = answered(
      branchFlows({ ...inputs, branches: [arm("left", 26.6, 1), arm("right", 26.6, 1)] }),
    ).value;
    expect(branches[0]?.flowLPerH.best).toBeCloseTo(branches[1]?.flowLPerH.best ?? 0, 6);
  });
  it("leave dry the one that ends above the head there is", () => {
    const { branches } = answered(
      branchFlows({ ...inputs, branches: [arm("low", 52.5, 0), arm("high", 26.6, 4.99)] }),
    ).value;
    expect(branches[1]?.flowLPerH.best).toBe(0);
  });
  it("refuse none, two of one name, and a pump that reaches no branch", () => {
    expect(refused(branchFlows({ ...inputs, branches: [] }))).toBe("nothing-named");
    expect(refused(branchFlows({ ...inputs, branches: [arm("a", 20, 1), arm("a", 20, 1)] }))).toBe(
      "named-twice",
    );
    expect(refused(branchFlows({ ...inputs, branches: [arm("a", 20, 6)] }))).toBe("pump-cannot-lift");
    expect(refused(branchFlows({ ...inputs, curve: three, common: [], branches: [arm("a", 100, 0)] }))).toBe(
      "beyond-pump-curve",
    );
  });
});
