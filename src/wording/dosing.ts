import type { DosingCautions, DosingRefusals } from "../core/dosing/cautions.ts";
import type { Wording } from "./wording.ts";

/** Three figures are as many as a warning needs. */
export function roundFigure(value: number): string {
  return Number(value.toPrecision(3)).toString();
}

/** A figure's name at the head of a sentence. */
export function sentenceCase(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}

/** The sentence for each caution of the dosing room. */
export const dosingCautionWording: Wording<DosingCautions> = {
  "medicine-needs-a-vet": () =>
    "Medicine for animals is a vet's decision: ask one before anything goes into the water.",
  "make-up-to-volume": ({ finalL }) =>
    `Pour the stock first, then fill up to the ${roundFigure(finalL)} L mark: do not measure the water apart.`,
  "water-first-then-stock": ({ finalL }) =>
    `Put half of the water in first, then the stock, slowly and stirring; let it cool, and fill up to the ${roundFigure(finalL)} L mark.`,
  "stock-not-named": () =>
    "Nobody said what the stock is, so nothing was checked. If it is an acid or a lye, water goes first and the stock into it, slowly, with gloves and eye protection.",
  "acid-into-water": () =>
    "Acid goes into water, slowly, never water into acid. Wear gloves and eye protection, and keep the window open.",
  "caustic-burns": () =>
    "This burns skin and eyes and heats up as it dissolves: add it slowly to cold water, with gloves and eye protection.",
  "bleach-keep-apart": () =>
    "Bleach meets nothing but water: no acid, no vinegar, no ammonia, no alcohol. Open the window and wear gloves.",
  "oxidiser-burns": () =>
    "Peroxide burns skin and eyes and feeds fire: wear gloves and eye protection, and never close its bottle tight on anything else.",
  "ammonia-is-toxic": () =>
    "Ammonia poisons fish and irritates eyes and lungs: keep it away from bleach and from any water with animals in it.",
  "solvent-vapour-burns": () =>
    "Its vapour burns and creeps along the floor: no flame, no switch, open windows, and none of it near a tank.",
  "substance-not-named": () =>
    "Nobody said what this is, so nothing was checked. If it treats a disease it is a medicine: ask a vet, and pour nothing.",
  "substance-not-known": ({ substance }) =>
    `Nothing is known here of ${substance}, so nothing was checked. Read its safety sheet; if it treats a disease it is a medicine: ask a vet, and pour nothing.`,
  "leave-and-air": () =>
    "If they have already met: do not lean over it, leave the room, open it to fresh air, and call the poison line or the emergency number.",
  "hazard-list-not-complete": () =>
    "The list behind this is short: a pair that is not on it may still be dangerous. Read both labels, and mix neither if unsure.",
  "alcohol-flammable": ({ percent, flashPointC }) =>
    `Alcohol of ${roundFigure(percent)} % can catch fire from about ${roundFigure(flashPointC)} °C: keep it closed, and away from lamps, heaters, relays and flames.`,
  "no-denatured-alcohol": () =>
    "Use only alcohol without additives: what makes denatured alcohol unfit to drink harms a tank too.",
  "alcohol-dose-elsewhere": () =>
    "Alcohol burns, and in a tank it uses up oxygen: work out such a dose with the carbon dosing sum, which checks for that.",
  "alcohol-shrinks-on-mixing": () =>
    "Alcohol and water shrink when mixed, so the top-up is a little more than the sum says: fill to the mark.",
  "split-over-days": ({ days, cap, unit }) =>
    `Spread it over ${days} days, so that no day changes more than ${roundFigure(cap)} ${unit}, and test before each next dose.`,
  "no-daily-limit-given": () =>
    "No daily limit was given, so this is the whole dose at once: ask how fast this water may change before pouring.",
  "missed-dose-stays-missed": () => "A missed dose stays missed: never double the next one.",
  "stock-near-saturation": ({ solute, gramsPerL, solubilityGramsPerL }) =>
    `${roundFigure(gramsPerL)} g/L of ${solute} is close to the ${roundFigure(solubilityGramsPerL)} g/L water takes at 20 °C: in a cool room it may drop out.`,
  "stock-volume-counts": ({ percent }) =>
    `This much stock adds ${roundFigure(percent)} % to the volume: leave room for it, and watch the salinity.`,
  "calibrate-the-pump": () =>
    "Measure what the pump really delivers in a minute, and again each month: hoses wear.",
  "pump-run-very-short": ({ seconds }) =>
    `A run of ${roundFigure(seconds)} s is too short to be accurate: use fewer doses or a weaker stock.`,
  "vet-figures-read-back": () =>
    "Read each figure against the vet's note and the label once more before any of it is poured.",
  "carbon-takes-oxygen": ({ mgPerL, worstMgPerL, dosesPerDay }) =>
    `Each dose takes about ${roundFigure(mgPerL)} mg/L of oxygen from the water, ${roundFigure(worstMgPerL)} at worst: split it into at least ${dosesPerDay} doses a day and aerate, at night above all.`,
  "carbon-ramp-rule": () =>
    "Test nitrate each week: step up only while it does not fall, hold once it falls, and halve the dose at the target.",
  "carbon-stop-signs": () =>
    "Stop at once if the water clouds, slime grows, fish gasp or stop eating, the skimmer overflows, or nitrate is down to 2–5 mg/L.",
  "carbon-only-with-flow": () =>
    "No carbon while pumps, aeration or skimmer are off: the bacteria use up the oxygen. Put the dosing pump on the same switch.",
  "sulphide-when-nitrate-is-gone": () =>
    "If nitrate runs out in the box, poisonous sulphide forms (rotten eggs): stop the carbon, do not breathe over the box, and let its water out to waste, slowly.",
  "phosphate-may-run-out": () =>
    "The bacteria need phosphate too: if it is near nothing, nitrate stops falling.",
  "skim-out-what-grew": () =>
    "The nitrogen sits in bacteria now: unless the skimmer takes them out it comes back as ammonia.",
  "carbon-wasted-on-oxygen": ({ percent }) =>
    `${roundFigure(percent)} % of the carbon only burns the oxygen coming in: let more nitrate be removed per pass with less flow.`,
  "harvest-or-no-export": () =>
    "Only what leaves the system counts: harvest every week, for algae that die give it all back as ammonia.",
  "ammonia-no-animals": () =>
    "Only for a system with no animals in it. Test to nearly nothing, and change water, before any move in.",
  "ammonia-unit-said": ({ mgNPerL, asNh4, asNh3 }) =>
    `Check what your kit prints: this is ${roundFigure(mgNPerL)} mg/L as nitrogen, ${roundFigure(asNh4)} as NH₄ or ${roundFigure(asNh3)} as NH₃.`,
  "ammonia-slows-the-cycle": ({ mgNPerL, max }) =>
    `${roundFigure(mgNPerL)} mg/L as nitrogen is more than the ${roundFigure(max)} usually kept to: too much ammonia holds back the second step.`,
  "cycling-uses-alkalinity": ({ dkh }) =>
    `Taking this to nitrate uses up about ${roundFigure(dkh)} dKH: test alkalinity, and put it back if it falls below 7.`,
  "binder-blinds-the-test": ({ hours }) =>
    `For the next ${roundFigure(hours)} h an ordinary ammonia test means nothing: it reads bound ammonia too. Act on the animals, not on that number.`,
  "binder-nitrogen-stays": () =>
    "A binder hides ammonia, it does not remove it: the filter still has to take it to nitrate.",
  "binder-takes-oxygen": ({ mgPerL }) =>
    `This reagent takes up to ${roundFigure(mgPerL)} mg/L of oxygen from the water: aerate hard, and dose in parts.`,
  "carbon-while-off": ({ item }) =>
    `Carbon is due while the ${item} is off: leave that dose out, for the bacteria would use up the oxygen.`,
  "off-soon-after-carbon": ({ item, hours }) =>
    `The ${item} goes off ${roundFigure(hours)} h after a carbon dose: oxygen use is still high then. Leave the dose out, or wait a day.`,
  "binder-before-test": ({ hours }) =>
    `The ammonia test comes ${roundFigure(hours)} h after a binder: it reads bound ammonia too and means nothing yet. Test before the binder, or after 48 h.`,
  "ph-lift-with-ammonia": ({ what }) =>
    `The ${what} raises the pH while there is ammonia in the water, which makes it more poisonous: match the pH first, or see to the ammonia.`,
  "calcium-meets-carbonate": ({ hours }) =>
    hours < 0.1
      ? "Calcium and carbonate are due together: they fall out as chalk. Put hours between them."
      : `Calcium and carbonate are due only ${roundFigure(hours)} h apart: they fall out as chalk. Put more hours between them.`,
  "two-changes-one-week": ({ first, second, days }) =>
    `Two changes ${roundFigure(days)} days apart (${first}, ${second}): whatever happens next, you will not know which did it. Leave a week between.`,
  "binder-strength-from-label": () =>
    "For a bottled product follow its own label: the strength cannot be known from here.",
};

/** The sentence for each refusal of the dosing room. */
export const dosingRefusalWording: Wording<DosingRefusals> = {
  "stock-weaker-than-target": ({ stock, target, unit }) =>
    `A stock of ${roundFigure(stock)} ${unit} cannot be diluted to ${roundFigure(target)} ${unit}: the stock has to be the stronger one.`,
  "strengths-do-not-compare": ({ stock, target }) =>
    `${stock} and ${target} do not compare: one counts weight and the other volume. Give both in the same unit.`,
  "weight-percent-needs-density": ({ which }) =>
    `The ${which} is in per cent by weight: its density is needed to turn that into a volume. Say it as “30 % w/w 1.15 kg/L”.`,
  "dose-figure-not-positive": ({ quantity, value, unit }) =>
    `The ${quantity} was read as ${roundFigure(value)} ${unit}: it has to be more than nothing over its whole range.`,
  "dose-figure-too-large": ({ quantity, value, unit, max }) =>
    `The ${quantity} was read as ${roundFigure(value)} ${unit}: it cannot be more than ${roundFigure(max)}.`,
  "will-not-dissolve": ({ solute, gramsPerL, solubilityGramsPerL }) =>
    `${roundFigure(gramsPerL)} g/L of ${solute} will not dissolve: water takes about ${roundFigure(solubilityGramsPerL)} g/L at 20 °C. Make a weaker stock.`,
  "doses-do-not-fit-the-day": ({ seconds, dosesPerDay }) =>
    `${dosesPerDay} doses of ${roundFigure(seconds)} s each do not fit into a day: use a stronger stock or a faster pump.`,
  "never-mix": ({ a, b, result }) => `Never let ${a} and ${b} meet: they can make ${result}.`,
  "not-into-a-tank": ({ substance }) =>
    `No dose of ${substance} for water with animals in it: it kills them. It is for cleaning empty equipment only.`,
  "medicine-not-dosed": ({ medicine }) =>
    `${sentenceCase(medicine)} counts as a medicine here, and no dose is worked out for it: that needs a vet who knows the animals.`,
  "vet-figures-missing": ({ missing }) =>
    `${sentenceCase(missing)} is missing. With a vet's note every figure has to come from the note; none is guessed.`,
  "alcohol-is-denatured": () =>
    "Not with denatured alcohol: its additives harm a tank. Use alcohol with nothing else in it.",
  "carbon-needs-flow": ({ off }) =>
    `No carbon dose while ${off}: the bacteria would use up the oxygen. Start again once everything has run for a day.`,
  "carbon-takes-too-much-oxygen": ({ mgPerL, max, dosesNeeded }) =>
    `One such dose would take ${roundFigure(mgPerL)} mg/L of oxygen, more than the ${roundFigure(max)} allowed here. Split the day's amount into ${dosesNeeded} doses, or dose less.`,
  "carbon-with-fish-off-food": () =>
    "No carbon on a day when the fish do not eat: less nitrogen comes in, and something may be wrong. Find out what first.",
  "ammonia-with-animals": () =>
    "No ammonia dose with animals in the water: it poisons them. It is for feeding a filter before any move in.",
};
