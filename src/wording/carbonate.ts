import type { CarbonateCautions, CarbonateRefusals } from "../core/carbonate/cautions.ts";
import { roundFigure, sentenceCase } from "./dosing.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the carbonate room. */
export const carbonateCautionWording: Wording<CarbonateCautions> = {
  "dissolve-apart": () =>
    "Never add calcium and carbonate at the same place or time: they fall out as chalk.",
  "raise-in-order": () =>
    "If several are low, bring up magnesium first; then alkalinity and calcium on different days, testing in between.",
  "carbonate-jumps-ph": () =>
    "Carbonate lifts the pH at once: drip it slowly into strong flow, and stop if the pH has gone up by 0.2.",
  "carbonate-irritates": () =>
    "Sodium carbonate burns eyes and irritates skin: raise no dust, and stir it into the water with gloves and eye protection.",
  "bicarbonate-dips-ph": () =>
    "Bicarbonate lowers the pH a little at first, and it comes back as the water is aired.",
  "alkalinity-with-ammonia": () =>
    "There is ammonia in the water: raising pH or alkalinity makes it more poisonous. See to the ammonia first.",
  "calcium-chloride-heats": () =>
    "The dry salt gets hot as it dissolves: add it to the water bit by bit, with gloves and eye protection, and let it cool.",
  "chloride-builds-up": () =>
    "Each dose leaves chloride behind: over months, water changes have to bring the balance back.",
  "sulphate-builds-up": () =>
    "Each dose leaves sulphate behind: over months, water changes have to bring the balance back.",
  "target-unusual": ({ mineral, target, unit, low, high }) =>
    `${roundFigure(target)} ${unit} is not a usual target for ${mineral} (${low}–${high} ${unit}): check it before dosing.`,
  "pH-electrode-doubt": ({ pH }) =>
    `A meter calibrated in ordinary buffers can be off by ${pH} in sea water: the range counts that in.`,
  "ventilate-do-not-buffer": () =>
    "The alkalinity is fine and the pH is low: that is carbon dioxide. Let fresh air in and aerate; do not add buffer.",
  "carbon-dioxide-of-the-room": ({ microatm }) =>
    `The water holds carbon dioxide for about ${roundFigure(microatm)} µatm, and outdoor air has 420: the room's air, too little aeration, or too many mouths.`,
  "alkalinity-low": ({ dkh, low, high }) =>
    `Alkalinity of ${roundFigure(dkh)} dKH is below the usual ${low}–${high}: nitrification has made acid of it. Raise it, slowly.`,
  "alkalinity-high": ({ dkh, low, high }) =>
    `Alkalinity of ${roundFigure(dkh)} dKH is above the usual ${low}–${high}: stop dosing it, and let it come down by itself.`,
  "water-changes-cannot-hold": ({ settlesDkh }) =>
    settlesDkh > 0
      ? `With these water changes alone alkalinity settles near ${roundFigure(settlesDkh)} dKH: dose as well, or change more.`
      : "These water changes alone cannot hold alkalinity up: it runs out. Dose as well, or change more.",
};

/** The sentence for each refusal of the carbonate room. */
export const carbonateRefusalWording: Wording<CarbonateRefusals> = {
  "mineral-already-there": ({ mineral, now, target, unit }) =>
    `${sentenceCase(mineral)} is at ${roundFigure(now)} ${unit} and ${roundFigure(target)} ${unit} is wanted: with that, nothing is certain to be missing. Do not dose.`,
  "carbonate-needs-sea-water": ({ salinity, min }) =>
    `This sum is for sea water: salinity ${roundFigure(salinity)} is below ${min}, where its constants mean nothing.`,
  "carbonate-reading-impossible": ({ quantity, value, unit, min, max }) =>
    `The ${quantity} was read as ${roundFigure(value)} ${unit}: it should lie between ${min} and ${max}.`,
};
