import { fallingRoot } from "../numeric/falling-root.ts";
import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import {
  as,
  type DegreesC,
  type LitresPerHour,
  type Metres,
  type PracticalSalinity,
} from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import { seawaterViscosity } from "./pipe-loss.ts";
import {
  LOSS_SPREAD,
  lossByDarcy,
  type PipeSegment,
  refuseRun,
  runCautions,
  USUAL_WATER,
} from "./pipe-run.ts";
import type { M2PerSecond } from "./plant-units.ts";
import { curveSpread, lastFlow, type PumpCurve, pumpHead, refuseCurve, shutOffHead } from "./pump-curve.ts";
import { refuseIfNegative, refuseSameNames } from "./usable-figures.ts";

/** One of several pipes leaving a common node. */
export interface Branch {
  readonly name: string;
  /** Height of where it ends over the pump container's surface; nothing for one that returns there. */
  readonly staticHeadM: Metres;
  readonly run: readonly PipeSegment[];
}

export interface BranchInputs {
  readonly curve: PumpCurve;
  /** What all the flow passes between pump and node. */
  readonly common: readonly PipeSegment[];
  readonly branches: readonly Branch[];
  readonly water?: { readonly salinity: PracticalSalinity; readonly temperatureC: DegreesC };
}

export interface BranchFlows {
  readonly totalLPerH: Estimate<LitresPerHour>;
  readonly nodeHeadM: Estimate<Metres>;
  readonly branches: readonly { readonly name: string; readonly flowLPerH: Estimate<LitresPerHour> }[];
}

/** How a pump's flow shares itself over branches: all see the same head at the node. */
export function branchFlows(inputs: BranchInputs): Answer<BranchFlows> | NoAnswer {
  const { curve, common, branches } = inputs;
  if (branches.length === 0) return noAnswer("nothing-named", { what: "a branch" });
  const refused =
    refuseSameNames(branches) ??
    refuseCurve(curve) ??
    refuseRun(common) ??
    refuseIfNegative(
      Object.fromEntries(
        branches.map(({ name, staticHeadM }) => [`height of ${name}`, exactly(staticHeadM)]),
      ),
    ) ??
    branches.map(({ run }) => refuseRun(run)).find((one) => one !== undefined);
  if (refused !== undefined) return refused;
  const lowest = Math.min(...branches.map(({ staticHeadM }) => staticHeadM));
  if (shutOffHead(curve) <= lowest) {
    return noAnswer("pump-cannot-lift", { shutOffHeadM: shutOffHead(curve), staticHeadM: lowest });
  }
  const { salinity, temperatureC } = inputs.water ?? USUAL_WATER;
  const viscosity = seawaterViscosity(salinity, temperatureC);
  const last = lastFlow(curve);
  const lastNode = pumpHead(curve, last) - lossByDarcy(common, last, viscosity);
  if (lastNode > 0 && total(branches, lastNode, viscosity, 1, last) > last) {
    return noAnswer("beyond-pump-curve", { lastLPerH: last, headLeftM: lastNode });
  }

  const { estimates, drivers } = propagate(
    { "pump curve": curveSpread(curve), "friction and fittings": LOSS_SPREAD },
    (v): Record<string, LitresPerHour | Metres> & { totalLPerH: LitresPerHour; nodeHeadM: Metres } => {
      const friction = v["friction and fittings"];
      const nodeHead = fallingRoot(
        (head) => {
          const flow = as<LitresPerHour>(total(branches, head, viscosity, friction, last));
          if (flow > last) return -1;
          return (
            pumpHead(curve, flow) * v["pump curve"] - lossByDarcy(common, flow, viscosity) * friction - head
          );
        },
        0,
        shutOffHead(curve) * v["pump curve"],
      );
      const flows = branches.map((branch) => branchFlow(branch, nodeHead, viscosity, friction, last));
      return {
        totalLPerH: as<LitresPerHour>(flows.reduce((sum, flow) => sum + flow, 0)),
        nodeHeadM: as<Metres>(nodeHead),
        ...Object.fromEntries(flows.map((flow, index) => [`branch ${index}`, flow])),
      };
    },
  );
  const flows = branches.map(({ name }, index) => ({
    name,
    flowLPerH: (estimates[`branch ${index}`] ?? exactly(0)) as Estimate<LitresPerHour>,
  }));
  const cautions: Caution[] = [
    ...(curve.kind === "two figures" ? [caution("pump-curve-from-two-figures", {}, "note")] : []),
    ...runCautions(common, estimates.totalLPerH.best),
    ...branches.flatMap(({ run }, index) =>
      runCautions(run, flows[index]?.flowLPerH.best ?? as<LitresPerHour>(0)),
    ),
  ];
  return {
    kind: "answer",
    value: { totalLPerH: estimates.totalLPerH, nodeHeadM: estimates.nodeHeadM, branches: flows },
    method: "Every branch sees the same head at the node; the pump delivers their sum",
    working: [
      "for a head at the node: each branch's flow is where its height plus its losses equal that head",
      "the head at which the pump, less the common pipe's loss, delivers the sum of the branches",
    ],
    constants: [
      { name: "spread of friction and fittings", value: "−20 % to +10 %", source: "assumption" },
      {
        name: "spread of the pump curve",
        value: curve.kind === "points" ? "±5 % of head" : "±15 % of head",
        source: "assumption",
      },
    ],
    sources: [
      "first-principles",
      "swamee-jain-1976",
      "irc-2018-a22",
      "crane-tp-410",
      "sharqawy-2010",
      "assumption",
    ],
    assumptions: ["all valves as described", "no branch feeds another"],
    cautions,
    driver: drivers.totalLPerH,
  };
}

/** Flow of one branch for a head at its node, none when the head does not reach its end. Source: first-principles. */
export function branchFlow(
  branch: Branch,
  nodeHeadM: number,
  viscosity: M2PerSecond,
  friction: number,
  last: LitresPerHour,
): LitresPerHour {
  const left = nodeHeadM - branch.staticHeadM;
  if (left <= 0) return as<LitresPerHour>(0);
  return as<LitresPerHour>(
    fallingRoot(
      (flow) => left - lossByDarcy(branch.run, as<LitresPerHour>(flow), viscosity) * friction,
      0,
      2 * last,
    ),
  );
}

function total(
  branches: readonly Branch[],
  nodeHeadM: number,
  viscosity: M2PerSecond,
  friction: number,
  last: LitresPerHour,
): number {
  return branches.reduce((sum, branch) => sum + branchFlow(branch, nodeHeadM, viscosity, friction, last), 0);
}
