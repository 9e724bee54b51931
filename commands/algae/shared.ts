import type { MgNPerL } from "../../src/core/nitrogen/nitrogen-units.ts";
import { readNitrate } from "../../src/core/nitrogen/read-nitrogen.ts";
import type { Estimate } from "../../src/core/quantity/estimate.ts";
import { type Option, optional, quantity, reading } from "../../src/kit/index.ts";

/** mg/L of nitrate as the kit prints it; counted as nitrogen inside. */
export const nitrate = (description: string): Option<Estimate<MgNPerL>, true> =>
  reading(description, "10 mg/L", (text, { habits }) => readNitrate(text, habits));

/** What is known of the algae themselves, if anything. */
export const algaeOptions = {
  dry: optional(
    quantity.fraction("Dry share of the drained algae, if you have weighed it; 5–15 % if left out", "10 %"),
  ),
  nitrogen: optional(quantity.fraction("Nitrogen of the dry algae, if known; 2–5 % if left out", "3 %")),
};
