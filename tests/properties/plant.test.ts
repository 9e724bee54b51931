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
  shapeFootprintM2,
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
        const widest = Math.max(
          shapeFootprintM2(shape),
          ...[0, 0.25, 0.5, 0.75, 1].map((share) => shapeAreaAtLevel(shape, as(share * rim))),
        );
        // A tub wide one way at the foot and the other way at the rim is widest between these levels.
        expect(shapeVolume(shape, rim)).toBeLessThanOrEqual(widest * rim * 10 * 1.2);
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

/** Anything a member could type as a figure, sensible or not. */
const typed: fc.Arbitrary<Estimate<never>> = fc
  .oneof(
    real(0, 1),
    real(0, 100),
    real(-10, 10_000),
    fc.constantFrom(0, -1, 1e-9, 1e12, Number.NaN, Number.POSITIVE_INFINITY),
  )
  .chain((best) =>
    fc
      .tuple(real(0, 1.5), real(0, 1.5))
      .map(([down, up]) => ({ best, low: best - down * Math.abs(best), high: best + up * Math.abs(best) })),
  )
  .map((estimate) => estimate as Estimate<never>);
const plain = typed.map(({ best }) => best as never);

/** Every question of the room, asked with whatever comes. */
const questions: Readonly<Record<string, fc.Arbitrary<() => Answer<unknown> | NoAnswer>>> = {
  displacement: fc.tuple(typed, typed, typed).map(
    ([a, b, c]) =>
      () =>
        displacement({ rock: { mass: a, weighed: "wet and drained" }, sand: { areaM2: b, depthMm: c } }),
  ),
  overflowHead: fc.tuple(typed, typed, plain, fc.boolean()).map(
    ([flow, size, slots, isPlain]) =>
      () =>
        overflowHead(
          flow,
          isPlain
            ? { kind: "plain", lengthM: size, endContractions: 2 }
            : { kind: "toothed", slots, slotWidthMm: size, toothHeightMm: size },
        ),
  ),
  drainPath: fc.tuple(typed, typed, typed, typed, plain).map(
    ([flow, a, b, c, count]) =>
      () =>
        drainPath(
          [
            {
              kind: "full siphon",
              name: "siphon",
              dropM: a,
              lengthM: b,
              boreMm: c,
              fittings: [{ fitting: "90° elbow", count }],
            },
            { kind: "open rim", name: "rim", diameterMm: a, headMm: b },
            { kind: "vertical pipe", name: "fall", boreMm: c },
            { kind: "sloped pipe", name: "slope", boreMm: c, slope: a },
          ],
          flow,
        ),
  ),
  siphonDrain: fc.tuple(typed, typed, typed, typed).map(
    ([flow, a, b, c]) =>
      () =>
        siphonDrain({
          flow,
          siphon: { kind: "full siphon", name: "siphon", dropM: a, lengthM: b, boreMm: c, fittings: [] },
          standby: { name: "standby", boreMm: c, headMm: a },
          surfaceM2: b,
          headAllowedMm: a,
        }),
  ),
  pipeRunLoss: fc.tuple(typed, plain, plain, plain, plain).map(
    ([flow, bore, length, head, at]) =>
      () =>
        pipeRunLoss(
          [
            {
              ...segment(bore, length),
              devices: [{ name: "device", loss: { headM: head, atLPerH: at } }],
            },
          ],
          flow,
        ),
  ),
  operatingPoint: fc.tuple(typed, plain, plain, plain, plain).map(
    ([staticHeadM, head, flow, bore, length]) =>
      () =>
        operatingPoint({
          curve: { kind: "two figures", shutOffHeadM: head, maxFlowLPerH: flow },
          staticHeadM,
          run: [segment(bore, length)],
        }),
  ),
  branchFlows: fc.tuple(plain, plain, plain, plain).map(
    ([head, flow, bore, height]) =>
      () =>
        branchFlows({
          curve: { kind: "two figures", shutOffHeadM: head, maxFlowLPerH: flow },
          common: [segment(bore, 1)],
          branches: [{ name: "arm", staticHeadM: height, run: [segment(bore, 2)] }],
        }),
  ),
  pumpOffFlood: fc.tuple(typed, typed, typed, typed, typed, plain).map(
    ([a, b, c, d, e, f]) =>
      () =>
        pumpOffFlood({
          display: {
            name: "display",
            areaM2: a,
            aboveCrestMm: b,
            returns: [
              { name: "nozzle", belowLevelMm: c, siphonBreak: { belowLevelMm: d, isInspected: true } },
            ],
          },
          overflowBoxL: e,
          pipes: [{ name: "pipe", boreMm: f, lengthM: f }],
          row: [
            { name: "drum", areaM2: a, freeboardMm: b, onward: "overflows", aboveOutletMm: c },
            { name: "box", areaM2: a, freeboardMm: d, onward: "holds the pump", belowFirstMm: f },
          ],
        }),
  ),
  blockedDrain: fc.tuple(typed, typed, typed, typed).map(
    ([pumpableL, areaM2, freeboardMm, flow]) =>
      () =>
        blockedDrain({ pumpableL, areaM2, freeboardMm, flow }),
  ),
  largestSpill: fc.tuple(typed, typed, typed, typed).map(
    ([areaM2, levelOverHoleMm, fallbackL, pumpableL]) =>
      () =>
        largestSpill({
          containers: [{ name: "box", areaM2, levelOverHoleMm, isDisplay: false }],
          fallbackL,
          pumpableL,
        }),
  ),
  restart: fc.tuple(typed, typed, typed).map(
    ([refillL, chamberL, flow]) =>
      () =>
        restart({ refillL, chamberL, flow }),
  ),
  topOffFailure: fc.tuple(typed, typed, typed, typed, typed, typed, typed).map(
    ([evaporationKgPerDay, systemL, salinity, usableChamberL, freeL, fallbackL, other]) =>
      () =>
        topOffFailure({
          evaporationKgPerDay,
          systemL,
          salinity,
          container: "box",
          usableChamberL,
          freeL,
          fallbackL,
          source: { kind: "reservoir", litres: other, fillLPerH: other },
        }),
  ),
  skimmate: fc.tuple(typed, typed, typed, typed, typed).map(
    ([rate, cupL, inCupL, systemL, salinity]) =>
      () =>
        skimmate({ rate, cupL, inCupL, systemL, salinity }),
  ),
  dailyEvaporation: fc.tuple(typed, typed, typed, typed, typed).map(
    ([openAreaM2, waterC, roomC, humidity, salinity]) =>
      () =>
        dailyEvaporation({ openAreaM2, waterC, roomC, humidity, salinity, isDisturbed: true }),
  ),
  heatBalance: fc.tuple(typed, typed, typed, typed, typed, plain).map(
    ([openAreaM2, waterC, roomC, humidity, equipmentW, size]) =>
      () =>
        heatBalance({
          walls: [{ areaM2: size, material: "glass", thicknessMm: size }],
          openAreaM2,
          waterC,
          roomC,
          humidity,
          isDisturbed: false,
          equipmentW,
        }),
  ),
  temperatureChange: fc.tuple(typed, typed, typed, typed).map(
    ([volumeL, kelvin, powerW, againstW]) =>
      () =>
        temperatureChange({ volumeL, kelvin, powerW, againstW }),
  ),
  powerCut: fc.tuple(typed, typed, typed, typed, typed, typed, typed, typed).map(
    ([displayL, surfaceM2, waterC, salinity, oxygenMgPerL, massG, air, roomC]) =>
      () =>
        powerCut({
          displayL,
          surfaceM2,
          waterC,
          salinity,
          oxygenMgPerL,
          demand: { fish: [{ name: "fish", count: 3, massG }] },
          airPump: { airLPerMin: air, depthCm: air },
          roomC,
          hasGenerator: true,
        }),
  ),
  batteryRuntime: fc.tuple(typed, typed, plain).map(
    ([ampHours, load, volts]) =>
      () =>
        batteryRuntime({ kind: "lead-acid", ampHours, volts, load, through: "inverter" }),
  ),
  electricLoad: fc.tuple(typed, typed, typed, plain, plain, plain).map(
    ([watts, hoursPerDay, pricePerKWh, volts, ratingA, powerFactor]) =>
      () =>
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
          ],
          circuits: [{ name: "left", ratingA, hasGroundFaultProtection: false }],
          volts,
          pricePerKWh,
        }),
  ),
  floorLoad: fc.tuple(typed, typed, typed, typed, typed, plain).map(
    ([waterL, density, massKg, footprintM2, areaCm2, count]) =>
      () =>
        floorLoad({
          waterL,
          density,
          parts: [{ name: "rock", massKg }],
          footprintM2,
          feet: { count, areaCm2 },
        }),
  ),
  wallPressure: fc.tuple(typed, typed, typed).map(
    ([depthM, wallLengthM, density]) =>
      () =>
        wallPressure({ depthM, wallLengthM, density }),
  ),
  purifiedWater: fc.tuple(typed, typed, plain, typed, typed, typed, typed).map(
    ([litres, ratedLPerDay, ratedPressureKPa, feedPressureKPa, feedC, dissolvedMgPerL, rejectRatio]) =>
      () =>
        purifiedWater({
          litres,
          ratedLPerDay,
          ratedPressureKPa,
          feedPressureKPa,
          feedC,
          dissolvedMgPerL,
          rejectRatio,
        }),
  ),
  uvAtFlow: fc.tuple(typed, typed, typed, typed, typed).map(
    ([a, b, c, contactL, flow]) =>
      () =>
        uvAtFlow({
          light: {
            kind: "chamber",
            lampW: a,
            lampCm: b,
            sleeveDiameterCm: a,
            chamberDiameterCm: b,
            transmittance: c,
          },
          contactL,
          flow,
          target: "Giardia, 3 log",
        }),
  ),
  mixingTime: fc.tuple(typed, typed, typed, typed, typed).map(
    ([displayL, restL, flow, volumeL, own]) =>
      () =>
        mixingTime({ displayL, restL, flow, sideTanks: [{ name: "side", volumeL, flow: own }] }),
  ),
  residence: fc.tuple(typed, typed, typed).map(
    ([volumeL, sectionCm2, flow]) =>
      () =>
        residence([{ name: "box", volumeL, sectionCm2 }], flow),
  ),
};

describe("anything a member could type", () => {
  it.each(Object.keys(questions))("%s answers or refuses, in words, with ranges in order", (name) => {
    const asked = questions[name];
    if (asked === undefined) throw new Error(`no question ${name}`);
    fc.assert(
      fc.property(asked, (ask) => {
        const result = ask();
        const said = result.cautions.map(sayCaution);
        if (result.kind === "no-answer") said.push(sayRefusal(result.reason));
        else expect(disorder(result.value)).toEqual([]);
        for (const sentence of said) {
          expect(sentence).not.toMatch(/NaN|undefined|Infinity|\[object/);
          expect(sentence.length).toBeGreaterThan(20);
        }
      }),
      { numRuns: 150 },
    );
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
