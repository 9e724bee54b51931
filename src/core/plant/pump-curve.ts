import { fallingRoot } from "../numeric/falling-root.ts";
import { between, type Estimate, exactly } from "../quantity/estimate.ts";
import { as, type KgPerM3, type LitresPerHour, type Metres, type Watts } from "../quantity/units.ts";
import { type NoAnswer, noAnswer } from "../result.ts";
import { m3PerSecond, STANDARD_GRAVITY } from "./plant-units.ts";
import { refuseIfNegative, refuseUnlessPositive } from "./usable-figures.ts";

export interface CurvePoint {
  readonly flowLPerH: LitresPerHour;
  readonly headM: Metres;
}

/** What is known of a pump: points of its published curve, or only its two ends. */
export type PumpCurve =
  | { readonly kind: "points"; readonly points: readonly CurvePoint[] }
  | { readonly kind: "two figures"; readonly shutOffHeadM: Metres; readonly maxFlowLPerH: LitresPerHour };

/** One pump against its published curve. Source: assumption. */
const POINTS_SPREAD = between(0.95, 1.05, 1);
/** A curve drawn through two figures only. Source: assumption. */
const TWO_FIGURES_SPREAD = between(0.85, 1.15, 1);

export function curveSpread(curve: PumpCurve): Estimate {
  return curve.kind === "points" ? POINTS_SPREAD : TWO_FIGURES_SPREAD;
}

/** Refuses a curve that no pump has: it needs three points with rising flow and falling head, or two figures. */
export function refuseCurve(curve: PumpCurve): NoAnswer | undefined {
  const unreadable = (problem: string) => noAnswer("pump-curve-unreadable", { problem });
  if (curve.kind === "two figures") {
    return refuseUnlessPositive({
      "shut-off head": exactly(curve.shutOffHeadM),
      "greatest flow": exactly(curve.maxFlowLPerH),
    });
  }
  const { points } = curve;
  if (points.length < 3) return unreadable("at least three points of the curve are needed, or its two ends");
  for (const [index, point] of points.entries()) {
    const refused = refuseIfNegative({
      [`flow of point ${index + 1}`]: exactly(point.flowLPerH),
      [`head of point ${index + 1}`]: exactly(point.headM),
    });
    if (refused !== undefined) return refused;
    const before = points[index - 1];
    if (before !== undefined && !(point.flowLPerH > before.flowLPerH && point.headM <= before.headM)) {
      return unreadable("from point to point the flow has to rise, and the head must not rise with it");
    }
  }
  return undefined;
}

/** Head at no flow: the first point's, when the curve does not start at none. */
export function shutOffHead(curve: PumpCurve): Metres {
  return curve.kind === "two figures" ? curve.shutOffHeadM : (curve.points[0]?.headM ?? as<Metres>(0));
}

/** The last flow the curve knows of. */
export function lastFlow(curve: PumpCurve): LitresPerHour {
  return curve.kind === "two figures"
    ? curve.maxFlowLPerH
    : (curve.points.at(-1)?.flowLPerH ?? as<LitresPerHour>(0));
}

/**
 * Head a pump gives at a flow: straight lines between the points, or Hmax·(1 − (Q/Qmax)²) from two figures.
 * Source: common-practice for the parabola. Range: 0 to the last flow; beyond it, the last head.
 */
export function pumpHead(curve: PumpCurve, flow: LitresPerHour): Metres {
  if (curve.kind === "two figures") {
    const share = Math.min(1, flow / curve.maxFlowLPerH);
    return as<Metres>(curve.shutOffHeadM * (1 - share ** 2));
  }
  let before: CurvePoint | undefined;
  for (const point of curve.points) {
    if (flow <= point.flowLPerH) {
      if (before === undefined) return point.headM;
      const share = (flow - before.flowLPerH) / (point.flowLPerH - before.flowLPerH);
      return as<Metres>(before.headM + share * (point.headM - before.headM));
    }
    before = point;
  }
  return before?.headM ?? as<Metres>(0);
}

/** Where pump and system meet: the flow at which `pump` gives what `system` asks, 0 when it cannot lift,
 *  and `last` when they have not met by then. Source: first-principles. */
export function operatingFlow(
  pump: (flow: LitresPerHour) => number,
  system: (flow: LitresPerHour) => number,
  last: LitresPerHour,
): LitresPerHour {
  return as<LitresPerHour>(
    fallingRoot((flow) => pump(as<LitresPerHour>(flow)) - system(as<LitresPerHour>(flow)), 0, last),
  );
}

/** Share of the electric power that ends up as lifted water. Source: first-principles.
 *  Throws: RangeError when the electric power is not above zero. */
export function wireToWaterEfficiency(
  flow: LitresPerHour,
  head: Metres,
  density: KgPerM3,
  electric: Watts,
): number {
  if (!(electric > 0)) throw new RangeError("a pump draws power");
  return (density * STANDARD_GRAVITY * m3PerSecond(flow) * head) / electric;
}
