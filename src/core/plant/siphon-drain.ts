import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type LitresPerHour, type SquareMetres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer } from "../result.ts";
import { FILM_FILL, openStandpipeHead, wallFilmFlow } from "./drain-flow.ts";
import { type DrainElement, elementCapacity, refuseElement } from "./drain-path.ts";
import { type NominalSize, SCHEDULE_40_BORE_MM } from "./pipe-data.ts";
import type { Millimetres } from "./plant-units.ts";
import { refuseUnlessPositive } from "./usable-figures.ts";

type FullSiphon = Extract<DrainElement, { kind: "full siphon" }>;

export interface SiphonDrainInputs {
  /** What the pump really delivers, not its label. */
  readonly flow: Estimate<LitresPerHour>;
  readonly siphon: FullSiphon;
  /** The open pipe that takes over: a rim, then a fall. */
  readonly standby?: {
    readonly name: string;
    readonly boreMm: Estimate<Millimetres>;
    readonly headMm: Estimate<Millimetres>;
  };
  /** Surface that rises when water arrives faster than it leaves: display and overflow box. */
  readonly surfaceM2?: Estimate<SquareMetres>;
  /** How high the water may stand over an open standpipe's rim. */
  readonly headAllowedMm: Estimate<Millimetres>;
}

export interface SiphonDrain {
  readonly primedLPerH: Estimate<LitresPerHour>;
  /** The same pipe once air gets in: a film on its wall. */
  readonly unprimedLPerH: Estimate<LitresPerHour>;
  /** What then has to go elsewhere; nothing when the unprimed pipe is enough. */
  readonly leftOverLPerH: Estimate<LitresPerHour>;
  /** How fast the surface rises if nothing takes the rest, mm per minute. */
  readonly riseMmPerMin: Estimate | undefined;
  readonly standbyLPerH: Estimate<LitresPerHour> | undefined;
  readonly isStandbyEnough: boolean | undefined;
  /** Smallest schedule 40 pipe that takes the whole flow, open, within the head allowed; undefined when none does. */
  readonly standbySize: NominalSize | undefined;
}

/** What a siphon drain carries, what becomes of it when air gets in, and the standby it needs. */
export function siphonDrain(inputs: SiphonDrainInputs): Answer<SiphonDrain> | NoAnswer {
  const { flow, siphon, standby, surfaceM2 } = inputs;
  const rim: DrainElement | undefined = standby && {
    kind: "open rim",
    name: standby.name,
    diameterMm: standby.boreMm,
    headMm: standby.headMm,
  };
  const refused =
    refuseUnlessPositive({ flow, "surface that rises": surfaceM2, "head allowed": inputs.headAllowedMm }) ??
    refuseElement(siphon) ??
    (rim && refuseElement(rim));
  if (refused !== undefined) return refused;

  const primed = elementCapacity(siphon);
  const fall: DrainElement = { kind: "vertical pipe", name: siphon.name, boreMm: siphon.boreMm };
  const unprimed = elementCapacity(fall).capacityLPerH;
  const { estimates } = propagate(
    { flow, "unprimed siphon": unprimed, "surface that rises": surfaceM2 ?? { best: 1, low: 1, high: 1 } },
    (v) => {
      const left = Math.max(0, v.flow - v["unprimed siphon"]);
      // L/h over m² is mm/h.
      return { left: as<LitresPerHour>(left), rise: left / v["surface that rises"] / 60 };
    },
  );
  const standbyLPerH =
    rim && standby
      ? lesser(
          elementCapacity(rim).capacityLPerH,
          elementCapacity({ kind: "vertical pipe", name: standby.name, boreMm: standby.boreMm })
            .capacityLPerH,
        )
      : undefined;
  const isStandbyEnough = standbyLPerH && standbyLPerH.low >= flow.high;
  const cautions: Caution[] = [];
  if (primed.capacityLPerH.low < flow.high) {
    cautions.push(
      caution("drain-too-small", {
        drain: siphon.name,
        capacityLPerH: primed.capacityLPerH.low,
        flowLPerH: flow.high,
      }),
    );
  }
  if (unprimed.low < flow.high) {
    cautions.push(
      caution("siphon-loses-prime", {
        runningLPerH: primed.capacityLPerH.best,
        unprimedLPerH: unprimed.low,
        flowLPerH: flow.best,
      }),
    );
  }
  if (standby && standbyLPerH && isStandbyEnough === false) {
    cautions.push(
      caution(
        "standby-too-small",
        { drain: standby.name, capacityLPerH: standbyLPerH.low, flowLPerH: flow.high },
        "danger",
      ),
    );
  }
  cautions.push(caution("keep-emergency-pipe-open", {}, "note"), caution("strainer-takes-area", {}, "note"));
  return {
    kind: "answer",
    value: {
      primedLPerH: primed.capacityLPerH,
      unprimedLPerH: unprimed,
      leftOverLPerH: estimates.left,
      riseMmPerMin: surfaceM2 && estimates.rise,
      standbyLPerH,
      isStandbyEnough,
      standbySize: standbySize(flow.high, inputs.headAllowedMm.low),
    },
    method: "A pipe running full against the same pipe with air in it",
    working: [
      "full: bore area × √(2g × drop ÷ (1 + friction × length ÷ bore + sum of K))",
      "with air: a film on the wall, a quarter of the bore",
      "left over: flow − what the pipe with air carries; rise: left over ÷ surface",
      "standby: the lesser of its rim (weir or orifice) and its fall, against the whole flow",
    ],
    constants: [
      { name: "share of a vertical pipe filled", value: "1/4, at most 1/3", source: "wyly-eaton-1961" },
      { name: "spread: siphon ±10 %, open rim ±25 %", value: "as named", source: "assumption" },
    ],
    sources: [
      "energy-equation",
      "swamee-jain-1976",
      "riser-stage-discharge",
      "wyly-eaton-1961",
      "astm-d1785",
      "assumption",
      "common-practice",
    ],
    assumptions: [
      "standby and emergency are each sized for the whole flow, the siphon blocked (common practice)",
    ],
    cautions,
    driver: primed.driver,
  };
}

/** Smallest schedule 40 pipe that takes a flow open: its rim within the head, its fall as a film.
 *  Source: astm-d1785, riser-stage-discharge (with its 25 % off), wyly-eaton-1961. */
export function standbySize(flow: LitresPerHour, headMm: Millimetres): NominalSize | undefined {
  const safeFlow = as<LitresPerHour>(flow / 0.75);
  for (const [size, bore] of Object.entries(SCHEDULE_40_BORE_MM)) {
    if (wallFilmFlow(bore, FILM_FILL.usual) >= flow && openStandpipeHead(bore, safeFlow) <= headMm) {
      return size as NominalSize;
    }
  }
  return undefined;
}

function lesser(a: Estimate<LitresPerHour>, b: Estimate<LitresPerHour>): Estimate<LitresPerHour> {
  return {
    best: as<LitresPerHour>(Math.min(a.best, b.best)),
    low: as<LitresPerHour>(Math.min(a.low, b.low)),
    high: as<LitresPerHour>(Math.min(a.high, b.high)),
  };
}
