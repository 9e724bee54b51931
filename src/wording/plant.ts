import type { PlantCautions, PlantRefusals } from "../core/plant/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the plant room. */
export const plantCautionWording: Wording<PlantCautions> = {
  "ask-an-electrician": () =>
    "Mains power beside water can kill: have a licensed electrician check the circuit, and follow the local code.",
};

/** The sentence for each refusal of the plant room. */
export const plantRefusalWording: Wording<PlantRefusals> = {
  "pump-cannot-lift": ({ shutOffHeadM, staticHeadM }) =>
    `No flow: the pump lifts at most ${shutOffHeadM} m, and the water must rise ${staticHeadM} m.`,
};
