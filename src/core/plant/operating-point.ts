import { type Estimate, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type LitresPerHour,
  type Metres,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { seawaterViscosity } from "./pipe-loss.ts";
import {
  LOSS_SPREAD,
  lossByDarcy,
  lossByHazenWilliams,
  type PipeSegment,
  refuseRun,
  runCautions,
  USUAL_WATER,
} from "./pipe-run.ts";
import {
  curveSpread,
  lastFlow,
  operatingFlow,
  type PumpCurve,
  pumpHead,
  refuseCurve,
  shutOffHead,
} from "./pump-curve.ts";
import { refuseIfNegative } from "./usable-figures.ts";

/** Steps from no flow to the last one in the drawing of both curves. */
const DRAWN_STEPS = 24;
/** Within this share of the last flow, the answer leans on the end of the curve. */
const NEAR_END = 0.95;

export interface OperatingPointInputs {
  readonly curve: PumpCurve;
  /** Height of the display's water surface (or the highest open point) over the pump container's surface. */
  readonly staticHeadM: Estimate<Metres>;
  readonly run: readonly PipeSegment[];
  readonly water?: { readonly salinity: PracticalSalinity; readonly temperatureC: DegreesC };
}

export interface OperatingPoint {
  readonly flowLPerH: Estimate<LitresPerHour>;
  readonly headM: Estimate<Metres>;
  /** The flow had Hazen–Williams been used. */
  readonly hazenWilliamsFlowLPerH: Estimate<LitresPerHour>;
  /** Both curves, for a drawing. */
  readonly curves: readonly CurvesAt[];
}

export interface CurvesAt {
  readonly flowLPerH: LitresPerHour;
  readonly pumpM: Metres;
  readonly systemM: Metres;
  readonly systemHazenWilliamsM: Metres;
}

/** How much a pump delivers through a run of pipe. */
export function operatingPoint(inputs: OperatingPointInputs): Answer<OperatingPoint> | NoAnswer {
  const { curve, staticHeadM, run } = inputs;
  const refused = refuseCurve(curve) ?? refuseIfNegative({ "static head": staticHeadM }) ?? refuseRun(run);
  if (refused !== undefined) return refused;
  const { salinity, temperatureC } = inputs.water ?? USUAL_WATER;
  const viscosity = seawaterViscosity(salinity, temperatureC);
  const last = lastFlow(curve);

  const shutOffHeadM = shutOffHead(curve);
  if (shutOffHeadM <= staticHeadM.best) {
    return noAnswer("pump-cannot-lift", { shutOffHeadM, staticHeadM: staticHeadM.best });
  }
  const headLeftM = pumpHead(curve, last) - staticHeadM.best - lossByDarcy(run, last, viscosity);
  if (headLeftM > 0) return noAnswer("beyond-pump-curve", { lastLPerH: last, headLeftM });

  const { estimates, drivers } = propagate(
    {
      "static head": staticHeadM,
      "pump curve": curveSpread(curve),
      "friction and fittings": LOSS_SPREAD,
    },
    (v) => {
      const pump = (flow: LitresPerHour) => pumpHead(curve, flow) * v["pump curve"];
      const system = (flow: LitresPerHour) =>
        v["static head"] + lossByDarcy(run, flow, viscosity) * v["friction and fittings"];
      const hazen = (flow: LitresPerHour) =>
        v["static head"] + lossByHazenWilliams(run, flow) * v["friction and fittings"];
      const flowLPerH = operatingFlow(pump, system, last);
      return {
        flowLPerH,
        headM: as<Metres>(pump(flowLPerH)),
        hazenWilliamsFlowLPerH: operatingFlow(pump, hazen, last),
      };
    },
  );
  const curves = Array.from({ length: DRAWN_STEPS + 1 }, (_, step): CurvesAt => {
    const flowLPerH = as<LitresPerHour>((last * step) / DRAWN_STEPS);
    return {
      flowLPerH,
      pumpM: pumpHead(curve, flowLPerH),
      systemM: as<Metres>(staticHeadM.best + lossByDarcy(run, flowLPerH, viscosity)),
      systemHazenWilliamsM: as<Metres>(staticHeadM.best + lossByHazenWilliams(run, flowLPerH)),
    };
  });
  return {
    kind: "answer",
    value: { ...estimates, curves },
    method: "The flow at which the pump's head equals the height lifted plus the losses",
    working: [
      curve.kind === "points"
        ? "pump: straight lines between the points of its curve"
        : "pump: greatest head × (1 − (flow ÷ greatest flow)²)",
      "pipes: height between the two water surfaces + friction + fittings + devices, by Darcy–Weisbach",
      "the flow where the two are equal, found by halving",
    ],
    constants: [
      {
        name: "spread of the pump curve",
        value: curve.kind === "points" ? "±5 % of head" : "±15 % of head",
        source: "assumption",
      },
      { name: "spread of friction and fittings", value: "−20 % to +10 %", source: "assumption" },
    ],
    sources: [
      "first-principles",
      "swamee-jain-1976",
      "illinois-77-906",
      "irc-2018-a22",
      "crane-tp-410",
      "sharqawy-2010",
      "assumption",
    ],
    assumptions: [
      "the pump is clean and gets its full voltage",
      "the height is between the two water surfaces, not the pipe's",
    ],
    cautions: [
      ...(curve.kind === "two figures" ? [caution("pump-curve-from-two-figures", {}, "note")] : []),
      ...(estimates.flowLPerH.high > last * NEAR_END
        ? [
            caution(
              "pump-near-end-of-curve",
              { flowLPerH: estimates.flowLPerH.best, lastLPerH: last },
              "note",
            ),
          ]
        : []),
      ...runCautions(run, estimates.flowLPerH.best),
    ],
    driver: drivers.flowLPerH,
  };
}
