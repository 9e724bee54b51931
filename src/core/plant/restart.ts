import { type Estimate, propagate } from "../quantity/estimate.ts";
import { as, type Litres, type LitresPerHour } from "../quantity/units.ts";
import { type Answer, type Caution, caution, type NoAnswer } from "../result.ts";
import type { Minutes } from "./plant-units.ts";
import { refuseIfNegative, refuseUnlessPositive } from "./usable-figures.ts";

export interface RestartInputs {
  /** What display, pipes and overflow box have to take up again before the drains run. */
  readonly refillL: Estimate<Litres>;
  /** Water over the pump's inlet in its own chamber at standstill; what joins it slowly is left out. */
  readonly chamberL: Estimate<Litres>;
  readonly flow: Estimate<LitresPerHour>;
}

export interface Restart {
  /** Left over the inlet when the drains begin to run; below nothing: what is missing. */
  readonly leftL: Estimate<Litres>;
  readonly refillMinutes: Estimate<Minutes>;
}

/** Whether the pump draws air when it starts again, before water comes back down. */
export function restart(inputs: RestartInputs): Answer<Restart> | NoAnswer {
  const refused =
    refuseUnlessPositive({ flow: inputs.flow }) ??
    refuseIfNegative({ "water to refill": inputs.refillL, "water over the pump's inlet": inputs.chamberL });
  if (refused !== undefined) return refused;
  const { estimates, drivers } = propagate(
    { "water to refill": inputs.refillL, "water over the pump's inlet": inputs.chamberL, flow: inputs.flow },
    (v) => ({
      leftL: as<Litres>(v["water over the pump's inlet"] - v["water to refill"]),
      refillMinutes: as<Minutes>((v["water to refill"] / v.flow) * 60),
    }),
  );
  const cautions: Caution[] =
    estimates.leftL.low < 0 ? [caution("restart-runs-dry", { missingL: -estimates.leftL.low })] : [];
  return {
    kind: "answer",
    value: estimates,
    method: "What has to go up before anything comes down, against what the pump can reach",
    working: [
      "left = water over the inlet at standstill − water to refill",
      "minutes = water to refill ÷ flow × 60",
    ],
    constants: [],
    sources: ["mass-balance"],
    assumptions: ["nothing flows into the chamber meanwhile", "the flow is that of normal running"],
    cautions: [...cautions, caution("do-pump-off-test", {}, "note")],
    driver: drivers.leftL,
  };
}
