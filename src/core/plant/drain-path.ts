import { between, type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type LitresPerHour, type Metres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { FILM_FILL, fullSiphonFlow, openStandpipeFlow, slopedFlow, wallFilmFlow } from "./drain-flow.ts";
import { type FittingCount, sumOfK } from "./pipe-data.ts";
import { seawaterViscosity } from "./pipe-loss.ts";
import { USUAL_WATER } from "./pipe-run.ts";
import type { Millimetres } from "./plant-units.ts";
import { refuseIfNegative, refuseUnlessPositive } from "./usable-figures.ts";

/** One piece of the way down. */
export type DrainElement =
  /** Runs full of water, throttled by a valve. */
  | {
      readonly kind: "full siphon";
      readonly name: string;
      /** From the overflow box's water to the water it ends under, or to the centre of an outlet in air. */
      readonly dropM: Estimate<Metres>;
      readonly lengthM: Estimate<Metres>;
      readonly boreMm: Estimate<Millimetres>;
      /** Entry, bends, valve; an exit is counted by itself and is left out here. */
      readonly fittings: readonly FittingCount[];
    }
  | {
      readonly kind: "open rim";
      readonly name: string;
      readonly diameterMm: Estimate<Millimetres>;
      /** Height the water may stand over the rim. */
      readonly headMm: Estimate<Millimetres>;
    }
  | { readonly kind: "vertical pipe"; readonly name: string; readonly boreMm: Estimate<Millimetres> }
  /** Counted half full, so that air can pass above the water. */
  | {
      readonly kind: "sloped pipe";
      readonly name: string;
      readonly boreMm: Estimate<Millimetres>;
      /** Fall per length: 0.02 is 2 cm per metre. */
      readonly slope: Estimate;
    };

/** Spread of each formula. Source: assumption for the siphon; the others as their references say. */
const SPREAD = {
  "full siphon": between(0.9, 1.1, 1),
  "open rim": between(0.75, 1.25, 1),
  "vertical pipe": between(1, (FILM_FILL.most / FILM_FILL.usual) ** (5 / 3), 1),
  "sloped pipe": between(0.9, 1.1, 1),
} as const;
const HALF_FULL = 0.5;

export interface DrainPath {
  readonly capacityLPerH: Estimate<LitresPerHour>;
  /** The element that carries least. */
  readonly narrowest: string;
  readonly elements: readonly { readonly name: string; readonly capacityLPerH: Estimate<LitresPerHour> }[];
  readonly isEnough: boolean;
}

/** How much a drain carries: the least of what stands on its way, entry to outlet. */
export function drainPath(
  elements: readonly DrainElement[],
  flow: Estimate<LitresPerHour>,
): Answer<DrainPath> | NoAnswer {
  const refused =
    refuseUnlessPositive({ flow }) ?? elements.map(refuseElement).find((one) => one !== undefined);
  if (refused !== undefined) return refused;
  const capacities = elements.map((element) => ({ name: element.name, ...elementCapacity(element) }));
  const smallest = [...capacities].sort((a, b) => a.capacityLPerH.best - b.capacityLPerH.best)[0];
  if (smallest === undefined) return noAnswer("nothing-named", { what: "a piece of the drain" });
  const isEnough = smallest.capacityLPerH.low >= flow.high;
  const cautions: Caution[] = [caution("strainer-takes-area", {}, "note")];
  if (!isEnough) {
    cautions.unshift(
      caution("drain-too-small", {
        drain: smallest.name,
        capacityLPerH: smallest.capacityLPerH.low,
        flowLPerH: flow.high,
      }),
    );
  }
  return {
    kind: "answer",
    value: {
      capacityLPerH: smallest.capacityLPerH,
      narrowest: smallest.name,
      elements: capacities.map(({ name, capacityLPerH }) => ({ name, capacityLPerH })),
      isEnough,
    },
    method: "A drain carries what its narrowest element carries",
    working: [
      "full siphon: bore area × √(2g × drop ÷ (1 + friction × length ÷ bore + sum of K))",
      "open rim: the lesser of a weir around the rim and an orifice",
      "vertical pipe: a film on the wall filling a quarter of the bore",
      "sloped pipe: Manning's equation, half full",
      "the least of them",
    ],
    constants: [
      { name: "share of a vertical pipe filled", value: "1/4, at most 1/3", source: "wyly-eaton-1961" },
      { name: "weir coefficient", value: "1.84 m^½/s", source: "francis-1883" },
      { name: "orifice coefficient", value: "0.6", source: "riser-stage-discharge" },
      { name: "Manning's n", value: "0.010", source: "manning" },
      { name: "spread: siphon and slope ±10 %, open rim ±25 %", value: "as named", source: "assumption" },
    ],
    sources: [
      "energy-equation",
      "swamee-jain-1976",
      "riser-stage-discharge",
      "wyly-eaton-1961",
      "manning",
      "francis-1883",
      "assumption",
    ],
    assumptions: [
      "clean pipes",
      "enough means that the low end of the capacity is above the high end of the flow",
    ],
    cautions,
    driver: smallest.driver,
  };
}

/** What one element carries, with its range. */
export function elementCapacity(element: DrainElement) {
  const spread = SPREAD[element.kind];
  const { estimates, drivers } = capacityOf(element, spread);
  return { capacityLPerH: estimates.capacityLPerH, driver: drivers.capacityLPerH };
}

function capacityOf(element: DrainElement, spread: Estimate) {
  const answer = (flow: number, formula: number) => ({ capacityLPerH: as<LitresPerHour>(flow * formula) });
  switch (element.kind) {
    case "full siphon": {
      const viscosity = seawaterViscosity(USUAL_WATER.salinity, USUAL_WATER.temperatureC);
      const k = sumOfK(element.fittings.filter(({ fitting }) => fitting !== "exit"));
      return propagate(
        { drop: element.dropM, "pipe length": element.lengthM, bore: element.boreMm, formula: spread },
        (v) => answer(fullSiphonFlow(v.drop, v["pipe length"], v.bore, k, viscosity), v.formula),
      );
    }
    case "open rim":
      return propagate(
        { "rim diameter": element.diameterMm, "water over the rim": element.headMm, formula: spread },
        (v) => answer(openStandpipeFlow(v["rim diameter"], v["water over the rim"]), v.formula),
      );
    case "vertical pipe":
      return propagate({ bore: element.boreMm, formula: spread }, (v) =>
        answer(wallFilmFlow(v.bore), v.formula),
      );
    case "sloped pipe":
      return propagate({ bore: element.boreMm, slope: element.slope, formula: spread }, (v) =>
        answer(slopedFlow(v.bore, HALF_FULL, v.slope), v.formula),
      );
  }
}

/** Refuses dimensions no drain can have. */
export function refuseElement(element: DrainElement): NoAnswer | undefined {
  const { name } = element;
  switch (element.kind) {
    case "full siphon":
      return (
        refuseUnlessPositive({ [`drop of ${name}`]: element.dropM, [`bore of ${name}`]: element.boreMm }) ??
        refuseIfNegative({
          [`length of ${name}`]: element.lengthM,
          ...Object.fromEntries(
            element.fittings.map(({ fitting, count }) => [`number of: ${fitting}`, exactly(count)]),
          ),
        })
      );
    case "open rim":
      return refuseUnlessPositive({
        [`rim diameter of ${name}`]: element.diameterMm,
        [`water over the rim of ${name}`]: element.headMm,
      });
    case "vertical pipe":
      return refuseUnlessPositive({ [`bore of ${name}`]: element.boreMm });
    case "sloped pipe":
      return refuseUnlessPositive({
        [`bore of ${name}`]: element.boreMm,
        [`slope of ${name}`]: element.slope,
      });
  }
}
