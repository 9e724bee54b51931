import type { NitrogenCautions, NitrogenRefusals } from "../core/nitrogen/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the nitrogen room. */
export const nitrogenCautionWording: Wording<NitrogenCautions> = {
  "ammonia-estimate": ({ phError }) =>
    `This is an estimate from your pH and temperature: a pH error of ${phError} changes it by more than half.`,
  "ration-assumed": ({ lowPercent, highPercent }) =>
    `No food was named, so a usual ration of ${lowPercent}–${highPercent} % of body mass a day was assumed. Weigh what you give for a week: it decides every figure here.`,
  "fish-oxygen-unknown": () =>
    "No animals were named, so the oxygen they breathe is missing: the oxygen figures cover the filter and the food only.",
  "protein-looks-dry": ({ food, proteinPercent }) =>
    `${food}: ${proteinPercent} % protein is what dry matter holds, not moist food. If the label speaks of dry matter, say so, or the load comes out four to five times too high.`,
  "ration-looks-wrong": ({ percentPerDay }) =>
    `The food comes to ${percentPerDay} % of body mass a day, far from the usual 0.5–4 %. Check the grams, the number of meals and the sizes.`,
  "animals-given-no-food": ({ lowPercent }) =>
    `The food comes to ${lowPercent} % of body mass a day, which keeps few fish alive for long. If something else is eaten too, add it.`,
  "oxygen-reserve-short": ({ hours }) =>
    `After a meal the oxygen in the water lasts about ${hours} h if pumps and air stop. Keep a battery air pump ready, and feed less at a time.`,
  "meals-peak": ({ timesAverage }) =>
    `A few large meals make an ammonia peak about ${timesAverage} times the daily average. Smaller meals, more often, lower it without more filter.`,
  "flow-too-small-for-ammonia": ({ flowLPerH, neededLPerH }) =>
    `At ${flowLPerH} L/h too little ammonia reaches the filter to hold the level you accept, whatever the media: about ${neededLPerH} L/h would be needed.`,
  "alkalinity-falls": ({ dkhPerWeek }) =>
    `Turning this food into nitrate draws about ${dkhPerWeek} dKH a week. Measure alkalinity weekly and replace what goes.`,
  "filter-figures-rest-on-maturity": () =>
    "Filter figures hold for a film grown in at this salinity and temperature. A new filter, or one moved from fresh water to salt, does almost nothing at first.",
  "accepted-ammonia-depends-on-ph": ({ averageMgPerL, peakMgPerL }) =>
    `The area is for ${averageMgPerL} mg/L ammonia nitrogen on average and ${peakMgPerL} mg/L after a meal. At pH above 8.2 or in warmer water accept less.`,
  "adult-size-from-memory": ({ animal, lengthCm }) =>
    `${animal}: the adult length of ${lengthCm} cm is the greatest usually given for wild fish, from memory. Many stay smaller in a tank, and growth takes years.`,
  "adult-size-unknown": ({ animal }) =>
    `${animal}: no adult length is known here, so only the present size is counted. Look up how large it grows before buying.`,
};

/** The sentence for each refusal of the nitrogen room. */
export const nitrogenRefusalWording: Wording<NitrogenRefusals> = {
  "no-food-and-no-animals": () => "There is nothing to add up yet: name the food given, or the animals kept.",
  "protein-basis-not-said": ({ food, proteinPercent }) =>
    `${food}: is ${proteinPercent} % protein meant for the food as it goes in, or for its dry matter? The two can differ five times.`,
  "water-in-food-not-said": ({ food }) =>
    `${food}: the protein is given for dry matter, so the share of water in the food is needed too.`,
  "figure-out-of-range": ({ what, value, unit, min, max }) =>
    `The ${what} (${value}${unit === "" ? "" : ` ${unit}`}) is outside ${min}–${max}, where this sum means something. Check the figure and its unit.`,
};
