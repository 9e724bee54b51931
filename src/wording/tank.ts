import type { TankCautions, TankRefusals } from "../core/tank/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the tank room. */
export const tankCautionWording: Wording<TankCautions> = {
  "volume-from-label": ({ containers }) =>
    `The volume of ${containers} is a label or brimful figure, not water measured: the true amount is less. Fill it once through a meter, or measure its inside and the water level.`,
  "running-level-not-said": ({ containers }) =>
    `How high the water stands in ${containers} was not said. Measure from the inside floor to the surface, with the pumps running.`,
  "inside-or-outside-not-said": ({ containers }) =>
    `Whether the dimensions of ${containers} are inside or outside was not said: thick walls can take up several per cent.`,
  "wall-not-said": ({ containers }) =>
    `The dimensions of ${containers} are from outside, and the walls were not measured. A usual thickness was assumed for this volume only: it says nothing about strength.`,
  "rock-weighed-wet": ({ containers }) =>
    `The rock in ${containers} was weighed wet, so how much of the weight is water is guessed. Weigh some of it dry to know better.`,
  "no-display-named": ({ containers }) =>
    `None of ${containers} is called a display, so its share is not shown. Put “display” in its name.`,
};

/** The sentence for each refusal of the tank room. */
export const tankRefusalWording: Wording<TankRefusals> = {
  "nothing-left-to-hold-water": ({ container, grossL, displacedL }) =>
    `${container} holds ${rounded(grossL)} L, and its rock and sand take up ${rounded(displacedL)} L: one of the figures must be wrong.`,
  "level-above-rim": ({ container, levelCm, rimCm }) =>
    `The water in ${container} cannot stand ${rounded(levelCm)} cm deep: its rim is ${rounded(rimCm)} cm above the inside floor.`,
  "impossible-container": ({ container, fault }) => `${container} cannot exist as described: ${fault}.`,
  "no-water-in-system": ({ containers }) =>
    containers === ""
      ? "There is no container to add up yet: describe at least one."
      : `None of ${containers} is part of the running system, so there is nothing to add up.`,
};

function rounded(value: number): string {
  return String(Number(value.toPrecision(4)));
}
