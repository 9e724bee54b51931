import type { PlansCautions } from "../core/plans/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the plans room. */
export const plansCautionWording: Wording<PlansCautions> = {
  "off-needs-watching": ({ device }) =>
    `While the ${device} is off the water gets less oxygen: keep air running, and look how the animals breathe. If they gasp, switch it on at once, whatever the plan says.`,
  "window-by-vet": () =>
    "How long it stays off for a medicine is for the vet who ordered it, or for its label, to say: I only keep the time.",
};
