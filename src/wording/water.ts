import type { WaterCautions, WaterRefusals } from "../core/water/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the water room. */
export const waterCautionWording: Wording<WaterCautions> = {
  "outside-fitted-range": ({ quantity, value, unit, min, max }) =>
    `The ${quantity} (${value} ${unit}) is outside ${min}–${max} ${unit}, where the formula was fitted: treat the result with doubt.`,
};

/** The sentence for each refusal of the water room. */
export const waterRefusalWording: Wording<WaterRefusals> = {
  "target-not-between-waters": ({ now, target, added }) =>
    `Adding water of ${added} to water of ${now} can never reach ${target}: the target has to lie between the two.`,
};
