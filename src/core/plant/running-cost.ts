import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Money, type Watts } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { type Circuit, DAYS_PER_MONTH, type ElectricDevice } from "./electric-load.ts";
import type { KilowattHours } from "./plant-units.ts";
import { UNNAMED_CIRCUIT } from "./read-electric.ts";
import { refuseIfNegative, refuseOutside, refuseSameNames } from "./usable-figures.ts";

const DAYS_PER_YEAR = 365.25;

export interface RunningCost {
  /** Mean over the day. */
  readonly meanW: Estimate<Watts>;
  readonly kWhPerDay: Estimate<KilowattHours>;
  readonly costPerMonth: Estimate<Money>;
  readonly costPerYear: Estimate<Money>;
  readonly devices: readonly { readonly name: string; readonly costPerMonth: Estimate<Money> }[];
}

/** What devices cost to run. */
export function runningCost(
  devices: readonly ElectricDevice[],
  pricePerKWh: Estimate<Money>,
): Answer<RunningCost> | NoAnswer {
  if (devices.length === 0) return noAnswer("nothing-named", { what: "a device" });
  const refused =
    refuseSameNames(devices) ??
    refuseIfNegative({
      "price of power": pricePerKWh,
      ...Object.fromEntries(devices.map(({ name, watts }) => [`power of ${name}`, watts])),
    }) ??
    refuseOutside(
      Object.fromEntries(devices.map(({ name, hoursPerDay }) => [`hours of ${name}`, hoursPerDay])),
      0,
      24,
    );
  if (refused !== undefined) return refused;
  const ranged: Readonly<Record<string, Estimate>> = {
    "price of power": pricePerKWh,
    ...Object.fromEntries(devices.map(({ name, watts }) => [`power of ${name}`, watts])),
    ...Object.fromEntries(devices.map(({ name, hoursPerDay }) => [`hours of ${name}`, hoursPerDay])),
  };
  const kWhOf = (v: Readonly<Record<string, number>>, { name }: ElectricDevice) =>
    ((v[`power of ${name}`] ?? 0) * (v[`hours of ${name}`] ?? 0)) / 1000;
  const { estimates, drivers } = propagate(ranged, (v) => {
    const kWh = devices.reduce((sum, device) => sum + kWhOf(v, device), 0);
    return {
      kWhPerDay: as<KilowattHours>(kWh),
      meanW: as<Watts>((kWh * 1000) / 24),
      costPerMonth: as<Money>(kWh * DAYS_PER_MONTH * (v["price of power"] ?? 0)),
      costPerYear: as<Money>(kWh * DAYS_PER_YEAR * (v["price of power"] ?? 0)),
    };
  });
  const each = devices.map((device) => ({
    name: device.name,
    costPerMonth: propagate(ranged, (v) => ({
      cost: as<Money>(kWhOf(v, device) * DAYS_PER_MONTH * (v["price of power"] ?? 0)),
    })).estimates.cost,
  }));
  return {
    kind: "answer",
    value: { ...estimates, devices: each },
    method: "Power × hours × price",
    working: ["cost = watts ÷ 1000 × hours a day × days × price", "a month is a twelfth of 365.25 days"],
    constants: [],
    sources: ["first-principles"],
    assumptions: ["the watts are measured, or the label's", "heaters and chillers run the hours said"],
    cautions: [caution("ask-an-electrician", {}, "danger"), caution("drip-loops", {})],
    driver: drivers.costPerMonth,
  };
}

/** Devices that named no circuit hang on the only one there is. */
export function onCircuits(
  devices: readonly ElectricDevice[],
  circuits: readonly Circuit[],
): readonly ElectricDevice[] {
  const [only, ...others] = circuits;
  return devices.map((device) => {
    const same = circuits.find(({ name }) => name.toLowerCase() === device.circuit.toLowerCase());
    if (same !== undefined) return { ...device, circuit: same.name };
    return device.circuit === UNNAMED_CIRCUIT && only !== undefined && others.length === 0
      ? { ...device, circuit: only.name }
      : device;
  });
}
