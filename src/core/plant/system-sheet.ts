import type { Estimate } from "../quantity/estimate.ts";
import type { KgPerM3, LitresPerHour } from "../quantity/units.ts";
import type { Answer, NoAnswer } from "../result.ts";
import type { Container } from "../tank/container.ts";
import { type ContainerNet, type NetVolume, netVolume } from "../tank/net-volume.ts";
import { containerLoad } from "./container-load.ts";
import type { ElectricDevice } from "./electric-load.ts";
import { type FloodCheck, type FloodInputs, floodCheck } from "./flood-check.ts";
import { type FloorLoad, type FloorLoadInputs, floorLoad } from "./floor-load.ts";
import { joined } from "./joined-answers.ts";
import { type PowerCut, type PowerCutInputs, powerCut } from "./power-cut.ts";
import { type Residence, residence } from "./residence.ts";
import { type RunningCost, runningCost } from "./running-cost.ts";
import { plainName } from "./tank-row.ts";

export interface SheetInputs {
  readonly containers: readonly Container[];
  /** Names of the filter row in the water's order, where it was noted. */
  readonly order: readonly string[];
  readonly flow?: Estimate<LitresPerHour>;
  readonly flood?: FloodInputs;
  readonly outage?: PowerCutInputs;
  readonly floor?: {
    readonly density: Estimate<KgPerM3>;
    readonly masses: FloorLoadInputs["parts"];
    readonly footprintM2?: FloorLoadInputs["footprintM2"];
  };
  readonly devices?: readonly ElectricDevice[];
}

/** A whole system on one page; what could not be worked out is absent. */
export interface SystemSheet {
  readonly net: NetVolume;
  /** Display first, then in the water's order; those outside the system last. */
  readonly containers: readonly ContainerNet[];
  readonly residence: Residence | undefined;
  readonly flood: FloodCheck | undefined;
  readonly outage: PowerCut | undefined;
  /** Of the display, filled to the brim. */
  readonly floor: FloorLoad | undefined;
  readonly running: RunningCost | undefined;
}

/** Everything known of a system at once; each part as its own question answers it. */
export function systemSheet(inputs: SheetInputs): Answer<SystemSheet> | NoAnswer {
  const net = netVolume(inputs.containers);
  if (net.kind === "no-answer") return net;
  const containers = inFlowOrder(net.value.containers, inputs.order);
  const inSystem = containers.filter((each) => each.inSystem);
  const stay =
    inputs.flow === undefined
      ? undefined
      : residence(
          inSystem.map(({ name, netL }) => ({ name, volumeL: netL })),
          inputs.flow,
        );
  const flood = inputs.flood && floodCheck(inputs.flood);
  const outage = inputs.outage && powerCut(inputs.outage);
  const floor = inputs.floor && displayFloor(inputs.containers, inputs.floor);
  const running = inputs.devices && runningCost(inputs.devices, NO_PRICE);
  const parts = [stay, flood, outage, floor, running].flatMap((each) =>
    each?.kind === "answer" ? [each] : [],
  );
  return joined(
    {
      net: net.value,
      containers,
      residence: computed(stay),
      flood: computed(flood),
      outage: computed(outage),
      floor: computed(floor),
      running: computed(running),
    },
    net,
    parts,
  );
}

function displayFloor(
  containers: readonly Container[],
  { density, masses, footprintM2 }: NonNullable<SheetInputs["floor"]>,
): Answer<FloorLoad> | NoAnswer | undefined {
  const display = containers.find(({ role, inSystem }) => role === "display" && inSystem);
  const load = display === undefined ? undefined : containerLoad(display);
  if (load === undefined) return undefined;
  const { footprintM2: own, waterL, parts } = load;
  return floorLoad({
    waterL,
    density,
    parts: [...parts, ...masses],
    footprintM2: footprintM2 ?? { best: own, low: own, high: own },
  });
}

function inFlowOrder(nets: readonly ContainerNet[], order: readonly string[]): readonly ContainerNet[] {
  const place = ({ name, role, inSystem }: ContainerNet): number => {
    if (!inSystem) return order.length + 2;
    if (role === "display") return -1;
    const at = order.findIndex((one) => plainName(one) === plainName(name));
    return at < 0 ? order.length : at;
  };
  return [...nets].sort((a, b) => place(a) - place(b));
}

const NO_PRICE = { best: 0, low: 0, high: 0 } as Parameters<typeof runningCost>[1];

function computed<T>(answer: Answer<T> | NoAnswer | undefined): T | undefined {
  return answer?.kind === "answer" ? answer.value : undefined;
}
