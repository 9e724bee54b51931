import type { NitrogenCautions, NitrogenRefusals } from "../core/nitrogen/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the nitrogen room. */
export const nitrogenCautionWording: Wording<NitrogenCautions> = {
  "ammonia-estimate": ({ phError }) =>
    `This is an estimate from your pH and temperature: a pH error of ${phError} changes it by more than half.`,
};

/** The sentence for each refusal of the nitrogen room. */
export const nitrogenRefusalWording: Wording<NitrogenRefusals> = {
  "no-food-and-no-animals": () => "There is nothing to add up yet: name the food given, or the animals kept.",
};
