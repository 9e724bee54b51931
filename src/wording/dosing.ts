import type { DosingCautions, DosingRefusals } from "../core/dosing/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the dosing room. */
export const dosingCautionWording: Wording<DosingCautions> = {
  "medicine-needs-a-vet": () =>
    "Medicine for animals is a vet's decision: ask one before anything goes into the water.",
};

/** The sentence for each refusal of the dosing room. */
export const dosingRefusalWording: Wording<DosingRefusals> = {
  "stock-weaker-than-target": ({ stock, target, unit }) =>
    `A stock of ${stock} ${unit} cannot be diluted to ${target} ${unit}: the stock has to be the stronger one.`,
};
