import { between, type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Fraction, type Hours, type Watts } from "../quantity/units.ts";
import { type Answer, caution, type NoAnswer } from "../result.ts";
import type { Volts } from "./plant-units.ts";
import { refuseOutside, refuseUnlessPositive } from "./usable-figures.ts";

export type BatteryKind = "lead-acid" | "lithium iron phosphate";

/** Share that may be drawn without harm. Source: common-practice. */
export const DEPTH_OF_DISCHARGE = {
  "lead-acid": 0.5,
  "lithium iron phosphate": 0.8,
} as const satisfies Record<BatteryKind, number>;
/** Source: common-practice. */
const INVERTER = between<Fraction>(as(0.85), as(0.9), as(0.87));
/** What is left of the printed capacity with age and fast discharge. Source: common-practice. */
const HEALTH = between<Fraction>(as(0.7), as(1), as(0.85));

/** Hours a battery runs a load. Source: first-principles. Throws: RangeError for a load not above 0. */
export function runtime(
  ampHours: number,
  volts: Volts,
  depthOfDischarge: number,
  efficiency: number,
  load: Watts,
): Hours {
  if (!(load > 0)) throw new RangeError("a load has to draw something");
  return as<Hours>((ampHours * volts * depthOfDischarge * efficiency) / load);
}

export interface BatteryInputs {
  readonly kind: BatteryKind;
  readonly ampHours: Estimate;
  readonly volts: Volts;
  readonly load: Estimate<Watts>;
  /** Mains devices behind an inverter, or direct-current devices straight from the battery. */
  readonly through: "inverter" | "direct";
}

/** How long a battery runs a load. */
export function batteryRuntime(
  inputs: BatteryInputs,
): Answer<{ readonly hours: Estimate<Hours> }> | NoAnswer {
  const { kind, ampHours, volts, load, through } = inputs;
  const refused =
    refuseUnlessPositive({ capacity: ampHours, load }) ??
    refuseOutside({ voltage: between(volts, volts) }, 1, 100);
  if (refused !== undefined) return refused;
  const direct = between<Fraction>(as(1), as(1), as(1));
  const { estimates, drivers } = propagate(
    {
      capacity: ampHours,
      load,
      "inverter efficiency": through === "inverter" ? INVERTER : direct,
      "age of the battery": HEALTH,
    },
    (v) => ({
      hours: runtime(
        v.capacity * v["age of the battery"],
        volts,
        DEPTH_OF_DISCHARGE[kind],
        v["inverter efficiency"],
        v.load,
      ),
    }),
  );
  return {
    kind: "answer",
    value: estimates,
    method: "Energy that may be drawn, over the load",
    working: ["hours = amp-hours × volts × share that may be drawn × inverter efficiency × health ÷ watts"],
    constants: [
      {
        name: `share drawn from ${kind}`,
        value: String(DEPTH_OF_DISCHARGE[kind]),
        source: "common-practice",
      },
      ...(through === "inverter"
        ? [{ name: "inverter efficiency", value: "0.87 (0.85–0.90)", source: "common-practice" } as const]
        : []),
      {
        name: "capacity left with age and fast discharge",
        value: "0.85 (0.70–1.00)",
        source: "common-practice",
      },
    ],
    sources: ["first-principles", "common-practice"],
    assumptions: ["fully charged at the start", "the load is the real draw, measured"],
    cautions: [caution("battery-fades", {}, "note"), caution("ask-an-electrician", {}, "danger")],
    driver: drivers.hours,
  };
}
