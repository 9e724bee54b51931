import type { CarbonateCautions } from "../core/carbonate/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the carbonate room. */
export const carbonateCautionWording: Wording<CarbonateCautions> = {
  "dissolve-apart": () =>
    "Never add calcium and carbonate at the same place or time: they fall out as chalk.",
};
