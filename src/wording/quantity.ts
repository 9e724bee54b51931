import type { QuantityCautions, QuantityRefusals } from "../core/quantity/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the quantity room. */
export const quantityCautionWording: Wording<QuantityCautions> = {
  "form-not-said": ({ as }) =>
    `It was not said what the milligrams are counted as, so ${as} was taken. Look at the kit: the whole ion and its nitrogen or phosphorus are several times apart.`,
  "ppm-is-mg-per-litre-here": () =>
    "Here ppm was read as mg/L, as kits print it. By weight (mg/kg) the figure is lower in sea water, by a little over 2 per cent.",
};

/** The sentence for each refusal of the quantity room. */
export const quantityRefusalWording: Wording<QuantityRefusals> = {
  "conversion-kinds-differ": ({ noun, target, units }) =>
    `${noun} cannot be turned into “${target}”. It can be turned into ${units}.`,
  "conversion-needs": ({ what, example }) => `That conversion needs ${what}. Try adding ${example}.`,
};
