import { between, type Estimate, isExact } from "../quantity/estimate.ts";
import { as, type PH } from "../quantity/units.ts";

/** What a pH was read with. */
export type PhInstrument = "colour kit" | "meter, ordinary buffers" | "meter, total scale";

/** Half the step of a usual colour chart, and what eyes add to it. Source: common-practice. */
export const COLOUR_KIT_DOUBT = 0.2;

/** A pH read off a colour chart with the doubt that belongs to it; a range already given stands.
 *  Source: common-practice. */
export function phWithDoubt(pH: Estimate<PH>, instrument: PhInstrument): Estimate<PH> {
  if (instrument !== "colour kit" || !isExact(pH)) return pH;
  return between(as<PH>(pH.best - COLOUR_KIT_DOUBT), as<PH>(pH.best + COLOUR_KIT_DOUBT), pH.best);
}
