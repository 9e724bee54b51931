import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Litres, type LitresPerHour, type SquareMetres } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer } from "../result.ts";
import type { Millimetres, Minutes } from "./plant-units.ts";
import { refuseIfNegative, refuseUnlessPositive } from "./usable-figures.ts";

export interface BlockedDrainInputs {
  /** Water the pump can take before its inlet draws air. */
  readonly pumpableL: Estimate<Litres>;
  /** Surface of display and overflow box together. */
  readonly areaM2: Estimate<SquareMetres>;
  /** From the running level to the display's rim, or to its lowest hole. */
  readonly freeboardMm: Estimate<Millimetres>;
  readonly flow?: Estimate<LitresPerHour>;
}

export interface BlockedDrain {
  readonly riseMm: Estimate<Millimetres>;
  readonly leftMm: Estimate<Millimetres>;
  readonly outcome: "floods" | "may flood" | "fits";
  /** Spilled before the pump draws air. */
  readonly spilledL: Estimate<Litres>;
  /** Until the pump draws air, when the flow is known. */
  readonly minutes: Estimate<Minutes> | undefined;
}

/** What happens when every drain is blocked and the pump goes on. */
export function blockedDrain(inputs: BlockedDrainInputs): Answer<BlockedDrain> | NoAnswer {
  const { pumpableL, areaM2, freeboardMm, flow } = inputs;
  const refused =
    refuseUnlessPositive({ "surface of the display": areaM2, flow }) ??
    refuseIfNegative({ "water the pump reaches": pumpableL, "room above the display's water": freeboardMm });
  if (refused !== undefined) return refused;
  const { estimates, drivers } = propagate(
    {
      "water the pump reaches": pumpableL,
      "surface of the display": areaM2,
      "room above the display's water": freeboardMm,
      flow: flow ?? { best: 1, low: 1, high: 1 },
    },
    (v) => {
      const rise = v["water the pump reaches"] / v["surface of the display"];
      const left = v["room above the display's water"] - rise;
      return {
        riseMm: as<Millimetres>(rise),
        leftMm: as<Millimetres>(left),
        spilledL: as<Litres>(Math.max(0, -left * v["surface of the display"])),
        minutes: as<Minutes>((v["water the pump reaches"] / v.flow) * 60),
      };
    },
  );
  const outcome = estimates.leftMm.best < 0 ? "floods" : estimates.leftMm.low < 0 ? "may flood" : "fits";
  const figures = { riseMm: estimates.riseMm.best, freeboardMm: freeboardMm.best };
  const cautions: Caution[] =
    outcome === "floods"
      ? [caution("blocked-drain-floods", figures, "danger")]
      : outcome === "may flood"
        ? [caution("blocked-drain-tight", figures)]
        : [];
  return {
    kind: "answer",
    value: {
      riseMm: estimates.riseMm,
      leftMm: estimates.leftMm,
      outcome,
      spilledL: estimates.spilledL,
      minutes: flow && estimates.minutes,
    },
    method: "All the water the pump can reach ends in the display",
    working: [
      "rise = water above the pump's inlet ÷ surface of display and overflow box (1 L on 1 m² is 1 mm)",
      "left = room above the running level − rise",
    ],
    constants: [],
    sources: ["mass-balance"],
    assumptions: [
      "no drain takes anything at all",
      "top-off is not refilling the pump's container meanwhile",
      "containers upstream hold back what lies under their outlets",
    ],
    cautions: [...cautions, caution("strainer-takes-area", {}, "note")],
    driver: drivers.leftMm,
  };
}
