import type { NitrogenCautions, NitrogenRefusals } from "../core/nitrogen/cautions.ts";
import type { Wording } from "./wording.ts";

/** The sentence for each caution of the nitrogen room. */
export const nitrogenCautionWording: Wording<NitrogenCautions> = {
  "ammonia-estimate": ({ phError, factor }) =>
    `This is an estimate from your pH and temperature: a pH reading ${phError} too low hides ${factor} times as much.`,
  "ammonia-raised": ({ limit }) =>
    `Above ${limit} mg/L NH₃, the usual target: feed less, and look for the cause (a dead animal, a stopped pump, a new or washed filter).`,
  "ammonia-act-today": ({ limit }) =>
    `Above ${limit} mg/L NH₃ fish come to harm: act today. Stop feeding, aerate strongly, and change water with water of equal or lower pH.`,
  "ammonia-emergency": ({ limit }) =>
    `Above ${limit} mg/L NH₃ this is an emergency: stop feeding, aerate, change water with water of equal or lower pH now, and use an ammonia binder if you have one. If animals look ill, call a vet.`,
  "raising-ph-raises-ammonia": ({ step, factor }) =>
    `Do not raise pH or alkalinity while ammonia is up: ${step} pH more makes ${factor} times as much NH₃.`,
  "binder-hides-ammonia": () =>
    "A binder was used: for a day or two ammonia kits still read the bound part, wholly or partly, so this figure cannot be trusted, and is most likely too high. Binders also use oxygen: aerate.",
  "source-water-has-higher-ph": ({ tank, source }) =>
    `The new water has a higher pH (${source}) than the tank (${tank}): it thins the ammonia but makes more of it harmful. Use more of it slowly, or bring its pH down by aerating first.`,
  "large-change-in-steps": ({ percent }) =>
    `A change of ${percent} % at once is hard on animals unless temperature and salinity match: match both, and split it if they can wait.`,
  "change-cannot-reach-limit": ({ limit }) =>
    `No single change reaches ${limit} mg/L NH₃ with this new water: it brings too much ammonia or too high a pH itself.`,
  "oxygen-low-now": ({ mgPerL, limit }) =>
    `${mgPerL} mg/L oxygen is under ${limit} mg/L: aerate at once, stop feeding, and check that every pump runs.`,
  "oxygen-cannot-hold": ({ mgPerL, limit }) =>
    `After a meal oxygen would settle near ${mgPerL} mg/L, under the ${limit} mg/L fish need: add aeration or surface movement before feeding this much.`,
  "oxygen-above-saturation": ({ mgPerL, saturation }) =>
    `${mgPerL} mg/L is more than air alone can hold here (${saturation} mg/L). Plants in strong light can do that; so can a probe out of calibration, or air drawn in by a pump, which harms fish.`,
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
  "filter-cannot-take-load": ({ takenGPerDay }) =>
    `This filter takes up about ${takenGPerDay} g of ammonia nitrogen a day at most: less than is made. Ammonia would keep rising: feed less or add grown-in media.`,
  "main-flow-stays-oxic": ({ boxes, flowLPerH, leastMgPerL }) =>
    `${boxes}: in a main flow of ${flowLPerH} L/h no box of these can become low in oxygen, whatever it is filled with: even if all oxygen use of the filter happened in one, ${leastMgPerL} mg/L would be left.`,
  "never-low-oxygen-in-main-flow": ({ box, flowLPerH, leastMgPerL }) =>
    `${box}: at ${flowLPerH} L/h this box cannot become low in oxygen, whatever medium is in it. Even if all oxygen use of the filter happened here, ${leastMgPerL} mg/L would be left. Only a slow side stream with something to feed on (dirt or dosed carbon) could.`,
  "low-oxygen-needs-side-stream": ({ box, flowLPerH, leastMgPerL, sideLPerH }) =>
    `${box}: at ${flowLPerH} L/h this box cannot become low in oxygen, whatever medium is in it; at least ${leastMgPerL} mg/L would be left. With what lives in it now, a side stream of at most ${sideLPerH} L/h could.`,
  "box-starves-of-oxygen": ({ box, mgPerL }) =>
    `${box}: oxygen falls to ${mgPerL} mg/L, where nitrifying slows down. Clean out the dirt, aerate it, or raise the flow.`,
  "anoxic-box-may-make-sulphide": ({ box }) =>
    `${box}: without oxygen it removes nitrate, but once nitrate runs out it makes hydrogen sulphide, which kills fish and harms people. At a smell of rotten eggs leave the room aired, stop any carbon, and bring the flow up slowly, to waste if you can.`,
  "side-stream-needs-food": ({ box }) =>
    `${box}: nothing in it uses enough oxygen at any flow. Nitrifying alone draws at most 4.6 mg/L per mg/L of ammonia; it needs dirt or dosed carbon.`,
  "side-stream-too-fast": ({ box, flowLPerH, sideLPerH }) =>
    `${box}: ${flowLPerH} L/h brings too much oxygen; with what lives in it now it turns low at about ${sideLPerH} L/h.`,
  "solids-belong-first": ({ box, solids }) =>
    `${box} stands before ${solids}: dirt clogs the media and feeds bacteria that crowd out the nitrifiers and take their oxygen. Catch solids first.`,
  "chemical-media-belong-after-solids": ({ box }) =>
    `${box} stands before the solids stage: dirt coats it within days. Give it water already strained.`,
  "aeration-before-slow-box": ({ box, aerated }) =>
    `${aerated} fills the water with oxygen just before ${box}, which has to use it up again. Feed ${box} from before the aeration.`,
  "aerate-after-slow-box": ({ box }) =>
    `Nothing aerates the water after ${box}: let its outlet fall into an aerated stage before it reaches the animals.`,
  "skimmer-belongs-before-media": ({ box }) =>
    `${box} works best on raw water, before the nitrifying media: what it takes out never becomes ammonia.`,
  "nitrogen-sinks-exceed-food": ({ sinksGPerDay, feedGPerDay }) =>
    `The ways out add up to ${sinksGPerDay} g of nitrogen a day, more than the ${feedGPerDay} g the food brings: one of the figures is too high, or nitrate is falling towards zero.`,
  "nitrate-never-settles": ({ mgPerLPerWeek }) =>
    `Without water changes nothing holds nitrate: it climbs about ${mgPerLPerWeek} mg/L every week.`,
  "sink-figures-are-guesses": () =>
    "Nitrogen leaving with solids, skimmate and algae is seldom measured: check the sum against your own nitrate readings.",
  "cycling-with-animals": () =>
    "Animals in an unripe filter breathe their own ammonia: test daily, feed very little, and change water as soon as ammonia rises. Ripening without animals is kinder.",
  "one-dose-is-not-enough": ({ proofMgPerL }) =>
    `A single dose shows the two steps but feeds too few bacteria to take up ${proofMgPerL} mg/L in a day: dose again each time it has gone.`,
  "fresh-seed-stops-in-salt": () =>
    "Media from fresh water all but stop in salt water, so they are not counted. Take media from a running sea-water filter.",
  "culture-strength-unknown": () =>
    "Nobody can tell from the bottle how much of a culture is alive: it is counted from next to nothing to strong. Your readings will show.",
  "seed-may-carry-disease": () =>
    "Rock and media from another tank bring its parasites and algae along: take them only from a tank whose animals are well.",
  "cycle-may-outlast-outlook": ({ days, percent }) =>
    `In ${percent} of 100 possible courses the filter is still not ready after ${days} days. Trust your tests, not the calendar.`,
  "alkalinity-stalls-cycle": ({ leastMeqPerL }) =>
    `Alkalinity runs down to about ${leastMeqPerL} meq/L, and the bacteria slow with it. Measure it, and put back what goes.`,
  "readings-do-not-fit": ({ days }) =>
    `The readings of day ${days} fit no course of this model. Check the unit on the kit (nitrogen, NH₃, NO₂), and whether a dose or water change is missing here.`,
  "stock-slowly-after-cycling": () =>
    "Once it has passed twice, change most of the water and add animals a few at a time: the filter is proven for that much ammonia a day and no more.",
  "animal-stings": ({ animals }) =>
    `Venom (${animals}): never by hand or net. Move it in a container, work with long tools and not alone, and have the number of a doctor at hand: a sting is a doctor's matter at once.`,
  "animal-wounds": ({ animals }) =>
    `Teeth and blades (${animals}): see where it is before a hand goes in, use tools, and keep cables out of its reach.`,
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
  "no-filter-boxes": () => "Name at least one filter box, with its water and what flows through it.",
  "ammonia-form-not-said": ({ value }) =>
    `Does your kit give ${value} mg/L as nitrogen (NH₃-N, TAN), as NH₃ or as NH₄? They differ by up to 29 %; the leaflet or the colour card says which.`,
  "figure-out-of-range": ({ what, value, unit, min, max }) =>
    `The ${what} (${value}${unit === "" ? "" : ` ${unit}`}) is outside ${min}–${max}, where this sum means something. Check the figure and its unit.`,
};
