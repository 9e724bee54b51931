import type { TankCautions, TankRefusals } from "../core/tank/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the tank room. */
export const tankCautionWording: Wording<TankCautions> = {
  "volume-from-label": ({ containers }) =>
    `The volume of ${containers} is a label or brimful figure, not water measured: the true amount is less.`,
};

/** The sentence for each refusal of the tank room. */
export const tankRefusalWording: Wording<TankRefusals> = {
  "nothing-left-to-hold-water": ({ container, grossL, displacedL }) =>
    `${container} holds ${grossL} L, and its rock and sand take up ${displacedL} L: one of the figures must be wrong.`,
};
