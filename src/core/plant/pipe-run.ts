import { between, type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type LitresPerHour,
  type Metres,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer } from "../result.ts";
import { equivalentLength, FITTINGS, type FittingCount, sumOfK } from "./pipe-data.ts";
import {
  darcyLoss,
  hazenWilliamsLoss,
  pipeVelocity,
  reynolds,
  seawaterViscosity,
  velocityHead,
} from "./pipe-loss.ts";
import type { M2PerSecond, MetresPerSecond, Millimetres } from "./plant-units.ts";
import { refuseIfNegative, refuseUnlessPositive } from "./usable-figures.ts";

/** One bore of pipe with its fittings and the devices on it. */
export interface PipeSegment {
  readonly name: string;
  readonly side: "pressure" | "suction" | "drain";
  readonly boreMm: Millimetres;
  readonly lengthM: Metres;
  readonly fittings: readonly FittingCount[];
  /** Chiller, UV, filter, manifold: the loss their maker states at one flow; it grows with the square. */
  readonly devices: readonly Device[];
}

export interface Device {
  readonly name: string;
  readonly loss?: { readonly headM: Metres; readonly atLPerH: LitresPerHour };
}

/** Fastest water for a pressure pipe. Source: pvc-velocity-guidance. */
const FASTEST_PRESSURE = 1.5;
/** Fastest water on a pump's suction side. Source: common-practice. */
const FASTEST_SUCTION = 1;
/** Slowest water that keeps solids moving. Source: aspe-data-book-2. */
const SLOWEST = 0.6;
/** Spread of friction and fittings about their tables; screwed fittings are an upper value. Source: assumption. */
export const LOSS_SPREAD = between(0.8, 1.1, 1);
export const TURBULENT_FROM = 4000;

/** The water in the pipes; its warmth and salt set how it rubs. */
export const USUAL_WATER = { salinity: as<PracticalSalinity>(35), temperatureC: as<DegreesC>(25) } as const;

/** Head lost over pipes in a row, all fittings by K. Source: swamee-jain-1976, irc-2018-a22. */
export function lossByDarcy(
  run: readonly PipeSegment[],
  flow: LitresPerHour,
  viscosity: M2PerSecond,
): Metres {
  const metres = run.map(
    (segment) =>
      darcyLoss(segment.lengthM, flow, segment.boreMm, sumOfK(segment.fittings), viscosity) +
      devicesLoss(segment, flow),
  );
  return as<Metres>(sum(metres));
}

/** The same with fittings as straight pipe where a length is tabled, and by K only where none is.
 *  Source: illinois-77-906, irc-2018-a22. */
export function lossByHazenWilliams(run: readonly PipeSegment[], flow: LitresPerHour): Metres {
  const metres = run.map((segment) => {
    const { boreMm, fittings } = segment;
    let length: number = segment.lengthM;
    let k = 0;
    for (const { fitting, count } of fittings) {
      const straight = equivalentLength(fitting, boreMm);
      if (straight === undefined) k += FITTINGS[fitting].k * count;
      else length += straight * count;
    }
    return (
      hazenWilliamsLoss(as<Metres>(length), flow, boreMm) +
      k * velocityHead(pipeVelocity(flow, boreMm)) +
      devicesLoss(segment, flow)
    );
  });
  return as<Metres>(sum(metres));
}

export interface PipeRunLoss {
  /** Head lost by Darcy–Weisbach, the figure to go by. */
  readonly lossM: Estimate<Metres>;
  /** The same by Hazen–Williams, for comparison. */
  readonly hazenWilliamsM: Estimate<Metres>;
  readonly velocities: readonly { readonly segment: string; readonly velocityMPerS: MetresPerSecond }[];
}

/** How much head a run of pipe loses at a flow, by two methods side by side. */
export function pipeRunLoss(
  run: readonly PipeSegment[],
  flow: Estimate<LitresPerHour>,
  water: { readonly salinity: PracticalSalinity; readonly temperatureC: DegreesC } = USUAL_WATER,
): Answer<PipeRunLoss> | NoAnswer {
  const refused = refuseUnlessPositive({ flow }) ?? refuseRun(run);
  if (refused !== undefined) return refused;
  const viscosity = seawaterViscosity(water.salinity, water.temperatureC);
  const { estimates, drivers } = propagate({ flow, "friction and fittings": LOSS_SPREAD }, (v) => ({
    lossM: as<Metres>(lossByDarcy(run, v.flow, viscosity) * v["friction and fittings"]),
    hazenWilliamsM: as<Metres>(lossByHazenWilliams(run, v.flow) * v["friction and fittings"]),
  }));
  const velocities = run.map(({ name, boreMm }) => ({
    segment: name,
    velocityMPerS: pipeVelocity(flow.best, boreMm),
  }));
  const slowest = Math.min(...run.map(({ boreMm }) => reynolds(flow.best, boreMm, viscosity)));
  return {
    kind: "answer",
    value: { ...estimates, velocities },
    method: "Darcy–Weisbach with Swamee–Jain friction; Hazen–Williams beside it",
    working: [
      "Darcy–Weisbach: (friction factor × length ÷ bore + sum of K) × v² ÷ 2g",
      "Hazen–Williams: 10.67 × length × Q^1.852 ÷ (150^1.852 × bore^4.8704), elbows and tees as straight pipe",
      "devices: their stated loss × (flow ÷ stated flow)²",
      "each fitting is counted once: by K or by length, never by both",
    ],
    constants: [
      { name: "C of smooth plastic", value: "150", source: "illinois-77-906" },
      { name: "roughness of smooth plastic", value: "0.0015 mm", source: "crane-tp-410" },
      {
        name: "kinematic viscosity of this water",
        value: `${viscosity.toExponential(3)} m²/s`,
        source: "sharqawy-2010",
      },
      { name: "spread of friction and fittings", value: "−20 % to +10 %", source: "assumption" },
    ],
    sources: [
      "swamee-jain-1976",
      "illinois-77-906",
      "irc-2018-a22",
      "crane-tp-410",
      "sharqawy-2010",
      "assumption",
    ],
    assumptions: ["clean pipes running full", "screwed fittings, an upper value for glued sweeps"],
    cautions: [
      ...runCautions(run, flow.best),
      ...(slowest < TURBULENT_FROM
        ? [caution("friction-outside-turbulent", { reynolds: slowest }, "note")]
        : []),
    ],
    driver: drivers.lossM,
  };
}

/** What to say of a run at a flow: too fast, too slow, or a device whose loss nobody stated. */
export function runCautions(run: readonly PipeSegment[], flow: LitresPerHour): readonly Caution[] {
  const cautions: Caution[] = [];
  for (const { name, side, boreMm } of run) {
    const velocityMPerS = pipeVelocity(flow, boreMm);
    const fastest = side === "suction" ? FASTEST_SUCTION : FASTEST_PRESSURE;
    if (side !== "drain" && velocityMPerS > fastest) {
      cautions.push(caution("pipe-too-fast", { pipe: name, velocityMPerS, limitMPerS: fastest }));
    }
    if (velocityMPerS < SLOWEST) {
      cautions.push(caution("pipe-too-slow", { pipe: name, velocityMPerS, limitMPerS: SLOWEST }, "note"));
    }
  }
  const unknown = run.flatMap(({ devices }) => devices).filter(({ loss }) => loss === undefined);
  if (unknown.length > 0) {
    cautions.push(caution("device-loss-not-given", { devices: unknown.map(({ name }) => name).join(", ") }));
  }
  return cautions;
}

/** Refuses dimensions no pipe can have. */
export function refuseRun(run: readonly PipeSegment[]): NoAnswer | undefined {
  for (const { name, boreMm, lengthM, fittings, devices } of run) {
    const refused =
      refuseUnlessPositive({ [`bore of ${name}`]: exactly(boreMm) }) ??
      refuseIfNegative({ [`length of ${name}`]: exactly(lengthM) }) ??
      refuseIfNegative(
        Object.fromEntries(fittings.map(({ fitting, count }) => [`number of: ${fitting}`, exactly(count)])),
      ) ??
      refuseIfNegative(
        Object.fromEntries(
          devices.flatMap(({ name: device, loss }) =>
            loss === undefined ? [] : [[`loss of ${device}`, exactly(loss.headM)]],
          ),
        ),
      ) ??
      refuseUnlessPositive(
        Object.fromEntries(
          devices.flatMap(({ name: device, loss }) =>
            loss === undefined
              ? []
              : [[`flow at which the loss of ${device} is stated`, exactly(loss.atLPerH)]],
          ),
        ),
      );
    if (refused !== undefined) return refused;
  }
  return undefined;
}

function devicesLoss({ devices }: PipeSegment, flow: LitresPerHour): number {
  return sum(devices.map(({ loss }) => (loss === undefined ? 0 : loss.headM * (flow / loss.atLPerH) ** 2)));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
