import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Hours, type Litres, type Watts } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer, noAnswer } from "../result.ts";
import { pulldownTime, warmingEnergy } from "./heat.ts";
import type { KilowattHours } from "./plant-units.ts";
import { refuseIfNegative, refuseUnlessPositive } from "./usable-figures.ts";

export interface TemperatureChangeInputs {
  readonly volumeL: Estimate<Litres>;
  readonly kelvin: Estimate;
  /** Heater power, or heat the chiller removes. */
  readonly powerW: Estimate<Watts>;
  /** What works against it all the while: loss to the room, or heat coming in. */
  readonly againstW: Estimate<Watts>;
}

export interface TemperatureChange {
  readonly energyKWh: Estimate<KilowattHours>;
  readonly hours: Estimate<Hours>;
}

/** How long a heater or chiller takes to change the temperature of a volume. */
export function temperatureChange(inputs: TemperatureChangeInputs): Answer<TemperatureChange> | NoAnswer {
  const { volumeL, kelvin, powerW, againstW } = inputs;
  const refused =
    refuseUnlessPositive({ volume: volumeL, "change of temperature": kelvin, power: powerW }) ??
    refuseIfNegative({ "heat working against it": againstW });
  if (refused !== undefined) return refused;
  if (powerW.low <= againstW.high) {
    return noAnswer("power-does-not-suffice", { powerW: powerW.low, againstW: againstW.high });
  }
  const { estimates, drivers } = propagate(
    { volume: volumeL, "change of temperature": kelvin, power: powerW, "heat working against it": againstW },
    (v) => ({
      energyKWh: warmingEnergy(v.volume, v["change of temperature"]),
      hours: pulldownTime(
        v.volume,
        v["change of temperature"],
        v.power,
        as<Watts>(v["heat working against it"]),
      ),
    }),
  );
  return {
    kind: "answer",
    value: estimates,
    method: "Heat held by the water over the power left to move it",
    working: [
      "energy = litres × 4.092 kJ/(L K) × kelvin",
      "hours = energy ÷ (power − heat working against it)",
    ],
    constants: [{ name: "heat capacity of seawater", value: "4.092 kJ/(L K)", source: "gsw-heat-capacity" }],
    sources: ["gsw-heat-capacity", "first-principles"],
    assumptions: ["the water is well mixed", "power and what works against it stay the same throughout"],
    cautions: [caution("ask-an-electrician", {}, "danger")],
    driver: drivers.hours,
  };
}
