import { type Estimate, exactly, propagate } from "../quantity/estimate.ts";
import { as, type Money, type Watts } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer, noAnswer } from "../result.ts";
import type { Amperes, KilowattHours, Volts } from "./plant-units.ts";
import { refuseIfNegative, refuseOutside, refuseSameNames, refuseUnlessPositive } from "./usable-figures.ts";

/** Share of a circuit's rating for loads that run three hours or more; the rating is 125 % of them.
 *  Source: nfpa-70, 210.20(A). Range: the United States. */
const CONTINUOUS_FACTOR = 1.25;
/** Current of a motor at the moment of starting, against running. Source: from memory, carried as common-practice. */
const MOTOR_START = 5;
export const DAYS_PER_MONTH = 365.25 / 12;

/** Cost of a load. Source: first-principles. */
export function energyCost(watts: Watts, hoursPerDay: number, pricePerKWh: number, days: number): Money {
  return as<Money>((watts / 1000) * hoursPerDay * days * pricePerKWh);
}

/** Current drawn; a power factor below 1 draws more for the same power. Source: first-principles.
 *  Throws: RangeError when the voltage is not above 0, or the power factor not above 0 and at most 1. */
export function current(watts: Watts, volts: Volts, powerFactor = 1): Amperes {
  if (!(volts > 0 && powerFactor > 0 && powerFactor <= 1))
    throw new RangeError("voltage or power factor out of range");
  return as<Amperes>(watts / (volts * powerFactor));
}

/** Least rating for a mix of continuous and other load. Source: nfpa-70, 210.20(A). */
export function leastRating(continuous: Watts, other: Watts, volts: Volts): Amperes {
  return as<Amperes>((CONTINUOUS_FACTOR * continuous + other) / volts);
}

/** Most continuous power a rating allows; the same rule read backwards. Source: nfpa-70, 210.20(A). */
export function mostContinuous(rating: Amperes, volts: Volts): Watts {
  return as<Watts>((rating * volts) / CONTINUOUS_FACTOR);
}

export interface ElectricDevice {
  readonly name: string;
  /** While it runs. */
  readonly watts: Estimate<Watts>;
  readonly hoursPerDay: Estimate;
  /** Electronic pumps and lights may be at 0.5–0.7; heaters at 1. */
  readonly powerFactor?: number;
  readonly isMotor: boolean;
  /** Whether the animals depend on it within hours: return, circulation, heating, air. */
  readonly isLifeSupport: boolean;
  readonly circuit: string;
}

export interface Circuit {
  readonly name: string;
  readonly ratingA: Amperes;
  readonly hasGroundFaultProtection: boolean;
}

export interface ElectricInputs {
  readonly devices: readonly ElectricDevice[];
  readonly circuits: readonly Circuit[];
  readonly volts: Volts;
  readonly pricePerKWh: Estimate<Money>;
}

export interface CircuitLoad {
  readonly circuit: string;
  readonly amperes: Estimate<Amperes>;
  /** Most for continuous load by the United States rule. */
  readonly continuousLimitA: Amperes;
  /** The largest motor starting while all else runs. */
  readonly startUpA: Estimate<Amperes>;
  readonly hasGroundFaultProtection: boolean;
  readonly lifeSupport: readonly string[];
}

export interface ElectricLoad {
  readonly totalW: Estimate<Watts>;
  readonly kWhPerDay: Estimate<KilowattHours>;
  readonly costPerMonth: Estimate<Money>;
  readonly costPerYear: Estimate<Money>;
  readonly circuits: readonly CircuitLoad[];
}

/** Running cost, and how the load lies on the circuits. Information for the member and the electrician. */
export function electricLoad(inputs: ElectricInputs): Answer<ElectricLoad> | NoAnswer {
  const refused = refuseElectric(inputs);
  if (refused !== undefined) return refused;
  const { devices, circuits, volts } = inputs;
  const ranged: Readonly<Record<string, Estimate>> = {
    "price of power": inputs.pricePerKWh,
    ...Object.fromEntries(devices.map(({ name, watts }) => [`power of ${name}`, watts])),
    ...Object.fromEntries(devices.map(({ name, hoursPerDay }) => [`hours of ${name}`, hoursPerDay])),
  };
  const { estimates, drivers } = propagate(ranged, (v) => {
    const at = (name: string) => v[name] ?? 0;
    const sum = (of: (device: ElectricDevice) => number) =>
      devices.reduce((total, device) => total + of(device), 0);
    const kWh = sum(({ name }) => (at(`power of ${name}`) * at(`hours of ${name}`)) / 1000);
    return {
      totalW: as<Watts>(sum(({ name }) => at(`power of ${name}`))),
      kWhPerDay: as<KilowattHours>(kWh),
      costPerMonth: as<Money>(kWh * DAYS_PER_MONTH * at("price of power")),
      costPerYear: as<Money>(kWh * 365.25 * at("price of power")),
    };
  });
  const loads = circuits.map((circuit) => circuitLoad(circuit, devices, volts));
  return {
    kind: "answer",
    value: { ...estimates, circuits: loads },
    method: "Power × hours × price; current per circuit = power ÷ (voltage × power factor)",
    working: [
      "cost = watts ÷ 1000 × hours a day × days × price",
      "current = watts ÷ (voltage × power factor), all devices on at once",
      "continuous load: rating ÷ 1.25",
      "start-up: the largest motor at five times its current, all else running",
    ],
    constants: [
      { name: "continuous load", value: "125 %, that is 80 % of the rating", source: "nfpa-70" },
      { name: "start-up current of a motor", value: "× 5, a moment", source: "common-practice" },
    ],
    sources: ["first-principles", "nfpa-70", "cpsc-ground-fault", "osstf-tank-safety", "common-practice"],
    assumptions: [
      "the watts are measured, or the label's",
      "all life support counts as continuous load",
      "everything may run at once",
    ],
    cautions: electricCautions(loads, devices),
    driver: drivers.costPerMonth,
  };
}

function circuitLoad(circuit: Circuit, devices: readonly ElectricDevice[], volts: Volts): CircuitLoad {
  const own = devices.filter((device) => device.circuit === circuit.name);
  const ranged: Readonly<Record<string, Estimate>> = Object.fromEntries(
    own.map(({ name, watts }) => [name, watts]),
  );
  const { estimates } = propagate(ranged, (v) => {
    const amperes = own.map(({ name, powerFactor, isMotor }) => ({
      isMotor,
      running: current(as<Watts>(v[name] ?? 0), volts, powerFactor ?? 1),
    }));
    const total = amperes.reduce((sum, { running }) => sum + running, 0);
    const largest = Math.max(0, ...amperes.filter(({ isMotor }) => isMotor).map(({ running }) => running));
    return { amperes: as<Amperes>(total), startUpA: as<Amperes>(total + largest * (MOTOR_START - 1)) };
  });
  return {
    circuit: circuit.name,
    ...estimates,
    continuousLimitA: as<Amperes>(circuit.ratingA / CONTINUOUS_FACTOR),
    hasGroundFaultProtection: circuit.hasGroundFaultProtection,
    lifeSupport: own.filter(({ isLifeSupport }) => isLifeSupport).map(({ name }) => name),
  };
}

function electricCautions(
  loads: readonly CircuitLoad[],
  devices: readonly ElectricDevice[],
): readonly Caution[] {
  const cautions: Caution[] = [caution("ask-an-electrician", {}, "danger")];
  for (const { circuit, amperes, continuousLimitA, startUpA, hasGroundFaultProtection } of loads) {
    if (amperes.high > continuousLimitA) {
      cautions.push(
        caution("circuit-overloaded", { circuit, amperes: amperes.high, limitA: continuousLimitA }, "danger"),
      );
    }
    const ratingA = continuousLimitA * CONTINUOUS_FACTOR;
    if (startUpA.high > ratingA) {
      cautions.push(caution("start-up-surge", { circuit, surgeA: startUpA.high, ratingA }));
    }
    if (!hasGroundFaultProtection)
      cautions.push(caution("no-ground-fault-protection", { circuit }, "danger"));
  }
  const carrying = loads.filter(({ lifeSupport }) => lifeSupport.length > 0);
  const only = carrying[0];
  if (
    carrying.length === 1 &&
    only !== undefined &&
    devices.filter(({ isLifeSupport }) => isLifeSupport).length > 1
  ) {
    cautions.push(caution("life-support-on-one-circuit", { circuit: only.circuit }));
  }
  cautions.push(caution("drip-loops", {}), caution("american-rule", {}, "note"));
  return cautions;
}

function refuseElectric({ devices, circuits, volts, pricePerKWh }: ElectricInputs): NoAnswer | undefined {
  if (devices.length === 0) return noAnswer("nothing-named", { what: "a device" });
  const homeless = devices.find(({ circuit }) => !circuits.some(({ name }) => name === circuit));
  if (homeless !== undefined)
    return noAnswer("circuit-not-named", { device: homeless.name, circuit: homeless.circuit });
  return (
    refuseSameNames(devices) ??
    refuseSameNames(circuits) ??
    refuseUnlessPositive({
      voltage: exactly(volts),
      ...Object.fromEntries(circuits.map(({ name, ratingA }) => [`rating of ${name}`, exactly(ratingA)])),
    }) ??
    refuseIfNegative({
      "price of power": pricePerKWh,
      ...Object.fromEntries(devices.map(({ name, watts }) => [`power of ${name}`, watts])),
    }) ??
    refuseOutside(
      Object.fromEntries(devices.map(({ name, hoursPerDay }) => [`hours of ${name}`, hoursPerDay])),
      0,
      24,
    ) ??
    refuseOutside(
      Object.fromEntries(
        devices.map(({ name, powerFactor }) => [`power factor of ${name}`, exactly(powerFactor ?? 1)]),
      ),
      0.05,
      1,
    )
  );
}
