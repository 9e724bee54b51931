import type { WaterCautions, WaterRefusals } from "../core/water/cautions.ts";
import type { Wording } from "./wording.ts";

/** Three figures that count: a sentence needs no more. */
function say(value: number): string {
  return String(Number(value.toPrecision(3)));
}

/** A mass as a kitchen scale shows it: grams under a kilogram. */
function massText(kilograms: number): string {
  return kilograms < 1 ? `${say(kilograms * 1000)} g` : `${say(kilograms)} kg`;
}

/** A figure with its unit; a bare count, a pH, has none. */
function withUnit(figure: string, unit: string): string {
  return `${figure} ${unit}`.trim();
}

/** The sentence for each caution of the water room. */
export const waterCautionWording: Wording<WaterCautions> = {
  "outside-fitted-range": ({ quantity, value, unit, min, max }) =>
    `The ${quantity} (${say(value)} ${unit}) is outside ${min}–${max} ${unit}, where the formula was fitted: treat the result with doubt.`,
  "mix-apart": () =>
    "Mix in a separate vessel, never in a tank with animals: water first, then the salt a little at a time, stirring; aerate, bring to temperature and wait until it is clear (common practice).",
  "mains-near-water": () =>
    "Mains power beside water can kill: put pump and heater on a residual-current protected socket with a drip loop, unplug before hands go in, follow the local code and ask a licensed electrician about anything fixed.",
  "unplug-before-draining": () =>
    "Before the level falls, unplug heaters and pumps: a heater out of water cracks or burns, a pump runs dry. Plug in again only when they are covered.",
  "heavy-lift": ({ what, kg }) =>
    `Lifting: ${what} weighs about ${say(kg)} kg. Carry it in smaller portions, or pump it.`,
  "heavy-vessel": ({ kg }) =>
    `The full vessel weighs about ${say(kg)} kg on a small area: make sure that the floor bears it, and ask an engineer where you are not sure.`,
  "measure-before-use": () =>
    "Measure salinity and temperature of the finished water before any of it goes near animals, and correct first.",
  "measure-again": () => "Measure again when everything has mixed, and go on from what you read.",
  "yield-unknown": ({ low, high, saltLowKg, saltHighKg }) =>
    `Nobody has measured this salt: a gram of it may deliver ${say(low)}–${say(high)} g. Start with ${massText(saltLowKg)}, dissolve, measure, and work up towards ${massText(saltHighKg)}; your first batch then tells the true figure.`,
  "yield-above-one": ({ yieldFactor }) =>
    `The best figure (${say(yieldFactor)}) is above 1, and no salt delivers more than its own weight: one of volume, mass or salinity is a little off. The range is cut at 1.`,
  "yield-below-recipes": ({ yieldFactor, lowest }) =>
    `${say(yieldFactor)} is below ${lowest}, the wettest of the published recipes: look for undissolved or damp salt, a larger volume than thought, or a low reading.`,
  "salinity-change-rate": ({ change, capPerDay, days, stepPerDay }) =>
    `A change of ${say(change)} ppt is more than ${say(capPerDay)} ppt a day: with animals in the water spread it over ${days} days, ${say(stepPerDay)} ppt a day, measuring each time (common practice, no source).`,
  "dissolve-before-adding": ({ litres }) =>
    `Never put dry salt into the tank. Take out about ${say(litres)} L of tank water, dissolve the salt in it completely, and pour it back slowly into strong flow, away from animals.`,
  "level-rises": ({ litres }) =>
    `Nothing is taken out, so the system must have room for ${say(litres)} L more, and still have room for what drains back when the power fails.`,
  "fresh-water-quality": () =>
    "Fresh water means purified water, or tap water freed of chlorine and chloramine and brought to temperature.",
  "large-change": ({ percent }) =>
    `${say(percent)} % at once is a large change for animals: match salinity, temperature and pH, or split it (common practice, no source).`,
  "change-within-error": ({ change, error }) =>
    `The difference of ${say(change)} ppt is no more than the error of the reading (${say(error)} ppt): there may be nothing to put right.`,
  "top-off-with-fresh-water": () =>
    "Only water evaporates and the salt stays, so replace evaporation with fresh water. Salt water taken out or spilled is replaced with salt water.",
  "reservoir-can-dump": ({ litres, fall }) =>
    `If the top-off sticks open, the ${say(litres)} L of its reservoir take salinity down by ${say(fall)} ppt: use a smaller reservoir, or a second, independent shut-off.`,
  "salinity-step": ({ step, limit }) =>
    `The animals would feel a salinity step of ${say(step)} ppt, more than ${say(limit)}: bring the new water closer, or add it slowly (common practice, no source).`,
  "temperature-step": ({ step, limit }) =>
    `The animals would feel a temperature step of ${say(step)} °C, more than ${say(limit)}: warm or cool the new water first, or add it slowly (common practice, no source).`,
  "ph-is-not-blended": ({ tank, added }) =>
    `pH ${tank} and ${added} do not average: the result depends on alkalinity and dissolved carbon dioxide. Aerate the new water and measure the blend.`,
  "not-for-tap-water": () =>
    "These scales hold for the salts of seawater. Hard tap water conducts through other ions: its conductivity gives no salinity.",
  "ppt-has-two-meanings": ({ perKg, perLitre }) =>
    `“ppt” is read as practical salinity. If your instrument means grams per kilogram this water is ${say(perKg)}, in grams per litre ${say(perLitre)}.`,
  "brine-scale": ({ shown, salinity }) =>
    `A refractometer made for table-salt brine shows about ${say(shown)} (give or take 0.4) in seawater of ${say(salinity)} ppt. Calibrate it with a seawater standard near 35 ppt instead of correcting by sums.`,
  "unknown-expansion": () =>
    "What the float is made of is not known, so its own growth with temperature is left open: see the range, or bring the sample to the calibration temperature.",
  "weighed-chemicals": () =>
    "Some of these salts are harmful, sodium fluoride and boric acid most of all: gloves, no dust, a labelled closed jar away from children, and the safety sheet of each read first. Weigh fractions of a gram on a scale made for them.",
  "calcium-last": () =>
    "Dissolve one salt after the other, the chlorides of magnesium, calcium and strontium last and well stirred, or they fall out with the carbonate. Aerate for a day and measure.",
  "recipe-from-memory": () =>
    "This recipe was not re-read from the standard, though its sums close: compare it with the standard before you weigh.",
  "production-goes-on": () =>
    "What raises the value goes on between changes: after the change it climbs again, so look at the steady state too.",
  "unattended-filling": () =>
    "Never let water run into an open vessel unattended without a mechanical float or shut-off and a vessel that can overflow safely.",
  "saturation-is-a-ceiling": () =>
    "This is what fully aerated water holds, a ceiling: animals and filters keep the real figure below it, most of all at night and when the power fails.",
  "meter-set-to-fresh": ({ percent }) =>
    `A meter left on fresh water shows ${say(percent)} % too much here: set its salinity first.`,
  "oxygen-low": ({ percent }) =>
    `${say(percent)} % of saturation is low for a stocked tank: aerate and look for the cause now (common practice, no source).`,
  oversaturated: ({ percent }) =>
    `${say(percent)} % is more than the air would give: strong algae light, air drawn into a pump, or a meter that needs calibrating.`,
};

/** The sentence for each refusal of the water room. */
export const waterRefusalWording: Wording<WaterRefusals> = {
  "target-not-between-waters": ({ now, target, added }) =>
    `Adding water of ${say(added)} to water of ${say(now)} can never reach ${say(target)}: the target has to lie between the two.`,
  "not-credible": ({ quantity, value, unit, min, max }) =>
    `The ${quantity} of ${withUnit(say(value), unit)} cannot be right: it has to lie from ${min} to ${withUnit(String(max), unit)}.`,
  "salt-cannot-lower": ({ now, target }) =>
    `Salt cannot take ${say(now)} ppt down to ${say(target)} ppt: use fresh water, or exchange some for weaker water.`,
  "vessel-too-full": ({ heldL, finalL }) =>
    `The vessel already holds ${say(heldL)} L, too much to end at ${say(finalL)} L with that salinity: take some out first, or make a larger batch.`,
  "vessel-too-salty": ({ held, target }) =>
    `The water in the vessel (${say(held)} ppt) already brings more salt than ${say(target)} ppt needs: add more fresh water instead of salt.`,
  "product-too-weak": ({ yieldFactor, target }) =>
    `A product that delivers ${say(yieldFactor)} g of salt per gram cannot make water of ${say(target)} ppt: check the yield factor.`,
  "yield-impossible": ({ yieldFactor }) =>
    `That would be a yield factor of ${say(yieldFactor)}, and no salt delivers more than its own weight. The water was less than thought, the scale reads light, salt was added twice, or the salinity reads high: check with a calibrated instrument.`,
  "more-than-there-is": ({ what, litres, volumeL }) =>
    `${what} (${say(litres)} L) is as much as the water there is (${say(volumeL)} L), or more: check both figures.`,
  "salinity-fell": ({ before, now }) =>
    `Salinity fell from ${say(before)} to ${say(now)} ppt, and evaporation can only raise it. Too much fresh water was added, salt water was lost, or a reading is off: fresh water would make it worse.`,
  "runs-out-between-changes": ({ before, unit }) =>
    `More is used up between changes than they bring: the value would fall below nothing (${say(before)} ${unit}). Dose it, or change more and more often.`,
  "source-too-strong": ({ ceiling, source, unit }) =>
    `The new water itself holds ${say(source)} ${unit}, so changes can never keep the tank below ${say(ceiling)} ${unit}.`,
  "no-fraction-is-enough": ({ ceiling, rise, unit }) =>
    `Between two changes the value rises by ${say(rise)} ${unit}: even changing all of it cannot keep it below ${say(ceiling)} ${unit}. Change more often, or lower what is produced.`,
  "no-such-seawater": ({ reading, unit }) =>
    `No seawater from 0 to 100 ppt gives a reading of ${Number(reading.toPrecision(5))}${unit === "" ? "" : ` ${unit}`}: check the reading and its unit.`,
};
