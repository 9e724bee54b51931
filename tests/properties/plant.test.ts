import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { batteryRuntime } from "../../src/core/plant/battery-runtime.ts";
import { blockedDrain } from "../../src/core/plant/blocked-drain.ts";
import { displacement } from "../../src/core/plant/displacement.ts";
import {
  fullSiphonFlow,
  openStandpipeFlow,
  openStandpipeHead,
  wallFilmFlow,
} from "../../src/core/plant/drain-flow.ts";
import { drainPath } from "../../src/core/plant/drain-path.ts";
import { electricLoad } from "../../src/core/plant/electric-load.ts";
import { dewPoint, shahRate } from "../../src/core/plant/evaporation.ts";
import { dailyEvaporation } from "../../src/core/plant/evaporation-per-day.ts";
import { floorLoad } from "../../src/core/plant/floor-load.ts";
import { driftingTemperature } from "../../src/core/plant/heat.ts";
import { heatBalance } from "../../src/core/plant/heat-balance.ts";
import { largestSpill } from "../../src/core/plant/largest-spill.ts";
import { closedLoopTime, flushingTime, leftInTankRow } from "../../src/core/plant/mixing.ts";
import { mixingTime } from "../../src/core/plant/mixing-time.ts";
import { operatingPoint } from "../../src/core/plant/operating-point.ts";
import { hoursUntilOxygen } from "../../src/core/plant/outage-oxygen.ts";
import { overflowHead } from "../../src/core/plant/overflow-head.ts";
import { branchFlows } from "../../src/core/plant/parallel-branches.ts";
import { darcyLoss, hazenWilliamsLoss, seawaterViscosity } from "../../src/core/plant/pipe-loss.ts";
import { type PipeSegment, pipeRunLoss } from "../../src/core/plant/pipe-run.ts";
import { powerCut } from "../../src/core/plant/power-cut.ts";
import { type PumpCurve, pumpHead } from "../../src/core/plant/pump-curve.ts";
import { type PumpOffInputs, pumpOffFlood } from "../../src/core/plant/pump-off-flood.ts";
import { purifiedWater } from "../../src/core/plant/purified-water.ts";
import { residence } from "../../src/core/plant/residence.ts";
import { restart } from "../../src/core/plant/restart.ts";
import type { RowContainer } from "../../src/core/plant/row.ts";
import { siphonDrain } from "../../src/core/plant/siphon-drain.ts";
import { skimmate } from "../../src/core/plant/skimmate.ts";
import { temperatureChange } from "../../src/core/plant/temperature-change.ts";
import { topOffFailure } from "../../src/core/plant/top-off-failure.ts";
import { uvAtFlow, uvDose } from "../../src/core/plant/uv-dose.ts";
import { wallPressure } from "../../src/core/plant/wall-pressure.ts";
import { francisHead, toothedHead } from "../../src/core/plant/weir.ts";
import { type Estimate, exactly } from "../../src/core/quantity/estimate.ts";
import { as } from "../../src/core/quantity/units.ts";
import type { Answer, NoAnswer } from "../../src/core/result.ts";
import type { Shape } from "../../src/core/tank/container.ts";
import {
  shapeAreaAtLevel,
  shapeFault,
  shapeHeightCm,
  shapeVolume,
} from "../../src/core/tank/shape-volume.ts";
import { sayCaution, sayRefusal } from "../../src/wording/index.ts";
import { answered } from "../support/answers.ts";

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const exact = <Q extends number>(value: number) => exactly(value as Q);
const water = seawaterViscosity(as(35), as(25));

const cm = real(1, 300).map((value) => as<never>(value));
const shapes: fc.Arbitrary<Shape> = fc
  .oneof(
    fc.record({ kind: fc.constant("box" as const), lengthCm: cm, widthCm: cm, heightCm: cm }),
    fc.record({ kind: fc.constant("upright cylinder" as const), diameterCm: cm, heightCm: cm }),
    fc.record({
      kind: fc.constant("bow front" as const),
      lengthCm: cm,
      endWidthCm: cm,
      bowDepthCm: cm,
      heightCm: cm,
    }),
    fc.record({ kind: fc.constant("quarter round" as const), radiusCm: cm, heightCm: cm }),
    fc.record({ kind: fc.constant("hexagon" as const), acrossFlatsCm: cm, heightCm: cm }),
    fc.record({
      kind: fc.constant("L-shape" as const),
      lengthCm: cm,
      widthCm: cm,
      cutLengthCm: cm,
      cutWidthCm: cm,
      heightCm: cm,
    }),
    fc.record({ kind: fc.constant("horizontal drum" as const), diameterCm: cm, lengthCm: cm }),
    fc.record({
      kind: fc.constant("tapered tub" as const),
      bottomLengthCm: cm,
      bottomWidthCm: cm,
      topLengthCm: cm,
      topWidthCm: cm,
      heightCm: cm,
    }),
  )
  .filter((shape) => shapeFault(shape) === undefined);

describe("the water in a shape", () => {
  it("never falls as the level rises, and rises by the surface it has", () => {
    fc.assert(
      fc.property(shapes, real(0.05, 0.95), (shape, share) => {
        const rim = shapeHeightCm(shape);
        const level = share * rim;
        const step = rim * 1e-4;
        const below = shapeVolume(shape, as(level - step));
        const above = shapeVolume(shape, as(level + step));
        expect(above).toBeGreaterThan(below);
        // dV/dh = A: litres per centimetre are ten square decimetres.
        const slope = (above - below) / (2 * step);
        const area = shapeAreaAtLevel(shape, as(level)) * 10;
        expect(Math.abs(slope / area - 1)).toBeLessThan(1e-3);
      }),
    );
  });
  it("is no more than the box around it holds", () => {
    fc.assert(
      fc.property(shapes, (shape) => {
        const rim = shapeHeightCm(shape);
        const around =
          shape.kind === "tapered tub"
            ? Math.max(shape.bottomLengthCm, shape.topLengthCm) *
              Math.max(shape.bottomWidthCm, shape.topWidthCm)
            : shapeAreaAtLevel(shape, as(rim / 2)) * 1e4;
        expect(shapeVolume(shape, rim)).toBeLessThanOrEqual(((around * rim) / 1000) * (1 + 1e-12));
      }),
    );
  });
});

describe("water over an edge", () => {
  it("stands higher the more there is", () => {
    fc.assert(
      fc.property(real(0.5, 3), real(10, 20_000), real(1.01, 1.5), (length, flow, more) => {
        expect(francisHead(as(length), as(flow * more), 2)).toBeGreaterThan(
          francisHead(as(length), as(flow), 2),
        );
        expect(toothedHead(40, as(6), as(flow * more))).toBeGreaterThan(toothedHead(40, as(6), as(flow)));
      }),
    );
  });
  it("drains through an open pipe the flow whose head it has", () => {
    fc.assert(
      fc.property(real(15, 110), real(10, 30_000), (diameter, flow) => {
        const head = openStandpipeHead(as(diameter), as(flow));
        expect(openStandpipeFlow(as(diameter), head) / flow).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe("water in pipes", () => {
  it("loses more head the faster it runs, through every kind of flow", () => {
    fc.assert(
      fc.property(real(10, 30_000), real(1.001, 2), real(15, 110), (flow, more, bore) => {
        const loss = (q: number) => darcyLoss(as(10), as(q), as(bore), 3, water);
        expect(loss(flow * more)).toBeGreaterThan(loss(flow));
        const hazen = (q: number) => hazenWilliamsLoss(as(10), as(q), as(bore));
        expect(hazen(flow * more)).toBeGreaterThan(hazen(flow));
      }),
    );
  });
  it("runs faster through a siphon with more drop, more bore, less length", () => {
    fc.assert(
      fc.property(real(0.1, 3), real(0, 10), real(15, 110), real(1.05, 2), (drop, length, bore, more) => {
        const flow = (d: number, l: number, b: number) => fullSiphonFlow(as(d), as(l), as(b), 3, water);
        const base = flow(drop, length, bore);
        expect(flow(drop * more, length, bore)).toBeGreaterThan(base);
        expect(flow(drop, length, bore * more)).toBeGreaterThan(base);
        expect(flow(drop, length + 1, bore)).toBeLessThan(base);
        // Never faster than free fall.
        const area = (Math.PI / 4) * (bore / 1000) ** 2;
        expect(base).toBeLessThan(area * Math.sqrt(2 * 9.80665 * drop) * 3.6e6);
      }),
    );
  });
  it("carries less as a film on the wall than as a siphon of a usual drop", () => {
    fc.assert(
      fc.property(real(20, 110), real(0.4, 2), (bore, drop) => {
        expect(wallFilmFlow(as(bore))).toBeLessThan(
          fullSiphonFlow(as(drop), as(drop + 1), as(bore), 3, water),
        );
      }),
    );
  });
});

const curves: fc.Arbitrary<PumpCurve> = fc
  .tuple(real(2, 8), real(2000, 15_000), real(0.2, 0.9))
  .chain(([head, flow, bend]) =>
    fc.constantFrom<PumpCurve>(
      { kind: "two figures", shutOffHeadM: as(head), maxFlowLPerH: as(flow) },
      {
        kind: "points",
        points: [
          { flowLPerH: as(0), headM: as(head) },
          { flowLPerH: as(flow / 2), headM: as(head * bend) },
          { flowLPerH: as(flow), headM: as(0) },
        ],
      },
    ),
  );
const segment = (boreMm: number, lengthM: number): PipeSegment => ({
  name: "the pipe",
  side: "pressure",
  boreMm: as(boreMm),
  lengthM: as(lengthM),
  fittings: [{ fitting: "90° elbow", count: 2 }],
  devices: [],
});

describe("a pump", () => {
  it("delivers less the higher it lifts, and at most what its curve ends with", () => {
    fc.assert(
      fc.property(curves, real(15, 60), real(0.05, 0.9), real(1.01, 1.1), (curve, bore, share, more) => {
        const shutOff = pumpHead(curve, as(0));
        const flowAt = (staticHead: number) =>
          answered(operatingPoint({ curve, staticHeadM: exact(staticHead), run: [segment(bore, 5)] })).value
            .flowLPerH;
        const low = flowAt(shutOff * share);
        const high = flowAt(shutOff * share * more);
        expect(high.best).toBeLessThan(low.best);
        expect(low.low).toBeLessThanOrEqual(low.best);
        expect(low.high).toBeGreaterThanOrEqual(low.best);
      }),
      { numRuns: 40 },
    );
  });
  it("loses no water at a node, whatever the branches", () => {
    const branches = fc.array(fc.tuple(real(10, 60), real(0, 2)), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(curves, branches, (curve, arms) => {
        const result = branchFlows({
          curve,
          common: [segment(40, 3)],
          branches: arms.map(([bore, height], index) => ({
            name: `arm ${index}`,
            staticHeadM: as(height),
            run: [segment(bore, 2)],
          })),
        });
        if (result.kind === "no-answer") return;
        const { totalLPerH, branches: flows } = result.value;
        const sum = flows.reduce((total, { flowLPerH }) => total + flowLPerH.best, 0);
        expect(sum).toBeCloseTo(totalLPerH.best, 6);
        expect(flows.every(({ flowLPerH }) => flowLPerH.best >= 0)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });
});

const rowOf = (areas: readonly (readonly [number, number])[]): RowContainer[] =>
  areas.map(([area, room], index) => ({
    name: `box ${index}`,
    areaM2: exact(area),
    freeboardMm: exact(room),
    onward: index === areas.length - 1 ? "holds the pump" : "shares level",
  }));
const rows = fc.array(fc.tuple(real(0.05, 2), real(5, 400)), { minLength: 1, maxLength: 5 });

describe("a pump that stops", () => {
  const flooding = (row: RowContainer[], aboveMm: number, boxL: number): PumpOffInputs => ({
    display: { name: "display", areaM2: exact(2), aboveCrestMm: exact(aboveMm), returns: [] },
    overflowBoxL: exact(boxL),
    pipes: [],
    row,
  });

  it("moves water, and neither makes nor loses any", () => {
    fc.assert(
      fc.property(rows, real(0, 60), real(0, 40), (areas, above, box) => {
        const { fallback, riseMm, freeL, verdict } = answered(
          pumpOffFlood(flooding(rowOf(areas), above, box)),
        ).value;
        const surface = areas.reduce((sum, [area]) => sum + area, 0);
        const parts =
          fallback.displayL.best + fallback.overflowBoxL.best + fallback.pipesL.best + fallback.cascadeL.best;
        expect(parts).toBeCloseTo(fallback.totalL.best, 9);
        expect(riseMm.best * surface).toBeCloseTo(fallback.totalL.best, 6);
        expect(verdict.leftMm.best * surface).toBeCloseTo(freeL.best - fallback.totalL.best, 6);
        expect(verdict.outcome === "floods").toBe(fallback.totalL.best > freeL.best);
      }),
    );
  });
  it("does not care in which order level-sharing containers stand, or that one is two halves", () => {
    fc.assert(
      fc.property(rows, real(0, 60), (areas, above) => {
        const straight = answered(pumpOffFlood(flooding(rowOf(areas), above, 5))).value;
        const turned = answered(pumpOffFlood(flooding(rowOf([...areas].reverse()), above, 5))).value;
        const halved = areas.flatMap(([area, room]) => [
          [area / 2, room] as const,
          [area / 2, room] as const,
        ]);
        const split = answered(pumpOffFlood(flooding(rowOf(halved), above, 5))).value;
        expect(turned.verdict.leftMm.best).toBeCloseTo(straight.verdict.leftMm.best, 6);
        expect(split.verdict.leftMm.best).toBeCloseTo(straight.verdict.leftMm.best, 6);
      }),
    );
  });
  it("never leaves more room when more falls back", () => {
    fc.assert(
      fc.property(rows, real(0, 60), real(0.1, 60), (areas, above, more) => {
        const left = (mm: number) =>
          answered(pumpOffFlood(flooding(rowOf(areas), mm, 5))).value.verdict.leftMm.best;
        expect(left(above + more)).toBeLessThan(left(above));
      }),
    );
  });
  it("falls at the allowed drop exactly at its margin", () => {
    fc.assert(
      fc.property(rows, (areas) => {
        const start = answered(pumpOffFlood(flooding(rowOf(areas), 10, 1))).value;
        const allowed = start.allowedDropMm.best;
        if (allowed === 0) return;
        const { fallback, freeL } = answered(pumpOffFlood(flooding(rowOf(areas), allowed, 1))).value;
        expect(fallback.totalL.best * 1.25).toBeCloseTo(freeL.best, 6);
      }),
    );
  });
  it("with the drain blocked puts all it can reach into display and floor", () => {
    fc.assert(
      fc.property(real(0, 500), real(0.1, 5), real(0, 200), (pumpable, area, room) => {
        const { spilledL, riseMm } = answered(
          blockedDrain({ pumpableL: exact(pumpable), areaM2: exact(area), freeboardMm: exact(room) }),
        ).value;
        expect(spilledL.best + Math.min(room, riseMm.best) * area).toBeCloseTo(pumpable, 6);
      }),
    );
  });
});

describe("heat and moisture", () => {
  const humidities = real(0.1, 0.95).map((share) => as<never>(share));
  it("evaporates more from warmer water and into drier air, and never less than nothing", () => {
    fc.assert(
      fc.property(real(15, 32), real(10, 35), humidities, (waterC, roomC, humidity) => {
        const rate = shahRate(as(waterC), as(roomC), humidity);
        expect(rate).toBeGreaterThanOrEqual(0);
        expect(shahRate(as(waterC + 1), as(roomC), humidity)).toBeGreaterThanOrEqual(rate);
        expect(shahRate(as(waterC), as(roomC), as(humidity - 0.05))).toBeGreaterThanOrEqual(rate);
      }),
    );
  });
  it("has its dew point at or below the room's temperature", () => {
    fc.assert(
      fc.property(real(-5, 40), humidities, (roomC, humidity) => {
        expect(dewPoint(as(roomC), humidity)).toBeLessThanOrEqual(roomC);
      }),
    );
  });
  it("drifts toward the room and never past it", () => {
    fc.assert(
      fc.property(
        real(50, 5000),
        real(5, 200),
        real(20, 30),
        real(0, 40),
        real(0, 500),
        (litres, ua, from, room, h) => {
          const now = driftingTemperature(as(litres), as(ua), as(from), as(room), as(h));
          expect(now).toBeGreaterThanOrEqual(Math.min(from, room) - 1e-9);
          expect(now).toBeLessThanOrEqual(Math.max(from, room) + 1e-9);
        },
      ),
    );
  });
});

describe("oxygen running out", () => {
  const tank = fc.record({
    volume: real(50, 5000),
    demand: real(50, 5000),
    exchange: real(0, 500),
    start: real(4.1, 6.7),
  });
  it("takes longer with more water, less demand, more exchange, and never less than no time", () => {
    fc.assert(
      fc.property(tank, real(1.01, 2), ({ volume, demand, exchange, start }, more) => {
        const hours = (v: number, d: number, e: number) =>
          hoursUntilOxygen(as(v), as(start), as(4), as(d), e, as(6.8));
        const base = hours(volume, demand, exchange);
        expect(base).toBeGreaterThan(0);
        expect(hours(volume * more, demand, exchange)).toBeGreaterThanOrEqual(base);
        expect(hours(volume, demand / more, exchange)).toBeGreaterThanOrEqual(base);
        expect(hours(volume, demand, exchange * more)).toBeGreaterThanOrEqual(base * (1 - 1e-9));
      }),
    );
  });
  it("never lasts less than water without any exchange, starting below saturation", () => {
    fc.assert(
      fc.property(tank, ({ volume, demand, exchange, start }) => {
        const closed = (volume * (start - 4)) / demand;
        const hours = hoursUntilOxygen(as(volume), as(start), as(4), as(demand), exchange, as(6.8));
        expect(hours).toBeGreaterThanOrEqual(closed * (1 - 1e-9));
      }),
    );
  });
});

describe("mixing and treating", () => {
  it("mixes a closed loop no slower than flushing it would take", () => {
    fc.assert(
      fc.property(real(1, 5000), real(1, 5000), real(10, 20_000), (v1, v2, flow) => {
        expect(closedLoopTime(as(v1), as(v2), as(flow), as(0.95))).toBeLessThanOrEqual(
          flushingTime(as(v1 + v2), as(flow), as(0.95)),
        );
      }),
    );
  });
  it("washes out less of a row the longer, never below nothing", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), real(0.3, 5), real(0.01, 2), (n, theta, more) => {
        const left = leftInTankRow(n, theta);
        expect(left).toBeLessThanOrEqual(1 + 1e-12);
        expect(leftInTankRow(n, theta + more)).toBeLessThan(left);
        expect(leftInTankRow(n, theta + more)).toBeGreaterThan(0);
      }),
    );
  });
  it("gives half the dose at twice the flow", () => {
    fc.assert(
      fc.property(real(0.1, 100), real(0.01, 20), real(1, 20_000), (intensity, litres, flow) => {
        const dose = uvDose(as(intensity), as(litres), as(flow));
        expect(uvDose(as(intensity), as(litres), as(flow * 2)) * 2).toBeCloseTo(dose, 6);
      }),
    );
  });
});

/** A figure as members type it: mostly one that fits, with a range of its own; now and then anything at all. */
const typed = (min: number, max: number): fc.Arbitrary<Estimate<never>> =>
  fc.oneof(
    {
      weight: 30,
      arbitrary: fc.tuple(...[0, 0, 0].map(() => fc.integer({ min: 0, max: 1000 }))).map((parts) => {
        const [low = 0, best = 0, high = 0] = parts
          .sort((a, b) => a - b)
          .map((part) => min + (part / 1000) * (max - min));
        return { low, best, high } as Estimate<never>;
      }),
    },
    {
      weight: 1,
      arbitrary: fc
        .oneof(fc.double(), fc.constantFrom(0, -1, 1e-9, 1e12, Number.NaN, Number.POSITIVE_INFINITY))
        .map(
          (best) =>
            ({ best, low: best - Math.abs(best) / 2, high: best + Math.abs(best) }) as Estimate<never>,
        ),
    },
  );
const plain = (min: number, max: number) => typed(min, max).map(({ best }) => best as never);

type Ask = () => Answer<unknown> | NoAnswer;
/** Draws the inputs of a question, then asks it. */
const asking = <T>(inputs: { [K in keyof T]: fc.Arbitrary<T[K]> }, ask: (drawn: T) => ReturnType<Ask>) =>
  fc.record(inputs).map(
    (drawn): Ask =>
      () =>
        ask(drawn as T),
  );

const bore = typed(15, 110);
const litres = typed(1, 3000);
const flow = typed(500, 8000);
const surface = typed(0.05, 3);
const mm = typed(1, 200);

/** Every question of the room, asked with whatever comes. */
const questions: Readonly<Record<string, fc.Arbitrary<Ask>>> = {
  displacement: asking({ mass: typed(1, 300), areaM2: surface, depthMm: mm }, ({ mass, areaM2, depthMm }) =>
    displacement({ rock: { mass, weighed: "wet and drained" }, sand: { areaM2, depthMm } }),
  ),
  "overflowHead, plain": asking({ flow, lengthM: typed(0.2, 2) }, (v) =>
    overflowHead(v.flow, { kind: "plain", lengthM: v.lengthM, endContractions: 2 }),
  ),
  "overflowHead, toothed": asking(
    { flow, slots: plain(5, 100), slotWidthMm: typed(3, 12), toothHeightMm: mm },
    (v) =>
      overflowHead(v.flow, {
        kind: "toothed",
        slots: v.slots,
        slotWidthMm: v.slotWidthMm,
        toothHeightMm: v.toothHeightMm,
      }),
  ),
  drainPath: asking(
    {
      flow,
      dropM: typed(0.2, 2),
      lengthM: typed(0, 5),
      bore,
      headMm: mm,
      slope: typed(0.005, 0.1),
      count: plain(0, 6),
    },
    (v) =>
      drainPath(
        [
          {
            kind: "full siphon",
            name: "siphon",
            dropM: v.dropM,
            lengthM: v.lengthM,
            boreMm: v.bore,
            fittings: [{ fitting: "90° elbow", count: v.count }],
          },
          { kind: "open rim", name: "rim", diameterMm: v.bore, headMm: v.headMm },
          { kind: "vertical pipe", name: "fall", boreMm: v.bore },
          { kind: "sloped pipe", name: "slope", boreMm: v.bore, slope: v.slope },
        ],
        v.flow,
      ),
  ),
  siphonDrain: asking({ flow, dropM: typed(0.2, 2), lengthM: typed(0, 5), bore, headMm: mm, surface }, (v) =>
    siphonDrain({
      flow: v.flow,
      siphon: {
        kind: "full siphon",
        name: "siphon",
        dropM: v.dropM,
        lengthM: v.lengthM,
        boreMm: v.bore,
        fittings: [],
      },
      standby: { name: "standby", boreMm: v.bore, headMm: v.headMm },
      surfaceM2: v.surface,
      headAllowedMm: v.headMm,
    }),
  ),
  pipeRunLoss: asking(
    { flow, boreMm: plain(15, 110), lengthM: plain(0, 20), headM: plain(0, 2), atLPerH: plain(500, 9000) },
    ({ flow, boreMm, lengthM, headM, atLPerH }) =>
      pipeRunLoss(
        [{ ...segment(boreMm, lengthM), devices: [{ name: "device", loss: { headM, atLPerH } }] }],
        flow,
      ),
  ),
  operatingPoint: asking(
    {
      staticHeadM: typed(0, 3),
      shutOffHeadM: plain(3, 8),
      maxFlowLPerH: plain(1000, 20_000),
      boreMm: plain(15, 110),
      lengthM: plain(0, 20),
    },
    ({ staticHeadM, shutOffHeadM, maxFlowLPerH, boreMm, lengthM }) =>
      operatingPoint({
        curve: { kind: "two figures", shutOffHeadM, maxFlowLPerH },
        staticHeadM,
        run: [segment(boreMm, lengthM)],
      }),
  ),
  branchFlows: asking(
    {
      shutOffHeadM: plain(3, 8),
      maxFlowLPerH: plain(1000, 20_000),
      boreMm: plain(15, 110),
      first: plain(0, 2),
      second: plain(0, 4),
    },
    ({ shutOffHeadM, maxFlowLPerH, boreMm, first, second }) =>
      branchFlows({
        curve: { kind: "two figures", shutOffHeadM, maxFlowLPerH },
        common: [segment(boreMm, 1)],
        branches: [
          { name: "first", staticHeadM: first, run: [segment(boreMm, 2)] },
          { name: "second", staticHeadM: second, run: [segment(20, 2)] },
        ],
      }),
  ),
  pumpOffFlood: asking(
    {
      surface,
      crest: mm,
      nozzle: mm,
      hole: mm,
      box: litres,
      pipe: plain(15, 110),
      room: mm,
      step: plain(0, 30),
    },
    (v) =>
      pumpOffFlood({
        display: {
          name: "display",
          areaM2: v.surface,
          aboveCrestMm: v.crest,
          returns: [
            {
              name: "nozzle",
              belowLevelMm: v.nozzle,
              siphonBreak: { belowLevelMm: v.hole, isInspected: true },
            },
          ],
        },
        overflowBoxL: v.box,
        pipes: [{ name: "pipe", boreMm: v.pipe, lengthM: v.pipe }],
        row: [
          {
            name: "drum",
            areaM2: v.surface,
            freeboardMm: v.room,
            onward: "overflows",
            aboveOutletMm: v.crest,
          },
          { name: "box", areaM2: v.surface, freeboardMm: v.room, onward: "shares level" },
          {
            name: "last",
            areaM2: v.surface,
            freeboardMm: v.room,
            onward: "holds the pump",
            belowFirstMm: v.step,
          },
        ],
      }),
  ),
  blockedDrain: asking({ pumpableL: litres, areaM2: surface, freeboardMm: mm, flow }, blockedDrain),
  largestSpill: asking({ areaM2: surface, levelOverHoleMm: mm, fallbackL: litres, pumpableL: litres }, (v) =>
    largestSpill({
      containers: [{ name: "box", areaM2: v.areaM2, levelOverHoleMm: v.levelOverHoleMm, isDisplay: false }],
      fallbackL: v.fallbackL,
      pumpableL: v.pumpableL,
    }),
  ),
  restart: asking({ refillL: litres, chamberL: litres, flow }, restart),
  topOffFailure: asking(
    {
      evaporationKgPerDay: typed(1, 30),
      systemL: typed(500, 3000),
      salinity: typed(0, 40),
      usableChamberL: typed(0, 100),
      freeL: typed(0, 200),
      fallbackL: typed(0, 200),
      litres: typed(1, 200),
      fillLPerH: typed(5, 500),
      isMains: fc.boolean(),
    },
    ({ litres, fillLPerH, isMains, ...rest }) =>
      topOffFailure({
        ...rest,
        container: "the box",
        source: isMains ? { kind: "mains", fillLPerH } : { kind: "reservoir", litres, fillLPerH },
      }),
  ),
  skimmate: asking(
    {
      rate: typed(0.1, 5),
      cupL: typed(0.5, 10),
      inCupL: typed(0, 3),
      systemL: litres,
      salinity: typed(0, 40),
    },
    skimmate,
  ),
  dailyEvaporation: asking(
    {
      openAreaM2: surface,
      waterC: typed(15, 32),
      roomC: typed(0, 40),
      humidity: typed(0.1, 1),
      salinity: typed(0, 40),
      isDisturbed: fc.boolean(),
    },
    dailyEvaporation,
  ),
  heatBalance: asking(
    {
      openAreaM2: surface,
      waterC: typed(15, 32),
      roomC: typed(0, 40),
      humidity: typed(0.1, 1),
      equipmentW: typed(0, 1500),
      isDisturbed: fc.boolean(),
      areaM2: plain(0, 10),
      thicknessMm: plain(1, 40),
    },
    ({ areaM2, thicknessMm, ...rest }) =>
      heatBalance({ ...rest, walls: [{ areaM2, material: "glass", thicknessMm }] }),
  ),
  temperatureChange: asking(
    { volumeL: litres, kelvin: typed(0.5, 15), powerW: typed(300, 3000), againstW: typed(0, 299) },
    temperatureChange,
  ),
  powerCut: asking(
    {
      displayL: litres,
      surfaceM2: surface,
      waterC: typed(15, 32),
      salinity: typed(0, 40),
      oxygenMgPerL: typed(3, 8),
      massG: typed(1, 900),
      airLPerMin: typed(0, 30),
      depthCm: typed(5, 100),
      roomC: typed(-5, 40),
    },
    ({ massG, airLPerMin, depthCm, ...rest }) =>
      powerCut({
        ...rest,
        demand: { fish: [{ name: "fish", count: 3, massG }] },
        airPump: { airLPerMin, depthCm },
        hasGenerator: true,
      }),
  ),
  batteryRuntime: asking({ ampHours: typed(5, 300), load: typed(2, 500), volts: plain(5, 48) }, (v) =>
    batteryRuntime({ ...v, kind: "lead-acid", through: "inverter" }),
  ),
  electricLoad: asking(
    {
      watts: typed(5, 2500),
      hoursPerDay: typed(0, 24),
      pricePerKWh: typed(0.05, 0.6),
      volts: plain(100, 240),
      ratingA: plain(5, 32),
      powerFactor: plain(0.5, 1),
    },
    ({ watts, hoursPerDay, powerFactor, ratingA, volts, pricePerKWh }) =>
      electricLoad({
        devices: [
          {
            name: "pump",
            watts,
            hoursPerDay,
            powerFactor,
            isMotor: true,
            isLifeSupport: true,
            circuit: "left",
          },
          { name: "light", watts, hoursPerDay, isMotor: false, isLifeSupport: true, circuit: "left" },
        ],
        circuits: [{ name: "left", ratingA, hasGroundFaultProtection: false }],
        volts,
        pricePerKWh,
      }),
  ),
  floorLoad: asking(
    {
      waterL: litres,
      density: typed(995, 1030),
      massKg: typed(0, 300),
      footprintM2: surface,
      areaCm2: typed(10, 200),
      count: plain(1, 12),
    },
    ({ massKg, areaCm2, count, ...rest }) =>
      floorLoad({ ...rest, parts: [{ name: "rock", massKg }], feet: { count, areaCm2 } }),
  ),
  wallPressure: asking(
    { depthM: typed(0.1, 2), wallLengthM: typed(0.2, 4), density: typed(995, 1030) },
    wallPressure,
  ),
  purifiedWater: asking(
    {
      litres,
      ratedLPerDay: typed(50, 1000),
      ratedPressureKPa: plain(300, 450),
      feedPressureKPa: typed(200, 600),
      feedC: typed(3, 35),
      dissolvedMgPerL: typed(0, 1500),
      rejectRatio: typed(0, 10),
    },
    purifiedWater,
  ),
  uvAtFlow: asking(
    {
      lampW: typed(5, 100),
      lampCm: typed(10, 100),
      sleeveDiameterCm: typed(1, 3),
      chamberDiameterCm: typed(4, 12),
      transmittance: typed(0.3, 0.98),
      contactL: typed(0.2, 10),
      flow,
    },
    ({ contactL, flow, ...chamber }) =>
      uvAtFlow({ light: { kind: "chamber", ...chamber }, contactL, flow, target: "Giardia, 3 log" }),
  ),
  mixingTime: asking(
    { displayL: litres, restL: litres, flow, volumeL: litres, own: typed(50, 2000) },
    ({ displayL, restL, flow, volumeL, own }) =>
      mixingTime({ displayL, restL, flow, sideTanks: [{ name: "side", volumeL, flow: own }] }),
  ),
  residence: asking({ volumeL: litres, sectionCm2: typed(50, 5000), flow }, ({ volumeL, sectionCm2, flow }) =>
    residence([{ name: "box", volumeL, sectionCm2 }], flow),
  ),
};

describe("anything a member could type", () => {
  it.each(Object.keys(questions))("%s answers or refuses, in words, with ranges in order", (name) => {
    const asked = questions[name];
    if (asked === undefined) throw new Error(`no question ${name}`);
    let answers = 0;
    fc.assert(
      fc.property(asked, (ask) => {
        const result = ask();
        if (result.kind === "answer") answers++;
        const said = result.cautions.map(sayCaution);
        if (result.kind === "no-answer") said.push(sayRefusal(result.reason));
        else {
          expect(disorder(result.value)).toEqual([]);
          // An answer lists the source of every constant it shows.
          expect(result.sources).toEqual(
            expect.arrayContaining(result.constants.map(({ source }) => source)),
          );
        }
        for (const sentence of said) {
          expect(sentence).not.toMatch(/NaN|undefined|Infinity|\[object/);
          expect(sentence.length).toBeGreaterThan(20);
        }
      }),
      { numRuns: 150 },
    );
    // Refusing everything would prove nothing.
    expect(answers).toBeGreaterThan(40);
  });
});

/** The estimates within a value that are not numbers in order. */
function disorder(value: unknown): unknown[] {
  if (typeof value !== "object" || value === null) return [];
  if ("best" in value && "low" in value && "high" in value) {
    const { best, low, high } = value as Estimate;
    const isOrdered = Number.isFinite(low) && Number.isFinite(high) && low <= best && best <= high;
    return isOrdered ? [] : [value];
  }
  return Object.values(value).flatMap(disorder);
}
